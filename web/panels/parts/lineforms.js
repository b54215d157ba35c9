/** Fields and buttons of the forms about the line. */
import { el } from '../../dom.js';

export const button = (label, click, attributes = {}) =>
  el('button', { type: 'button', ...attributes, on: { click } }, label);

/** A field with room for what is wrong with it. */
export const field = (name, label, { within = 'line', ...attributes } = {}) => el('label', { class: 'field' },
  el('span', {}, label),
  el('input', {
    name, type: 'text', autocomplete: 'off', maxlength: 60, 'aria-describedby': `${within}-at-${name}`, ...attributes,
  }),
  el('span', { class: 'line-wrong', id: `${within}-at-${name}`, 'data-at': name, role: 'status' }));
