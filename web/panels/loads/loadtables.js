/** How many axles must be down, place by place; and the heads that tables of loads share. */
import { el } from '../../dom.js';
import { chainage } from '../../text/format.js';
import { BOOSTER_WORDS } from '../../drawing/symbols.js';
import { framed } from '../parts/framed.js';

/** The booster state in force first; the others on demand. */
export function adviceTable(report, booster, units) {
  const { advice } = report.loads ?? { advice: [] };
  const others = advice.filter(a => a.booster !== booster);
  return [
    el('h3', {}, 'How many axles must be down, by loads alone'),
    adviceRows(report, advice.filter(a => a.booster === booster), 'load-advice', units),
    others.length > 0 && el('details', {}, el('summary', {}, 'With the booster used otherwise'),
      adviceRows(report, others, 'load-advice-others', units)),
  ];
}

function adviceRows(report, advice, id, units) {
  const name = place => report.hazards.find(h => h.id === place)?.name ?? '';
  return framed(id === 'load-advice' ? 'Axles down, place by place' : 'The same with the booster used otherwise',
    el('table', { id, class: 'load-advice' },
    el('caption', { class: 'unseen' }, 'From place to place'),
    el('thead', {}, el('tr', {}, heads(['From', 2, 'To', 2, 'Limits of', 0, 'Booster', 0, 'Axles', 0, 'Why', 0]))),
    el('tbody', {}, advice.map(a => el('tr', {
      'data-from': a.fromChainageM, 'data-booster': a.booster, 'data-text': a.text,
    },
      el('td', { class: 'figure' }, chainage(a.fromChainageM, units)),
      el('td', { class: 'figure' },
        a.fromChainageM === a.toChainageM ? 'at the place' : chainage(a.toChainageM, units)),
      el('th', { scope: 'row' },
        a.places.length === 0 ? 'whole route' : a.places.map(place => `${place} ${name(place)}`).join(', ')),
      el('td', {}, BOOSTER_WORDS[a.booster] ?? a.booster),
      el('td', {}, el('strong', {}, a.text)),
      el('td', { class: 'load-why' }, [...new Set(a.reasons)].slice(0, 2).join('; ')))))));
}

/** Column heads: [text, 2 for figures and 0 for words, ...]. */
export function heads(list) {
  return list.flatMap((text, index) => (index % 2 === 0 && text
    ? [el('th', { scope: 'col', class: list[index + 1] === 2 ? 'figure' : null }, text)] : []));
}
