/** Draws the sheet's symbols. */
import { el, svg } from '../dom.js';
import { kindSymbol, verdictClass, verdictSymbol } from '../drawing/symbols.js';

/** The parts of a verdict's symbol in a 16 × 16 box, as a group, for use inside a drawing. */
export function verdictMark(verdict, attributes = {}) {
  return svg('g', { class: `mark verdict-${verdictClass(verdict)}`, ...attributes },
    svg('rect', { class: 'mark-ground', width: 16, height: 16 }),
    verdictSymbol(verdict).parts.map(([kind, path]) => svg('path', { class: `mark-${kind}`, d: path })));
}

/** A verdict's symbol on its own. */
export function verdictIcon(verdict, size = 16) {
  return svg('svg', { class: 'verdict-icon', viewBox: '0 0 16 16', width: size, height: size, 'aria-hidden': 'true' },
    verdictMark(verdict));
}

/** Symbol and word. */
export function verdictTag(verdict) {
  return el('span', { class: `verdict verdict-${verdictClass(verdict)}` },
    verdictIcon(verdict), el('span', { class: 'verdict-word' }, verdictSymbol(verdict).word));
}

/** A hazard kind's little section. */
export function kindIcon(kind) {
  return svg('svg', { class: 'kind-icon', viewBox: '0 0 28 14', width: 28, height: 14, 'aria-hidden': 'true' },
    svg('path', { d: kindSymbol(kind).path }));
}
