/**
 * Hazards and stopping places of a route file, and how one is added, moved, named and taken out: only its own text is
 * written, every other byte of the file stays. No DOM.
 */
import { distanceOf } from '../text/format.js';
import { spanOf } from '../text/jsontext.js';
import { pointAt } from './legs.js';

/** A line is looked along in straight pieces; the earth's mean radius, meters, says how long a degree is. */
const RADIUS_M = 6371008.8;

/**
 * What can be added without a survey: word, what the file says of it, the letter of its identifier. `asked` is one
 * more thing that only somebody who was there knows: {key, label, example}; `needed` where the file cannot do without.
 */
export const NEW_PLACES = [
  { kind: 'stopping-place', stop: true, word: 'stopping place', letter: 'P',
    asked: { key: 'room', label: 'Room', example: '200 ft', needed: true } },
  { kind: 'set-up-area', stop: true, word: 'set-up area', letter: 'P',
    asked: { key: 'room', label: 'Room', example: '400 ft', needed: true } },
  { kind: 'rail-crossing', word: 'rail crossing', letter: 'H',
    asked: { key: 'crossingNumber', label: 'Crossing number', example: '123456A' } },
  { kind: 'low-structure', word: 'low structure', letter: 'H' },
  { kind: 'overhead-wire', word: 'overhead wire', letter: 'H' },
  { kind: 'dip', word: 'dip', letter: 'H' },
  { kind: 'crest', word: 'crest', letter: 'H' },
  { kind: 'corner', word: 'corner', letter: 'C' },
  { kind: 'posted-bridge', word: 'posted bridge', letter: 'B' },
];

/** Every hazard and stopping place of a parsed route file that is a point, in the order of the file. */
export function placesOf(route) {
  const features = Array.isArray(route?.json?.features) ? route.json.features : [];
  return features.flatMap((feature, index) => {
    const { hazard, stop, id, name, landmark } = feature?.properties ?? {};
    return (hazard || stop) && id && feature.geometry?.type === 'Point'
      ? [{ index, id, name, landmark: landmark ?? '', kind: hazard ?? stop, stop: Boolean(stop) }] : [];
  });
}

/** A surveyed hazard may be put right by so much, meters; farther off it is another place. This program's choice. */
export const MOVED_AT_MOST_M = 50;
/** All that a hazard can say without anybody having measured it. */
const UNMEASURED = new Set([
  'hazard', 'id', 'name', 'landmark', 'passage', 'note', 'candidate', 'measured', 'carries', 'crossingNumber',
  'emergencyPhone', 'signs', 'warning', 'trainSpeed',
]);

/** Whether a feature carries what was measured or posted where it is, and moving it that far would make it untrue. */
export function isMovedTooFar(feature, lonLat) {
  const measured = feature.properties.hazard !== undefined
    && Object.keys(feature.properties).some(key => !UNMEASURED.has(key));
  return measured && awayM(feature.geometry.coordinates, lonLat) > MOVED_AT_MOST_M;
}

const awayM = ([lon, lat], to) => Math.hypot(...metersFrom(to)([lon, lat]));

/** Points near another, in meters east and north of it. */
function metersFrom([lon, lat]) {
  const across = Math.cos(lat * Math.PI / 180);
  return ([a, b]) => [(a - lon) * across, b - lat].map(degrees => degrees * Math.PI / 180 * RADIUS_M);
}

/** The first identifier of a letter that no feature has: "H04". */
export function freeId(route, letter) {
  const taken = new Set((route.json.features ?? []).map(feature => feature?.properties?.id));
  for (let n = 1; ; n++) {
    const id = letter + String(n).padStart(2, '0');
    if (!taken.has(id)) {
      return id;
    }
  }
}

/** What the file says of a new place. @param given {id, name, landmark, more}, more what the kind asks for, or '' */
export function propertiesOf({ kind, stop, asked }, { id, name, landmark, more }) {
  const properties = { [stop ? 'stop' : 'hazard']: kind, id, name, ...(landmark && { landmark }) };
  // No height is asked for: one that nobody surveyed would be held for more than hearsay.
  if (kind === 'overhead-wire') {
    return { ...properties, carries: 'power', measured: 'surveyed' };
  }
  if (kind === 'low-structure') {
    return { ...properties, measured: 'surveyed' };
  }
  return { ...properties, ...(asked && more && { [asked.key]: more }) };
}

