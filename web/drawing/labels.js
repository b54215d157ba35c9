/** Where the labels of points on the plan go, so that they hide neither each other nor a symbol. No DOM. */
import { severity } from '../report/report.js';

/** Sides of a point in order of preference, as offsets of the label's near edge. */
const SIDES = ['right', 'left', 'above', 'below'];
/** So much of a label's width may lie under symbols, pixels. */
const HIDDEN = 5;

/**
 * The side of each point its label is best on: the first with no overlap, else the one with the least; 'none' where on
 * every side it would lie over another label or well under a symbol. The worst verdict has its label first.
 *
 * @param points {x, y, width, verdict} in pixels: the place, and the width of its label
 * @param symbol half the size of a point's symbol, height that of a label, pixels
 */
export function labelSides(points, symbol, height) {
  const symbols = points.map(point => symbolBox(point, symbol));
  const placed = [];
  const sides = points.map(() => 'none');
  const order = points.map((point, index) => index)
    .sort((a, b) => severity(points[a].verdict) - severity(points[b].verdict) || a - b);
  for (const index of order) {
    let best = null;
    for (const side of SIDES) {
      const box = labelBox(points[index], side, symbol, height);
      const cost = symbols.reduce((sum, other, of) => sum + (of === index ? 0 : overlap(box, other)), 0);
      const isRead = cost <= HIDDEN * height && placed.every(other => overlap(box, other) === 0);
      if (isRead && (best === null || cost < best.cost)) {
        best = { side, box, cost };
      }
    }
    if (best !== null) {
      placed.push(best.box);
      sides[index] = best.side;
    }
  }
  return sides;
}

/** Whether a label under a point would be free of all these symbols and labels. */
export function isFree(box, points, sides, symbol, height) {
  return points.every((point, index) =>
    overlap(box, symbolBox(point, symbol)) === 0
    && (sides[index] === 'none' || overlap(box, labelBox(point, sides[index], symbol, height)) === 0));
}

function symbolBox({ x, y }, symbol) {
  return { left: x - symbol, right: x + symbol, top: y - symbol, bottom: y + symbol };
}

function labelBox({ x, y, width }, side, symbol, height) {
  switch (side) {
    case 'right': return { left: x + symbol, right: x + symbol + width, top: y - height / 2, bottom: y + height / 2 };
    case 'left': return { left: x - symbol - width, right: x - symbol, top: y - height / 2, bottom: y + height / 2 };
    case 'above': return { left: x - width / 2, right: x + width / 2, top: y - symbol - height, bottom: y - symbol };
    default: return { left: x - width / 2, right: x + width / 2, top: y + symbol, bottom: y + symbol + height };
  }
}

function overlap(a, b) {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return width > 0 && height > 0 ? width * height : 0;
}
