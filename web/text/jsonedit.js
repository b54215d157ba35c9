/** Parts of a JSON text written anew, put in or taken out, as values; every other byte stays. No DOM. */
import { spanOf, withMember } from './jsontext.js';

/** The text with another value at a path. */
export function withValue(text, path, value) {
  const [from, to] = spanOf(text, path);
  return text.slice(0, from) + spaced(value) + text.slice(to);
}

/** The text with a key of an object set: written anew where it is there, else behind all others. */
export const withKey = (text, path, key, value) => withMember(text, path, key, spaced(value));

/** The text with one more item in a list, at an index of it. */
export function withItem(text, path, index, value) {
  const [from, to] = spanOf(text, path);
  if (JSON.parse(text.slice(from, to)).length === 0) {
    return `${text.slice(0, from)}[${spaced(value)}]${text.slice(to)}`;
  }
  if (index === 0) {
    const start = spanOf(text, [...path, 0])[0];
    return `${text.slice(0, start)}${spaced(value)}, ${text.slice(start)}`;
  }
  const end = spanOf(text, [...path, index - 1])[1];
  return `${text.slice(0, end)}, ${spaced(value)}${text.slice(end)}`;
}

/** The text without what stands at a path: a key with its value, or an item of a list. What is not there stays away. */
export function without(text, path) {
  const [holder, last] = [path.slice(0, -1), path.at(-1)];
  return typeof last === 'number' ? withoutItem(text, holder, last) : withMember(text, holder, last, undefined);
}

function withoutItem(text, list, index) {
  const [from, to] = spanOf(text, list);
  const count = JSON.parse(text.slice(from, to)).length;
  if (index >= count) {
    return text;
  }
  const [start, end] = spanOf(text, [...list, index]);
  if (index > 0) {
    return text.slice(0, spanOf(text, [...list, index - 1])[1]) + text.slice(end);
  }
  return text.slice(0, start) + text.slice(count > 1 ? spanOf(text, [...list, 1])[0] : end);
}

/** JSON in one line, with a space behind colons and commas as people write it. */
function spaced(value) {
  if (Array.isArray(value)) {
    return `[${value.map(spaced).join(', ')}]`;
  }
  if (value !== null && typeof value === 'object') {
    return `{${Object.entries(value).map(([key, one]) => `${JSON.stringify(key)}: ${spaced(one)}`).join(', ')}}`;
  }
  return JSON.stringify(value);
}
