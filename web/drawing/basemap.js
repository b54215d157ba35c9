/** A base map's features as lines and areas to draw. No DOM. GeoJSON has longitude first, maps latitude. */
import { drawnBeside } from '../line/legs.js';

/** From the lowest up; what this page does not know is not drawn. */
export const LAYERS = ['woods', 'water', 'minor-road', 'middle-road', 'major-road', 'railway'];

/** Whether a file of this program is a base map that can be drawn: what is damaged is left to the reader of routes. */
export function isBaseMap(json) {
  return json?.cresthaul === 'basemap/1' && typeof json.attribution === 'string' && Array.isArray(json.features)
    && json.features.every(feature => typeof feature?.properties?.layer === 'string'
      && typeof feature.geometry?.type === 'string' && arePositions(feature.geometry.coordinates));
}

/** Positions, or lists of them, however deep. */
const arePositions = value => Array.isArray(value) && value.length > 0
  && (value.every(Array.isArray) ? value.every(arePositions) : value.length >= 2 && value.every(Number.isFinite));

/** @param line beside which it is drawn @returns {{layer, area: boolean, parts: Array}[]} in the order of drawing */
export function baseMapShapes({ features }, line) {
  const at = drawnBeside(line);
  const flip = points => points.map(at);
  return features
    .filter(({ properties, geometry }) => LAYERS.includes(properties.layer)
      && ['MultiPolygon', 'MultiLineString'].includes(geometry.type))
    .map(({ properties: { layer }, geometry: { type, coordinates } }) => ({
      layer,
      area: type === 'MultiPolygon',
      parts: type === 'MultiPolygon' ? coordinates.map(rings => rings.map(flip)) : coordinates.map(flip),
    }))
    .sort((a, b) => LAYERS.indexOf(a.layer) - LAYERS.indexOf(b.layer) || Number(b.area) - Number(a.area));
}

/** @returns {{name: string, at: [number, number]}[]} */
export const baseMapPlaces = ({ features }, line) => features
  .filter(({ properties, geometry }) => properties.layer === 'place' && geometry.type === 'Point')
  .map(({ properties: { name }, geometry: { coordinates } }) => ({ name, at: drawnBeside(line)(coordinates) }));

/** About how wide a letter of a name is, and how high a line of it, pixels. */
const LETTER = 6.5;
const LINE = 14;

/**
 * Which names are written: each that no name before it covers.
 *
 * @param names {name, x, y} in pixels, what matters most first
 */
export function freeNames(names) {
  const written = [];
  return names.map(({ name, x, y }) => {
    const half = name.length * LETTER / 2;
    const free = written.every(box => Math.abs(box.x - x) >= box.half + half || Math.abs(box.y - y) >= LINE);
    if (free) {
      written.push({ x, y, half });
    }
    return free;
  });
}

/** Whom to thank, and whether something is missing. */
export const baseMapCredit = ({ attribution, whole }) => `Base map: ${attribution}`
  + (whole ? '' : '. Some of it is left out: the map had too much');
