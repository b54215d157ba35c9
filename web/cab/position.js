/** Where along a kept line the phone is. A line is for each leg its points [lon, lat, chainage in meters]. No DOM. */

const DEGREE_M = 111320;
/** Where a route comes by the same place twice, the pass that is expected counts when it is this near, meters. */
const AS_NEAR_M = 40;
/** Farther off than this beyond the accuracy, the phone is not on the route, meters. */
const MOST_OFF_M = 60;

/**
 * Chainage of the point of the line nearest to a position.
 *
 * @param expectedM about where the truck should be, for lines that come by twice
 * @returns {{chainageM, offM, isOn}} or null without a line
 */
export function along(line, { lon, lat, accuracyM }, expectedM) {
  const found = [];
  for (const leg of line ?? []) {
    for (let i = 1; i < leg.length; i++) {
      found.push(nearestOn(leg[i - 1], leg[i], lon, lat));
    }
  }
  if (found.length === 0) {
    return null;
  }
  const leastM = Math.min(...found.map(({ offM }) => offM));
  const near = found.filter(({ offM }) => offM <= leastM + AS_NEAR_M);
  const best = near.reduce((a, b) =>
    (Math.abs(b.chainageM - expectedM) < Math.abs(a.chainageM - expectedM) ? b : a));
  return { ...best, isOn: best.offM <= MOST_OFF_M + accuracyM };
}

function nearestOn(a, b, lon, lat) {
  const east = DEGREE_M * Math.cos(lat * Math.PI / 180);
  const [ax, ay] = [(a[0] - lon) * east, (a[1] - lat) * DEGREE_M];
  const [dx, dy] = [(b[0] - lon) * east - ax, (b[1] - lat) * DEGREE_M - ay];
  const squared = dx * dx + dy * dy;
  const t = squared === 0 ? 0 : Math.max(0, Math.min(1, -(ax * dx + ay * dy) / squared));
  return { chainageM: a[2] + (b[2] - a[2]) * t, offM: Math.hypot(ax + dx * t, ay + dy * t) };
}
