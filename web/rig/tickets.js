/**
 * Weight and place of a piece from what scales showed before and after it was loaded, every axle group by itself. On
 * level ground the weights and the axles of trailer and boosters turn about the kingpin: what it carries needs no
 * tractor, and what passes between trailer and boosters cancels out. Kilograms and picometers. No DOM.
 */
import { valueAt, xOf } from './frame.js';
import { lengthText } from '../text/length.js';
import { withValue } from '../text/jsonedit.js';
import { massOf, massText, withGross } from './unitweight.js';

const mean = values => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Axle groups that are weighed, front to rear: {key, name, arm}: how far behind the kingpin, null ahead of it. */
export function weighedGroups(json, stance) {
  const at = ['stances', stance];
  const center = path => {
    const axles = valueAt(json, [...path, 'axles']);
    return mean(axles ? axles.map((axle, k) => xOf(json, [...path, 'axles', k, 'x']))
      : [xOf(json, [...path, 'axle', 'x'])]);
  };
  const jeeps = valueAt(json, [...at, 'jeeps']) ?? [];
  const kingpin = xOf(json, [...at, 'trailer', 'kingpin', 'x']);
  const boosters = boosterPaths(json, at);
  let hinge = kingpin - xOf(json, [...at, 'trailer', 'boosterHinge', 'x']);
  return [
    { key: 'steer', name: 'steer axle', arm: null },
    { key: 'drive', name: 'drive axles', arm: null },
    ...jeeps.map((jeep, k) => ({ key: `jeep-${k}`, name: jeeps.length > 1 ? `jeep ${k + 1}` : 'jeep', arm: null })),
    { key: 'trailer', name: 'trailer axles', arm: kingpin - center([...at, 'trailer']) },
    ...boosters.map((path, k) => {
      const own = xOf(json, [...path, 'hinge', 'x']);
      const arm = hinge + own - center(path);
      hinge += own - xOf(json, [...path, 'nextHinge', 'x']);
      return { key: `booster-${k}`, name: boosters.length > 1 ? `booster ${k + 1}` : 'booster', arm };
    }),
  ];
}

const boosterPaths = (json, at) => [
  ...valueAt(json, [...at, 'booster']) ? [[...at, 'booster']] : [],
  ...(valueAt(json, [...at, 'boostersBehind']) ?? []).map((one, k) => [...at, 'boostersBehind', k]),
];

/**
 * The piece that the tickets tell.
 *
 * @param tickets key of a group → {empty, loaded} as written
 * @param share how good a ticket is, of itself, 95 %
 * @returns {missing: name of the group whose tickets are not there}, {lighter: true} where nothing was loaded, or
 *          {kg, kgGood, arm, armGood, steer}: arm behind the kingpin; Good the half-widths that the tickets leave;
 *          steer {ticketKg, levelKg, goodKg}, what the steer axle gained and what the piece puts on it, or null
 */
export function pieceOf(json, stance, tickets, share) {
  const groups = weighedGroups(json, stance)
    .map(group => ({ ...group, empty: massOf(tickets[group.key]?.empty), loaded: massOf(tickets[group.key]?.loaded) }));
  const missing = groups.find(({ empty, loaded }) => empty === null || loaded === null);
  if (missing) {
    return { missing: missing.name };
  }
  const gained = ({ empty, loaded }) => loaded - empty;
  const kg = groups.reduce((sum, group) => sum + gained(group), 0);
  if (kg <= 0) {
    return { lighter: true };
  }
  const arm = groups.reduce((sum, group) => sum + (group.arm ?? 0) * gained(group), 0) / kg;
  // By how much weight and place change with one kilogram on one ticket: 1, and (its arm − the piece's) / weight.
  const spread = by => Math.hypot(...groups.flatMap(group =>
    [group.empty, group.loaded].map(one => by(group) * share * one)));
  return {
    kg, kgGood: spread(() => 1), arm, armGood: spread(group => ((group.arm ?? 0) - arm) / kg),
    steer: steerOf(json, stance, groups, kg, gained, share),
  };
}

/** Without a jeep the tractor's own levers say what the steer axle gains: tickets that say otherwise do not agree. */
function steerOf(json, stance, groups, kg, gained, share) {
  const at = ['stances', stance, 'tractor'];
  if (groups.some(({ key }) => key.startsWith('jeep'))) {
    return null;
  }
  const [steer, wheel] = [xOf(json, [...at, 'steer', 'x']), xOf(json, [...at, 'fifthWheel', 'x'])];
  const drive = mean(valueAt(json, [...at, 'drive', 'axles'])
    .map((axle, k) => xOf(json, [...at, 'drive', 'axles', k, 'x'])));
  const lever = (wheel - drive) / (steer - drive);
  const ahead = groups.filter(({ arm }) => arm === null);
  const kingpinKg = ahead.reduce((sum, group) => sum + gained(group), 0);
  const good = Math.hypot(...ahead.flatMap(({ key, empty, loaded }) =>
    [empty, loaded].map(one => (key === 'steer' ? 1 - lever : lever) * share * one)));
  return { ticketKg: gained(ahead[0]), levelKg: lever * kingpinKg, goodKg: good };
}

/** The text with a piece's weight and place along the trailer as the tickets tell them. @param index of the piece */
export function withPiece(text, stance, index, { kg, arm }) {
  const json = JSON.parse(text);
  const path = ['stances', stance, 'weights', 'pieces', index];
  const piece = valueAt(json, path);
  const x = xOf(json, ['stances', stance, 'trailer', 'kingpin', 'x']) - arm;
  // To a quarter of an inch or a centimeter: finer than tickets tell.
  const step = / ?m$/.test(piece.cg.x) ? 1e10 : 25.4e9 / 4;
  const made = withValue(withValue(text, [...path, 'weight'], massText(kg, piece.weight)),
    [...path, 'cg', 'x'], lengthText(Math.round(x / step) * step, piece.cg.x));
  return withGross(made, stance, massOf(massText(kg, piece.weight)) - massOf(piece.weight));
}
