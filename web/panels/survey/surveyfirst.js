/** What to survey first: one table in order, and how high a rail crossing the rig clears at every setting. */
import { el, replace } from '../../dom.js';
import { chainage, clearance, dimension, room } from '../../text/format.js';
import { kindOf } from '../../report/kinds.js';
import { axlesWords } from '../../report/report.js';
import { humpColumns, knownFrom, sketchWords, trackWords } from '../../report/surveyfirst.js';
import { BOOSTER_WORDS } from '../../drawing/symbols.js';
import { framed } from '../parts/framed.js';

const SKETCH_NOTE = 'Sketch gap: the least gap to the ground over the land as an elevation raster has it, '
  + 'at the highest notch of the first axle and booster state. No survey and no verdict: a raster smooths what is '
  + 'shorter than its cells, and a real hump may be worse.';

/** Where the ground below the combination counts. */
const SKETCHED = ['rail-crossing', 'crest', 'dip'];

export function mountSurveyFirst(root, { store, actions }) {
  const body = el('div', {});
  root.append(body);
  const stop = store.watch(['report', 'units'], ({ report, units }) => {
    const first = report?.surveyFirst;
    root.hidden = !first || first.places.length === 0;
    replace(body, !root.hidden && [
      el('p', {}, 'Not surveyed, or known only by report: none is clear until it is surveyed. '
        + 'In the order to go there.'),
      framed('What to survey first', places(first, units, actions)),
      first.places.some(place => place.sketch)
        && el('p', { class: 'fine-print', id: 'survey-sketch-note' }, SKETCH_NOTE),
      first.humps.map(hump => ladder(report, hump, units)),
    ]);
  });
  return { unmount: () => { stop(); root.replaceChildren(); } };
}

const heads = names => el('thead', {}, el('tr', {}, names.map(name => el('th', { scope: 'col' }, name))));

function places({ places: all }, units, actions) {
  const sketched = all.some(place => place.sketch);
  return el('table', { id: 'survey-table' },
    el('caption', { class: 'unseen' }, 'Places that wait for a survey'),
    heads(['Order', 'Place', 'Kind', 'At', 'Tracks', 'Low-ground sign', sketched && 'Sketch gap',
      'Angle', 'Known from'].filter(Boolean)),
    el('tbody', {}, all.map(place => {
      const crossing = place.kind === 'rail-crossing';
      return el('tr', { 'data-hazard': place.id, 'data-rank': place.rank },
        el('td', { class: 'figure' }, String(place.rank)),
        el('th', { scope: 'row' }, el('button', {
          type: 'button', class: 'survey-open', on: { click: () => actions.selectHazard(place.id) },
        }, el('span', { class: 'hazard-id' }, place.id), ` ${place.name}`)),
        el('td', {}, kindOf(place.kind).word),
        el('td', { class: 'figure' }, chainage(place.chainageM, units)),
        el('td', { class: 'figure' }, crossing ? place.tracks ?? 'unknown' : ''),
        el('td', {}, crossing ? (place.lowGroundSign ? 'yes' : 'none recorded') : ''),
        sketched && el('td', { class: 'figure', 'data-sketch-m': String(place.sketch?.gapM ?? null) },
          SKETCHED.includes(place.kind)
            && sketchWords(place.sketch, gap => clearance(gap, units), cell => room(cell, units, 'nearest'))),
        el('td', { class: 'figure' }, !crossing ? '' : place.angleRad === null
          ? 'unknown' : `${Math.round(place.angleRad * 180 / Math.PI)}°`),
        el('td', {}, knownFrom(place)));
    })));
}

/** Settings with the same rungs share a column, as in the matrix of a hazard. */
function ladder(report, hump, units) {
  const waiting = report.surveyFirst.places.filter(place => place.tracks === hump.tracks).length;
  const columns = humpColumns(report, hump);
  const title = `Rail crossing of ${trackWords(hump.tracks)}, ${waiting} to survey`;
  return el('div', { class: 'hump-ladder', 'data-tracks': hump.tracks },
    el('h3', {}, title),
    el('p', { class: 'fine-print' }, 'To compare with; no verdict on any place. How far the road may fall within '
      + `${dimension(hump.overM, units)} on both sides, rails and road level over `
      + `${dimension(hump.planeM, units)} between, before the error of a survey.`),
    framed(title, el('table', { class: 'hump-table' },
      el('caption', { class: 'unseen' }, title),
      el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'Notch'), columns.map(({ boosters, ...state }) =>
        el('th', { scope: 'col' }, axlesWords(state),
          el('span', { class: 'hazard-side' }, boosters.map(b => BOOSTER_WORDS[b] ?? b).join(', ')))))),
      el('tbody', {}, columns[0].rungs.map(({ notch }, row) => el('tr', {},
        el('th', { scope: 'row' }, notch),
        columns.map(({ rungs }) => rung(rungs[row], units))))))));
}

function rung({ clearM, contactM }, units) {
  return el('td', { class: 'figure', 'data-clear-m': String(clearM), 'data-contact-m': String(contactM) },
    clearM === null ? 'not even level' : `clear to ${clearance(clearM, units)}`,
    el('span', { class: 'hazard-side' }, contactM === null
      ? 'contact ruled out as far as tried' : `contact possible from ${clearance(contactM, units)}`));
}
