/** What is measured on a rig besides places along it: travels, limits, widths, angles, weights, notches. No DOM. */
import { valueAt, xOf } from './frame.js';
import { lengthOf } from '../text/length.js';
import { alongRow, steps, writtenRow } from './rows.js';
import { liftPlaces } from './lifts.js';
import { steeringPlaces } from './steering.js';

/** Key in the file, what it is, what there is to know about it. */
const OF_TRAILER = [
  ['travelUp', 'axles can go up', 'from the level stance, before a bump stop'],
  ['travelDown', 'axles can go down', 'from the level stance, before a strap or stop'],
  ['valveAxle', 'axle that the height valves read', 'counted from the front'],
  ['liftAxle/gap', 'raised tire of the lift axle over the ground', 'lift axle up, level ground'],
  ['liftAxle/secondaryRise', 'rear higher with the lift axle up', 'what the secondary valve holds'],
  ['hydraulicRaiseLimit', 'deck front can be raised', 'from the reference notch, by the gooseneck hydraulics'],
  ['manualRaiseLimit', 'rear can be raised by hand', 'above what its valve sets'],
  ['deckSag', 'sag at mid-deck', 'that the underside does not show'],
  ['boosterHinge/reach', 'reach of the booster hinge', 'of the joint itself, from its pin'],
];
const TRAVELS = OF_TRAILER.slice(0, 2);
const OF_BOOSTER = [
  ...TRAVELS,
  ['hingeUp', 'nose can pitch up', 'the axle drops'],
  ['hingeDown', 'nose can pitch down', ''],
  ['nextHinge/reach', 'reach of the hinge behind', 'of the joint itself, from its pin'],
];
const OF_TRACTOR = [
  ['drive/travelUp', 'drive axles can go up', 'from the level stance'],
  ['drive/travelDown', 'drive axles can go down', 'from the level stance'],
  ['fifthWheel/reach', 'reach of the fifth wheel', 'of plate and ramps, from the pin'],
];
const LIMITS = { tractor: OF_TRACTOR, trailer: OF_TRAILER, jeep: [...TRAVELS, OF_TRACTOR[2]], booster: OF_BOOSTER };

const WIDTHS = [
  ['width', 'width', 'over everything but tires', true],
  ['overTires', 'width over the tires', 'outer tire faces, at the ground', true],
  ['loadWidth', 'width of the load', 'at its widest', true],
  ['steerLimit', 'steering lock', 'of the front wheels, at mid-axle'],
  ['lockDistance', 'rolled from straight to full lock', ''],
  ['kingpinLimit', 'bend at the kingpin', 'at most'],
  ['pivotLimit', 'bend at the booster pivot', 'at most'],
  ['steerTires/across', 'steer tire across', 'on the ground, one side'],
  ['steerTires/contact', 'steer tire contact length', 'along'],
  ['driveTires/across', 'drive tires across', 'on the ground, one side'],
  ['driveTires/contact', 'drive tires contact length', 'along'],
  ['tires/across', 'tires across', 'on the ground, one side'],
  ['tires/contact', 'tires contact length', 'along'],
];

/** Travels and limits of a unit, then its widths and angles. Those of several boosters or jeeps stand at the first. */
export function limitGroups(json, path, at, key) {
  const kind = key.replace(/(sBehind)?-\d+$/, '');
  const listed = (from, rows, id) => rows.map(([where, name, hold, wide]) =>
    valuePlace(json, `${id}/${where}`, name, hold, [...from, ...steps(where)], wide ? { wide: where, unit: key } : {}))
    .filter(Boolean);
  const steering = kind === 'tractor' ? [] : written(json, key, steeringPlaces(json, path));
  const first = kind === key || key === 'jeep-0';
  return [
    {
      key: 'limits', title: 'Travel and limits', open: false,
      places: [
        ...listed(path, LIMITS[kind], key), ...kind === 'trailer' ? written(json, key, liftPlaces(json, path)) : [],
      ],
    },
    ...steering.length > 0 ? [{ key: 'steering', title: 'Wheels that turn', open: true, places: steering }] : [],
    ...first ? [{
      key: 'widths', title: kind === key ? 'Widths and angles' : 'Widths and angles, of all jeeps', open: false,
      places: listed([...at, 'plan', kind], WIDTHS, `${key}/plan`),
    }] : [],
  ];
}

/** @param places [id, name, where to look, path] */
const written = (json, key, places) =>
  places.map(([id, name, hold, from]) => valuePlace(json, `${key}/${id}`, name, hold, from)).filter(Boolean);

function valuePlace(json, id, name, hold, path, more = {}) {
  const value = writtenRow(json, `${id}/value`, name, path, more);
  return value && { id, name, hold, along: null, height: null, value };
}

/** Weight and center of gravity of all that belongs to a unit. @param weights [place in the weights, name] */
export function weightGroup(rows, at, weights) {
  const places = weights.flatMap(([where, name]) => {
    const path = [...at, 'weights', ...steps(where)];
    const x = xOf(rows.json, [...path, 'cg', 'x']);
    const id = `weights-${where.replace('/', '-')}`;
    if (x === null) {
      return [];
    }
    const title = `center of gravity of ${name}`;
    return [
      valuePlace(rows.json, `${rows.key}/${id}`, `weight of ${name}`, '', [...path, 'weight']),
      {
        id: `${rows.key}/${id}-cg`, name: title, hold: '', x, value: null,
        along: alongRow(rows, `${id}-cg`, rows.frame.offset(title, x, [[...path, 'cg', 'x']]), [...path, 'cg', 'x']),
        height: writtenRow(rows.json, `${rows.key}/${id}-cg/height`, `height of the ${title}`, [...path, 'cg', 'h'],
          { atX: x, unit: rows.key, h: lengthOf(valueAt(rows.json, [...path, 'cg', 'h'])), long: true }),
      },
    ].filter(Boolean);
  });
  return [{ key: 'weights', title: 'Weights', open: false, places }];
}

/** What holds for the whole rig: notches, and how well it was measured. */
export function rigGroups(json) {
  const notches = Array.isArray(json.notches) ? json.notches : [];
  return [
    {
      key: 'notches', title: 'Notches', open: true,
      places: notches.map((notch, k) => valuePlace(json, `rig/notch-${k}`, `notch ${notch?.name ?? k + 1}`,
        'deck front above that at the reference notch', ['notches', k, 'offset'])).filter(Boolean),
    },
    {
      key: 'accuracy', title: 'How well it was measured', open: false,
      places: [
        valuePlace(json, 'rig/measurement', 'accuracy of the measuring', 'half-width, 95 %',
          ['measurement', 'accuracy']),
        valuePlace(json, 'rig/measurement-source', 'measured with', '', ['measurement', 'source']),
        valuePlace(json, 'rig/ride', 'tires and air springs on the day', 'half-width, 95 %', ['ride', 'accuracy']),
        valuePlace(json, 'rig/ride-source', 'known from', '', ['ride', 'source']),
      ].filter(Boolean),
    },
  ].filter(({ places }) => places.length > 0);
}

