/** What a corner's drawing needs, from above, in metres of the corner's frame (y to the left, drawn upward). No DOM. */

/** Half of the widest window around the corner's point, metres. */
const REACH_M = 42;

/** The window that holds the turn: {left, top, width, height} with y downward, as an SVG view box. */
export function windowOf(view) {
  const points = [
    ...view.swept.flatMap(unit => unit.bodies.flat()),
    ...view.lead,
  ].filter(([x, y]) => Math.abs(x) <= REACH_M && Math.abs(y) <= REACH_M);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const left = Math.min(...xs, -8) - 5;
  const top = -Math.max(...ys, 8) - 5;
  return { left, top, width: Math.max(...xs, 8) + 5 - left, height: -Math.min(...ys, -8) + 5 - top };
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
