/** A jeep or a booster more or less: what is asked for, and the file's text with it. No DOM. */
import { withItem, withKey, without, withValue } from '../text/jsonedit.js';
import { valueAt } from './frame.js';
import { lengthOf, lengthText } from '../text/length.js';
import { allCoupled } from './leftoff.js';
import { massOf, withGross, withoutWeights } from './unitweight.js';

const stancePath = stance => ['stances', stance];
const has = (json, ...path) => valueAt(json, path) !== undefined;
const IN = 25_400_000_000;

/** A place so far behind the origin of its frame. */
const back = (text, more = 0) => lengthText(-lengthOf(text) - more, text);
const sum = (...texts) => lengthText(texts.reduce((all, text) => all + lengthOf(text), 0), texts[0]);

const FRAME = [
  { key: 'radius', label: 'Hub over the ground', example: '17 1/4 in' },
  { key: 'overhang', label: 'Axle to the rear end', example: '2 ft' },
  { key: 'under', label: 'Lowest of the frame over the ground', example: '14 in' },
  { key: 'over', label: 'Highest of the frame over the ground', example: '40 in' },
];
const WEIGHED = (json, stance, where) => (has(json, 'stances', stance, 'weights') ? [
  { key: 'weight', label: 'Weight', example: '5,200 lb', mass: true },
  { key: 'cgX', label: `Center of gravity behind its ${where}`, example: '7 ft' },
  { key: 'cgH', label: 'Center of gravity over the ground', example: '28 in' },
  ...has(json, 'stances', stance, 'weights', 'tracks')
    ? [{ key: 'track', label: 'Between tire centers, left to right', example: '77 in' }] : [],
] : []);
const PLAN = (json, stance, unit, bend) => (has(json, 'stances', stance, 'plan')
  && !has(json, 'stances', stance, 'plan', unit) ? [
    { key: 'width', label: 'Width', example: '8 ft 4 in' },
    { key: 'overTires', label: 'Width over the tires', example: '8 ft 6 in' },
    { key: 'bend', label: bend, example: '35 deg', angle: true },
  ] : []);

/** How many boosters a stance has. */
export const boosterCount = (json, stance) => (has(json, 'stances', stance, 'booster')
  ? 1 + (valueAt(json, ['stances', stance, 'boostersBehind']) ?? []).length : 0);

/** What is asked for one more booster behind all others. */
export function askedForBooster(json, stance) {
  const first = boosterCount(json, stance) === 0;
  return [
    ...first && has(json, 'stances', stance, 'trailer', 'boosterHinge') ? [] : [
      { key: 'hingeX', label: first ? 'Hinge behind the last trailer axle' : 'Hinge behind the last booster axle',
        example: '29 in' },
      { key: 'hingeH', label: 'Hinge over the ground', example: '33 in' },
    ],
    { key: 'axle', label: 'Hinge to its axle', example: '8 ft' },
    ...FRAME,
    { key: 'pitch', label: 'Pitches up and down at the hinge', example: '10 deg', angle: true },
    ...PLAN(json, stance, 'booster', 'Bend at the booster pivot'),
    ...WEIGHED(json, stance, 'hinge'),
    ...!first && has(json, 'stances', stance, 'weights') ? [
      {
        key: 'chart', label: 'Gauge: pressure and axle load, twice or more',
        example: '14 psi 4,600 lb, 90 psi 23,800 lb', chart: true,
      },
      { key: 'accuracy', label: 'Gauge good to', example: '4 %', share: true },
      { key: 'set', label: 'Pressure that is set', example: '48 psi', pressure: true },
    ] : [],
  ];
}

/** A frame from its front to its rear end, its neck between hinge and frame higher: as plain as can be. */
function frameOf({ under, over, rear, name }) {
  return {
    underside: [{ x: rear, h: under, part: `${name} frame` }, { x: '0 in', h: under, part: `${name} frame` }],
    topside: [{ x: rear, h: over }, { x: '0 in', h: over }],
  };
}

/** The text with one more booster behind all others. */
export function withBooster(text, stance, given) {
  const json = JSON.parse(text);
  const at = stancePath(stance);
  const count = boosterCount(json, stance);
  const booster = {
    hinge: { x: '0 in' },
    axle: { x: back(given.axle), radius: given.radius },
    ...frameOf({
      ...given, rear: back(sum(given.axle, given.overhang)), name: count === 0 ? 'booster' : `booster ${count + 1}`,
    }),
    ...count === 0 && { states: ['none', 'trailing'] },
    hingeUp: given.pitch, hingeDown: given.pitch,
  };
  let made = count === 0 ? firstBooster(text, stance, booster, given) : boosterBehind(text, stance, booster, given);
  if (given.width) {
    made = withKey(made, [...at, 'plan'], 'booster', {
      width: given.width, overTires: given.overTires, pivotLimit: given.bend,
    });
  }
  return given.weight ? weighed(made, stance, given, count) : made;
}

