/** Where the labels of points on the plan go, so that they hide neither each other nor a symbol. No DOM. */

/** Sides of a point in order of preference, as offsets of the label's near edge. */
const SIDES = ['right', 'left', 'above', 'below'];

/**
 * The side of each point its label is best on: the first with no overlap, else the one with the least.
 *
 * @param points {x, y, width} in pixels: the place, and the width of its label
 * @param symbol half the size of a point's symbol, height that of a label, pixels
 */
export function labelSides(points, symbol, height) {
  const symbols = points.map(point => symbolBox(point, symbol));
  const placed = [];
  return points.map((point, index) => {
    const others = symbols.filter((_, other) => other !== index);
    let best = null;
    for (const side of SIDES) {
      const box = labelBox(point, side, symbol, height);
      const cost = [...others, ...placed].reduce((sum, other) => sum + overlap(box, other), 0);
      if (best === null || cost < best.cost) {
        best = { side, box, cost };
      }
    }
    placed.push(best.box);
    return best.side;
  });
}

/** Whether a label under a point would be free of all these symbols and labels. */
export function isFree(box, points, sides, symbol, height) {
  return points.every((point, index) =>
    overlap(box, symbolBox(point, symbol)) === 0
    && overlap(box, labelBox(point, sides[index], symbol, height)) === 0);
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
