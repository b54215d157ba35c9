/** Crossings in time, and how the plan's margins shrink: tables under a plan. */
import { el } from '../../dom.js';
import { room, seconds, spareLeft } from '../../text/format.js';
import { robustnessWords, spareWord, WHOLE_ROUTE } from '../../report/plan.js';
import { framed } from '../parts/framed.js';
import { verdictTag } from '../parts/symbol.js';

const heads = names => el('thead', {}, el('tr', {}, names.map(name => el('th', { scope: 'col' }, name))));

/** Does it fit: in words, never by color. */
const fits = (answer, yes, no) => (answer === null ? 'unknown' : answer ? yes : no);

/** How far the track is seen: what decides where nothing but signs tells of a train. */
function seen({ warning, sightM }, units) {
  if (sightM === null) {
    return warning === 'passive' && el('span', { class: 'hazard-side' }, 'not known how far');
  }
  return el('span', { class: 'hazard-side' }, `seen ${room(sightM, units, 'down')}`);
}

export function crossingTable({ crossings }, units) {
  if (crossings.length === 0) {
    return null;
  }
  return el('div', { id: 'plan-crossings' },
    el('h3', {}, 'Rail crossings in time'),
    framed('Rail crossings in time', el('table', { id: 'crossing-table' },
      el('caption', {}, 'From a stop at the stop line until the rear is clear of the tracks. Enough: the reserve '
        + `before a train is at least ${crossings[0].reserveNeededSeconds} s`),
      heads(['Crossing', 'To clear', 'Least warning', 'Reserve', 'Enough', 'Room beyond', 'Room needed',
        'See along the track', 'What to do']),
      el('tbody', {}, crossings.map(c => el('tr', {
        'data-hazard': c.hazard, 'data-clear-seconds': c.clearSeconds, 'data-fits': String(c.fits),
      },
      el('th', { scope: 'row' }, el('span', { class: 'hazard-id' }, c.hazard), ` ${c.name}`,
        c.crossingNumber && el('span', { class: 'hazard-side' }, c.crossingNumber)),
      el('td', { class: 'figure' }, seconds(c.clearSeconds, 'up')),
      el('td', { class: 'figure' }, c.warning === 'passive' ? 'signs only' : seconds(c.warningSeconds, 'down')),
      el('td', { class: 'figure' }, seconds(c.reserveSeconds, 'down')),
      el('td', {}, fits(c.fits, 'yes', 'no')),
      el('td', { class: 'figure' }, room(c.storageM, units, 'down')),
      el('td', { class: 'figure' }, room(c.storageNeededM, units, 'up'),
        el('span', { class: 'hazard-side' }, fits(c.storageFits, 'there is', 'there is not'))),
      el('td', { class: 'figure' }, room(c.sightNeededM, units, 'up'), seen(c, units)),
      el('td', {}, el('ul', { class: 'crossing-advice' }, c.advice.map(text => el('li', {}, text))))))))));
}

export function robustnessTable({ robustness }, units) {
  if (robustness === null || robustness.rows.length === 0) {
    return null;
  }
  return el('div', { id: 'plan-robustness' },
    el('h3', {}, 'If what was declared is off'),
    robustnessWords(robustness).map(text => el('p', {}, text)),
    framed('If what was declared is off', el('table', { id: 'robustness-table' },
      el('caption', {}, 'What is left beyond what is required; below zero it is not kept. A dash: no bearing'),
      el('thead', {}, el('tr', {},
        el('th', { scope: 'col' }, 'Place'), el('th', { scope: 'col', class: 'figure' }, 'As declared'),
        robustness.assumed.map(({ what }) => el('th', { scope: 'col', class: 'figure' }, what)),
        el('th', { scope: 'col', class: 'figure' }, 'all together'), el('th', { scope: 'col' }, 'Verdict then'))),
      el('tbody', {}, robustness.rows.map(row => el('tr', {
        'data-hazard': row.hazard, 'data-kind': row.kind, 'data-spare': row.spare, 'data-worst': String(row.worst),
        class: row.hazard === robustness.weakest?.hazard && row.kind === robustness.weakest?.kind ? 'weakest' : null,
      },
      el('th', { scope: 'row' }, row.hazard === WHOLE_ROUTE ? WHOLE_ROUTE : row.hazard, ` ${spareWord(row.kind)}`),
      el('td', { class: 'figure' }, spareLeft(row.kind, row.spare, units)),
      row.left.map((left, i) => el('td', { class: 'figure' }, row.bears[i]
        ? spareLeft(row.kind, left, units)
        : [el('span', { 'aria-hidden': 'true' }, '–'), el('span', { class: 'unseen' }, 'no bearing')])),
      el('td', { class: 'figure' }, spareLeft(row.kind, row.worst, units)),
      el('td', {}, verdictTag(row.verdict))))))));
}
