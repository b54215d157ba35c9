/** Draws the sheet's symbols. */
import { el, svg } from '../../dom.js';
import { outcomeSymbol, stopSymbol, verdictClass, verdictSymbol } from '../../drawing/symbols.js';
import { kindOf } from '../../report/kinds.js';

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

/** Symbol and word, of the verdict when no other words are given. */
export function verdictTag(verdict, words = verdictSymbol(verdict).word) {
  return el('span', { class: `verdict verdict-${verdictClass(verdict)}` },
    verdictIcon(verdict), el('span', { class: 'verdict-word' }, words));
}

/** A hazard kind's little section. */
export function kindIcon(kind) {
  return svg('svg', { class: 'kind-icon', viewBox: '0 0 28 14', width: 28, height: 14, 'aria-hidden': 'true' },
    svg('path', { d: kindOf(kind).path }));
}

/** How a plan ends: symbol and word. */
export function outcomeTag(outcome) {
  const { name, word, parts } = outcomeSymbol(outcome);
  return el('span', { class: `outcome outcome-${name}` },
    svg('svg', { class: 'verdict-icon', viewBox: '0 0 16 16', width: 16, height: 16, 'aria-hidden': 'true' },
      svg('g', { class: 'mark' }, parts.map(([kind, path]) => svg('path', { class: `mark-${kind}`, d: path })))),
    el('span', { class: 'verdict-word' }, word));
}

/** A stopping place's mark, as a group around its middle, for use inside a drawing. */
export const stopMark = (kind, x, y) =>
  svg('path', { class: 'stop-mark', d: stopSymbol(kind).path, transform: `translate(${x - 7} ${y - 7})` });

/** The same on its own. */
export function stopIcon(kind) {
  return svg('svg', { class: 'stop-icon', viewBox: '0 0 14 14', width: 14, height: 14, 'aria-hidden': 'true' },
    stopMark(kind, 7, 7));
}
