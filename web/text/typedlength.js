/** Lengths as people write them into a table: read for the drawing, and spelled as a file has them. No DOM. */
import { axisUnitM, gapUnitM } from './format.js';
import { lengthOf as exactly, meters, plain } from './length.js';

/** Units a column can be in. */
export const UNITS = ['ft', 'in', 'm', 'cm', 'mm'];
const METERS = { ft: axisUnitM('us'), in: gapUnitM('us'), m: 1, cm: 0.01, mm: 0.001 };
const NAMES = { "'": 'ft', feet: 'ft', foot: 'ft', '"': 'in', inch: 'in', inches: 'in' };
/** As either side of the ocean spells it. */
const METER = /^met(?:er|re)s?$/;
/** Meters in one of a unit. */
export const metersIn = unit => METERS[unit];

/** The unit a word stands for, or null. */
export function unitOf(word) {
  const plain = word.trim().toLowerCase();
  return UNITS.includes(plain) ? plain : METER.test(plain) ? 'm' : NAMES[plain] ?? null;
}

/** As a keyboard has it, the dash of typesetters too. */
const keyed = text => plain(text.replace(/–/g, '-'));

/**
 * What a text is: {m, text}, text as a file spells it; or {problem}, a sentence.
 *
 * @param unit of a number without one
 */
export function lengthOf(written, unit) {
  const said = keyed(written);
  const [, sign, size] = said.match(/^([-+]?)\s*(.*)$/s);
  const found = one(size, unit) ?? feetInches(size);
  if (found?.problem) {
    return found;
  }
  if (!found) {
    return { problem: `"${written.trim()}" is no length. Write it as 12.5, 12.5 ft or 12 ft 6 in.` };
  }
  return sign === '-' ? { m: -found.m + 0, text: `-${found.text}` } : found;
}

/** A number, with its unit or in that of the column. */
function one(size, unit) {
  const [, number, word] = size.match(/^([\d.,]+)\s*([a-z'"]*)$/i) ?? [];
  const own = word === '' ? unit : word && unitOf(word);
  if (!number || !own) {
    return null;
  }
  const figure = decimal(number);
  if (figure === null) {
    return null;
  }
  // In a file a comma stands between thousands of feet and inches.
  if (figure === 'either' && word !== '' && ['ft', 'in'].includes(own)) {
    return one(size.replace(',', ''), unit);
  }
  return figure === 'either'
    ? { problem: `"${number}" could be ${number.replace(',', '.')} or ${number.replace(',', '')}. Write it with a `
      + 'point, or without a comma.' }
    : { m: Number(figure) * METERS[own], text: `${figure} ${own}` };
}

/** "12.5" of what stands for it; 'either' where a comma can be a point as well; null for no number. */
function decimal(number) {
  if (/^(\d+\.?\d*|\.\d+)$/.test(number)) {
    return number.replace(/^\./, '0.').replace(/\.$/, '');
  }
  if (/^\d{1,3}(,\d{3})+\.\d+$/.test(number) || /^\d{1,3}(,\d{3}){2,}$/.test(number)) {
    return number.replaceAll(',', '');
  }
  if (/^\d{1,3}(\.\d{3})+,\d+$/.test(number)) {
    return number.replaceAll('.', '').replace(',', '.');
  }
  if (/^[1-9]\d{0,2},\d{3}$/.test(number)) {
    return 'either';
  }
  return /^\d*,\d+$/.test(number) ? number.replace(/^,/, '0,').replace(',', '.') : null;
}

/** "13 ft 6 1/2 in", "3/4 in", a dash behind the feet or none. */
function feetInches(size) {
  const text = size.toLowerCase().replace(/(ft|feet|foot|')\s*-\s*/, '$1 ');
  const value = exactly(text);
  return value === null || !/(in|inch|inches|")$/.test(text) ? null : { m: meters(value), text: spelled(text) };
}

const spelled = text => text.replace(/\s*(feet|foot|ft|')\s*/, ' ft ').replace(/\s*(inches|inch|in|")$/, ' in').trim();

/** Whether commas in these texts are decimal signs: one of them can be nothing else, and none has a decimal point. */
export function hasDecimalCommas(texts) {
  const all = texts.map(keyed);
  return all.some(text => /^[-+]?\d*,\d+$/.test(text) && !/^[-+]?[1-9]\d{0,2},\d{3}$/.test(text))
    && !all.some(text => /\d\.\d/.test(text));
}

/** The same text with its decimal comma as a point. */
export const withPoint = text => text.replace(/^(\s*[-+−–]?\s*\d*),(\d+\s*[a-z]*\s*)$/i, '$1.$2');
