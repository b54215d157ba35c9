/** A line that somebody drew: as another leg of a route, or as a route of its own. No DOM. */
import { linesOf } from './course.js';
import { written } from './positions.js';
import { withFeature } from './places.js';

const leg = (name, lonLats) => ({
  type: 'Feature', properties: { route: name }, geometry: { type: 'LineString', coordinates: lonLats },
});

/** The text with a leg behind the last one, and the course that it gives. */
export function drawnOn(text, json, name, lonLats) {
  const positions = linesOf(json).flatMap(({ points }) => points);
  return {
    text: withFeature(text, leg(name, lonLats)),
    positions: [...positions, ...lonLats],
    origins: [...positions.map((position, k) => k), ...lonLats.map(() => -1)],
  };
}

/** A route file of one leg and nothing on it. */
export const newRoute = (name, lonLats) => `{
  "type": "FeatureCollection",
  "cresthaul": "route/1",
  "name": ${JSON.stringify(name)},
  "features": [
    {
      "type": "Feature",
      "properties": {"route": ${JSON.stringify(name)}},
      "geometry": {
        "type": "LineString",
        "coordinates": [${lonLats.map(written).join(', ')}]
      }
    }
  ]
}
`;
