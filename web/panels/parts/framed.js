/** A frame for what may be wider than the sheet. */
import { el } from '../../dom.js';

/** A wide table that scrolls, by keyboard too. */
export const framed = (label, table) =>
  el('div', { class: 'table-frame', role: 'region', tabindex: '0', 'aria-label': label }, table);
