/** Scales, ticks and labels along a line. No DOM. */

/** Maps [fromA, fromB] to [toA, toB]. */
export function linear([fromA, fromB], [toA, toB]) {
  const slope = (toB - toA) / (fromB - fromA);
  return value => toA + (value - fromA) * slope;
}

/** The smallest of 1, 2, 5 × 10ⁿ that is not below `least`. */
export function niceStep(least) {
  const power = 10 ** Math.floor(Math.log10(least));
  const digit = [1, 2, 5, 10].find(d => d * power >= least * (1 - 1e-9));
  return digit * power;
}

/** Multiples of a nice step from low to high, about `count` of them. */
export function ticks(low, high, count) {
  const step = niceStep((high - low) / Math.max(1, count));
  const values = [];
  for (let n = Math.ceil(low / step - 1e-9); n * step <= high + step * 1e-9; n++) {
    values.push(Number((n * step).toPrecision(12)));
  }
  return values;
}

/**
 * Moves labels apart along a line, each as little as may be, keeping their order: their new centers.
 *
 * @param centers wanted centers, ascending
 * @param size room each label needs
 * @returns the wanted order kept, within [low, high] when they fit there, spread evenly over it when they do not
 */
export function spread(centers, size, low, high) {
  if (centers.length * size > high - low) {
    const pitch = centers.length > 1 ? (high - low - size) / (centers.length - 1) : 0;
    return centers.map((_, index) => low + size / 2 + index * pitch);
  }
  const clusters = [];
  for (const center of centers) {
    clusters.push({ sum: center, count: 1 });
    settle(clusters, size, low, high);
  }
  return clusters.flatMap(cluster => {
    const start = startOf(cluster, size, low, high);
    return Array.from({ length: cluster.count }, (_, index) => start + (index + 0.5) * size);
  });
}

function settle(clusters, size, low, high) {
  while (clusters.length > 1) {
    const last = clusters[clusters.length - 1];
    const before = clusters[clusters.length - 2];
    if (startOf(before, size, low, high) + before.count * size <= startOf(last, size, low, high)) {
      return;
    }
    clusters.pop();
    before.sum += last.sum;
    before.count += last.count;
  }
}

function startOf({ sum, count }, size, low, high) {
  const start = sum / count - (count * size) / 2;
  return Math.min(Math.max(start, low), high - count * size);
}

/** Steps of a graticule: minutes of arc. */
const ARC_MINUTES = [1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200];

/** Whole steps of arc between two degrees, about `count` of them at most. */
export function graticule(low, high, count) {
  const span = (high - low) * 60;
  const step = ARC_MINUTES.find(minutes => span / minutes <= count) ?? 1800;
  const values = [];
  for (let n = Math.ceil((low * 60) / step); n * step <= high * 60; n++) {
    values.push((n * step) / 60);
  }
  return values;
}

/** Longest round length that fits: {length, unit, pixels}. @param unitM meters in a unit */
export function scaleBar(metersPerPixel, widest, unitM) {
  const most = (widest * metersPerPixel) / unitM;
  const power = 10 ** Math.floor(Math.log10(most));
  const length = [5, 2, 1].find(d => d * power <= most * (1 + 1e-9)) * power;
  return { length, pixels: (length * unitM) / metersPerPixel };
}
