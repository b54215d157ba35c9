/** Axles behind the tractor whose wheels turn: what the list shows of them, and how they come and go. No DOM. */
import { withKey, without } from '../text/jsonedit.js';
import { valueAt } from './frame.js';
import { groupsOf } from './groups.js';

/** Axles that may have it: {value, name, path of the axle, alone: the only one of its unit}. */
export function trailedAxles(json, stance) {
  return groupsOf(json, stance).filter(({ key }) => key !== 'drive').flatMap(({ key, word, path }) => {
    const found = valueAt(json, path);
    return Array.isArray(found)
      ? found.map((axle, k) => ({
        value: `${key}:${k}`, name: `${word} axle ${k + 1}`, path: [...path, k], alone: found.length === 1,
      }))
      : [{ value: key, name: `${word} axle`, path, alone: true }];
  });
}

const turns = (json, { path }) => valueAt(json, [...path, 'steering']) !== undefined;

const which = axles => ({ key: 'which', label: 'Which axle', choices: axles.map(({ value, name }) => [value, name]) });

const STOP = { key: 'limit', label: 'Their stop, either way', example: '18 deg', angle: true };

/** The changes of a rig's steered axles: {key, title, what, asked, make}, as those of {@link changesOf}. */
export function steeringChanges(json, stance) {
  const axles = trailedAxles(json, stance);
  const fixed = axles.filter(axle => !turns(json, axle));
  // What is alone in its unit has to guide it.
  const free = fixed.filter(({ alone }) => !alone);
  const turning = axles.filter(axle => turns(json, axle));
  const at = value => axles.find(axle => axle.value === value).path;
  return [
    free.length > 0 && {
      key: 'castering', title: 'Make the wheels of an axle castering', what: 'castering wheels',
      asked: [which(free), STOP],
      make: (text, { which: axle, limit }) =>
        withKey(text, at(axle), 'steering', { wheels: 'castering', limit }),
    },
    fixed.length > 0 && {
      key: 'commanded', title: 'Make the wheels of an axle steered by the coupling ahead', what: 'steered wheels',
      asked: [which(fixed),
        { key: 'ratio', label: 'Their angle for each angle of the bend', example: '60 %', share: true }, STOP],
      make: (text, { which: axle, ratio, limit }) =>
        withKey(text, at(axle), 'steering', { wheels: 'commanded', ratio, limit }),
    },
    turning.length > 0 && {
      key: 'steering-off', title: 'Make the wheels of an axle fixed again', what: 'fixed wheels',
      asked: [which(turning)], make: (text, { which: axle }) => without(text, [...at(axle), 'steering']),
    },
  ];
}

/** Places of a unit's axles that say how their wheels turn: [id, name, where to look, path]. */
export function steeringPlaces(json, path) {
  const found = valueAt(json, [...path, 'axles']);
  const axles = Array.isArray(found)
    ? found.map((axle, k) => [found.length > 1 ? `axle ${k + 1}` : 'axle', [...path, 'axles', k, 'steering']])
    : [['axle', [...path, 'axle', 'steering']]];
  return axles.flatMap(([name, at], k) => [
    [`steering-${k}-wheels`, `wheels of ${name}`, 'castering, commanded or locked', [...at, 'wheels']],
    [`steering-${k}-ratio`, `wheels of ${name}: their angle for each angle of the bend`, '', [...at, 'ratio']],
    [`steering-${k}-limit`, `wheels of ${name}: their stop`, 'either way', [...at, 'limit']],
  ]);
}