function firstBooster(text, stance, booster, given) {
  const at = stancePath(stance);
  const trailer = valueAt(JSON.parse(text), [...at, 'trailer']);
  const hinged = given.hingeX ? withKey(text, [...at, 'trailer'], 'boosterHinge', {
    x: lengthText(lengthOf(trailer.axles.at(-1).x) - lengthOf(given.hingeX), given.hingeX), h: given.hingeH,
  }) : text;
  return withKey(hinged, at, 'booster', booster);
}

/** The one ahead then has a hinge for it, and only trails. */
function boosterBehind(text, stance, booster, given) {
  const at = stancePath(stance);
  const json = JSON.parse(text);
  const behind = valueAt(json, [...at, 'boostersBehind']) ?? [];
  const ahead = behind.length > 0 ? [...at, 'boostersBehind', behind.length - 1] : [...at, 'booster'];
  const unit = valueAt(json, ahead);
  const last = unit.axle ?? unit.axles.at(-1);
  let made = withKey(allCoupled(text, stance, 'booster'), ahead, 'nextHinge', {
    x: lengthText(lengthOf(last.x) - lengthOf(given.hingeX), given.hingeX), h: given.hingeH,
  });
  if (unit.states) {
    made = withValue(made, [...ahead, 'states'], ['trailing']);
    made = without(without(made, [...ahead, 'closeCoupledAxle']), [...ahead, 'carried']);
    made = withoutWeights(made, stance, [['booster', 'carriedCg']]);
  }
  return behind.length > 0 ? withItem(made, [...at, 'boostersBehind'], behind.length, booster)
    : withKey(made, at, 'boostersBehind', [booster]);
}

function weighed(text, stance, given, count) {
  const at = [...stancePath(stance), 'weights'];
  const unit = { weight: given.weight, cg: { x: back(given.cgX), h: given.cgH } };
  let made = text;
  if (count === 0) {
    made = withKey(made, at, 'booster', unit);
  } else {
    const points = given.chart.split(/,\s+/).map(pair => pair.match(/^(\S+ \S+) (.+)$/).slice(1));
    const whole = { ...unit, gauge: { accuracy: given.accuracy, points }, set: given.set };
    const before = valueAt(JSON.parse(made), [...at, 'boostersBehind']) ?? [];
    made = before.length > 0 ? withItem(made, [...at, 'boostersBehind'], before.length, whole)
      : withKey(made, at, 'boostersBehind', [whole]);
  }
  if (given.track && !has(JSON.parse(made), ...at, 'tracks', 'booster')) {
    made = withKey(made, [...at, 'tracks'], 'booster', given.track);
  }
  return withGross(made, stance, massOf(given.weight));
}

/** The text without the last booster, and without all that is known of it alone. */
export function withoutBooster(text, stance) {
  const at = stancePath(stance);
  const json = JSON.parse(text);
  const behind = valueAt(json, [...at, 'boostersBehind']) ?? [];
  const where = behind.length > 0 ? ['boostersBehind', behind.length - 1] : ['booster'];
  const weight = valueAt(json, [...at, 'weights', ...where, 'weight']);
  let made = without(text, [...at, ...where]);
  if (behind.length > 0) {
    const ahead = behind.length > 1 ? ['boostersBehind', behind.length - 2] : ['booster'];
    made = without(made, [...at, ...ahead, 'nextHinge']);
    made = behind.length === 1 ? without(made, [...at, 'boostersBehind']) : made;
    made = withoutWeights(made, stance, behind.length === 1 ? [['boostersBehind']] : [where]);
  } else {
    made = has(json, ...at, 'plan') ? without(made, [...at, 'plan', 'booster']) : made;
    made = withoutWeights(made, stance, [['booster'], ['gauges', 'booster'], ['regulator'], ['shims'],
      ['tracks', 'booster'], ['ratings', 'axles', 'booster'], ['ratings', 'tires', 'booster'],
      ['ratings', 'tireWidths', 'booster']]);
  }
  return weight ? withGross(made, stance, -massOf(weight)) : made;
}

