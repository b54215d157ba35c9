/** What people type of points of the line: coordinates, or a direction and a distance. No DOM. */
import { distanceOf } from '../text/format.js';
import { atBearing } from './course.js';

/** Farther than this no two neighbors on a road are apart, meters: what the program takes. */
const FARTHEST_M = 100_000;

/** "41.9003, -101.19" as [lon, lat], or null: latitude first, as maps and phones tell it. */
export function coordinatesOf(text) {
  const said = text.trim().match(/^([-−]?\d+(?:\.\d+)?)\s*°?\s*[,;\s]\s*([-−]?\d+(?:\.\d+)?)\s*°?$/);
  const [lat, lon] = said ? [said[1], said[2]].map(figure => Number(figure.replace('−', '-'))) : [NaN, NaN];
  return Math.abs(lat) <= 85 && Math.abs(lon) <= 180 ? [lon, lat] : null;
}

/** As a field shows it. */
export const coordinatesText = ([lon, lat]) => `${lat}, ${lon}`;

const POINTS = ['n', 'ne', 'e', 'se', 's', 'sw', 'w', 'nw'];

/** "45", "45°", "NE": degrees clockwise from north, or null. */
export function bearingOf(text) {
  const said = text.trim().toLowerCase();
  if (POINTS.includes(said)) {
    return POINTS.indexOf(said) * 45;
  }
  const figure = said.match(/^(\d+(?:\.\d+)?)\s*(?:°|deg)?$/);
  return figure && Number(figure[1]) <= 360 ? Number(figure[1]) : null;
}

/**
 * The point that is meant: {lonLat} or {at, problem}, at the field that is wrong.
 *
 * @param from the point that a direction and a distance count from, or null
 */
export function pointOf({ coordinates, bearing, distance }, from) {
  if (coordinates.trim() !== '') {
    const lonLat = coordinatesOf(coordinates);
    return lonLat ? { lonLat } : {
      at: 'coordinates',
      problem: `"${coordinates}" is no point on earth. Write latitude and longitude, such as 41.9003, -101.19.`,
    };
  }
  if (bearing.trim() === '' && distance.trim() === '') {
    return { at: 'coordinates', problem: 'Write coordinates, or a direction and a distance.' };
  }
  const degrees = bearingOf(bearing);
  if (degrees === null) {
    return { at: 'bearing', problem: `"${bearing}" is no direction. Write degrees from north, such as 45, or NE.` };
  }
  const meters = distanceOf(distance);
  if (!meters || meters > FARTHEST_M) {
    return {
      at: 'distance', problem: `"${distance}" is no distance to the next point. Write it as 250 ft, 80 m or 0.2 mi.`,
    };
  }
  return from ? { lonLat: atBearing(from, degrees, meters) } : {
    at: 'coordinates', problem: 'A direction and a distance count from a point: write the first one as coordinates.',
  };
}
