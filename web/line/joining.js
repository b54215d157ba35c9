/** Another route joined to the end of the line, or before its start, with all that hangs on it. No DOM. */
import { freeId, withFeature } from './places.js';
import { spanOf } from '../text/jsontext.js';
import { apartM, linesOf, OFF_LINE_M } from './course.js';
import { hangingOn, rehung, withChanges } from './hanging.js';

/** Two places of a kind nearer than this along the line are one that both files have, meters. */
const SAME_PLACE_M = 30;

const positionsOf = json => linesOf(json).flatMap(({ points }) => points);
const count = (positions, value) => positions.map((position, k) => value(k));

/** Whether the other one comes 'after' or 'before', or {refused}: how far apart the ends are, and what to do. */
function side(own, other) {
  const away = { after: apartM(own.at(-1), other[0]), before: apartM(other.at(-1), own[0]) };
  const turned = { after: apartM(own.at(-1), other.at(-1)), before: apartM(own[0], other[0]) };
  if (Math.min(away.after, away.before) <= OFF_LINE_M) {
    return { side: away.after <= OFF_LINE_M ? 'after' : 'before', gapM: Math.min(away.after, away.before) };
  }
  if (Math.min(turned.after, turned.before) <= OFF_LINE_M) {
    return { refused: 'The other line meets this one end to end, in the other direction. Open it, turn it round, save '
      + 'it as a file, and join that.' };
  }
  return { refused: `The other line starts ${Math.round(away.after)} m from the end of this one; ${OFF_LINE_M} m are `
    + 'driven as a gap. Draw on from the end to where it starts, then join it.' };
}

/** Why the two do not go together. */
function differences(json, other) {
  return ['limits', 'permit'].filter(key => other[key] !== undefined
    && JSON.stringify(other[key]) !== JSON.stringify(json[key]))
    .map(key => (key === 'limits'
      ? `The other route has weight limits of its own for the whole of it (${other.limits.name}). They would hold here `
        + 'too, or be lost: take them out of that file, or put them there on a stretch.'
      : `The other route is driven under another permit (${other.permit}). Take it out of that file if one covers `
        + 'both.'));
}

/**
 * What joining comes to: {refused} or {text, told, ids: those of places that had to become others, made}.
 *
 * @param other text of the other route file
 */
export function joinedRoute(text, json, other, otherJson) {
  const [own, more] = [positionsOf(json), positionsOf(otherJson)];
  if (more.length < 2) {
    return { refused: ['The other file has no line.'] };
  }
  const found = side(own, more);
  const refused = [...differences(json, otherJson), ...(found.refused ? [found.refused] : [])];
  if (refused.length > 0) {
    return { refused };
  }
  const isAfter = found.side === 'after';
  const positions = isAfter ? [...own, ...more] : [...more, ...own];
  const origins = (mine, of) => (mine === isAfter ? [...count(of, k => k), ...count(mine ? more : own, () => -1)]
    : [...count(mine ? more : own, () => -1), ...count(of, k => k)]);
  const renamed = withFreeIds(json, other, otherJson);
  const first = rehung(json, { positions, origins: origins(true, own) }, { taken: renamed.json.features });
  const second = rehung(renamed.json, { positions, origins: origins(false, more) },
    { taken: [...json.features, ...first.twins.map(({ feature }) => feature)] });
  if (first.refused.length + second.refused.length > 0) {
    return { refused: [...first.refused, ...second.refused] };
  }
  const twins = [...unlisted(first.twins, renamed.json, second), ...unlisted(second.twins, json, first)];
  const mine = withChanges(text, first.changes);
  const theirs = withChanges(renamed.text, second.changes);
  return {
    refused: [],
    text: twins.reduce((now, { feature }) => withFeature(now, feature), put(mine, theirs, isAfter)),
    told: [
      found.gapM > 1 && `A gap of ${Math.round(found.gapM)} m between the two counts as driven.`,
      ...renamed.said, ...first.told, ...second.told, ...twins.map(({ said }) => said),
    ].filter(Boolean),
    after: isAfter,
  };
}

/** Twins but those that the other file has as places of its own. */
function unlisted(twins, json, { at }) {
  return twins.filter(({ feature, alongM }) => !at.some(({ index, alongM: there }) =>
    json.features[index].properties.hazard === feature.properties.hazard && Math.abs(there - alongM) < SAME_PLACE_M));
}

/** The other file with identifiers that this one does not have. */
function withFreeIds(json, text, other) {
  const said = [];
  const taken = new Set(hangingOn(json).map(({ own }) => own.id));
  const features = [...json.features, ...other.features];
  const made = hangingOn(other).reduce((now, { index, own }) => {
    if (!taken.has(own.id)) {
      return now;
    }
    const id = freeId({ json: { features } }, own.id.match(/^[A-Za-z]/)?.[0] ?? 'H');
    features.push({ properties: { id } });
    said.push(`${own.id} ${own.name} of the other route is ${id} here.`);
    const [from, to] = spanOf(now, ['features', index, 'properties', 'id']);
    return now.slice(0, from) + JSON.stringify(id) + now.slice(to);
  }, text);
  return { text: made, json: JSON.parse(made), said };
}

/** The features of one text among those of another: behind all, or before them. */
function put(text, other, isAfter) {
  const [from, to] = spanOf(other, ['features']);
  const inside = other.slice(from + 1, to - 1).trim();
  const [start, end] = spanOf(text, ['features']);
  const list = text.slice(start + 1, end - 1);
  const at = start + 1 + (isAfter ? list.trimEnd().length : list.length - list.trimStart().length);
  return isAfter ? `${text.slice(0, at)},\n    ${inside}${text.slice(at)}`
    : `${text.slice(0, at)}${inside},\n    ${text.slice(at)}`;
}
