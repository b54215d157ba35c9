/**
 * What hangs on the line of a route, hazards, stopping places and waypoints, when the line becomes another: which of
 * them the new line still comes by, for which time, and what of them must be told anew. The program's reader is the
 * judge; this finds out beforehand and by name what it would refuse, and what it would not notice. No DOM.
 */
import { freeId } from './places.js';
import { withMember } from '../text/jsontext.js';
import { lengthOf } from '../text/typedlength.js';
import { bearingAt, courseOf, courseOfLines, linesOf, OFF_LINE_M, passagesOf, placeAt, rounded } from './course.js';

/** A measured place may be passed in a direction this far from that of its survey, degrees: as the reader takes of
    corners. */
const MOST_ASKEW_DEG = 25;
/** An end of a stretch that moved less stays as it is written, meters. */
const SAME_M = 0.05;
/** What says something about the road in the direction it was measured in. */
const MEASURED = ['profile', 'soffit', 'extent', 'wire', 'tracks'];

/** A length of a file in meters, NaN where it is none. */
export function meters(text) {
  const kilometers = String(text).match(/^\s*([-+−–]?)\s*(\d+(?:\.\d+)?)\s*km\s*$/);
  return kilometers ? Number(kilometers[2]) * (/[-−–]/.test(kilometers[1]) ? -1000 : 1000)
    : lengthOf(String(text), 'm').m ?? NaN;
}
const inMeters = value => `${Number(value.toFixed(3))} m`;
const called = ({ id, name }) => `${id} ${name}`;

/** Hazards, stopping places and waypoints: [{index, kind, own, lonLat}]; own are its properties. */
export const hangingOn = json => (json.features ?? []).flatMap((feature, index) => {
  const own = feature?.properties ?? {};
  const kind = own.hazard !== undefined ? 'hazard' : own.stop !== undefined ? 'stop' : own.place !== undefined ? 'mark'
    : null;
  return kind && feature.geometry?.type === 'Point'
    ? [{ index, kind, own, lonLat: feature.geometry.coordinates }] : [];
});

const isJudged = ({ kind, own }) => kind === 'hazard' && own.candidate?.state !== 'dismissed';
export const isStretch = ({ own }) => own.hazard === 'stretch';
const isMeasured = ({ kind, own }) => kind === 'hazard' && own.hazard !== 'corner' && own.hazard !== 'stretch'
  && MEASURED.some(key => own[key] !== undefined);

/** Pieces there before and after: {map: old → new, images: the new ones, turned: whether they run the other way}. */
function keptPieces({ origins }) {
  const map = new Map();
  let turned = false;
  for (let j = 1; j < origins.length; j++) {
    const [a, b] = [origins[j - 1], origins[j]];
    if (a >= 0 && b >= 0 && Math.abs(a - b) === 1) {
      map.set(Math.max(a, b), j);
      turned = b < a;
    }
  }
  return { map, images: new Set(map.values()), turned };
}

/**
 * The passages of a place on the new line that are those of the old one: for each old one the index of the new one,
 * null where it is no longer passed, undefined where that cannot be told.
 */
function matched(old, fresh, { map, images }) {
  const held = passage => {
    for (const piece of [passage.piece, ...range(passage)]) {
      const now = map.get(piece);
      const k = now === undefined ? -1 : fresh.findIndex(({ first, last }) => now >= first && now <= last);
      if (k >= 0) {
        return k;
      }
    }
    return null;
  };
  const found = old.map(held);
  const isChanged = ({ first, last }) => range({ first, last }).some(piece => !images.has(piece));
  const open = fresh.map((passage, k) => k).filter(k => !found.includes(k) && isChanged(fresh[k]));
  const lost = found.map((k, p) => p).filter(p => found[p] === null && range(old[p]).some(piece => !map.has(piece)));
  if (lost.length === 1 && open.length === 1) {
    found[lost[0]] = open[0];
  } else if (lost.length > 0 && open.length > 0) {
    lost.forEach(p => { found[p] = undefined; });
  }
  return found;
}

const range = ({ first, last }) => Array.from({ length: last - first + 1 }, (none, k) => first + k);

/**
 * What becomes of all that hangs on the line.
 *
 * @param json of the route before
 * @param positions, origins of the line after, as `edited` gives them
 * @param cut {fromM, toM} of the line before that stays: what lies beyond is taken out, rather than a reason to refuse
 * @param taken features whose identifiers are taken besides
 * @returns {refused, gone: [{index, own, said}], changes: [{index, passage, extent, lonLat}], twins: [{feature,
 *     alongM, said}], told, at: [{index, alongM}]}: sentences by name why it cannot be; what goes; what is written of
 *     those that stay; hazards that are passed once more and become places of their own that nobody has surveyed; what
 *     else a person should know; where all that stay are then
 */
