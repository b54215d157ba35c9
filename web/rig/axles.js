/** An axle more or less in a group: what is asked for, and the file's text with it. No DOM. */
import { withItem, withKey, without, withValue } from '../text/jsonedit.js';
import { pointerOf, valueAt } from './frame.js';
import { lengthOf, lengthText } from '../text/length.js';
import { withoutAxleNumber, withoutLift } from './lifts.js';
import { rowsOf, tapeOf } from './tape.js';
import { withRow } from './tapechange.js';
import { weightAsked, withWeight } from './unitweight.js';

const single = group => group.path.at(-1) === 'axle';

/** What is asked for one more axle: {key, label, example}. */
export const askedForAxle = (json, stance, group) => [
  { key: 'spacing', label: 'Behind the last one', example: '4 ft 6 in' },
  { key: 'radius', label: 'Hub over the ground', example: '17 1/4 in' },
  ...single(group) ? [
    { key: 'travelUp', label: 'Axles can go up', example: '3 in' },
    { key: 'travelDown', label: 'Axles can go down', example: '3 in' },
  ] : [],
  ...weightAsked(json, stance, 'Weight of the axle', '2,600 lb'),
];

/** The text with one more axle behind the last of a group; all that lies behind that one goes back as far. */
export function withAxle(text, stance, group, given) {
  const json = JSON.parse(text);
  const rows = rowsOf(tapeOf(json, stance));
  const axles = single(group) ? [valueAt(json, group.path)] : valueAt(json, group.path);
  const last = axles.at(-1);
  const lastPointer = pointerOf(single(group) ? [...group.path, 'x'] : [...group.path, axles.length - 1, 'x']);
  const x = lengthOf(last.x) - lengthOf(given.spacing);
  const axle = { x: lengthText(x, last.x), radius: given.radius };
  // What lies behind the last axle is what a change of the distance to the next mark would move.
  let made = shifted(text, json, rows, rows.findIndex(row => row.pointer === lastPointer), lengthOf(given.spacing));
  if (single(group)) {
    const unit = group.path.slice(0, -1);
    made = withKey(made, unit, 'axles', [valueAt(JSON.parse(made), group.path), axle]);
    made = withKey(made, unit, 'travelUp', given.travelUp);
    made = withKey(made, unit, 'travelDown', given.travelDown);
    made = withoutCloseCoupling(without(made, group.path), unit);
  } else {
    made = withItem(made, group.path, axles.length, axle);
  }
  return given.weight
    ? withWeight(made, stance, group.weight, { weight: given.weight, x, h: given.radius, sign: 1 }) : made;
}

/** A booster on several axles is not one more axle of the trailer's group. */
function withoutCloseCoupling(text, unit) {
  const states = valueAt(JSON.parse(text), [...unit, 'states']);
  const left = states?.filter(state => state !== 'close-coupled');
  const made = without(text, [...unit, 'closeCoupledAxle']);
  return left && left.length < states.length ? withValue(made, [...unit, 'states'], left) : made;
}

/** Everything behind a row's mark, from the next mark on, farther back by a length. */
function shifted(text, json, rows, index, by) {
  const next = rows.slice(index + 1).find(row => row.kind === 'span' && row.unit === rows[index].unit);
  return next ? withRow(text, json, next, `${(next.value + by) / 1e12} m`) : text;
}

/** What is asked to take an axle out: which one, what the height valves read then, and what it weighs. */
export function askedForLessAxle(json, stance, group) {
  const count = valueAt(json, group.path).length;
  return [
    {
      key: 'which', label: 'Which one, counted from the front',
      choices: Array.from({ length: count }, (none, k) => [String(k), `${group.word} axle ${k + 1}`]),
    },
    ...group.key === 'trailer' ? [{
      key: 'valve', label: 'Axle that the height valves read then, counted from the front', example: '1',
      choices: [['', 'choose'], ...Array.from({ length: count - 1 }, (none, k) => [String(k + 1), `axle ${k + 1}`])],
    }] : [],
    ...weightAsked(json, stance, 'Weight of the axle', '2,600 lb'),
  ];
}

/** The text without an axle; the frame and all else stay where they are. A lift axle that goes is one no longer. */
export function withoutAxle(text, stance, group, given) {
  const axle = valueAt(JSON.parse(text), [...group.path, Number(given.which)]);
  const count = valueAt(JSON.parse(text), group.path).length;
  let made = without(text, [...group.path, Number(given.which)]);
  if (group.key === 'trailer') {
    made = withValue(made, ['stances', stance, 'trailer', 'valveAxle'], Number(given.valve));
    const lift = valueAt(JSON.parse(made), ['stances', stance, 'trailer', 'liftAxle']);
    made = !lift ? withoutAxleNumber(made, stance, Number(given.which) + 1)
      : Number(given.which) === count - 1 ? withoutLift(made, stance) : made;
  }
  return given.weight ? withWeight(made, stance, group.weight, {
    weight: given.weight, x: lengthOf(axle.x), h: axle.radius, sign: -1,
  }) : made;
}
