/**
 * Pieces of load along the deck: where each lies, how far it may be moved, and the file's text with it moved.
 * Picometers in the trailer's frame; x runs forward, a move is positive to the rear. No DOM.
 */
import { withValue } from '../text/jsonedit.js';
import { pointsOf, valueAt, xOf } from './frame.js';
import { lengthOf, lengthText } from '../text/length.js';

/** Heights are taken up to the next of these: finer than anybody tapes them. */
const STEP_IN = 25.4e9 / 16;
const STEP_M = 1e9;

/**
 * Every weighed piece that is drawn: {index, load, name, x, front, rear, behind, least, most, from, to}; x its center
 * of gravity, behind the same behind the deck front; least and most how far it may be moved, so that it stays on the
 * level it lies on (gooseneck, deck, or behind the deck); from and to the same as behind.
 */
export function piecesOf(json, stance) {
  const at = ['stances', stance];
  const trailer = [...at, 'trailer'];
  const [deckFront, deckRear] = ['deckFront', 'deckRear'].map(key => xOf(json, [...trailer, key, 'x']));
  const top = pointsOf(json, [...trailer, 'topside']).map(({ x }) => x);
  if (deckFront === null || deckRear === null || top.length === 0) {
    return [];
  }
  const ends = [Math.max(deckFront, ...top), deckFront, deckRear, Math.min(deckRear, ...top)];
  const loads = valueAt(json, [...trailer, 'load']) ?? [];
  return (valueAt(json, [...at, 'weights', 'pieces']) ?? []).flatMap((piece, index) => {
    const load = loads.findIndex(one => one?.name === piece?.name);
    const xs = load < 0 ? [] : pointsOf(json, [...trailer, 'load', load, 'outline']).map(({ x }) => x);
    const x = lengthOf(piece?.cg?.x);
    if (xs.length === 0 || x === null) {
      return [];
    }
    const [front, rear] = [Math.max(...xs), Math.min(...xs)];
    const [least, most] = reach(ends, front, rear);
    const behind = deckFront - x;
    return [{
      index, load, name: piece.name, x, front, rear, behind, least, most, from: behind + least, to: behind + most,
    }];
  });
}

/** How far a piece may go ahead and back: none where it already lies across an end of the deck. */
function reach([nose, deckFront, deckRear, tail], front, rear) {
  const [ahead, astern] = rear >= deckFront ? [nose, deckFront] : front <= deckRear ? [deckRear, tail]
    : [deckFront, deckRear];
  return front > ahead || rear < astern ? [0, 0] : [front - ahead, rear - astern];
}

/** A move kept within what a piece may do. */
export const within = ({ least, most }, shift) => Math.min(most, Math.max(least, shift));

/** Why a piece cannot lie there, in a sentence; null where it can. @param told writes a length */
export function refusalOfPlace({ name, from, to }, behind, told) {
  if (behind === null) {
    return 'This is no length: write it with its unit, such as 16 ft 6 in or 5.03 m.';
  }
  if (behind >= from && behind <= to) {
    return null;
  }
  return from === to ? `${name} lies across an end of the deck and cannot be moved here: measure it anew in the list `
    + 'of the rig.'
    : `${name} would hang over an end there: its center of gravity may be ${told(from)} to ${told(to)} behind the deck `
      + 'front.';
}

/**
 * The text with a piece moved: its outline and its center of gravity, and its heights where what it lies on is higher
 * there. They are never taken lower. Every other byte stays.
 *
 * @param shift how far back
 */
export function withPieceMoved(text, stance, index, shift) {
  const json = JSON.parse(text);
  const piece = piecesOf(json, stance).find(one => one.index === index);
  if (shift === 0 || piece === undefined) {
    return text;
  }
  const at = ['stances', stance];
  const points = pointsOf(json, [...at, 'trailer', 'load', piece.load, 'outline']).map(point => point.at);
  const cg = [...at, 'weights', 'pieces', index, 'cg'];
  const rise = riseOf(json, stance, piece, shift);
  return [...points, cg].reduce((made, place) => {
    const moved = written(made, [...place, 'x'], lengthOf(valueAt(json, [...place, 'x'])) - shift);
    return rise <= 0 ? moved : raised(moved, [...place, 'h'], lengthOf(valueAt(json, [...place, 'h'])), rise);
  }, text);
}

/** How much higher what a piece lies on is at its new place, at the highest below it; not positive where it is not. */
export function riseOf(json, stance, { front, rear }, shift) {
  const top = pointsOf(json, ['stances', stance, 'trailer', 'topside']);
  const rise = highest(top, rear - shift, front - shift) - highest(top, rear, front);
  return Number.isFinite(rise) ? rise : 0;
}

/** The highest of a line of points between two places. A step at one of them belongs to what lies beyond it. */
function highest(points, rear, front) {
  const at = (x, a, b) => a.h + ((b.h - a.h) * (x - a.x)) / (b.x - a.x);
  return points.slice(1).reduce((most, b, k) => {
    const a = points[k];
    const [from, to] = [Math.max(a.x, rear), Math.min(b.x, front)];
    return from < to ? Math.max(most, at(from, a, b), at(to, a, b)) : most;
  }, -Infinity);
}

function raised(text, path, h, rise) {
  const step = / ?m$/.test(valueAt(JSON.parse(text), path)) ? STEP_M : STEP_IN;
  return written(text, path, h + Math.ceil(rise / step - 1e-9) * step);
}

function written(text, path, value) {
  return withValue(text, path, lengthText(value, valueAt(JSON.parse(text), path)));
}