/**
 * Where "3.2 mi" or "41.9003, -101.19" is: [lon, lat], or null where it is no such place. A distance beyond the route
 * is none.
 *
 * @param line legs of the route as the server tells them
 */
export function lonLatOf(text, line) {
  const pair = text.trim().match(/^(-?\d+(?:\.\d+)?)\s*,\s*(-?\d+(?:\.\d+)?)$/);
  if (pair) {
    const [lat, lon] = [Number(pair[1]), Number(pair[2])];
    return Math.abs(lat) <= 90 && Math.abs(lon) <= 180 ? [lon, lat] : null;
  }
  const distanceM = distanceOf(text);
  const at = distanceM === null ? null : pointAt(line, distanceM);
  return at ? [rounded(at[1]), rounded(at[0])] : null;
}

/** To a centimeter on the ground. */
const rounded = degrees => Math.round(degrees * 1e7) / 1e7;

/** The chainage of the place of the route that is nearest to a point, meters. */
export function nearestChainage(line, lonLat) {
  const meters = metersFrom(lonLat);
  let best = { away: Infinity, chainageM: 0 };
  for (const leg of line) {
    for (let i = 1; i < leg.length; i++) {
      const [ax, ay] = meters(leg[i - 1]);
      const [bx, by] = meters(leg[i]);
      const length = (bx - ax) ** 2 + (by - ay) ** 2;
      const t = length > 0 ? Math.min(1, Math.max(0, -(ax * (bx - ax) + ay * (by - ay)) / length)) : 0;
      const away = Math.hypot(ax + t * (bx - ax), ay + t * (by - ay));
      if (away < best.away) {
        best = { away, chainageM: leg[i - 1][2] + t * (leg[i][2] - leg[i - 1][2]) };
      }
    }
  }
  return best.chainageM;
}

/** The text with a place more, behind all others. */
export const withPlace = (text, properties, lonLat) => withFeature(text, {
  type: 'Feature', properties, geometry: { type: 'Point', coordinates: lonLat },
});

/** The text with a feature more, behind all others. */
export function withFeature(text, added) {
  const feature = JSON.stringify(added);
  const [from, to] = spanOf(text, ['features']);
  const count = JSON.parse(text.slice(from, to)).length;
  if (count === 0) {
    return `${text.slice(0, from)}[${feature}]${text.slice(to)}`;
  }
  const end = spanOf(text, ['features', count - 1])[1];
  return `${text.slice(0, end)},\n    ${feature}${text.slice(end)}`;
}

/** The text without a feature. */
export function withoutPlace(text, index) {
  const [from, to] = spanOf(text, ['features', index]);
  if (index > 0) {
    return text.slice(0, spanOf(text, ['features', index - 1])[1]) + text.slice(to);
  }
  const behind = text.slice(to).match(/^\s*,\s*/);
  return text.slice(0, from) + text.slice(to + (behind ? behind[0].length : 0));
}

/** The text with a feature at another point. */
export function withPlaceAt(text, index, lonLat) {
  const [from, to] = spanOf(text, ['features', index, 'geometry', 'coordinates']);
  return text.slice(0, from) + JSON.stringify(lonLat) + text.slice(to);
}

/** The text with another name and landmark of a feature; no landmark where it is empty. */
export function withWords(text, index, { name, landmark }) {
  const [from, to] = spanOf(text, ['features', index, 'properties']);
  const properties = JSON.parse(text.slice(from, to));
  if (properties.name === name && (properties.landmark ?? '') === landmark) {
    return text;
  }
  let changed = valueAt(text, index, 'name', name);
  if ('landmark' in properties && landmark) {
    changed = valueAt(changed, index, 'landmark', landmark);
  } else if ('landmark' in properties) {
    const { landmark: gone, ...rest } = { ...properties, name };
    changed = text.slice(0, from) + JSON.stringify(rest) + text.slice(to);
  } else if (landmark) {
    const end = spanOf(changed, ['features', index, 'properties', 'name'])[1];
    changed = `${changed.slice(0, end)}, "landmark": ${JSON.stringify(landmark)}${changed.slice(end)}`;
  }
  return changed;
}

function valueAt(text, index, key, value) {
  const [from, to] = spanOf(text, ['features', index, 'properties', key]);
  return text.slice(0, from) + JSON.stringify(value) + text.slice(to);
}
