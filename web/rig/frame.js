/**
 * One unit of the rig along its own frame, as a tape lies along it: marks from front to rear, each measured from the
 * one before, and all that hangs on a mark. What lies behind a distance moves with it, and nothing else does. No DOM.
 */
import { lengthOf } from '../text/length.js';

/** How a path of keys and indices is written in a problem (RFC 6901). */
export const pointerOf = path =>
  path.map(step => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

/** What stands at a path; undefined where nothing does. */
export const valueAt = (json, path) => path.reduce((value, step) => value?.[step], json);

/**
 * @param marks {name, x, path} of all that others are measured from; path null for an end that is where outlines end
 * @param items {x, paths, end} of all else that has a place along the unit: `end` where it belongs to the rear end
 */
export function createFrame(marks, items) {
  const order = marks.filter(mark => mark.x !== null).map((mark, given) => ({ ...mark, given }))
    .sort((a, b) => b.x - a.x || a.given - b.given);
  const rear = order.findIndex(mark => mark.rear);
  /** The mark next ahead of a place: the last one that is not behind it. */
  const ahead = x => Math.max(0, order.findLastIndex(mark => mark.x >= x));
  const hung = items.filter(item => item.x !== null)
    .map(item => ({ ...item, on: item.end && rear >= 0 ? rear : ahead(item.x) }));

  /** The distance from the mark before, and the places in the file that a change of it moves; null for the first. */
  function span(index) {
    if (index === 0) {
      return null;
    }
    const [from, to] = [order[index - 1], order[index]];
    // Ahead of the first mark that has a place of its own in the file there is only the front end, which moves alone.
    const frontMoves = index === 1 && from.path === null;
    const moves = frontMoves ? hung.filter(item => item.on === 0).flatMap(item => item.paths)
      : [...order.slice(index).map(mark => mark.path).filter(Boolean),
        ...hung.filter(item => item.on >= index).flatMap(item => item.paths)];
    return { kind: 'span', from: from.name, to: to.name, fromX: from.x, toX: to.x, value: from.x - to.x, moves,
      sign: frontMoves ? 1 : -1 };
  }

  /** The distance of one thing from the mark ahead of it, or from a mark that is named; a change moves it alone. */
  function offset(name, x, paths, from = null) {
    const mark = order.find(one => one.key === from) ?? order[ahead(x)];
    return { kind: 'offset', from: mark.name, to: name, fromX: mark.x, toX: x, value: mark.x - x, moves: paths,
      sign: -1 };
  }
  return { order, span, offset };
}

/** Where something stands along its unit, or null. */
export const xOf = (json, path) => lengthOf(valueAt(json, path));

/** Points of an outline as items of a frame. @param rear what lies at it or behind belongs to the rear end */
export function outlineItems(json, path, rear) {
  return pointsOf(json, path)
    .map(point => ({ x: point.x, paths: [point.path], end: rear !== null && point.x <= rear }));
}

/** Points of an outline in the order of the file: {x, h, part, at, path}; those without a sound x are left out. */
export function pointsOf(json, path) {
  const points = valueAt(json, path);
  return (Array.isArray(points) ? points : [])
    .map((point, index) => ({
      x: lengthOf(point?.x), h: lengthOf(point?.h), part: point?.part ?? '', at: [...path, index],
      path: [...path, index, 'x'],
    }))
    .filter(({ x }) => x !== null);
}

/** Both ends of underside and topside together: {front, rear, rearMost}; rear is the nearer of the two rear ends. */
export function endsOf(json, path) {
  const lines = ['underside', 'topside'].map(key => pointsOf(json, [...path, key]).map(({ x }) => x))
    .filter(xs => xs.length > 0);
  if (lines.length === 0) {
    return { front: null, rear: null, rearMost: null };
  }
  const rears = lines.map(xs => Math.min(...xs));
  return { front: Math.max(...lines.flat()), rear: Math.max(...rears), rearMost: Math.min(...rears) };
}
