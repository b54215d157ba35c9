/**
 * The line of a route as the truck follows it: its positions one behind the other, how far along each lies, and where
 * it comes by a place. As the program reads it: straight in longitude and latitude between two positions, gaps between
 * legs driven. No DOM.
 */

/** A place belongs to the line up to so far from it, and a leg starts so near the end of the one before, meters. */
export const OFF_LINE_M = 30;
/** The program cuts the line into pieces of this length; what comes by within one and the next is one passage. */
const PIECE_M = 150;
/** Positions closer than this are one, meters. */
const SAME_M = 0.001;
const A_M = 6378137;
const E2 = 0.00669437999014;

const radians = degrees => degrees * Math.PI / 180;
/** The short way round the world, degrees. */
export const shortWay = degrees => degrees - 360 * Math.round(degrees / 360);

/** Meters in a degree to the east and to the north, on the ellipsoid at a latitude. */
export function metersPerDegree(lat) {
  const w2 = 1 - E2 * Math.sin(radians(lat)) ** 2;
  return [radians(A_M / Math.sqrt(w2) * Math.cos(radians(lat))), radians(A_M * (1 - E2) / (w2 * Math.sqrt(w2)))];
}

/** From one position to another, meters east and north. */
export function offsetM([lon, lat], [toLon, toLat]) {
  const [x, y] = metersPerDegree((lat + toLat) / 2);
  return [shortWay(toLon - lon) * x, (toLat - lat) * y];
}

export const apartM = (a, b) => Math.hypot(...offsetM(a, b));

/** The position so far east and north of another, to a centimeter. */
export function shifted([lon, lat], [east, north]) {
  const up = lat + north / metersPerDegree(lat)[1];
  return [rounded(shortWay(lon + east / metersPerDegree((lat + up) / 2)[0])), rounded(up)];
}

/** So far from a position in a direction, degrees clockwise from north. */
export const atBearing = (from, bearingDeg, distanceM) =>
  shifted(from, [Math.sin(radians(bearingDeg)) * distanceM, Math.cos(radians(bearingDeg)) * distanceM]);

export const rounded = degrees => Math.round(degrees * 1e7) / 1e7;

/** Where between two positions: 0 at the first, 1 at the second. */
export const between = ([lon, lat], [toLon, toLat], t) =>
  [rounded(shortWay(lon + t * shortWay(toLon - lon))), rounded(lat + t * (toLat - lat))];

/** Lines of a route file in the order of travel: [{feature, part, name, points}], part null in a LineString. */
export function linesOf(json) {
  return (Array.isArray(json?.features) ? json.features : []).flatMap(({ properties, geometry } = {}, feature) => {
    if (properties?.route === undefined || !Array.isArray(geometry?.coordinates)) {
      return [];
    }
    return geometry.type === 'MultiLineString'
      ? geometry.coordinates.map((points, part) => ({ feature, part, name: properties.route, points }))
      : [{ feature, part: null, name: properties.route, points: geometry.coordinates }];
  });
}

/**
 * The course through positions.
 *
 * @param positions [lon, lat] one behind the other
 * @param origins of each the index of the position it was before a change, or -1; without a change none
 */
export function courseOf(positions, origins = null) {
  const alongM = new Float64Array(positions.length);
  for (let i = 1; i < positions.length; i++) {
    alongM[i] = alongM[i - 1] + apartM(positions[i - 1], positions[i]);
  }
  return { positions, origins, alongM, lengthM: alongM.at(-1) ?? 0 };
}

/** The course of lines. */
export const courseOfLines = lines => courseOf(lines.flatMap(({ points }) => points));

/** Where a course is at a distance from its start: {piece, t, lonLat}; piece is that which ends at its position. */
export function placeAt({ positions, alongM }, distanceM) {
  let [low, high] = [1, positions.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (alongM[middle] < distanceM) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  const length = alongM[low] - alongM[low - 1];
  const t = length > 0 ? Math.min(1, Math.max(0, (distanceM - alongM[low - 1]) / length)) : 0;
  return { piece: low, t, lonLat: between(positions[low - 1], positions[low], t) };
}

/** The direction of travel over a stretch of 30 m in the middle of which a place lies, degrees clockwise from north. */
export function bearingAt(course, distanceM) {
  const from = placeAt(course, Math.max(0, distanceM - 15)).lonLat;
  const to = placeAt(course, Math.min(course.lengthM, distanceM + 15)).lonLat;
  const [east, north] = offsetM(from, to);
  return Math.atan2(east, north) * 180 / Math.PI;
}

/**
 * Where a course comes by a place, in the order of travel: [{piece, alongM, awayM, first, last}], the piece that is
 * nearest, and the pieces from first to last that come within `withinM` of it. One stretch of them is one passage.
 */
export function passagesOf({ positions, alongM }, [lon, lat], withinM = OFF_LINE_M) {
  const [x, y] = metersPerDegree(lat);
  const found = [];
  let cut = 0;
  let lastCut = -2;
  let bx = shortWay(positions[0][0] - lon) * x;
  let by = (positions[0][1] - lat) * y;
  for (let i = 1; i < positions.length; i++) {
    const [ax, ay] = [bx, by];
    bx = shortWay(positions[i][0] - lon) * x;
    by = (positions[i][1] - lat) * y;
    const length = alongM[i] - alongM[i - 1];
    if (length < SAME_M) {
      continue;
    }
    const north = Math.abs(positions[i][1] - positions[i - 1][1]) * y;
    const cuts = Math.max(1, Math.ceil(Math.max(length, north) * 1.1 / PIECE_M));
    const within = withinDisk(ax, ay, bx, by, withinM);
    if (within) {
      const from = cut + Math.min(cuts - 1, Math.floor(within.from * cuts));
      const last = found.at(-1);
      const here = { piece: i, alongM: alongM[i - 1] + within.t * length, awayM: within.awayM, first: i, last: i };
      if (last && from <= lastCut + 1) {
        Object.assign(last, here.awayM < last.awayM ? { ...here, first: last.first } : { last: i });
      } else {
        found.push(here);
      }
      lastCut = cut + Math.min(cuts - 1, Math.floor(within.to * cuts));
    }
    cut += cuts;
  }
  return found;
}

/** Which part of a straight piece lies within a circle round the origin, and where it is nearest; null where none. */
function withinDisk(ax, ay, bx, by, radius) {
  if (Math.min(ax, bx) > radius || Math.max(ax, bx) < -radius || Math.min(ay, by) > radius
    || Math.max(ay, by) < -radius) {
    return null;
  }
  const [ux, uy] = [bx - ax, by - ay];
  const square = ux * ux + uy * uy;
  const middle = -(ax * ux + ay * uy) / square;
  const t = Math.min(1, Math.max(0, middle));
  const awayM = Math.hypot(ax + t * ux, ay + t * uy);
  if (!(awayM <= radius)) {
    return null;
  }
  const beside = Math.hypot(ax + middle * ux, ay + middle * uy);
  const half = Math.sqrt(Math.max(0, radius * radius - beside * beside) / square);
  return { t, awayM, from: Math.max(0, middle - half), to: Math.min(1, middle + half) };
}
