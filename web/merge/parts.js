/**
 * Three versions of a document part by part: what one made of it and what the other, from the one both began with. A
 * part that only one of them changed is put together without asking. No DOM.
 */
import { spanOf, withMember } from '../text/jsontext.js';

export const same = (a, b) => JSON.stringify(a) === JSON.stringify(b);

/**
 * A difference, or null where both have the same: {id, where, what, by, mine, theirs, before}.
 *
 * @param told what stands there in each, in words
 */
export function difference({ id, where, what }, [base, mine, theirs], told) {
  if (same(mine, theirs)) {
    return null;
  }
  const by = same(theirs, base) ? 'mine' : same(mine, base) ? 'theirs' : 'both';
  return { id, where, what, by, mine: told(mine), theirs: told(theirs), before: told(base) };
}

/** The text of what stands at a path, as it is written; undefined where nothing does. */
export function rawAt(text, path) {
  try {
    return text.slice(...spanOf(text, path));
  } catch {
    return undefined;
  }
}

/** The text with what another text has at a path, or without it where that has nothing. */
export function withRaw(text, path, written) {
  if (typeof path.at(-1) === 'number') {
    const [from, to] = spanOf(text, path);
    return text.slice(0, from) + written + text.slice(to);
  }
  return withMember(text, path.slice(0, -1), path.at(-1), written);
}

/** The text with items behind the last of a list, or before its first. */
export function withRawItems(text, path, written, first = false) {
  if (written.length === 0) {
    return text;
  }
  const [from, to] = spanOf(text, path);
  const count = JSON.parse(text.slice(from, to)).length;
  if (count === 0) {
    return `${text.slice(0, from)}[${written.join(', ')}]${text.slice(to)}`;
  }
  const [start] = spanOf(text, [...path, 0]);
  const [, end] = spanOf(text, [...path, count - 1]);
  return first ? `${text.slice(0, start)}${written.join(', ')}, ${text.slice(start)}`
    : `${text.slice(0, end)}, ${written.join(', ')}${text.slice(end)}`;
}

/** A key in plain words: "approachBefore" as "approach before". */
export const worded = key => String(key).replace(/([a-z])([A-Z])/g, (all, a, b) => `${a} ${b.toLowerCase()}`);

/** A value in a few words. */
export function short(value) {
  if (value === undefined) {
    return 'nothing';
  }
  if (Array.isArray(value)) {
    return value.length > 4 || value.some(one => typeof one === 'object') ? `${value.length} entries`
      : value.join(', ');
  }
  if (value !== null && typeof value === 'object') {
    const text = Object.entries(value).map(([key, one]) => `${worded(key)} ${short(one)}`).join(', ');
    return text.length > 90 ? `${text.slice(0, 87)}…` : text;
  }
  return value === true ? 'yes' : value === false ? 'no' : String(value);
}
