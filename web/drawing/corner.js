/** What a corner's drawing needs, from above, in meters of the corner's frame (y to the left, drawn upward). No DOM. */
import { letterOf } from '../text/letters.js';

/** Room around what has to be seen, meters. */
const EDGE_M = 10;
/** A wheel or coupling bent by less counts as straight, radians. */
const STRAIGHT_RAD = 0.01;

/** First and last position at which a wheel is over or a coupling is bent; all of them where none is. */
export function turning(positions) {
  const bent = positions.map(p => Math.max(Math.abs(p.steerRad), ...p.articulationRad.map(Math.abs)) > STRAIGHT_RAD);
  return bent.includes(true)
    ? { first: bent.indexOf(true), last: bent.lastIndexOf(true) }
    : { first: 0, last: positions.length - 1 };
}

/** The window that holds the turn: {left, top, width, height} with y downward, as an SVG view box. */
export function windowOf(view) {
  const { first, last } = turning(view.positions);
  const points = view.positions.slice(first, last + 1).flatMap(position => position.poses);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const left = Math.min(...xs, -8) - EDGE_M;
  const top = -Math.max(...ys, 8) - EDGE_M;
  return { left, top, width: Math.max(...xs, 8) + EDGE_M - left, height: -Math.min(...ys, -8) + EDGE_M - top };
}

/** Marks that lie in the window, lettered as they are driven: {letter, words, at, place}. */
export function marksIn(view, { left, top, width, height }) {
  return view.marks.map((mark, index) => ({ letter: letterOf(index), ...mark }))
    .filter(({ at: [x, y] }) => x >= left && x <= left + width && -y >= top && -y <= top + height);
}

/**
 * How far north is turned clockwise from up in the drawing, radians: by a line that is known in both frames; null where
 * it is not.
 *
 * @param line points [x, y], y up; lonLat the same points in degrees
 */
export function northOf(line, lonLat) {
  if (!lonLat || lonLat.length !== line.length || line.length < 2) {
    return null;
  }
  const away = ([x, y]) => Math.hypot(x - line[0][0], y - line[0][1]);
  const far = line.reduce((best, point, index) => (away(point) > away(line[best]) ? index : best), 0);
  const [[lon, lat], [otherLon, otherLat]] = [lonLat[0], lonLat[far]];
  const bearing = Math.atan2((otherLon - lon) * Math.cos(lat * Math.PI / 180), otherLat - lat);
  const drawn = Math.atan2(line[far][0] - line[0][0], line[far][1] - line[0][1]);
  return away(line[far]) > 0 ? drawn - bearing : null;
}

/** Where half of a line's bending is done: the middle of its turn; null on a line that does not bend. */
export function midTurn(line) {
  const bends = line.slice(1, -1).map(([x, y], i) => {
    const [[ax, ay], [bx, by]] = [line[i], line[i + 2]];
    const turn = Math.atan2(by - y, bx - x) - Math.atan2(y - ay, x - ax);
    return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn)));
  });
  const all = bends.reduce((sum, bend) => sum + bend, 0);
  let done = 0;
  const middle = bends.findIndex(bend => (done += bend) >= all / 2 - 1e-9);
  return all > 1e-6 ? line[middle + 1] : null;
}

/** Rings as SVG path data. */
export function ringsPath(rings) {
  return rings.map(ring => `${linePath(ring)}Z`).join('');
}

/** A line as SVG path data. */
export function linePath(points) {
  return points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x} ${-y}`).join('');
}

/** The transform that puts a unit, drawn along x with its left upward, where it stands. */
export function poseMatrix([x, y, heading]) {
  const c = Math.cos(heading);
  const s = Math.sin(heading);
  return [c, -s, s, c, x, -y];
}

/** Axle and booster states at a corner, each once: {configuration, cell}; the one in force stands for its own. */
export function statesAt(report, hazard, key) {
  const states = new Map();
  for (const configuration of report.configurations) {
    const name = `${configuration.lift}/${configuration.booster}`;
    if (!states.has(name) || configuration.key === key) {
      states.set(name, { configuration, cell: hazard.cells.find(cell => cell.configuration === configuration.key) });
    }
  }
  return [...states.values()];
}
