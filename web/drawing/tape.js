/** Geometry of the drawing beside the taped rig: units coupled on level ground, meters, x forward from the steer axle's
    frame. No DOM. */
import { endsOf, pointsOf, valueAt, xOf } from '../rig/frame.js';
import { lengthOf, meters } from '../text/length.js';

/** What tires of one side cover where the file does not say, meters: as in docs/file-formats.md. */
const STEER_TIRE = { across: 0.42, contact: 0.3 };
const OTHER_TIRE = { across: 0.66, contact: 0.3 };

const m = value => (value === null ? null : meters(value));
const length = (json, path) => m(lengthOf(valueAt(json, path)));

/** @returns {units, left, right, top}: units front to rear, those whose coupling is written with a length */
export function standing(json, stance) {
  const at = ['stances', stance];
  const units = [];
  const shifts = shiftsOf(json, at);
  for (const [key, path, plan] of unitPaths(json, at)) {
    const shift = shifts.get(key);
    if (Number.isFinite(shift)) {
      units.push(unitOf(json, { key, path, plan: [...at, 'plan', plan], shift }));
    }
  }
  const points = units.flatMap(unit =>
    [...unit.underside, ...unit.topside, ...unit.loads.flatMap(load => load.points)]);
  const xs = [...points.map(([x]) => x), ...units.flatMap(unit => unit.wheels.map(wheel => wheel.x))];
  return xs.length === 0 ? { units: [], left: 0, right: 1, top: 1 } : {
    units, left: Math.min(...xs) - 0.3, right: Math.max(...xs) + 0.3,
    top: Math.max(...points.map(([, h]) => h), 1) + 0.2,
  };
}

function unitPaths(json, at) {
  const several = key => (valueAt(json, [...at, key]) ?? []).map((one, k) => k);
  return [
    ['tractor', [...at, 'tractor'], 'tractor'],
    ...several('jeeps').map(k => [`jeep-${k}`, [...at, 'jeeps', k], 'jeep']),
    ['trailer', [...at, 'trailer'], 'trailer'],
    ...valueAt(json, [...at, 'booster']) ? [['booster', [...at, 'booster'], 'booster']] : [],
    ...several('boostersBehind').map(k => [`boostersBehind-${k}`, [...at, 'boostersBehind', k], 'booster']),
  ];
}

/** How far ahead each unit's origin is of the tractor's, by the couplings, meters. */
function shiftsOf(json, at) {
  const x = (...path) => m(xOf(json, [...at, ...path]));
  const shifts = new Map([['tractor', 0]]);
  let wheel = x('tractor', 'fifthWheel', 'x');
  (valueAt(json, [...at, 'jeeps']) ?? []).forEach((jeep, k) => {
    const shift = wheel - x('jeeps', k, 'kingpin', 'x');
    shifts.set(`jeep-${k}`, shift);
    wheel = shift + x('jeeps', k, 'fifthWheel', 'x');
  });
  const trailer = wheel - x('trailer', 'kingpin', 'x');
  shifts.set('trailer', trailer);
  let hinge = x('trailer', 'boosterHinge', 'x') === null ? NaN : trailer + x('trailer', 'boosterHinge', 'x');
  for (const [key, path] of unitPaths(json, at).filter(([one]) => one.startsWith('booster'))) {
    const shift = hinge - m(xOf(json, [...path, 'hinge', 'x']));
    shifts.set(key, shift);
    const next = m(xOf(json, [...path, 'nextHinge', 'x']));
    hinge = next === null ? NaN : shift + next;
  }
  return shifts;
}