export function rehung(json, { positions, origins }, { cut = null, taken = [] } = {}) {
  const before = courseOfLines(linesOf(json));
  const after = courseOf(positions, origins);
  const kept = keptPieces(after);
  const result = { refused: [], gone: [], changes: [], twins: [], told: [], at: [] };
  const seen = new Map();
  const at = hangingOn(json).map(place => {
    const key = place.lonLat.join();
    if (!seen.has(key)) {
      const old = passagesOf(before, place.lonLat);
      const fresh = passagesOf(after, place.lonLat);
      seen.set(key, { old, fresh, found: matched(old, fresh, kept), twinned: new Set() });
    }
    return { place, spot: seen.get(key) };
  });
  at.forEach(({ place, spot }) => hang(place, spot, { before, after, kept, cut, result }));
  at.forEach(({ place, spot }) => addTwins(json, place, spot, taken, result));
  return result;
}

function hang(place, { old, fresh, found }, { before, after, kept, cut, result }) {
  const { own, index } = place;
  const which = (own.passage ?? 1) - 1;
  const was = old[which];
  if (was === undefined) {
    // The file in force was accepted: the page counts passages otherwise than the program here.
    result.refused.push(`${called(own)}: which time the line passes it cannot be told here. Move it by hand first.`);
    return;
  }
  if (isStretch(place) && own.extent.map(meters).some(Number.isNaN)) {
    result.refused.push(`${called(own)}: its ends cannot be read here. Write them in meters, such as "1200 m".`);
    return;
  }
  const now = found[which];
  if (now === undefined) {
    result.refused.push(`${called(own)}: the line would pass it ${fresh.length} times, and which of them is meant is `
      + 'not certain. Change the line in smaller steps.');
    return;
  }
  if (now === null) {
    leave(place, was, { before, after, kept, cut, result });
    return;
  }
  result.at.push({ index, alongM: fresh[now].alongM });
  const stretch = isStretch(place)
    ? extentOf(place, was.alongM, fresh[now].alongM, { before, after, kept, cut }) : undefined;
  if (stretch === null) {
    result.gone.push({ index, own, said: `${called(own)}: none of it is left.` });
    return;
  }
  if (isMeasured(place) && !keeps(was, before, after, fresh[now], kept, place, result)) {
    return;
  }
  const passage = fresh.length > 1 || (own.passage !== undefined && own.passage !== now + 1) ? now + 1 : undefined;
  const moved = passage !== undefined && passage !== own.passage;
  if (moved || stretch) {
    result.changes.push({ index, ...(moved && { passage }), ...(stretch && { extent: stretch }) });
  }
}

/** Whether a measured place is still passed as it was measured; else it is told why not. */
function keeps(was, before, after, now, { turned }, { own }, result) {
  const turn = Math.abs(((bearingAt(after, now.alongM) - bearingAt(before, was.alongM) + (turned ? 180 : 0) + 540)
    % 360 + 360) % 360 - 180);
  if (turn > MOST_ASKEW_DEG) {
    result.refused.push(`${called(own)}: the line would pass it ${Math.round(turn)}° off the direction it was measured `
      + 'in. Leave the line as it is there, or take the place out and have it surveyed anew.');
    return false;
  }
  if (now.awayM > was.awayM + 5) {
    result.told.push(`${called(own)} lies ${Math.round(now.awayM)} m beside the line now. It is judged by what was `
      + 'measured where it lies.');
  }
  return true;
}

/** A place that the line no longer comes by: refused, or cut away with it. */
function leave(place, was, { before, after, kept, cut, result }) {
  const { own, index, kind } = place;
  if (cut === null) {
    result.refused.push(`${called(own)}: the line would run more than ${OFF_LINE_M} m beside it. Move the place first, `
      + 'or take it out, or leave the line near it.');
    return;
  }
  if (isStretch(place)) {
    const anchor = was.alongM < cut.fromM ? 0 : after.lengthM;
    const extent = extentOf(place, was.alongM, anchor, { before, after, kept, cut });
    if (extent) {
      const { lonLat } = placeAt(after, anchor);
      result.changes.push({ index, extent, lonLat: lonLat.map(rounded), passage: own.passage && passageAt(after, lonLat,
        anchor) });
      result.told.push(`${called(own)} goes on as far as the line does; its point is now the end of the line.`);
      return;
    }
  } else if (kind === 'hazard' && reachesIn(own, was.alongM, cut)) {
    result.refused.push(`${called(own)} reaches over the cut. Cut farther from it.`);
    return;
  }
  result.gone.push({ index, own, said: called(own) });
}

