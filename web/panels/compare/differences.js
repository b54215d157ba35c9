/** Where the two configurations that are picked fare differently. */
import { el, replace } from '../../dom.js';
import { chainage } from '../../text/format.js';
import { differences, WHOLE_ROUTE } from '../../report/plan.js';
import { openHazard } from '../parts/opening.js';
import { placeWords } from './marginplot.js';

export function mountDifferences(root, { store, actions }) {
  const stop = store.watch(['comparison', 'picks', 'units'], ({ comparison: { data }, picks, units }) => {
    const pair = picks.map(key => data?.configurations.find(c => c.configuration === key)).filter(Boolean);
    root.hidden = pair.length !== 2;
    if (pair.length !== 2) {
      root.replaceChildren();
      return;
    }
    const found = differences(...pair);
    replace(root, el('h3', {}, 'Where the two differ'), found.length === 0
      ? el('p', {}, 'Nowhere: verdict, raise and spare are the same at every place.')
      : el('div', { class: 'table-frame', tabindex: '0', role: 'region', 'aria-label': 'Where the two differ' },
        el('table', { id: 'difference-table' },
          el('caption', { class: 'unseen' }, 'Places at which the two configurations fare differently'),
          el('thead', {}, el('tr', {}, el('th', { scope: 'col', class: 'figure' }, 'At'),
            el('th', { scope: 'col' }, 'Place'), pair.map(({ label }) => el('th', { scope: 'col' }, label)))),
          el('tbody', {}, found.map(({ id, name, chainageM, first, second }) => el('tr', { 'data-hazard': id },
            el('td', { class: 'figure' }, chainage(chainageM, units)),
            el('th', { scope: 'row' }, id === WHOLE_ROUTE ? name : el('button', {
              type: 'button', class: 'step-open', on: { click: event => openHazard(actions, id, event) },
            }, `${id} ${name}`)),
            el('td', {}, placeWords(first, units)), el('td', {}, placeWords(second, units))))))));
  });
  return { unmount: () => { stop(); root.replaceChildren(); } };
}
