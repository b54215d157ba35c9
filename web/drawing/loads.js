/** Geometry of the load drawings. No DOM. */
import { linear, spread } from './scale.js';

/** Extent of the combination: {left, right, top}, meters, with a little room. */
export function extent({ units, wheels }) {
  const points = units.flatMap(unit => [...unit.underside, ...unit.topside, ...unit.load.flat()]);
  const xs = [...points.map(([x]) => x), ...wheels.flatMap(w => [w.xM - w.radiusM, w.xM + w.radiusM])];
  const room = 0.2;
  return {
    left: Math.min(...xs) - room, right: Math.max(...xs) + room, top: Math.max(...points.map(([, h]) => h)) + room,
  };
}

/** Maps meters to pixels with one scale both ways; the combination travels to the right. */
export function toScale({ left, right, top }, width) {
  const scale = width / (right - left);
  return { scale, groundY: top * scale, toX: x => (x - left) * scale, toY: h => (top - h) * scale };
}

/** The topside and underside of a unit as one closed outline: [x, h] points. */
export const closed = ({ underside, topside }) => [...topside, ...[...underside].reverse()];

/**
 * Where each group stands and where its figures go: {group, from, to, at}, from front (right) to rear (left) turned to
 * pixels from the left.
 *
 * @param size room one group's figures need, pixels
 */
export function groupPlaces(sheet, toX, width, size) {
  const places = sheet.groups.map(group => {
    const xs = sheet.axles.filter(axle => axle.group === group.group).map(axle => toX(axle.xM));
    return { group, from: Math.min(...xs), to: Math.max(...xs) };
  }).sort((a, b) => a.from - b.from);
  const centers = spread(places.map(({ from, to }) => (from + to) / 2), size, 0, width);
  return places.map((place, index) => ({ ...place, at: centers[index] }));
}

/** How full a rule leaves an axle's bar: load over limit, for a rule of most; null without such a rule. */
export function fullness({ finding }) {
  return finding && !finding.least && finding.limitKg > 0 ? finding.loadKg / finding.limitKg : null;
}

/**
 * Scales of a plot of group loads: {toX, toY, most}. Loads start at nought.
 *
 * @param area {left, right, top, bottom}, pixels
 */
export function plotScales(plot, { left, right, top, bottom }) {
  const loads = plot.lines.flatMap(line => [...line.points.map(([, kg]) => kg), line.mostKg ?? 0]);
  const most = Math.max(1, ...loads) * 1.06;
  const least = Math.min(0, ...loads);
  // A plot of one place is as wide as one of two.
  const span = plot.to > plot.from ? [plot.from, plot.to] : [plot.from - 0.5, plot.to + 0.5];
  return { toX: linear(span, [left, right]), toY: linear([least, most], [bottom, top]), least, most };
}

/** Stroke patterns, so that lines stay apart in one color: by group. */
export const DASHES = { steer: '1 3', drive: '8 3', trailer: '', booster: '8 3 2 3' };