function passageAt(course, lonLat, alongM) {
  const away = passagesOf(course, lonLat).map(passage => Math.abs(passage.alongM - alongM));
  return away.indexOf(Math.min(...away)) + 1;
}

/** Whether what is known of a place holds on a part of the line that stays. */
function reachesIn(own, alongM, { fromM, toM }) {
  const { profile = [], soffit = [], extent = [], wire, tracks = [] } = own;
  const all = [...profile.flatMap(({ points }) => points), ...soffit, ...wire?.supports ?? []]
    .map(([distance]) => distance).concat(extent, tracks).map(meters).filter(Number.isFinite);
  return all.length > 0 && alongM + Math.max(...all) > fromM && alongM + Math.min(...all) < toM;
}

/**
 * Where a stretch begins and ends on the new line, as the file says it: undefined where that stays as it is, null where
 * nothing is left of it. An end on a part that became another goes to the far end of that part: too much rather than
 * too little, and the other way round where its limits stand in the place of others.
 */
function extentOf({ own }, wasM, nowM, { before, after, kept: { map, turned }, cut }) {
  const ends = own.extent.map(meters).map(end => Math.min(before.lengthM, Math.max(0, wasM + end)));
  const outward = own.applies === 'instead' ? -1 : 1;
  const [from, to] = [moved(ends[0], -outward), moved(ends[1], outward)];
  const made = turned ? [to, from] : [from, to];
  if (made[1] - made[0] < SAME_M) {
    return null;
  }
  const said = made.map(end => end - nowM);
  const stood = (turned ? [ends[1], ends[0]].map(end => wasM - end) : ends.map(end => end - wasM));
  return !turned && said.every((end, k) => Math.abs(end - stood[k]) < SAME_M) ? undefined : said.map(inMeters);

  /** Of a chainage before that after; where the line is another, the next one to a side that is there in both. */
  function moved(alongM, side) {
    if (cut !== null) {
      return Math.min(cut.toM, Math.max(cut.fromM, alongM)) - cut.fromM;
    }
    const { piece, t } = placeAt(before, alongM);
    for (let k = piece; k >= 1 && k < before.positions.length; k += side) {
      if (map.has(k)) {
        const j = map.get(k);
        const part = k === piece ? t : side > 0 ? 0 : 1;
        const share = turned ? 1 - part : part;
        return after.alongM[j - 1] + share * (after.alongM[j] - after.alongM[j - 1]);
      }
    }
    return (side > 0) !== turned ? after.lengthM : 0;
  }
}

/** A hazard that the line comes by once more: nobody has judged it that time. */
function addTwins(json, place, { old, fresh, found, twinned }, taken, result) {
  const { own, lonLat } = place;
  if (!isJudged(place) || fresh.length <= old.length || twinned.has(own.hazard)) {
    return;
  }
  twinned.add(own.hazard);
  fresh.forEach((passage, k) => {
    if (!found.includes(k)) {
      const all = [...json.features, ...taken, ...result.twins.map(({ feature }) => feature)];
      const id = freeId({ json: { features: all } }, own.hazard === 'corner' ? 'C' : 'H');
      const properties = {
        hazard: own.hazard, id, name: `${own.name}, passed again`.slice(0, 200), passage: k + 1, ...unknown(own),
      };
      result.twins.push({
        feature: { type: 'Feature', properties, geometry: { type: 'Point', coordinates: lonLat } },
        alongM: passage.alongM,
        said: `The line passes ${called(own)} once more. That time it is ${id}, which nobody has surveyed.`,
      });
    }
  });
}

/** What a kind must say of itself where nothing is known. */
const unknown = ({ hazard, carries }) => ({
  ...(['low-structure', 'overhead-wire'].includes(hazard) && { measured: 'unknown' }),
  ...(hazard === 'overhead-wire' && { carries }),
  ...(hazard === 'stretch' && { extent: ['-1 m', '1 m'] }),
});

/** The text with what `rehung` found written at the places that stay; places are neither put in nor taken out. */
export const withChanges = (text, changes) => changes.reduce((made, { index, passage, extent, lonLat }) => {
  const path = ['features', index, 'properties'];
  let now = passage === undefined ? made : withMember(made, path, 'passage', JSON.stringify(passage));
  now = extent === undefined ? now : withMember(now, path, 'extent', JSON.stringify(extent).replace(',', ', '));
  return lonLat === undefined ? now
    : withMember(now, ['features', index, 'geometry'], 'coordinates', JSON.stringify(lonLat).replace(',', ', '));
}, text);
