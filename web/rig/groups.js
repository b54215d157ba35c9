/** The groups of axles that a stance has, from the drive axles to the last booster. No DOM. */
import { valueAt } from './frame.js';

/** Groups that can have another number of axles: {key, word, name, path of the list or only axle, weight}. */
export function groupsOf(json, stance) {
  const at = ['stances', stance];
  const list = (key, path) => (valueAt(json, [...at, key]) ?? []).map((one, k) => [k, [...at, ...path, k]]);
  return [
    {
      key: 'drive', word: 'drive', name: 'drive axles', path: [...at, 'tractor', 'drive', 'axles'],
      weight: ['tractor'],
    },
    ...list('jeeps', ['jeeps']).map(([k, path], i, all) => ({
      key: `jeep-${k}`, word: all.length > 1 ? `jeep ${k + 1}` : 'jeep',
      name: all.length > 1 ? `axles of jeep ${k + 1}` : 'axles of the jeep',
      path: [...path, 'axles'], weight: ['jeeps', k],
    })),
    {
      key: 'trailer', word: 'trailer', name: 'trailer axles', path: [...at, 'trailer', 'axles'],
      weight: ['trailer'],
    },
    ...boosterPaths(json, at).map(([unit, path, weight, word]) => ({
      key: unit, word, name: `axles of ${word === 'booster' ? 'the booster' : word}`, weight,
      path: [...path, valueAt(json, [...path, 'axle']) ? 'axle' : 'axles'],
    })),
  ];
}

function boosterPaths(json, at) {
  const behind = valueAt(json, [...at, 'boostersBehind']) ?? [];
  const word = k => (behind.length > 0 ? `booster ${k + 1}` : 'booster');
  return [
    ...valueAt(json, [...at, 'booster']) ? [['booster', [...at, 'booster'], ['booster'], word(0)]] : [],
    ...behind.map((one, k) =>
      [`boostersBehind-${k}`, [...at, 'boostersBehind', k], ['boostersBehind', k], word(k + 1)]),
  ];
}
