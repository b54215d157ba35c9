/**
 * Layout of the section along the route, in pixels: chainage across; up from the road the clearance under the
 * combination, down from the structure line the clearance over the load, both to one scale. No DOM.
 */
import { findCell } from '../report.js';
import { linear, spread, ticks } from './scale.js';

/** Clearances beyond this are cut off and marked so, meters. */
export const MOST_M = 0.3;
const PER_M = 200;
const TOP = 22;

/** Rows of the section: fixed heights; without overhead results the upper half is left out. */
export function rows(report) {
  const overhead = report.hazards.some(hazard => hazard.cells.some(cell => cell.overhead));
  const structure = overhead ? TOP : null;
  const road = (overhead ? TOP + MOST_M * PER_M + 14 : TOP - 8) + MOST_M * PER_M;
  return {
    structure, road, deepest: road + 34, labels: road + 58, axis: road + 82, legs: road + 102, height: road + 128,
  };
}

/**
 * Everything that stands at each of some hazards of the report: {hazard, cell, verdict, x, labelX, labelRow, labeled,
 * roomy, stems}.
 */
export function hazardMarks(report, key, width, inset, hazards = report.hazards) {
  const across = linear([0, report.route.lengthM], [inset, width - inset]);
  const { structure, road, deepest } = rows(report);
  const xs = hazards.map(hazard => across(hazard.chainageM));
  const labels = spreadLabels(hazards, xs, width);
  return hazards.map((hazard, index) => {
    const cell = findCell(hazard, key);
    return {
      hazard,
      cell,
      verdict: cell?.verdict ?? 'not surveyed',
      x: xs[index],
      ...labels[index],
      stems: [
        cell?.ground && stem('ground', cell.ground, road, -1, deepest - road),
        cell?.overhead && structure !== null && stem('overhead', cell.overhead, structure, 1, structure - 8),
      ].filter(Boolean),
    };
  });
}

function stem(side, { valueM, requiredM, verdict }, base, direction, roomBelow) {
  const reach = Math.max(-roomBelow, Math.min(MOST_M * PER_M, valueM * PER_M));
  return {
    side, verdict, base,
    cut: valueM > MOST_M || valueM * PER_M < -roomBelow,
    y: base + direction * reach,
    needsY: requiredM <= MOST_M ? base + direction * requiredM * PER_M : null,
  };
}

/**
 * One row of labels where they fit; two, taken in turn, where they do not; none where even two would not do. With room,
 * values stand under the ids.
 */
function spreadLabels(hazards, xs, width) {
  const roomy = hazards.length * 58 <= width;
  const size = roomy ? 58 : 29;
  const rowCount = hazards.length * size <= width ? 1 : 2;
  const labeled = hazards.length * size <= 2 * width;
  const labels = [];
  for (let row = 0; row < rowCount; row++) {
    const own = xs.map((x, index) => ({ x, index })).filter(({ index }) => index % rowCount === row);
    spread(own.map(({ x }) => x), size, 0, width).forEach((labelX, i) => {
      labels[own[i].index] = { labelX, labelRow: row, roomy, labeled };
    });
  }
  return labels;
}

/** Ticks of the chainage axis: {x, value} in the unit given. */
export function chainageTicks(lengthM, width, inset, unitM) {
  const across = linear([0, lengthM / unitM], [inset, width - inset]);
  return ticks(0, lengthM / unitM, Math.max(2, width / 90)).map(value => ({ value, x: across(value) }));
}

/** Legs as pieces of the axis: {name, from, to}. */
export function legSpans(report, width, inset) {
  const across = linear([0, report.route.lengthM], [inset, width - inset]);
  return report.route.legs.map(({ name, startChainageM, endChainageM }) =>
    ({ name, from: across(startChainageM), to: across(endChainageM) }));
}
