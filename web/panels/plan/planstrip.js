/** What runs where, in words: the set-ups by the letters they have over the profile, and the stopping place on show. */
import { el, replace } from '../../dom.js';
import { chainage, room } from '../../text/format.js';
import { atStop, setUpLetters, stretches } from '../../report/plan.js';
import { stopSymbol } from '../../drawing/symbols.js';
import { stopIcon } from '../parts/symbol.js';

export function mountPlanStrip(root, { store }) {
  const legend = el('ol', { class: 'strip-legend' });
  const facts = el('p', { id: 'stop-facts', role: 'status' });
  root.append(el('h3', {}, 'What runs where'), legend, facts);

  const stops = [
    store.watch(['plan', 'units'], ({ plan: { data }, units }) => {
      const letters = data && setUpLetters(data);
      replace(legend, data && stretches(data).map(({ set, fromM, toM }) =>
        el('li', { 'data-configuration': set.configuration },
          el('strong', {}, letters.get(set.configuration)),
          ` ${set.label}, from ${chainage(fromM, units)} to ${chainage(toM, units)}`)));
    }),
    store.watch(['stop', 'line', 'plan', 'units'], ({ stop: id, line, plan, units }) => {
      const stop = line?.stops?.find(other => other.id === id);
      replace(facts, stop ? stopFacts(stop, plan.data, units)
        : line?.stops?.length === 0 ? 'The route names no stopping places: nothing can be changed on the way.' : null);
    }),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}

/** One stopping place in words, and what the plan does there. */
function stopFacts(stop, data, units) {
  const { change, held } = data === null ? {} : atStop(data, stop);
  return [
    stopIcon(stop.kind), el('strong', {}, ` ${stop.id} ${stop.name}`),
    `, ${[stopSymbol(stop.kind).word, `at ${chainage(stop.chainageM, units)}`, stop.landmark,
      `room ${room(stop.roomM, units, 'down')}`].filter(Boolean).join(', ')}. `,
    data && (change ? `The plan changes here to ${change.to.label}.` : held ?? 'The plan changes nothing here.'),
  ];
}
