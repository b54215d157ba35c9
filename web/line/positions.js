/**
 * Positions of the line in the text of a route file: moved, put in, taken out. Only they are written, every other byte
 * stays. No DOM.
 *
 * A point is what a person sees as one: a position, or two where a leg ends and the next one starts in the same place.
 */
import { itemsOf } from '../text/jsontext.js';
import { linesOf } from './course.js';

const same = (a, b) => a[0] === b[0] && a[1] === b[1];

/** Points of the lines: [{lonLat, at: [{line, index}, ...]}] in the order of travel. */
export function pointsOf(lines) {
  const points = [];
  lines.forEach(({ points: own }, line) => own.forEach((lonLat, index) => {
    if (index === 0 && points.length > 0 && same(points.at(-1).lonLat, lonLat)) {
      points.at(-1).at.push({ line, index });
    } else {
      points.push({ lonLat, at: [{ line, index }] });
    }
  }));
  return points;
}

/** Where the positions of a line stand in its file. */
export const pathOf = ({ feature, part }) =>
  ['features', feature, 'geometry', 'coordinates', ...(part === null ? [] : [part])];

export const written = ([lon, lat]) => JSON.stringify([lon, lat]).replace(',', ', ');

/** The text with other items in the place of some of a list. @param items texts */
export function spliced(text, path, from, count, items) {
  const spans = itemsOf(text, path);
  if (count === items.length) {
    return items.reduceRight((made, item, k) =>
      made.slice(0, spans[from + k][0]) + item + made.slice(spans[from + k][1]), text);
  }
  if (count === 0) {
    const at = from > 0 ? spans[from - 1][1] : spans[0][0];
    const all = items.join(', ');
    return text.slice(0, at) + (from > 0 ? `, ${all}` : `${all}, `) + text.slice(at);
  }
  if (items.length > 0) {
    return spliced(spliced(text, path, from, count - items.length, []), path, from, items.length, items);
  }
  return from > 0
    ? text.slice(0, spans[from - 1][1]) + text.slice(spans[from + count - 1][1])
    : text.slice(0, spans[0][0]) + text.slice(spans[count][0]);
}

/**
 * A change of one point: {text, positions, origins}: the new text, and the course it gives with the index of every
 * position before.
 *
 * @param edits [{line, index, count, lonLats}] of positions, at most one a line
 */
export function edited(text, json, edits) {
  const lines = linesOf(json);
  const made = [...edits].sort((a, b) => b.line - a.line).reduce((now, { line, index, count, lonLats }) =>
    spliced(now, pathOf(lines[line]), index, count, lonLats.map(written)), text);
  const positions = [];
  const origins = [];
  let before = 0;
  lines.forEach(({ points }, line) => {
    const edit = edits.find(one => one.line === line);
    const old = points.map((lonLat, index) => [lonLat, before + index]);
    before += points.length;
    const now = edit ? old.toSpliced(edit.index, edit.count, ...edit.lonLats.map(lonLat => [lonLat, -1])) : old;
    now.forEach(([lonLat, origin]) => {
      positions.push(lonLat);
      origins.push(origin);
    });
  });
  return { text: made, positions, origins };
}

/** A point elsewhere: where two legs meet both go there. */
export const movedPoint = (text, json, point, lonLat) => edited(text, json,
  point.at.map(({ line, index }) => ({ line, index, count: 1, lonLats: [lonLat] })));

/** A point more, behind another one on the same leg. */
export function insertedPoint(text, json, point, lonLat) {
  const { line, index } = point.at.at(-1);
  return edited(text, json, [{ line, index: index + 1, count: 0, lonLats: [lonLat] }]);
}

/** Whether a point has one behind it on the same leg. */
export const goesOn = (lines, point) => {
  const { line, index } = point.at.at(-1);
  return index + 1 < lines[line].points.length;
};

/** Why a point cannot be taken out, or null. */
export function keptBecause(lines, point) {
  if (point.at.length > 1) {
    return 'Two legs meet in this point. Move it, or cut the line there.';
  }
  return lines[point.at[0].line].points.length <= 2
    ? 'This leg has no more than two points, its ends. Move this one, or cut the line.' : null;
}

export const removedPoint = (text, json, point) =>
  edited(text, json, [{ ...point.at[0], count: 1, lonLats: [] }]);
