/** The sheet's notes: what was not checked, the uncertainty terms, the cautions. */
import { el, replace } from '../../dom.js';
import { chainage, dimension, fine } from '../../text/format.js';
import { notChecked } from '../../report/report.js';
import { togetherWords, waitingTogether } from '../../report/surveyfirst.js';
import { framed } from '../parts/framed.js';

export function mountNotes(root, { store }) {
  const body = el('div', { class: 'notes' });
  root.append(body);
  const stop = store.watch(['report', 'configuration', 'units'], state => {
    if (state.report !== null) {
      replace(body, notCheckedNote(state), uncertaintyNote(state), tapeNote(state), readingNote(),
        cautionsNote(state.report));
    }
  });
  return { unmount: () => { stop(); body.remove(); } };
}

function notCheckedNote({ report, configuration, units }) {
  const missing = notChecked(report, configuration);
  const together = waitingTogether(report);
  const waiting = missing.filter(({ hazard }) => together.has(hazard.id)).length;
  return el('div', { class: 'note' },
    el('h3', {}, 'Not checked'),
    missing.length === 0
      ? el('p', {}, 'Every hazard of the route file carries survey data.')
      : [
        waiting > 0 && el('p', { class: 'on-paper' }, togetherWords(waiting)),
        el('ul', { id: 'not-checked' }, missing.map(({ hazard, why }) => el('li', {
          'data-hazard': hazard.id, 'data-waits': together.has(hazard.id) ? 'true' : null,
        },
        el('strong', {}, `${hazard.id} ${hazard.name}`),
        ` at ${chainage(hazard.chainageM, units)}. `, sentences(why)))),
      ],
    el('p', {}, 'Vertical clearance is checked at the hazards the route file lists, and nowhere else; turning at its '
      + 'corners and where its line turns tightly; loads against the limits that the files give.'));
}

/** What the report says, once each and as sentences. */
function sentences(texts) {
  return [...new Set(texts)]
    .map(text => text.charAt(0).toUpperCase() + text.slice(1))
    .map(text => (/[.!?]$/.test(text) ? text : `${text}.`))
    .join(' ');
}

function uncertaintyNote({ report, units }) {
  return el('div', { class: 'note' },
    el('h3', {}, 'Uncertainty'),
    framed('Uncertainty', el('table', { id: 'uncertainties' },
      el('caption', {}, 'Half-widths at 95 %, combined as the root of the sum of their squares'),
      el('thead', {}, el('tr', {},
        el('th', { scope: 'col' }, 'Term'), el('th', { scope: 'col', class: 'figure' }, 'Value'),
        el('th', { scope: 'col' }, 'Source'))),
      el('tbody', {}, el('tr', {}, el('th', { scope: 'row' }, 'survey'), el('td', { class: 'figure' }, 'each its own'),
        el('td', {}, 'stated with each hazard')), report.uncertainties.map(({ term, valueM, source }) => el('tr', {},
        el('th', { scope: 'row' }, term),
        el('td', { class: 'figure' }, `± ${fine(valueM, units, 'up')}`),
        el('td', {}, source)))))));
}

/** Distances as they would be measured, so that exchanged figures in the rig file are seen. */
function tapeNote({ report, units }) {
  return el('div', { class: 'note' },
    el('h3', {}, 'What a tape shows'),
    el('p', {}, 'On this stance as the rig file has it. Compare with the rig before relying on anything here.'),
    framed('What a tape shows', el('table', { id: 'tape' },
      el('tbody', {}, report.tape.map(({ what, valueM }) => el('tr', {}, el('th', { scope: 'row' }, what),
        el('td', { class: 'figure' }, dimension(valueM, units))))))));
}

function readingNote() {
  return el('div', { class: 'note' },
    el('h3', {}, 'Reading the sheet'),
    el('p', {}, 'Clear: the clearance is at least the margin and the uncertainty together. Contact: it is less than '
      + 'its uncertainty, so that contact cannot be ruled out. Tight: between the two, or leaning on ground that was '
      + 'not surveyed. Not surveyed: data is missing; it never counts as clear. Outside limits: a load is above what '
      + 'is allowed, or below what an axle needs. Loads unknown: weights are missing; they never count as within '
      + 'limits.'),
    el('p', {}, 'Clearances are rounded down, raises and what is required up, to 1/8 in or 1 mm; '
      + 'finer where a clearance meets what is required by less than that.'));
}

function cautionsNote(report) {
  return el('div', { class: 'note' },
    el('h3', {}, 'Cautions'),
    el('ul', { id: 'cautions' }, report.cautions.map(caution => el('li', {}, caution))));
}
