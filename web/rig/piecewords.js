/** Places and moves of a piece of load in words. No DOM. */
import { tapeText } from '../text/length.js';
import { riseOf } from './piece.js';

/** How far one press of an arrow moves it, picometers: an inch, or a centimeter; and with Shift. */
export const stepOf = units => (units === 'us' ? 25.4e9 : 1e10);
export const longStepOf = units => (units === 'us' ? 12 * 25.4e9 : 1e11);

/** A move: "1 ft 2 in farther back". */
export const movedWords = (shift, units) =>
  `${tapeText(Math.abs(shift), units)} farther ${shift > 0 ? 'back' : 'forward'}`;

/** Where a piece's center of gravity is with it moved. */
export const behindWords = ({ behind }, shift, units) => `${tapeText(behind + shift, units)} behind the deck front`;

/** All there is to say of a piece that is moved, in sentences. */
export function placeWords(json, stance, piece, shift, units) {
  const rise = riseOf(json, stance, piece, shift);
  return [
    `${piece.name}: center of gravity ${behindWords(piece, shift, units)}`
      + `${shift === 0 ? ', as in the rig' : `, ${movedWords(shift, units)} than in the rig`}.`,
    `It can go ${tapeText(piece.most - shift, units)} back and ${tapeText(shift - piece.least, units)} forward.`,
    rise > 0 && 'What it lies on is higher there, and its heights are raised as much.',
    rise < 0 && 'What it lies on is lower there; its heights are left as they were taped.',
  ].filter(Boolean).join(' ');
}
