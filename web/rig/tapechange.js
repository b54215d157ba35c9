/** A row of the list with another figure, written into the file's text; every other byte of it stays. No DOM. */
import { withValue } from '../text/jsonedit.js';
import { lengthOf, lengthText } from '../text/length.js';
import { valueAt } from './frame.js';

/** Why a figure cannot be taken, in a sentence; null where it can. */
export function refusalOf(row, typed) {
  const value = lengthOf(typed);
  if (row.kind === 'written' && lengthOf(row.text) === null) {
    return typed === '' ? 'Nothing is written here.' : null;
  }
  if (value === null) {
    return `"${typed}" is not a length: write it with its unit, such as 4 ft 6 in or 1.37 m.`;
  }
  return row.kind === 'span' && value < 0
    ? 'A tape reads nothing below zero: this lies behind the mark before it.' : null;
}

/**
 * The text with a row changed.
 *
 * @param json what the text says
 * @param typed a figure that {@link refusalOf} takes
 */
export function withRow(text, json, row, typed) {
  if (row.kind === 'written') {
    return withValue(text, row.path, typeof row.text === 'number' && /^\d+$/.test(typed) ? Number(typed) : typed);
  }
  const shift = row.sign * (lengthOf(typed) - row.value);
  return shift === 0 ? text : row.moves.reduce((changed, path) => {
    const old = valueAt(json, path);
    return withValue(changed, path, lengthText(lengthOf(old) + shift, old));
  }, text);
}

/** The row that a problem's pointer belongs to; null for none. */
export function rowOf(rows, pointer) {
  return rows.find(row => row.pointer === pointer)
    ?? rows.find(row => row.pointer !== null && pointer !== '' && row.pointer.startsWith(`${pointer}/`))
    ?? null;
}