/** How many jeeps a stance has. */
export const jeepCount = (json, stance) => (valueAt(json, ['stances', stance, 'jeeps']) ?? []).length;

/** What is asked for one more jeep, ahead of the trailer and behind all others. */
export const askedForJeep = (json, stance) => [
  { key: 'axle', label: 'Kingpin to its first axle', example: '9 ft 6 in' },
  { key: 'spacing', label: 'First axle to second axle', example: '4 ft 6 in' },
  { key: 'wheel', label: 'Kingpin to its fifth wheel', example: '11 ft 9 in' },
  { key: 'wheelH', label: 'Its fifth wheel over the ground', example: '4 ft 1 in' },
  ...FRAME,
  { key: 'travelUp', label: 'Axles can go up', example: '3 in' },
  { key: 'travelDown', label: 'Axles can go down', example: '3 in' },
  { key: 'neck', label: 'Lowest of the neck over the ground', example: '50 in' },
  { key: 'neckTop', label: 'Highest of the neck over the ground', example: '64 in' },
  { key: 'neckEnd', label: 'Kingpin to the rear end of the neck', example: '7 ft' },
  ...PLAN(json, stance, 'jeep', 'Bend at its kingpin'),
  ...WEIGHED(json, stance, 'kingpin'),
];

/** The text with one more jeep. */
export function withJeep(text, stance, given) {
  const at = stancePath(stance);
  const count = jeepCount(JSON.parse(text), stance);
  const name = count === 0 ? 'jeep' : `jeep ${count + 1}`;
  const second = sum(given.axle, given.spacing);
  const rear = back(sum(second, given.overhang));
  const step = back(given.neckEnd, IN);
  const jeep = {
    kingpin: { x: '0 in' },
    axles: [{ x: back(given.axle), radius: given.radius }, { x: back(second), radius: given.radius }],
    travelUp: given.travelUp, travelDown: given.travelDown,
    fifthWheel: { x: back(given.wheel), h: given.wheelH },
    underside: [{ x: rear, h: given.under, part: `${name} frame` }, { x: step, h: given.under, part: `${name} frame` },
      { x: back(given.neckEnd), h: given.neck, part: `${name} neck` },
      { x: '1 ft', h: given.neck, part: `${name} neck` }],
    topside: [{ x: rear, h: given.over }, { x: step, h: given.over },
      { x: back(given.neckEnd), h: given.neckTop, part: `${name} neck` },
      { x: '1 ft', h: given.neckTop, part: `${name} neck` }],
  };
  let made = count === 0 ? withKey(text, at, 'jeeps', [jeep])
    : withItem(allCoupled(text, stance, 'jeep'), [...at, 'jeeps'], count, jeep);
  if (given.width) {
    made = withKey(made, [...at, 'plan'], 'jeep', {
      width: given.width, overTires: given.overTires, kingpinLimit: given.bend,
    });
  }
  if (!given.weight) {
    return made;
  }
  const weights = [...at, 'weights'];
  const unit = { weight: given.weight, cg: { x: back(given.cgX), h: given.cgH } };
  const before = valueAt(JSON.parse(made), [...weights, 'jeeps']) ?? [];
  made = before.length > 0 ? withItem(made, [...weights, 'jeeps'], before.length, unit)
    : withKey(made, weights, 'jeeps', [unit]);
  if (given.track && !has(JSON.parse(made), ...weights, 'tracks', 'jeep')) {
    made = withKey(made, [...weights, 'tracks'], 'jeep', given.track);
  }
  return withGross(made, stance, massOf(given.weight));
}

/** The text without the last jeep. */
export function withoutJeep(text, stance) {
  const at = stancePath(stance);
  const json = JSON.parse(text);
  const last = jeepCount(json, stance) - 1;
  const weight = valueAt(json, [...at, 'weights', 'jeeps', last, 'weight']);
  let made = last === 0 ? without(text, [...at, 'jeeps']) : without(text, [...at, 'jeeps', last]);
  if (last === 0) {
    made = has(json, ...at, 'plan') ? without(made, [...at, 'plan', 'jeep']) : made;
    made = withoutWeights(made, stance, [['jeeps'], ['tracks', 'jeep'], ['ratings', 'axles', 'jeep'],
      ['ratings', 'tires', 'jeep'], ['ratings', 'tireWidths', 'jeep']]);
  } else {
    made = withoutWeights(made, stance, [['jeeps', last]]);
  }
  return weight ? withGross(made, stance, -massOf(weight)) : made;
}
