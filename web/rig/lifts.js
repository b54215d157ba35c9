/** The trailer's lift axles: what is asked for them, what the list shows of them, the file's text with them. No DOM. */
import { without, withItem, withKey, withValue } from '../text/jsonedit.js';
import { valueAt } from './frame.js';

const MOST_LIFT_AXLES = 4;
const MOST_STATES = 6;
const GAP = { key: 'gap', label: 'Raised tire over the ground', example: '4 1/4 in' };

const trailerOf = (json, stance) => valueAt(json, ['stances', stance, 'trailer']) ?? {};
const listOf = value => (Array.isArray(value) ? value : []);
const numbered = numbers => `${numbers.length === 1 ? 'axle' : 'axles'} ${numbers.join(', ')}`;

/** Numbers of the axles that can be raised, the first is 1. */
const liftNumbers = trailer => (trailer.liftAxle ? [listOf(trailer.axles).length]
  : listOf(trailer.liftAxles).map(({ axle }) => axle));

/** The changes of a rig's lift axles: {key, title, what, asked, make}, as those of {@link changesOf}. */
export function liftChanges(json, stance) {
  const trailer = trailerOf(json, stance);
  const lifts = liftNumbers(trailer);
  const fixed = listOf(trailer.axles).map((axle, k) => k + 1)
    .filter(number => !lifts.includes(number) && number !== trailer.valveAxle);
  const states = listOf(trailer.liftStates);
  const together = states.length < MOST_STATES ? unlisted(lifts, states) : [];
  const spare = states.filter(({ up }) => up.every(number => states.filter(s => s.up.includes(number)).length > 1));
  const room = lifts.length < MOST_LIFT_AXLES && states.length < MOST_STATES;
  return [
    fixed.length > 0 && room && {
      key: 'lift-on', title: 'Make a trailer axle a lift axle', what: 'a lift axle',
      asked: [
        { key: 'which', label: 'Which axle', choices: fixed.map(number => [String(number), numbered([number])]) },
        GAP,
        { key: 'secondaryRise', label: 'Rear higher with it alone up', example: '0 in' },
      ],
      make: (text, given) => withLift(text, stance, given),
    },
    together.length > 0 && {
      key: 'lift-together', title: 'Raise several lift axles together', what: 'axles up together',
      asked: [
        { key: 'up', label: 'Which are up', choices: together.map(up => [up.join('-'), numbered(up)]) },
        { key: 'secondaryRise', label: 'Rear higher with these up', example: '0 in' },
      ],
      make: (text, { up, secondaryRise }) => withItem(text, ['stances', stance, 'trailer', 'liftStates'], states.length,
        { up: up.split('-').map(Number), secondaryRise }),
    },
    spare.length > 0 && {
      key: 'lift-apart', title: 'Never raise these lift axles together', what: 'a state less',
      asked: [{ key: 'up', label: 'Which are up', choices: spare.map(({ up }) => [up.join('-'), numbered(up)]) }],
      make: (text, { up }) => without(text, ['stances', stance, 'trailer', 'liftStates',
        states.findIndex(state => state.up.join('-') === up)]),
    },
    lifts.length > 0 && {
      key: 'lift-off', title: 'Take out a lift axle', what: 'the axle stays down',
      asked: lifts.length === 1 ? []
        : [{ key: 'which', label: 'Which axle', choices: lifts.map(number => [String(number), numbered([number])]) }],
      make: (text, { which = String(lifts[0]) }) => withoutLift(text, stance, Number(which)),
    },
  ].filter(Boolean);
}

/** Every choice of two or more lift axles that no state has yet. */
function unlisted(lifts, states) {
  const known = new Set(states.map(({ up }) => [...up].sort((a, b) => a - b).join('-')));
  return lifts.reduce((sets, number) => [...sets, ...sets.map(set => [...set, number])], [[]])
    .filter(set => set.length > 1 && !known.has(set.join('-')));
}

