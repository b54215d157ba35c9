/** For the planner: every configuration, its counts of verdicts, best first; pick one. */
import { el, replace } from '../dom.js';
import { dimension } from '../format.js';
import { ranked } from '../report.js';
import { BOOSTER_WORDS } from '../drawing/symbols.js';
import { verdictIcon, verdictTag } from './symbol.js';

const COUNTS = [['clear', 'clear'], ['tight', 'tight'], ['contact', 'contact'], ['notSurveyed', 'not surveyed'],
  ['outsideLimits', 'outside limits'], ['loadsNotKnown', 'loads not known']];

export function mountComparison(root, { store, actions }) {
  const body = el('tbody');
  root.append(
    el('p', { class: 'fine-print' }, 'Best for this route first: fewest hazards that not even a raise makes clear, '
      + 'then fewest contacts, then fewest not surveyed, then fewest tight. Picking one shows it on the whole sheet.'),
    el('div', { class: 'table-frame' }, el('table', { id: 'configuration-table' },
      el('caption', { class: 'unseen' }, 'Configurations with their counts of verdicts'),
      el('thead', {}, el('tr', {},
        el('th', { scope: 'col' }, 'Pick'),
        el('th', { scope: 'col' }, 'Axles'),
        el('th', { scope: 'col' }, 'Booster'),
        el('th', { scope: 'col' }, 'Notch'),
        el('th', { scope: 'col' }, 'Whole route'),
        el('th', { scope: 'col' }, 'Loads'),
        COUNTS.map(([, verdict]) =>
          el('th', { scope: 'col', class: 'figure' }, verdictIcon(verdict, 12), ` ${verdict}`)),
        el('th', { scope: 'col', class: 'figure' }, 'clear only raised'))),
      body)));

  const stops = [
    store.watch(['report', 'units'], state => {
      if (state.report !== null) {
        replace(body, ranked(state.report).map(configuration => row(configuration, state.units)));
        mark(state);
      }
    }),
    store.watch(['configuration'], mark),
  ];

  function row(c, units) {
    const pick = el('input', {
      type: 'radio', name: 'configuration', value: c.key, 'aria-label': c.label,
      on: { change: () => actions.chooseConfiguration(c.key) },
    });
    return el('tr', { 'data-configuration': c.key, 'data-verdict': c.verdict, on: { click: () => pick.click() } },
      el('td', {}, pick),
      el('td', {}, String(c.axles)),
      el('td', {}, BOOSTER_WORDS[c.booster] ?? c.booster),
      el('th', { scope: 'row' }, c.notch, el('span', { class: 'notch-offset' }, offset(c.notchOffsetM, units))),
      el('td', {}, verdictTag(c.verdict)),
      el('td', {}, verdictTag(c.loads ?? 'loads not known')),
      COUNTS.map(([field, verdict]) => count(c[field] ?? 0, verdict)),
      count(c.raisedOnly, null));
  }

  function mark({ configuration }) {
    for (const line of body.rows) {
      const chosen = line.dataset.configuration === configuration;
      line.classList.toggle('chosen', chosen);
      line.querySelector('input').checked = chosen;
    }
  }

  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(root.firstElementChild); } };
}

function count(value, verdict) {
  const name = value === 0 ? 'figure none' : 'figure';
  return el('td', { class: name, 'data-count': verdict ?? 'raised only' }, String(value));
}

/** A notch's offset from the reference: "+3/4 in", "reference". */
export function offset(offsetM, units) {
  return offsetM === 0 ? ' reference' : ` ${offsetM > 0 ? '+' : ''}${dimension(offsetM, units)}`;
}
