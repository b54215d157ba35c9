/** Three versions of a route, place by place. No DOM. */
import { without } from '../text/jsonedit.js';
import { difference, rawAt, same, short, withRaw, withRawItems, worded } from './parts.js';

const OWN = ['type', 'cresthaul', 'features'];
const NAMING = ['name', 'landmark'];

const isPlace = feature => feature?.geometry?.type === 'Point';
const idOf = feature => feature?.properties?.id;

/** Places by id with their index, and the indices of legs; null where places are not told apart. */
function partsOf(json) {
  const features = Array.isArray(json.features) ? json.features : [];
  const places = new Map();
  const legs = [];
  for (const [index, feature] of features.entries()) {
    if (!isPlace(feature)) {
      legs.push(index);
    } else if (typeof idOf(feature) !== 'string' || places.has(idOf(feature))) {
      return null;
    } else {
      places.set(idOf(feature), index);
    }
  }
  return { features, places, legs };
}

/** What of a place is one thing: where it is, how it is called, and all that was found there. */
const GROUPS = [
  ['where', 'where it is', feature => feature.geometry, ({ coordinates: [lon, lat] }) =>
    `${lat.toFixed(5)}, ${lon.toFixed(5)}`],
  ['name', 'name and landmark', ({ properties }) => pick(properties, key => NAMING.includes(key)), short],
  ['found', 'what was found there', ({ properties }) => pick(properties, key => !NAMING.includes(key)), short],
];

const pick = (object, wanted) => Object.fromEntries(Object.entries(object ?? {}).filter(([key]) => wanted(key)));

/** @returns {differences, put: (mine ids) → text}, or null where it can only be taken as a whole */
export function compareRoutes(texts) {
  const [base, mine, theirs] = texts;
  const jsons = texts.map(text => JSON.parse(text));
  const parts = jsons.map(partsOf);
  if (parts.some(one => one === null)) {
    return null;
  }
  const differences = [...ofKeys(jsons), ...ofLegs(parts), ...ofPlaces(parts)];
  const put = ids => differences.filter(({ id }) => ids.has(id))
    .reduce((text, { id }) => take(text, mine, id), theirs);
  const isSound = isSame(put(new Set(differences.map(({ id }) => id))), mine) && put(new Set()) === theirs && base;
  return isSound ? { differences, put } : null;
}

/** Whether two routes say the same; the order of places says nothing. */
function isSame(a, b) {
  const [one, other] = [a, b].map(text => {
    const json = JSON.parse(text);
    const { features, places, legs } = partsOf(json);
    return [Object.entries(json).filter(([key]) => key !== 'features').sort(), legs.map(index => features[index]),
      [...places].sort().map(([id, index]) => [id, sorted(features[index])])];
  });
  return same(one, other);
}

/** With keys in order, all the way down. */
const sorted = value => (value !== null && typeof value === 'object' && !Array.isArray(value)
  ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)).map(([k, one]) => [k, sorted(one)]))
  : value);

function ofKeys(jsons) {
  const keys = [...new Set(jsons.flatMap(Object.keys))].filter(key => !OWN.includes(key));
  return keys.map(key => difference({ id: `key/${key}`, where: 'Route', what: worded(key) },
    jsons.map(json => json[key]), short)).filter(Boolean);
}

function ofLegs(parts) {
  const legs = parts.map(({ features, legs: indices }) => indices.map(index => features[index]));
  if (legs.some(list => list.length !== legs[0].length)) {
    return [difference({ id: 'legs', where: 'Route', what: 'its legs' }, legs, list => `${list.length} legs`)]
      .filter(Boolean);
  }
  return legs[0].map((leg, k) => difference(
    { id: `leg/${k}`, where: `Leg ${k + 1}`, what: leg?.properties?.route ?? 'its line' }, legs.map(list => list[k]),
    one => `${one.geometry.coordinates.length} points`)).filter(Boolean);
}

function ofPlaces(parts) {
  const ids = [...new Set(parts.flatMap(({ places }) => [...places.keys()]))];
  return ids.flatMap(id => {
    const all = parts.map(({ features, places }) => features[places.get(id)]);
    const where = `${id} ${all.find(Boolean).properties.name ?? ''}`.trim();
    if (all.some(one => one === undefined)) {
      return [difference({ id: `place/${id}`, where, what: 'the place' }, all,
        one => (one === undefined ? 'not there' : `there, ${worded(one.properties.hazard ?? 'stop')}`))];
    }
    return GROUPS.map(([key, what, part, told]) => {
      const own = all.map(part);
      return difference({ id: `place/${id}/${key}`, where, what }, own,
        value => (key === 'found' ? told(changedOf(value, own)) : told(value)));
    });
  }).filter(Boolean);
}

/** Only what is not the same in all: nobody looks for it among the rest. */
const changedOf = (value, all) => pick(value, key => !all.every(one => same(one[key], all[0][key])));

/** The text with one part as mine has it. */
function take(text, mine, id) {
  const [kind, name, group] = id.split(/\/(.*?)(?:\/(where|name|found))?$/);
  const [ours, own] = [text, mine].map(one => partsOf(JSON.parse(one)));
  if (kind === 'key') {
    return withRaw(text, [name], rawAt(mine, [name]));
  }
  if (id === 'legs') {
    const cut = [...ours.legs].reverse().reduce((made, index) => without(made, ['features', index]), text);
    return withRawItems(cut, ['features'], own.legs.map(index => rawAt(mine, ['features', index])), true);
  }
  if (kind === 'leg') {
    return withRaw(text, ['features', ours.legs[name]], rawAt(mine, ['features', own.legs[name]]));
  }
  const [there, here] = [ours.places.get(name), own.places.get(name)];
  if (group === undefined) {
    return here === undefined ? without(text, ['features', there])
      : there === undefined ? withRawItems(text, ['features'], [rawAt(mine, ['features', here])])
        : withRaw(text, ['features', there], rawAt(mine, ['features', here]));
  }
  const at = path => [['features', there, ...path], ['features', here, ...path]];
  if (group === 'where') {
    const [to, from] = at(['geometry']);
    return withRaw(text, to, rawAt(mine, from));
  }
  const keys = new Set([ours.features[there], own.features[here]].flatMap(one => Object.keys(one.properties)));
  return [...keys].filter(key => NAMING.includes(key) === (group === 'name')).reduce((made, key) => {
    const [to, from] = at(['properties', key]);
    const [was, is] = [rawAt(made, to), rawAt(mine, from)];
    return was === is ? made : withRaw(made, to, is);
  }, text);
}
