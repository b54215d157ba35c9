/**
 * What was changed, as a text that a browser can keep: every step as the few characters that it changed, so that the
 * files before and after it come back from the file that is there now. No DOM.
 */
import { Problem } from '../exchange/api.js';
import { readFile } from '../exchange/files.js';
import { NO_LIMITS } from '../limits/limits.js';

/** Steps that are kept, and characters that their changes may take; the oldest go first. */
export const MOST_STEPS = 500;
export const MOST_CHARACTERS = 1_500_000;
const FORM = 'cresthaul-history/1';
const FILES = ['route', 'rig', 'limits'];
/** Of which files steps are taken up: of as many as still fit. */
const TAKEN = [
  FILES, ['route', 'rig'], ['rig', 'limits'], ['route', 'limits'], ['rig'], ['route'], ['limits'],
];

/** Where two texts differ: {from, was, is}. */
export function spliceOf(before, after) {
  const least = Math.min(before.length, after.length);
  let from = 0;
  while (from < least && before.charCodeAt(from) === after.charCodeAt(from)) {
    from += 1;
  }
  let same = 0;
  while (same < least - from
    && before.charCodeAt(before.length - 1 - same) === after.charCodeAt(after.length - 1 - same)) {
    same += 1;
  }
  return { from, was: before.slice(from, before.length - same), is: after.slice(from, after.length - same) };
}

export const forward = (text, { from, was, is }) => text.slice(0, from) + is + text.slice(from + was.length);
export const backward = (text, { from, was, is }) => text.slice(0, from) + was + text.slice(from + is.length);

/** A text's own number, as good as any that nobody tries to cheat: 53 bits. */
export function markOf(text) {
  let a = 0xdeadbeef;
  let b = 0x41c6ce57;
  for (let k = 0; k < text.length; k++) {
    const code = text.charCodeAt(k);
    a = Math.imul(a ^ code, 2654435761);
    b = Math.imul(b ^ code, 1597334677);
  }
  a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
  b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
  return 4294967296 * (2097151 & b) + (a >>> 0);
}

/** A step is written once, however often all of them are. */
const written = new WeakMap();

function stepOf(revision) {
  if (!written.has(revision)) {
    const { kind, what, before, made, fresh } = revision;
    written.set(revision, {
      kind, what, fresh, names: [before.name, made.name], ids: [before.id, made.id],
      marks: [markOf(before.text), markOf(made.text)], splice: spliceOf(before.text, made.text),
    });
  }
  return written.get(revision);
}

const sizeOf = ({ splice, what }) => splice.was.length + splice.is.length + what.length + 200;

/**
 * All steps as a text, those undone too.
 *
 * @param drafts what is not in force yet, as JSON has it
 * @returns {text, left}: left how many of the oldest steps found no room
 */
export function writeHistory({ revisions, undone }, drafts, most = MOST_CHARACTERS) {
  // Where a step has nothing before it nothing can be undone from there back.
  const first = revisions.findLastIndex(({ before }) => !before) + 1;
  const all = [...revisions.slice(first), ...undone].map(stepOf);
  let size = 0;
  let from = all.length;
  while (from > 0 && all.length - from < MOST_STEPS && size + sizeOf(all[from - 1]) <= most) {
    from -= 1;
    size += sizeOf(all[from]);
  }
  return {
    text: JSON.stringify({
      cresthaul: FORM, at: Math.max(0, revisions.length - first - from), steps: all.slice(from), drafts,
    }),
    left: from,
  };
}

/** What such a text says: {at, steps, drafts}; null for anything else. */
export function readHistory(text) {
  try {
    const { cresthaul, at, steps, drafts } = JSON.parse(text);
    const sound = cresthaul === FORM && Number.isInteger(at) && Array.isArray(steps) && at >= 0 && at <= steps.length
      && steps.every(({ kind, what, names, marks, splice }) => FILES.includes(kind)
        && typeof what === 'string' && names.length === 2 && marks.length === 2 && Number.isInteger(splice.from)
        && typeof splice.was === 'string' && typeof splice.is === 'string');
    return sound ? { at, steps, drafts: drafts ?? {} } : null;
  } catch {
    return null;
  }
}

/**
 * The steps around the files that are there now.
 *
 * @param files {route, rig, limits} in force
 * @returns {revisions, undone, ahead, lost}: ahead how many steps are not in these files though they were made; lost
 *          whether there are steps that lead to other files
 */
export function stepsAround({ at, steps }, given) {
  const files = { limits: NO_LIMITS, ...given };
  const now = Object.fromEntries(FILES.map(kind => [kind, markOf(files[kind].text)]));
  for (const kinds of TAKEN) {
    const own = steps.filter(({ kind }) => kinds.includes(kind));
    const before = steps.slice(0, at).filter(({ kind }) => kinds.includes(kind)).length;
    const place = own.length > 0 ? placeOf(own, before, now) : null;
    if (place !== null) {
      return { ...around(own, place, files), ahead: Math.max(0, before - place), lost: own.length < steps.length };
    }
  }
  return { revisions: [], undone: [], ahead: 0, lost: steps.length > 0 };
}

/** Behind how many of the steps the files are: as many as were made, else the nearest place; null for none. */
function placeOf(steps, made, now) {
  const places = [...Array(steps.length + 1).keys()].sort((a, b) => Math.abs(a - made) - Math.abs(b - made));
  return places.find(place => FILES.every(kind => {
    const last = steps.slice(0, place).findLast(step => step.kind === kind);
    const next = steps.slice(place).find(step => step.kind === kind);
    return (last ? last.marks[1] : next?.marks[0] ?? now[kind]) === now[kind];
  })) ?? null;
}

/** Files come back when they are looked at: a long route is not read a hundred times for nothing. */
function around(steps, place, files) {
  const revisions = [];
  const undone = [];
  let then = { ...files };
  for (const { kind, what, fresh, names, ids, marks, splice } of steps.slice(0, place).reverse()) {
    const made = then[kind];
    const before = lazily(names[0], ids[0], marks[0], () => backward(made.text, splice), mapOf(files, kind));
    revisions.unshift({ kind, what, before, made, fresh });
    then = { ...then, [kind]: before };
  }
  then = { ...files };
  for (const { kind, what, fresh, names, ids, marks, splice } of steps.slice(place)) {
    const before = then[kind];
    const made = lazily(names[1], ids[1], marks[1], () => forward(before.text, splice), mapOf(files, kind));
    undone.push({ kind, what, before, made, fresh });
    then = { ...then, [kind]: made };
  }
  return { revisions, undone };
}

/** What a route is drawn on stays what it is. */
const mapOf = ({ route }, kind) => (kind === 'route' ? { baseMap: route.baseMap ?? null } : {});

function lazily(name, id, mark, make, more) {
  let file = null;
  const get = () => {
    if (file === null) {
      const text = make();
      if (markOf(text) !== mark) {
        throw new Problem({
          title: 'This change cannot be taken back', detail: 'What this browser kept of it does not fit the file.',
          remedy: 'Look at an earlier revision of the project.',
        });
      }
      file = readFile(text, name, id);
    }
    return file;
  };
  return { id, name, ...more, get text() { return get().text; }, get json() { return get().json; } };
}
