/**
 * The line driven the other way. What was measured along it is turned end for end where that is exact; what cannot be
 * turned for certain is taken off, by name, so that its place is not surveyed. No DOM.
 */
import { itemsOf, membersOf, spanOf, withMember } from '../text/jsontext.js';
import { withoutPlace } from './places.js';
import { courseOf, courseOfLines, linesOf, passagesOf, placeAt, rounded, shortWay } from './course.js';
import { hangingOn, meters, rehung, withChanges } from './hanging.js';

/** What says nothing of the road in one direction or in one lane, and stays where nobody has measured the other. */
const EITHER_WAY = new Set([
  'hazard', 'id', 'name', 'passage', 'note', 'candidate', 'carries', 'crossingNumber', 'emergencyPhone', 'warning',
  'warningTime', 'trainSpeed', 'extent', 'measured', 'voltage', 'keepAway',
]);
/** What is told of the side one comes from; nobody knows it of the other. */
const OF_ONE_SIDE = { landmark: 'landmark', signs: 'signs', storage: 'room beyond the tracks', sight: 'sight' };
const HEIGHT = ['clearance', 'extent', 'soffit', 'wire', 'reportedBy', 'lowering'];
const CORNER = ['template', 'pavement', 'opposing', 'obstacles', 'islands', 'curbHeight', 'drives', 'survey'];

/** "-12 m" of "12 m" and back; what is none of either stays. */
export function negated(text) {
  const [, blank, sign, size] = text.match(/^(\s*)([-+−–]?)\s*(.*)$/s);
  return sign === '-' || sign === '−' || sign === '–' ? blank + size
    : /[1-9½¼¾⅛⅜⅝⅞]/.test(size) ? `${blank}-${size}` : text;
}

const quoted = change => text => JSON.stringify(change(JSON.parse(text)));
const otherSide = name => name.replace(/\b(left|right)\b/gi, side =>
  ({ left: 'right', right: 'left', Left: 'Right', Right: 'Left', LEFT: 'RIGHT', RIGHT: 'LEFT' }[side] ?? side));

const replaced = (text, path, change) => {
  const [from, to] = spanOf(text, path);
  return text.slice(0, from) + change(text.slice(from, to)) + text.slice(to);
};

/** The items of a list in the other order, each written anew; what stands between them stays. */
function turned(text, path, change = item => item) {
  const spans = itemsOf(text, path);
  const items = spans.map(([from, to]) => change(text.slice(from, to))).reverse();
  return spans.reduceRight((made, [from, to], k) => made.slice(0, from) + items[k] + made.slice(to), text);
}

const turnedPoint = item => replaced(item, [0], quoted(negated));

/** A key of an object under another name, in its place. */
function renamed(text, path, names) {
  return membersOf(text, path).reduceRight((made, { key, from }) => {
    const length = JSON.stringify(key).length;
    return names[key] === undefined ? made
      : made.slice(0, from) + JSON.stringify(names[key]) + made.slice(from + length);
  }, text);
}

/** What was measured at a place, from the other side; text is that of its feature. */
function turnedMeasures(text, own, { stretch }) {
  const at = ['properties'];
  let made = text;
  (own.profile ?? []).forEach(({ offset }, k) => {
    made = turned(made, [...at, 'profile', k, 'points'], turnedPoint);
    made = replaced(made, [...at, 'profile', k, 'line'], quoted(otherSide));
    made = offset === undefined ? made : replaced(made, [...at, 'profile', k, 'offset'], quoted(negated));
  });
  if (own.soffit) {
    made = turned(made, [...at, 'soffit'], turnedPoint);
  }
  if (own.wire?.supports) {
    made = turned(made, [...at, 'wire', 'supports'], turnedPoint);
  }
  if (own.tracks) {
    made = turned(made, [...at, 'tracks'], quoted(negated));
  }
  if (own.extent && !stretch) {
    made = turned(made, [...at, 'extent'], quoted(negated));
  }
  if (own.candidate?.sketch) {
    made = turned(made, [...at, 'candidate', 'sketch', 'points'], turnedPoint);
  }
  ['approachBefore', 'approachAfter'].filter(key => own[key]).forEach(key => {
    made = replaced(made, [...at, key, 'grade'], quoted(negated));
  });
  return renamed(made, at, { approachBefore: 'approachAfter', approachAfter: 'approachBefore' });
}

/** Keys that are taken off a hazard, with what is said of it. */
function takenOff(own, { paths, limits }) {
  const off = new Map();
  const take = (keys, why) => keys.filter(key => own[key] !== undefined).forEach(key => off.set(key, why));
  if (own.hazard === 'corner' && (own.template || own.opposing)) {
    take(CORNER, own.template ? 'its template, which is drawn for the way it is driven now'
      : 'its outlines, whose opposing lanes are those of the way it is driven now');
  }
  if (/\b(forward|backward)\b/.test(own.candidate?.raw ?? '')) {
    take([...HEIGHT, 'limits'], 'what the map says of one direction');
  }
  if (!limits) {
    take(['limits', 'applies'], 'its weight limits');
  }
  if (paths === 'other') {
    take(Object.keys(own).filter(key => !EITHER_WAY.has(key) && !(key in OF_ONE_SIDE)
      && !['limits', 'applies'].includes(key)), 'what was measured in the lane of the other direction');
    take(own.clearance !== undefined ? ['extent'] : [], 'what was measured in the lane of the other direction');
  }
  Object.keys(OF_ONE_SIDE).forEach(key => take([key], OF_ONE_SIDE[key]));
  if (own.hazard === 'stretch') {
    off.delete('extent');
  }
  return off;
}