/** The text with one more lift axle: alone and last as the file says it in short, else all of them listed. */
function withLift(text, stance, { which, gap, secondaryRise }) {
  const at = ['stances', stance, 'trailer'];
  const trailer = trailerOf(JSON.parse(text), stance);
  const number = Number(which);
  if (!trailer.liftAxle && !trailer.liftAxles && number === trailer.axles.length) {
    return withKey(text, at, 'liftAxle', { gap, secondaryRise });
  }
  const made = listed(text, stance);
  const { liftAxles = [], liftStates = [] } = trailerOf(JSON.parse(made), stance);
  const axles = [...liftAxles, { axle: number, gap }].sort((a, b) => a.axle - b.axle);
  const states = [...liftStates, { up: [number], secondaryRise }];
  return liftAxles.length > 0
    ? withValue(withValue(made, [...at, 'liftAxles'], axles), [...at, 'liftStates'], states)
    : withKey(withKey(made, at, 'liftAxles', axles), at, 'liftStates', states);
}

/** The last axle as the only lift axle, written as a list of one; its chart goes to its state. */
function listed(text, stance) {
  const at = ['stances', stance, 'trailer'];
  const json = JSON.parse(text);
  const { liftAxle, axles } = trailerOf(json, stance);
  if (!liftAxle) {
    return text;
  }
  const gauges = ['stances', stance, 'weights', 'gauges'];
  const gauge = valueAt(json, [...gauges, 'trailerUp']);
  const made = without(gauge ? without(text, [...gauges, 'trailerUp']) : text, [...at, 'liftAxle']);
  return withKey(withKey(made, at, 'liftAxles', [{ axle: axles.length, gap: liftAxle.gap }]), at, 'liftStates',
    [{ up: [axles.length], secondaryRise: liftAxle.secondaryRise, ...gauge ? { gauge } : {} }]);
}

/** Without a lift axle: it stays down, and what is known with it up is left out. */
export function withoutLift(text, stance, number) {
  const trailer = trailerOf(JSON.parse(text), stance);
  if (trailer.liftAxle) {
    const gauges = ['stances', stance, 'weights', 'gauges'];
    const made = without(text, ['stances', stance, 'trailer', 'liftAxle']);
    return valueAt(JSON.parse(made), gauges) ? without(made, [...gauges, 'trailerUp']) : made;
  }
  return rewritten(text, stance, listOf(trailer.liftAxles).filter(({ axle }) => axle !== number),
    listOf(trailer.liftStates).filter(({ up }) => !up.includes(number)));
}

/** The text whose trailer has an axle less: those behind it have moved up one number. */
export function withoutAxleNumber(text, stance, number) {
  const { liftAxles, liftStates } = trailerOf(JSON.parse(text), stance);
  if (!liftAxles) {
    return text;
  }
  const now = axle => (axle > number ? axle - 1 : axle);
  return rewritten(text, stance,
    listOf(liftAxles).filter(({ axle }) => axle !== number).map(one => ({ ...one, axle: now(one.axle) })),
    listOf(liftStates).filter(({ up }) => !up.includes(number)).map(one => ({ ...one, up: one.up.map(now) })));
}

/** A lift axle that is up in no state any more is one no longer. */
function rewritten(text, stance, axles, states) {
  const at = ['stances', stance, 'trailer'];
  const left = axles.filter(({ axle }) => states.some(({ up }) => up.includes(axle)));
  return left.length === 0 ? without(without(text, [...at, 'liftAxles']), [...at, 'liftStates'])
    : withValue(withValue(text, [...at, 'liftAxles'], left), [...at, 'liftStates'], states);
}

/** Places of the list of lift axles and their states: [id, name, where to look, path]. */
export function liftPlaces(json, path) {
  const trailer = valueAt(json, path) ?? {};
  return [
    ...listOf(trailer.liftAxles).map(({ axle }, k) => [`lift-${k}-gap`, `raised tire of axle ${axle} over the ground`,
      'up, level ground', [...path, 'liftAxles', k, 'gap']]),
    ...listOf(trailer.liftStates).map(({ up }, k) => [`lift-state-${k}-rise`,
      `rear higher with ${numbered(listOf(up))} up`, 'what the secondary valve holds',
      [...path, 'liftStates', k, 'secondaryRise']]),
  ];
}
