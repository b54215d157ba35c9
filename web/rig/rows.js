/** Rows of the list of what is measured: what each says, and where it stands in the file. No DOM. */
import { pointerOf, valueAt } from './frame.js';

/** A row of the list. @param distance what a frame says of it */
export function alongRow({ key }, id, distance, path) {
  return distance && {
    ...distance, id: `${key}/${id}/along`, unit: key, label: `${distance.from} to ${distance.to}`,
    pointer: path ? pointerOf(path) : null,
  };
}

/** A row that says what stands at one place of the file. */
export function writtenRow(json, id, label, path, more = {}) {
  const text = valueAt(json, path);
  return text === undefined ? null : { kind: 'written', id, label, path, pointer: pointerOf(path), text, ...more };
}

/** "boostersBehind/0" as the steps of a path. */
export const steps = words => words.split('/').map(step => (/^\d+$/.test(step) ? Number(step) : step));
