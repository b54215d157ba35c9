/** Weights of units that change with what is put on or taken off. Kilograms inside. No DOM. */
import { without, withValue } from '../text/jsonedit.js';
import { valueAt } from './frame.js';
import { lengthOf, lengthText } from '../text/length.js';

const KG = { lb: 0.45359237, kg: 1, t: 1000 };

/** What "17,500 lb" or "8.6 t" is, kilograms; null for anything else. */
export function massOf(text) {
  const [, figure, unit] = String(text ?? '').trim().match(/^(\d{1,3}(?:,\d{3})+|\d+(?:\.\d+)?) ?(lb|kg|t)$/) ?? [];
  return unit === undefined || (unit !== 'lb' && figure.includes(',')) ? null
    : Number(figure.replaceAll(',', '')) * KG[unit];
}

/** A mass in the unit of another text: whole pounds or kilograms. */
export function massText(kg, like) {
  return / ?lb$/.test(String(like).trim())
    ? `${String(Math.round(kg / KG.lb)).replace(/\B(?=(\d{3})+$)/g, ',')} lb` : `${Math.round(kg)} kg`;
}

/** Asked for where the stance has weights: without it they would say what is not so. */
export const weightAsked = (json, stance, label, example) =>
  (valueAt(json, ['stances', stance, 'weights']) ? [{ key: 'weight', label, example, mass: true }] : []);

/**
 * The text with the weight of a unit changed by a piece of it at a place: its center of gravity goes where both
 * balance.
 *
 * @param where place of the unit in the weights
 * @param piece {weight, x, h, sign}: x in the unit's frame, picometers; sign 1 for on, -1 for off
 */
export function withWeight(text, stance, where, { weight, x, h, sign }) {
  const at = ['stances', stance, 'weights'];
  const json = JSON.parse(text);
  const unit = valueAt(json, [...at, ...where]);
  const piece = sign * massOf(weight);
  const old = massOf(unit.weight);
  const sum = old + piece;
  // Balanced to a millimeter or a sixteenth of an inch: finer than any center of gravity is known.
  const balanced = (was, is) => {
    const step = /m$/.test(was.trim()) ? 1e9 : 25.4e9 / 16;
    return lengthText(Math.round((old * lengthOf(was) + piece * is) / sum / step) * step, was);
  };
  const cg = { x: balanced(unit.cg.x, x), h: balanced(unit.cg.h, lengthOf(h)) };
  let made = withValue(text, [...at, ...where, 'weight'], massText(sum, unit.weight));
  made = withValue(made, [...at, ...where, 'cg', 'x'], cg.x);
  made = withValue(made, [...at, ...where, 'cg', 'h'], cg.h);
  return withGross(made, stance, piece);
}

/** The weight of everything, where the file says it, with so many kilograms more. */
export function withGross(text, stance, kg) {
  const path = ['stances', stance, 'weights', 'gross'];
  const gross = valueAt(JSON.parse(text), path);
  return gross === undefined ? text : withValue(text, path, massText(massOf(gross) + kg, gross));
}

/** The text without keys of the weights: paths below them. */
export const withoutWeights = (text, stance, paths) => paths.reduce((made, path) => {
  const holder = ['stances', stance, 'weights', ...path.slice(0, -1)];
  return valueAt(JSON.parse(made), holder) === undefined ? made : without(made, [...holder, path.at(-1)]);
}, text);
