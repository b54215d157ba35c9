/** What a posted bridge asks beside weights of the whole: its length, the permit's terms, the axles on it together. */
import { el } from '../../dom.js';
import { room, weight } from '../../text/format.js';

/** Nothing where it asks nothing. */
export function bridgeResult({ bridge }, configuration, units) {
  if (!bridge) {
    return null;
  }
  const together = bridge.together.find(t => t.lift === configuration.lift && t.booster === configuration.booster);
  return el('div', { class: 'result-side', 'data-side': 'bridge' },
    el('h4', {}, 'On the bridge'),
    el('dl', { class: 'facts' },
      bridge.lengthM !== null && [el('dt', {}, 'Length'), el('dd', {}, room(bridge.lengthM, units, 'up'))],
      together && [el('dt', {}, 'Heaviest axles together'),
        el('dd', { id: 'bridge-together' }, togetherWords(together, units))],
      bridge.terms.length > 0 && [el('dt', {}, 'The permit asks'),
        el('dd', {}, el('ul', { id: 'bridge-terms' }, bridge.terms.map(term => el('li', {}, term))))]));
}

/** "trailer axle 1 to booster axle, 4 axles over 19 ft, 71,000 lb of 80,000 lb" */
function togetherWords({ axles, count, spreadM, loadKg, limitKg }, units) {
  if (axles === null) {
    return 'unknown: so are the loads';
  }
  return [axles, count > 1 && `${count} axles over ${room(spreadM, units, 'down')}`,
    `${weight(loadKg, units)}${limitKg === null ? '' : ` of ${weight(limitKg, units)}`}`].filter(Boolean).join(', ');
}
