/**
 * Three versions of a project side by side: what two people made of the same beginning, difference by difference, and
 * the two put together. No DOM.
 */
import { decode } from '../page/address.js';
import { MARGINS } from '../page/margins.js';
import { compareRigs } from './rig.js';
import { compareRoutes } from './route.js';
import { difference, same, short, worded } from './parts.js';

const PLAN = {
  times: 'times of the plan', forbid: 'configurations that are not used', fix: 'configuration that is kept',
  avoidRaising: 'no raising', acceptTight: 'tight places that are accepted', setAside: 'places that are set aside',
  leastReserve: 'least reserve', fewestConditions: 'fewest conditions', settled: 'conditions that are resolved',
};

/**
 * A version: {name, files: {route, rig, limits, basemap}: texts or undefined, view: address fragment}.
 *
 * @param versions [base, mine, theirs]
 * @returns {differences, put}: put (choices: id → 'mine' | 'theirs') → {route, rig, limits, basemap, name,
 *          settings: {stance, margins, plan}}; a difference that one of them made alone is put in where nothing is
 *          chosen
 */
export function compareVersions(versions, units) {
  const kinds = ['route', 'rig', 'limits', 'basemap'].map(kind => [kind, compareFiles(kind, versions, units)]);
  const said = versions.map(settingsOf);
  const settings = ofSettings(said);
  const differences = [...kinds.flatMap(([, { differences: found }]) => found), ...settings];
  return {
    differences,
    put: choices => {
      const ids = new Set(differences.filter(({ id, by }) => (choices[id] ?? by) === 'mine').map(({ id }) => id));
      return {
        ...Object.fromEntries(kinds.map(([kind, { put }]) => [kind, put(ids)])), ...putSettings(said, settings, ids),
      };
    },
  };
}

/** Those that somebody has to choose at. */
export const openOf = (differences, choices) =>
  differences.filter(({ id, by }) => by === 'both' && choices[id] === undefined);

function compareFiles(kind, versions, units) {
  const texts = versions.map(({ files }) => files[kind]);
  const prefix = id => `${kind}:${id}`;
  const [base, mine, theirs] = texts;
  if (mine === theirs || mine === base || theirs === base) {
    // One of them left it alone: it is the other's, to the byte, and its parts are only told.
    return whole(kind, texts, parts(kind, texts, units)?.differences ?? null);
  }
  const found = parts(kind, texts, units);
  return found === null ? whole(kind, texts, null) : {
    differences: found.differences.map(one => ({ ...one, id: prefix(one.id), part: kind })),
    put: ids => found.put(new Set(found.differences.filter(({ id }) => ids.has(prefix(id))).map(({ id }) => id))),
  };
}

function parts(kind, texts, units) {
  if (['limits', 'basemap'].includes(kind) || texts.some(text => text === undefined)) {
    return null;
  }
  return kind === 'route' ? compareRoutes(texts) : compareRigs(texts, units);
}

const WHOLE = { route: 'Route', rig: 'Rig', limits: 'Limits file', basemap: 'Base map' };

function whole(kind, texts, told) {
  const one = difference({ id: `${kind}:`, where: WHOLE[kind], what: told ? wholeWords(told) : 'all of it' }, texts,
    text => (text === undefined ? 'none' : `a file of ${text.length} characters`));
  return {
    differences: one ? [{ ...one, part: kind, ...(told && sides(told)) }] : [],
    put: ids => (one && ids.has(one.id) ? texts[1] : texts[2]),
  };
}

const MOST_TOLD = 6;
const listed = list => (list.length > MOST_TOLD
  ? [...list.slice(0, MOST_TOLD), `${list.length - MOST_TOLD} more`] : list).join('; ');
const wholeWords = told => listed(told.map(({ where, what }) => (where === 'Rig' ? what : `${where}: ${what}`)))
  || 'the way it is written';
const sides = told => Object.fromEntries(['mine', 'theirs', 'before']
  .map(side => [side, listed(told.map(one => one[side])) || 'the same figures']));

function settingsOf({ name, view }) {
  const { stance, margins, plan } = decode(view ?? '');
  return { name, stance, margins: margins ?? {}, plan };
}

function ofSettings(all) {
  const one = (id, what, get) => difference({ id: `settings:${id}`, where: 'Project', what }, all.map(get),
    value => (value === null || value === undefined ? 'as in the files' : short(value)));
  return [
    one('name', 'its name', ({ name }) => name),
    one('stance', 'stance of the rig', ({ stance }) => stance),
    ...MARGINS.map(({ key, merged }) => one(`margins/${key}`, merged, ({ margins }) => margins[key] ?? null)),
    ...Object.entries(PLAN).map(([key, what]) => one(`plan/${key}`, what, ({ plan }) => plan[key])),
  ].filter(Boolean).map(found => ({ ...found, part: 'settings', what: found.what ?? worded(found.id) }));
}

function putSettings([, mine, theirs], differences, ids) {
  const isMine = id => ids.has(id) && differences.some(one => one.id === id);
  const from = id => (isMine(`settings:${id}`) ? mine : theirs);
  const margins = Object.fromEntries(MARGINS
    .map(({ key }) => [key, from(`margins/${key}`).margins[key]]).filter(([, value]) => value !== undefined));
  return {
    name: from('name').name,
    settings: {
      stance: from('stance').stance,
      margins: same(margins, {}) ? null : margins,
      plan: Object.fromEntries(Object.keys(PLAN).map(key => [key, from(`plan/${key}`).plan[key]])),
    },
  };
}
