/** What is written into the drawing of a corner: labels, the radius of the line, north. */
import { svg } from '../../dom.js';
import { clearance, dimension } from '../../text/format.js';
import { linePath, midTurn } from '../../drawing/corner.js';

/** The radius of the line, at the middle of its turn. */
export function radius(view, corner, px, units) {
  const at = midTurn(view.lead);
  const line = corner.backing ?? corner.line;
  return at && line && text(at[0], -at[1] - 6 * px, px, `R ${dimension(line.radiusM, units)}`, 'radius-label');
}

/** Where north is, in the upper corner of the drawing that is farther from the line. */
export function north(turnRad, line, box, px) {
  if (turnRad === null) {
    return null;
  }
  const y = box.top + 30 * px;
  const off = x => Math.min(...line.map(point => apart(point, [x, -y])));
  const [x] = [box.left + box.width - 24 * px, box.left + 24 * px].sort((a, b) => off(b) - off(a));
  return svg('g', { class: 'north', 'data-turn-rad': turnRad },
    svg('path', {
      class: 'north-line', d: 'M0 14V-14M-5 -5L0 -14L5 -5',
      transform: `translate(${x} ${y}) rotate(${turnRad * 180 / Math.PI}) scale(${px})`,
    }),
    text(x - 22 * px * Math.sin(-turnRad), y - 22 * px * Math.cos(turnRad) + 4 * px, px, 'N', ''));
}

/** Where the least room is: from the combination to the edge it is measured to; nothing where it has none. */
export function leastRoom({ least }, box, px, units) {
  const { at, to, roomM } = least;
  return roomM < 0 ? null : svg('g', { class: 'least-room', 'data-room-m': roomM },
    svg('path', { class: 'least-line', d: linePath([at, to]) }),
    svg('circle', { class: 'least-point', cx: at[0], cy: -at[1], r: 4 * px }),
    // A row farther out than the widths of lanes.
    beyond(at, to, { box, px, off: 22 }, `least ${clearance(roomM, units)}`, 'least-label'));
}

/** How wide the lanes are before and behind the turn, as far as they are in the window. */
export function laneWidths({ widths }, box, px, units) {
  const { left, top, width, height } = box;
  const inside = ([x, y]) => x >= left && x <= left + width && -y >= top && -y <= top + height;
  return widths.map(({ own, widthM, from, to }, index) => {
    if (!inside(from) || !inside(to)) {
      return null;
    }
    const [dx, dy] = [(to[0] - from[0]) / widthM, (to[1] - from[1]) / widthM];
    const tick = ([x, y]) => linePath([[x - 4 * px * dy, y + 4 * px * dx], [x + 4 * px * dy, y - 4 * px * dx]]);
    // Each label stands beyond the road: of two lanes side by side at the end that is not the other's.
    const other = own ? widths[index + 1] : widths[index - 1];
    const beside = other && other.own !== own ? [other.from, other.to] : [];
    const [inner, outer] = beside.some(end => apart(end, to) < 0.1) ? [to, from] : [from, to];
    return svg('g', { class: own ? 'lane-width own' : 'lane-width', 'data-width-m': widthM },
      svg('path', { class: 'lane-line', d: `${linePath([from, to])}${tick(from)}${tick(to)}` }),
      beyond(inner, outer, { box, px, off: 8 }, `${dimension(widthM, units)}${own ? '' : ' opposing'}`, 'lane-label'));
  });
}

const apart = ([ax, ay], [bx, by]) => Math.hypot(ax - bx, ay - by);

/** A label beyond the end of a line; over it where the drawing ends before the label would. @param off pixels */
function beyond(from, to, { box, px, off }, words, name) {
  const long = apart(from, to) || 1;
  const [dx, dy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
  if (Math.abs(dx) <= Math.abs(dy)) {
    return text(to[0] + off * px * dx, -to[1] - (off * dy + (dy < 0 ? -9 : 1)) * px, px, words, name);
  }
  // Condensed lettering runs to about 6 px a character.
  const end = to[0] + Math.sign(dx) * (off + 6 * words.length) * px;
  const fits = end > box.left && end < box.left + box.width;
  const node = text(to[0] + (fits ? off * px * dx : 0), -to[1] - (fits ? off * dy - 4 : 7) * px, px, words, name);
  node.setAttribute('text-anchor', dx > 0 === fits ? 'start' : 'end');
  return node;
}

/** A label of a size of its own at every scale. @param px meters of a pixel */
export function text(x, y, px, words, name) {
  const node = svg('text', { class: `label corner-label ${name}`, x, y, 'text-anchor': 'middle' }, words);
  node.style.fontSize = `${12 * px}px`;
  node.style.strokeWidth = `${3 * px}px`;
  return node;
}
