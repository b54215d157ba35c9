/** The clearance curve as path data. No DOM. */

/** Clearances above this are cut off when nothing tighter needs the room, meters. */
const ROOMY_M = 0.3;

/** Lowest and highest clearance the curve's axis shows: always 0, always what is required, no more air than serves. */
export function gapRange(positions, cell) {
  const values = positions.flatMap(({ groundM, overheadM }) => [groundM, overheadM])
    .filter(value => typeof value === 'number');
  const needed = [cell?.ground, cell?.overhead].map(side => (side ? side.requiredM : 0));
  const lowest = Math.min(...values);
  const highest = Math.max(...values);
  const cap = Math.max(ROOMY_M, ...needed.map(value => value * 1.5), lowest * 1.3);
  const top = Math.max(Math.min(highest, cap), ...needed.map(value => value * 1.15)) * 1.04;
  return [Math.min(0, lowest - 0.08 * (top - lowest)), top];
}

/** One stroke for each run of positions where the value is known. */
export function curvePath(positions, key, toX, toY) {
  let path = '';
  let drawing = false;
  for (const position of positions) {
    const value = position[key];
    if (typeof value !== 'number') {
      drawing = false;
      continue;
    }
    path += `${drawing ? 'L' : 'M'}${toX(position.steerM).toFixed(1)} ${toY(value).toFixed(1)}`;
    drawing = true;
  }
  return path;
}
