/** The parts of an import's preview: facts, notes, candidates. */
import { el } from '../../dom.js';
import { chainage, room } from '../../text/format.js';
import { countsInWords, kindWords, noteAt, notesByDone, rasterWords, where } from '../../import/imported.js';

/** A text of more characters is folded. */
const LONGEST_UNFOLDED = 90;

/** What was read, and how the line fits the map. */
export function facts(preview, units) {
  const { map } = preview;
  return el('div', { class: 'import-facts' },
    el('ul', {}, preview.files.map(file => el('li', {}, `${file.file}: ${file.format}, ${file.points} points`
      + (file.places > 0 ? `, ${file.places} marked places` : '')))),
    el('p', {}, `${preview.pointsKept} of ${preview.pointsRead} points kept. `,
      preview.legs.length > 1 && `${preview.legs.length} legs: ${preview.legs.map(leg => leg.name).join(', ')}. `,
      preview.turns.length > 0 && `${preview.turns.length} tight turns, none described. `),
    uncovered(preview, units),
    map && el('p', {}, `The tracks lie within ${room(map.farthestM, units, 'up')} of the line along the map’s roads; `
      + `${room(map.offRoadM, units, 'up')} of the line lie on none.`),
    preview.places.length > 0 && el('p', {}, 'Marked places: ', preview.places.map(place => (place.id === null
      ? `${place.name} (${room(Math.abs(place.offsetM), units, 'nearest')} off the line, left out)`
      : `${place.name} at ${chainage(place.chainageM, units)}`)).join('; ')),
    map && el('p', { class: 'fine-print', id: 'import-attribution' }, map.attribution));
}

/** Stretches of which the maps say nothing: what is there nobody has looked up. */
function uncovered({ candidates }, units) {
  const stretches = candidates.filter(one => one.kind === 'off-map').map(one => where(one, units));
  return stretches.length > 0 && el('p', { id: 'import-uncovered' },
    el('strong', {}, `Not covered by the map: ${stretches.join('; ')}. Nothing is known of what is there.`));
}

/** What was found in the tracks, the doubtful first. */
export function noteList(notes) {
  return notes.length > 0 && el('div', { id: 'import-notes' },
    notesByDone(notes).map(group => [
      el('h3', {}, `${group.done[0].toUpperCase()}${group.done.slice(1)}`),
      el('ul', {}, group.notes.map(note => el('li', { 'data-done': note.done, 'data-code': note.code },
        el('strong', {}, noteAt(note)), `: ${note.message}`)))]));
}

/** What elevation rasters were good for. */
export function rasterList(rasters, units) {
  return rasters.length > 0 && el('div', { id: 'import-rasters' },
    el('h3', {}, 'Heights: sketches of the road, no survey'),
    el('ul', {}, rasters.map(raster => el('li', { 'data-sketches': raster.sketches },
      `${raster.file}: ${rasterWords(raster, room(raster.spacingM, units, 'nearest'))} `,
      el('span', { class: 'fine-print' }, raster.told)))));
}

/** Candidates of the open route that the maps do not have now. */
export function missingList({ missing }) {
  return missing.length > 0 && el('div', { id: 'import-missing' },
    el('h3', {}, `${missing.length} ${missing.length === 1 ? 'candidate' : 'candidates'} of the open route not found in`
      + ' the map now'),
    el('p', {}, 'The map may not reach there, or was changed. They stay as they are; dismiss what is gone.'),
    el('ul', {}, missing.map(one => el('li', { 'data-id': one.id }, `${one.name} (${one.object}), ${one.state}`))));
}

/** What the map has along the line, in the order of travel. @param show (lonLat) → the map goes there */
export function candidateTable({ candidates, map }, units, show) {
  if (map === null) {
    return el('p', { id: 'import-without-map' }, 'No map extract was given, so no candidates were looked for: '
      + 'crossings, bridges and wires along this line are not known. Add an extract to the files.');
  }
  return el('div', {},
    el('h3', { id: 'import-counts' }, `${countsInWords(candidates)}. None is surveyed by this.`),
    candidates.length > 0 && el('div', { class: 'table-frame import-frame', tabindex: '0', role: 'region',
      'aria-labelledby': 'import-counts' },
    el('table', { id: 'import-candidates' },
      el('thead', {}, el('tr', {}, ['At', 'State', 'Kind', 'What', 'The source says', 'Object']
        .map(word => el('th', { scope: 'col' }, word)))),
      el('tbody', {}, candidates.map(one => row(one, units, show))))));
}

/** A long text with its beginning in sight. */
export const folded = text => (text.length <= LONGEST_UNFOLDED ? text
  : el('details', {}, el('summary', {}, `${text.slice(0, LONGEST_UNFOLDED - 20)}…`), text));

function row(one, units, show) {
  return el('tr', { 'data-id': one.id, 'data-status': one.status, 'data-doubtful': one.doubtful ? 'true' : null },
    el('td', { class: 'figure' }, where(one, units)),
    el('td', {}, one.status + (one.doubtful ? ', doubtful' : '')),
    el('td', {}, kindWords(one.kind)),
    el('th', { scope: 'row' },
      el('button', { type: 'button', class: 'hazard-open', on: { click: () => show(one.lonLat) } }, one.name)),
    el('td', { class: 'import-raw' }, folded(one.raw)),
    el('td', {}, one.object));
}
