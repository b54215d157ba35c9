/** What can be put on a rig, taken off it, or made of it, each as one change that asks for all it needs. No DOM. */
import { withItem, without, withValue } from '../text/jsonedit.js';
import { askedForAxle, askedForLessAxle, withAxle, withoutAxle } from './axles.js';
import { valueAt } from './frame.js';
import { groupsOf } from './groups.js';
import { leftOffChanges } from './leftoff.js';
import { lengthOf } from '../text/length.js';
import { liftChanges } from './lifts.js';
import {
  askedForBooster, askedForJeep, boosterCount, jeepCount, withBooster, withJeep, withoutBooster, withoutJeep,
} from './units.js';
import { steeringChanges } from './steering.js';
import { massOf } from './unitweight.js';

const MOST_BOOSTERS = 3;
const MOST_JEEPS = 3;

/**
 * The changes that a rig can have now: {key, title, what, asked, make}.
 * asked: [{key, label, example} or {key, label, choices}]: a length, unless it says `mass`, `angle`, `share`,
 * `pressure`, `chart`, `text`; make: (text, given) → the file's text with it.
 */
export function changesOf(json, stance) {
  const boosters = boosterCount(json, stance);
  const jeeps = jeepCount(json, stance);
  const last = (count, word) => (count > 1 ? `${word} ${count}` : `the ${word}`);
  return [
    ...notchChanges(json),
    ...groupsOf(json, stance).flatMap(group => axleChanges(json, stance, group)),
    ...liftChanges(json, stance),
    boosters < MOST_BOOSTERS && change('booster-on', boosters === 0 ? 'Add a booster' : 'Add a booster behind',
      'one more booster', askedForBooster(json, stance), (text, given) => withBooster(text, stance, given)),
    boosters > 0 && change('booster-off', `Take out ${last(boosters, 'booster')}`,
      `without ${last(boosters, 'booster')}`, [], text => withoutBooster(text, stance)),
    jeeps < MOST_JEEPS && change('jeep-on', jeeps === 0 ? 'Add a jeep' : 'Add a jeep behind', 'one more jeep',
      askedForJeep(json, stance), (text, given) => withJeep(text, stance, given)),
    jeeps > 0 && change('jeep-off', `Take out ${last(jeeps, 'jeep')}`, `without ${last(jeeps, 'jeep')}`, [],
      text => withoutJeep(text, stance)),
    ...leftOffChanges(json, stance).map(one => ({ ...one, asked: [] })),
    ...steeringChanges(json, stance),
  ].filter(Boolean);
}

const change = (key, title, what, asked, make) => ({ key, title, what, asked, make });

function notchChanges(json) {
  const notches = json.notches ?? [];
  return [
    change('notch-on', 'Add a notch', 'one more notch', [
      { key: 'name', label: 'Name of the notch', example: '8', text: true },
      { key: 'offset', label: 'Deck front above that at the reference notch', example: '2 1/2 in' },
    ], (text, { name, offset }) => {
      // The lowest first, as the reader wants them.
      const above = notches.findIndex(notch => lengthOf(notch.offset) > lengthOf(offset));
      return withItem(text, ['notches'], above < 0 ? notches.length : above, { name, offset });
    }),
    notches.length > 1 && change('notch-off', 'Take out a notch', 'a notch less', [{
      key: 'which', label: 'Which one', choices: notches.map((notch, k) => [String(k), `notch ${notch.name}`]),
    }], (text, { which }) => without(text, ['notches', Number(which)])),
  ];
}

function axleChanges(json, stance, group) {
  const axles = valueAt(json, group.path);
  const lift = group.key === 'trailer' && valueAt(json, ['stances', stance, 'trailer', 'liftAxle']) !== undefined;
  return [
    change(`axle-on-${group.key}`, `Add an axle behind the ${group.name}${lift ? ', as the lift axle' : ''}`,
      `one more of the ${group.name}`,
      askedForAxle(json, stance, group), (text, given) => withAxle(text, stance, group, given)),
    Array.isArray(axles) && axles.length > 1 && change(`axle-off-${group.key}`, `Take out one of the ${group.name}`,
      `one less of the ${group.name}`, askedForLessAxle(json, stance, group),
      (text, given) => withoutAxle(text, stance, group, given)),
  ];
}

/** The first thing that is missing or is no such figure, in a sentence with its key; null where all is there. */
export function missingIn(asked, given) {
  for (const one of asked) {
    const typed = (given[one.key] ?? '').trim();
    if (typed === '') {
      return { key: one.key, sentence: `${one.label} is missing.` };
    }
    if (!FITS[kindOf(one)](typed)) {
      return { key: one.key, sentence: `${one.label}: "${typed}" is not understood. Write it as ${one.example}.` };
    }
  }
  return null;
}

const kindOf = one =>
  ['mass', 'angle', 'share', 'pressure', 'chart', 'text', 'choices'].find(kind => one[kind]) ?? 'length';

const FITS = {
  length: text => lengthOf(text) !== null,
  mass: text => massOf(text) !== null,
  angle: text => /^\d+(\.\d+)? ?(deg|°)$/.test(text),
  share: text => /^\d+(\.\d+)? ?%$/.test(text),
  pressure: text => /^[\d,]+(\.\d+)? ?(psi|bar|kPa)$/.test(text),
  chart: text => text.split(/,\s+/).length > 1 && text.split(/,\s+/).every(pair => {
    const [, , load] = pair.match(/^([\d,]+(?:\.\d+)? (?:psi|bar|kPa)) (.+)$/) ?? [];
    return load !== undefined && massOf(load) !== null;
  }),
  text: () => true,
  choices: () => true,
};

/** The text of a rig as another rig: its name, and without which vehicles it was. */
export const copied = (text, name) => without(withValue(text, ['name'], name), ['identity']);

/** The same for another load: without what lies on the deck and all that was weighed. */
export function emptied(text) {
  return JSON.parse(text).stances.reduce((made, stance, k) => {
    const at = ['stances', k];
    const bare = without(without(made, [...at, 'weights']), [...at, 'trailer', 'load']);
    return stance.plan?.trailer?.loadWidth ? without(bare, [...at, 'plan', 'trailer', 'loadWidth']) : bare;
  }, text);
}

