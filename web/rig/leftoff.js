/** The combinations a stance runs as: as measured, and without jeeps and boosters that may be left off. No DOM. */
import { withKey, without, withValue } from '../text/jsonedit.js';
import { valueAt } from './frame.js';

const listOf = value => (Array.isArray(value) ? value : []);
const has = (unit, state) => listOf(unit?.states).includes(state);

/** How many of a row stay at least: units come off from the rear. */
const staying = (units, off) => units.findLastIndex(unit => !has(unit, off)) + 1;
const numbered = (word, number) => (number === 1 ? word : `${word} ${number}`);

/** The names of the combinations of a stance, as measured first: those by which the program knows them. */
export function combinationsOf(stance) {
  const jeeps = listOf(stance.jeeps);
  const behind = listOf(stance.boostersBehind);
  const names = [];
  for (let j = jeeps.length; j >= staying(jeeps, 'out'); j--) {
    for (let b = behind.length; b >= staying(behind, 'none'); b--) {
      const off = [...jeeps.slice(j).map((_, k) => numbered('jeep', j + k + 1)),
        ...behind.slice(b).map((_, k) => numbered('booster', b + k + 2))];
      names.push(off.length === 0 ? stance.name : `${stance.name}, without ${off.join(' and ')}`);
    }
  }
  return names;
}

/** A row of units that come off from the rear: where each stands in the file, what it is called, its state when off. */
function rowsOf(json, stance) {
  const at = ['stances', stance];
  const paths = key => listOf(valueAt(json, [...at, key])).map((_, k) => [...at, key, k]);
  const booster = valueAt(json, [...at, 'booster']) === undefined ? [] : [[...at, 'booster']];
  return [
    { word: 'jeep', on: 'in', off: 'out', paths: paths('jeeps') },
    { word: 'booster', on: 'trailing', off: 'none', paths: [...booster, ...paths('boostersBehind')] },
  ];
}

/** What can be said of it now: {key, title, what, make}. */
export function leftOffChanges(json, stance) {
  return rowsOf(json, stance).flatMap(({ word, on, off, paths }) => {
    const loose = paths.map(path => has(valueAt(json, path), off));
    const last = loose.findLastIndex(one => !one);
    const first = last + 1;
    const told = index => (index === 0 ? `the ${word}` : `${word} ${index + 1}`);
    return [
      last >= 0 && {
        key: `${word}-loose`, title: `Let ${told(last)} be left off`, what: `${told(last)} may be left off`,
        make: text => withState(text, paths[last], on, off),
      },
      first < paths.length && {
        key: `${word}-fixed`, title: `Never leave ${told(first)} off`, what: `${told(first)} is never left off`,
        make: text => withoutState(text, paths[first], off),
      },
    ].filter(Boolean);
  });
}

function withState(text, path, on, off) {
  const states = valueAt(JSON.parse(text), [...path, 'states']);
  return states === undefined ? withKey(text, path, 'states', [on, off])
    : withValue(text, [...path, 'states'], [...states, off]);
}

function withoutState(text, path, off) {
  const left = valueAt(JSON.parse(text), [...path, 'states']).filter(state => state !== off);
  return left.length > 0 ? withValue(text, [...path, 'states'], left) : text;
}

/** The text in which nothing of a row is left off, so that another unit can come behind it. */
export const allCoupled = (text, stance, word) => {
  const row = rowsOf(JSON.parse(text), stance).find(one => one.word === word);
  return row.paths.reduce((made, path) => {
    const unit = valueAt(JSON.parse(made), path);
    return has(unit, row.off) && has(unit, row.on) ? withoutState(made, path, row.off) : made;
  }, text);
};

/** Names of the combinations a rig runs as; none when it is not shaped like one, and the server says why. */
export const stancesOf = rig => listOf(rig?.json?.stances)
  .filter(stance => typeof stance?.name === 'string').flatMap(combinationsOf);

/** The combination when the rig has it, else null: the usual one. */
export const stanceIn = (rig, name) => (stancesOf(rig).includes(name) ? name : null);

/** What the server checks where none is named: "loaded", else the first. */
export function usualStance(rig) {
  const names = stancesOf(rig);
  return names.includes('loaded') ? 'loaded' : names[0];
}

/** Index of the measured stance that a combination is of; the usual one's where none is named. */
export const measuredOf = (json, name) => Math.max(0, listOf(json?.stances)
  .findIndex(stance => combinationsOf(stance ?? {}).includes(name ?? usualStance({ json }))));
