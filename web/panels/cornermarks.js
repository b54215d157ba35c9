/** What is written into the drawing of a corner: labels, the radius of the line, north. */
import { svg } from '../dom.js';
import { dimension } from '../format.js';
import { midTurn } from '../drawing/corner.js';

/** The radius of the line, at the middle of its turn. */
export function radius(view, corner, px, units) {
  const at = midTurn(view.lead);
  const line = corner.backing ?? corner.line;
  return at && line && text(at[0], -at[1] - 6 * px, px, `R ${dimension(line.radiusM, units)}`, 'radius-label');
}

/** Where north is, in the upper right corner of the drawing. */
export function north(turnRad, box, px) {
  if (turnRad === null) {
    return null;
  }
  const [x, y] = [box.left + box.width - 24 * px, box.top + 30 * px];
  return svg('g', { class: 'north', 'data-turn-rad': turnRad },
    svg('path', {
      class: 'north-line', d: 'M0 14V-14M-5 -5L0 -14L5 -5',
      transform: `translate(${x} ${y}) rotate(${turnRad * 180 / Math.PI}) scale(${px})`,
    }),
    text(x - 22 * px * Math.sin(-turnRad), y - 22 * px * Math.cos(turnRad) + 4 * px, px, 'N', ''));
}

/** A label of a size of its own at every scale. @param px meters of a pixel */
export function text(x, y, px, words, name) {
  const node = svg('text', { class: `label corner-label ${name}`, x, y, 'text-anchor': 'middle' }, words);
  node.style.fontSize = `${12 * px}px`;
  node.style.strokeWidth = `${3 * px}px`;
  return node;
}