function unitOf(json, { key, path, plan, shift }) {
  const line = where => pointsOf(json, where).filter(({ h }) => h !== null)
    .map(({ x, h }) => [shift + meters(x), meters(h)]);
  const { front, rearMost } = endsOf(json, path);
  const tires = length(json, [...plan, 'overTires']);
  return {
    key, shift,
    underside: line([...path, 'underside']),
    topside: line([...path, 'topside']),
    loads: (key === 'trailer' ? valueAt(json, [...path, 'load']) ?? [] : [])
      .map((load, k) => ({ name: load?.name, points: line([...path, 'load', k, 'outline']) }))
      .filter(({ points }) => points.length > 0),
    wheels: wheelsOf(json, path, plan, shift),
    front: shift + meters(front ?? 0), rear: shift + meters(rearMost ?? 0),
    width: length(json, [...plan, 'width']), overTires: tires, loadWidth: length(json, [...plan, 'loadWidth']),
  };
}

/** Wheels of a unit: {x, r, across, contact}, meters. */
function wheelsOf(json, path, plan, shift) {
  const listed = (where, tires, otherwise) => {
    const value = valueAt(json, where);
    const paths = Array.isArray(value) ? value.map((axle, k) => [...where, k]) : value ? [where] : [];
    return paths.map(one => ({
      x: shift + (length(json, [...one, 'x']) ?? NaN), r: length(json, [...one, 'radius']) ?? 0.5,
      across: length(json, [...plan, tires, 'across']) ?? otherwise.across,
      contact: length(json, [...plan, tires, 'contact']) ?? otherwise.contact,
    })).filter(({ x }) => Number.isFinite(x));
  };
  return [
    ...listed([...path, 'steer'], 'steerTires', STEER_TIRE),
    ...listed([...path, 'drive', 'axles'], 'driveTires', OTHER_TIRE),
    ...listed([...path, 'axle'], 'tires', OTHER_TIRE),
    ...listed([...path, 'axles'], 'tires', OTHER_TIRE),
  ];
}

/**
 * What is dimensioned: {id, along: [from, to]} or {id, at, h} or {id, at, wide}, in the drawing's meters.
 *
 * @param parts as the list has them
 * @param chosen id of the row that is looked at: dimensioned too, wherever it stands in the list
 */
export function dimensions(parts, { units }, chosen) {
  const byKey = new Map(units.map(unit => [unit.key, unit]));
  return parts.filter(({ key }) => byKey.has(key)).flatMap(({ key, groups }) => groups.flatMap(group =>
    group.places.flatMap(place => [place.along, place.height, place.value].filter(Boolean)
      .filter(row => row.id === chosen || group.key === 'main' || row.whole || row.wide)
      .map(row => dimensionOf(row, byKey.get(key))).filter(Boolean))));
}

function dimensionOf(row, unit) {
  const { id, label } = row;
  if (row.kind !== 'written') {
    return { id, label, row, along: [unit.shift + meters(row.fromX), unit.shift + meters(row.toX)] };
  }
  if (row.wide) {
    const wide = unit[row.wide];
    const load = unit.loads[0]?.points.map(([x]) => x);
    const axles = unit.wheels.map(({ x }) => x);
    const at = row.wide === 'loadWidth' && load ? load[0] * 0.35 + load.at(-1) * 0.65
      : row.wide === 'overTires' ? Math.min(...axles)
        : unit.front * 0.75 + unit.rear * 0.25;
    return wide === null || !Number.isFinite(at) ? null : { id, label, row, at, wide };
  }
  return row.h === null || row.h === undefined ? null
    : { id, label, row, at: unit.shift + meters(row.atX), h: meters(row.h) };
}

/**
 * Rows of labels under or over one another, so that none is written over another: the level of each, in the order
 * given.
 *
 * @param labels {at, width} in pixels
 */
export function levels(labels, gap = 6) {
  const ends = [];
  const result = new Array(labels.length);
  labels.map((label, index) => ({ ...label, index })).sort((a, b) => a.at - b.at).forEach(({ at, width, index }) => {
    const from = at - width / 2;
    const free = ends.findIndex(end => end + gap <= from);
    const level = free < 0 ? ends.length : free;
    ends[level] = at + width / 2;
    result[index] = level;
  });
  return result;
}
