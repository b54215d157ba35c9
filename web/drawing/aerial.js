/** A picture from above, placed on the map by two spots whose places are known. No DOM. */
import { apartM } from '../line/course.js';

/** Spots nearer than this in the picture turn it by what a hand is off, pixels. */
export const LEAST_PIXELS = 100;
/** So many pixels somebody is off who presses an edge; this program's choice. */
const PRESSED_PIXELS = 2;

const minus = ([a, b], [c, d]) => [a - c, b - d];

/**
 * How good a placed picture is: {pixelM, apartM, leastM}: a pixel on the ground, how far the spots are apart by their
 * coordinates, and the least that an edge drawn over it may be off: what a hand is off, and what the spots' distance is
 * off from that measured, over the length between them. Null while it is not placed.
 *
 * @param pairs [{pixel: [across, down], lonLat}], two of them
 * @param measuredM the distance between the spots as somebody measured it, or null
 */
export function qualityOf(pairs, measuredM) {
  if (pairs.length !== 2 || pairs.some(({ pixel, lonLat }) => !pixel || !lonLat)) {
    return null;
  }
  const pixels = Math.hypot(...minus(pairs[1].pixel, pairs[0].pixel));
  const ground = apartM(pairs[0].lonLat, pairs[1].lonLat);
  if (!(pixels > 0) || !(ground > 0)) {
    return null;
  }
  const pixelM = ground / pixels;
  const offM = measuredM === null ? 0 : Math.abs(ground - measuredM);
  return { pixelM, apartM: ground, offM, pixels, leastM: PRESSED_PIXELS * pixelM + offM };
}

/**
 * The transform from pixels of the picture to those of the map, as a CSS matrix: turned and scaled alike in every
 * direction, so that both spots lie where they are.
 *
 * @param project lonLat → [x, y] on the map, y downward
 */
export function matrixOf(pairs, project) {
  const [[qx, qy], [ux, uy]] = [pairs[0].pixel, minus(pairs[1].pixel, pairs[0].pixel)];
  const [px, py] = project(pairs[0].lonLat);
  const [vx, vy] = minus(project(pairs[1].lonLat), [px, py]);
  const square = ux * ux + uy * uy;
  const a = (vx * ux + vy * uy) / square;
  const b = (vy * ux - vx * uy) / square;
  return [a, b, -b, a, px - a * qx + b * qy, py - b * qx - a * qy];
}
