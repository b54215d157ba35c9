/** One line of the sheet: to be read, or to be ticked off. The tick is kept at once. */
import { el } from '../../dom.js';

export function line({ text, tick, source }, key, { keeping, id, kept }, on = {}) {
  if (!tick) {
    return el('p', { class: 'cab-line' }, text, source && el('span', { class: 'cab-source' }, ` ${source}`));
  }
  const drivable = kept.sheet.banner.drivable;
  const box = el('input', {
    type: 'checkbox', 'data-tick': key, disabled: !drivable,
    on: {
      change: () => {
        keeping.tick(id, key, box.checked);
        on.change?.();
      },
    },
  });
  box.checked = keeping.ticks(id).has(key);
  return el('label', { class: 'cab-tick' }, box, el('span', {}, text));
}
/** Where a verdict stands beside a place. */
export function verdictOf({ verdict, blocked }, words) {
  if (verdict === null) {
    return null;
  }
  const word = words.verdicts[verdict] ?? verdict;
  return el('span', { class: `cab-verdict verdict-${verdict.replaceAll(' ', '-')}`, 'data-verdict': verdict },
    blocked ? words.blocked(word) : word);
}

/** "H01 Pikesend siding" */
export const title = ({ id, name }) =>
  (id === null || id === 'whole route' || name.endsWith(id) ? name : `${id} ${name}`);
