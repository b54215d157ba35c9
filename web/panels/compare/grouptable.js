/** What each group of axles carries, a row for each of what is compared. */
import { el } from '../../dom.js';
import { weight } from '../../text/format.js';
import { framed } from '../parts/framed.js';

/** @param compared [{label, groups}]; @param words {id, what, frame}: of the table, its first head, its region */
export function groupTable(compared, units, { id, what, frame }) {
  if (compared.length === 0 || compared.every(({ groups }) => groups.length === 0)) {
    return null;
  }
  const names = [...new Set(compared.flatMap(({ groups }) => groups.map(({ label }) => label)))];
  return framed(frame,
    el('table', { id },
      el('caption', {}, 'Loads of the axle groups'),
      el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, what),
        names.map(name => el('th', { scope: 'col', class: 'figure' }, name)))),
      el('tbody', {}, compared.map(one => el('tr', {},
        el('th', { scope: 'row' }, one.label),
        names.map(name => {
          const group = one.groups.find(({ label }) => label === name);
          return el('td', { class: 'figure' }, group ? weight(group.loadKg, units)
            : one.groups.length === 0 ? 'unknown' : 'not there');
        }))))));
}