/** Whether what makes a hazard surveyed is among what is taken off. */
const wasMeasured = off => ['profile', 'soffit', 'clearance', 'wire', 'template', 'pavement', 'limits']
  .some(key => off.has(key));

function reversedHazard(text, { own }, choices, said) {
  const off = takenOff(own, choices);
  const kept = Object.fromEntries(Object.entries(own).filter(([key]) => !off.has(key)));
  let made = [...off.keys()].reduce((now, key) => withMember(now, ['properties'], key, undefined), text);
  if (wasMeasured(off)) {
    if (own.measured !== undefined) {
      made = withMember(made, ['properties'], 'measured', '"unknown"');
    }
    if (own.candidate?.state === 'surveyed') {
      made = withMember(made, ['properties', 'candidate'], 'state', '"open"');
    }
  }
  const words = [...new Set(off.values())];
  if (words.length > 0) {
    said.push(`${own.id} ${own.name}: ${words.join('; ')}.`);
  }
  return turnedMeasures(made, kept, { stretch: own.hazard === 'stretch' });
}

/** A stopping place seen from the other side: the same ground, so that its front is where its rear was. */
function reversedStop(text, { own, lonLat }, before, after) {
  const passed = passagesOf(before, lonLat)[(own.passage ?? 1) - 1];
  const alongM = passed.alongM - meters(own.room);
  if (!(alongM >= 0)) {
    return null;
  }
  const [from, to] = [placeAt(before, passed.alongM).lonLat, placeAt(before, alongM).lonLat];
  const front = [rounded(shortWay(lonLat[0] + to[0] - from[0])), rounded(lonLat[1] + to[1] - from[1])];
  const passages = passagesOf(after, front);
  const away = passages.map(passage => Math.abs(passage.alongM - (after.lengthM - alongM)));
  const which = away.indexOf(Math.min(...away)) + 1;
  const moved = withMember(text, ['geometry'], 'coordinates', JSON.stringify(front));
  return passages.length > 1 || own.passage !== undefined
    ? withMember(moved, ['properties'], 'passage', JSON.stringify(which)) : moved;
}

/** Why a route cannot be turned with these answers. */
function refusals(json, { paths, limits }) {
  return [
    !['same', 'other'].includes(paths) && hangingOn(json).some(({ kind }) => kind === 'hazard')
      && 'Say whether the way back rolls on the same paths, or in a lane of its own.',
    !limits && (json.limits !== undefined || json.permit !== undefined)
      && `The route has ${json.limits ? `weight limits (${json.limits.name})` : 'a permit'} for the way it is driven `
        + 'now. Say that they hold the other way too, or begin with a route without them.',
  ].filter(Boolean);
}

/**
 * The route driven the other way: {refused, text, said: what is taken off, by name, gone: places taken out, told}.
 *
 * @param choices {paths: 'same' | 'other': whether wheels roll where they were surveyed, stops: whether stopping places
 *     can be used from the other side, limits: whether weight limits and permit hold}
 */
export function reversedRoute(text, json, choices) {
  const refused = refusals(json, choices);
  const lines = linesOf(json);
  const positions = lines.flatMap(({ points }) => points).reverse();
  const hung = rehung(json, { positions, origins: positions.map((position, k) => positions.length - 1 - k) });
  if (refused.length + hung.refused.length > 0) {
    return { refused: [...refused, ...hung.refused], said: [], gone: [], told: [] };
  }
  const said = [];
  const gone = [];
  const changed = withChanges(text, hung.changes);
  const spans = itemsOf(changed, ['features']);
  const texts = spans.map(([from, to]) => changed.slice(from, to));
  hangingOn(JSON.parse(changed)).forEach(place => {
    const { index, kind, own } = place;
    const now = kind === 'hazard' ? reversedHazard(texts[index], place, choices, said)
      : kind === 'stop' && !choices.stops ? null
        : kind === 'stop' ? reversedStop(texts[index], { ...place, own: json.features[index].properties },
          courseOfLines(lines), courseOf(positions)) : texts[index];
    texts[index] = now ?? texts[index];
    if (now === null) {
      gone.push({ index, own, said: `${own.id} ${own.name}` });
    } else if (kind !== 'hazard' && own.landmark !== undefined) {
      texts[index] = withMember(now, ['properties'], 'landmark', undefined);
      said.push(`${own.id} ${own.name}: landmark.`);
    }
  });
  turnLegs(json, texts);
  return { refused: [], said, gone, told: notes(json, choices), text: assembled(changed, spans, texts, gone) };
}

/** Legs in the other order, each from its other end. */
function turnLegs(json, texts) {
  const legs = json.features.flatMap(({ properties }, k) => (properties?.route !== undefined ? [k] : []));
  const made = legs.map(k => {
    const path = ['geometry', 'coordinates'];
    return json.features[k].geometry.type === 'MultiLineString' ? turned(texts[k], path, line => turned(line, []))
      : turned(texts[k], path);
  }).reverse();
  legs.forEach((k, i) => { texts[k] = made[i]; });
}

function assembled(text, spans, texts, gone) {
  const made = spans.reduceRight((now, [from, to], k) => now.slice(0, from) + texts[k] + now.slice(to), text);
  return gone.map(({ index }) => index).sort((a, b) => b - a).reduce(withoutPlace, made);
}

/** What else a person must know. */
const notes = (json, { paths }) => [
  paths === 'same' && 'Surveys are turned end for end: they hold where wheels roll on the same paths as before.',
  hangingOn(json).some(({ own }) => own.candidate?.source === 'map')
    && 'A map was read for the direction before. What it has for the other direction alone is not listed: read it '
      + 'again, and bring the route up to date.',
].filter(Boolean);
