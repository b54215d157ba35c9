/** Parts that the panels of projects share. */
import { el } from '../../dom.js';

export const button = (id, label, click) => el('button', { id, type: 'button', on: { click: () => click() } }, label);

export const field = (id, label, more) => el('label', { class: 'field' }, el('span', {}, label),
  el('input', { id, type: 'text', autocomplete: 'off', ...more }));

/** In the reader's own time, to the minute. */
export function when(saved) {
  const at = new Date(saved);
  const two = number => String(number).padStart(2, '0');
  const day = [at.getFullYear(), two(at.getMonth() + 1), two(at.getDate())].join('-');
  return `${day} ${two(at.getHours())}:${two(at.getMinutes())}`;
}
