/** The line cut at a place, one part of it kept. No DOM. */
import { withoutPlace } from './places.js';
import { without } from '../text/jsonedit.js';
import { apartM, courseOfLines, linesOf, placeAt } from './course.js';
import { rehung, withChanges } from './hanging.js';
import { pathOf, spliced, written } from './positions.js';

/** A cut this near to a position of the line is made there, meters. */
const AT_M = 0.5;

/** Every position with where it stands: {line, index, lonLat}. */
const flat = lines => lines.flatMap(({ points }, line) => points.map((lonLat, index) => ({ line, index, lonLat })));

/** The distance along the course at which a point of the line lies. */
export const alongOf = (course, lines, point) =>
  course.alongM[flat(lines).findIndex(({ line, index }) => line === point.at[0].line && index === point.at[0].index)];

/**
 * What cutting comes to: {refused} or {text, gone: [{index, own, said}], told}: the text of what is left, and what goes
 * with the rest, by name.
 *
 * @param alongM distance from the start, on the course of the page
 * @param keep 'before' or 'after'
 */
export function cutLine(text, json, alongM, keep) {
  const lines = linesOf(json);
  const made = partOf(text, lines, alongM, keep);
  if (made === null) {
    return { refused: ['Nothing would be left of the line: cut it farther from its end.'], gone: [], told: [] };
  }
  const hung = rehung(json, made, { cut: made.cut });
  const gone = new Set([...made.features, ...hung.gone.map(({ index }) => index)]);
  const kept = withChanges(made.text, hung.changes);
  return {
    ...hung,
    text: [...gone].sort((a, b) => b - a).reduce((now, index) => withoutPlace(now, index), kept),
  };
}

/** The text with the positions of one part, the features that hold none of it, and the course that is left. */
function partOf(text, lines, alongM, keep) {
  const all = flat(lines);
  const course = courseOfLines(lines);
  const { piece, t } = placeAt(course, Math.min(course.lengthM, Math.max(0, alongM)));
  const [before, after] = [all[piece - 1], all[piece]];
  const lonLat = placeAt(course, alongM).lonLat;
  const [toBefore, toAfter] = [apartM(before.lonLat, lonLat), apartM(after.lonLat, lonLat)];
  const gap = before.line !== after.line;
  const snapped = toBefore < AT_M || (gap && t < 0.5) ? piece - 1 : toAfter < AT_M || gap ? piece : null;
  const [first, last] = keep === 'before' ? [0, snapped ?? piece - 1] : [snapped ?? piece, all.length - 1];
  const cut = snapped === null ? lonLat : null;
  const stays = lines.map((line, k) => {
    const own = all.map((one, i) => ({ ...one, i })).slice(first, last + 1).filter(one => one.line === k);
    const end = keep === 'before' ? own.some(({ i }) => i === last) : own.some(({ i }) => i === first);
    const extra = cut !== null && end ? [cut] : [];
    return { from: own[0]?.index ?? 0, count: own.length, extra, first: own[0]?.i };
  });
  const left = stays.map(({ count, extra }) => (count + extra.length < 2 ? 0 : count + extra.length));
  if (left.every(count => count === 0)) {
    return null;
  }
  const cutM = snapped === null ? alongM : course.alongM[snapped];
  return {
    cut: keep === 'before' ? { fromM: 0, toM: cutM } : { fromM: cutM, toM: course.lengthM },
    ...textOf(text, lines, stays, left, keep),
    positions: stays.flatMap((stay, k) => (left[k] ? positionsOf(lines[k].points, stay, keep, lonLat => lonLat) : [])),
    origins: stays.flatMap((stay, k) => (left[k]
      ? positionsOf(lines[k].points.map((point, i) => stay.first + i - stay.from), stay, keep, () => -1) : [])),
  };
}

function positionsOf(points, { from, count, extra }, keep, made) {
  const own = points.slice(from, from + count);
  return keep === 'before' ? [...own, ...extra.map(made)] : [...extra.map(made), ...own];
}

function textOf(text, lines, stays, left, keep) {
  let made = text;
  lines.forEach((line, k) => {
    const { from, count, extra } = stays[k];
    const whole = line.points.length;
    if (left[k] === 0 || (count === whole && extra.length === 0)) {
      return;
    }
    const items = extra.map(written);
    made = keep === 'before' ? spliced(made, pathOf(line), from + count, whole - from - count, items)
      : spliced(made, pathOf(line), 0, from, items);
  });
  const features = [...new Set(lines.map(({ feature }) => feature))]
    .filter(feature => lines.every((line, k) => line.feature !== feature || left[k] === 0));
  lines.map((line, k) => ({ ...line, gone: left[k] === 0 })).reverse()
    .filter(({ gone, feature }) => gone && !features.includes(feature))
    .forEach(line => { made = without(made, pathOf(line)); });
  return { text: made, features };
}
