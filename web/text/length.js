/**
 * Lengths as files write them, exactly: whole picometers, so that every fraction of an inch and every decimal of a
 * meter adds up to the last digit. Within 100 m that is far below 2^53. No DOM.
 */

const M = 1e12;
const IN = 25_400_000_000;
const FT = 12 * IN;
const UNITS = {
  in: IN, '"': IN, inch: IN, inches: IN, ft: FT, "'": FT, foot: FT, feet: FT, m: M, cm: M / 100, mm: M / 1000,
};
const HALVES = { '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' };
const NUMBER = String.raw`(\d+(?:\.\d+)?|\d+ \d+ ?/ ?\d+|\d+ ?/ ?\d+)`;
const PART = String.raw`${NUMBER} ?(inches|inch|in|feet|foot|ft|cm|mm|m|['"])`;
const LENGTH = new RegExp(`^([-+]?) ?${PART}(?: ?${PART})?$`);

/** Signs and fractions as a keyboard has them, one space where there are several. */
export const plain = text => text.replace(/[½¼¾⅛⅜⅝⅞]/g, half => ` ${HALVES[half]}`)
  .replace(/[′’]/g, "'").replace(/[″”]/g, '"').replace(/''/g, '"').replace(/−/g, '-').replace(/\s+/g, ' ').trim();

/** What a text is, in picometers; null for anything but a length with its unit. */
export function lengthOf(text) {
  const said = typeof text === 'string' && plain(text).match(LENGTH);
  if (!said) {
    return null;
  }
  const [, sign, first, unit, second, behind] = said;
  const isFeet = UNITS[unit] === FT;
  if (second !== undefined && (!isFeet || UNITS[behind] !== IN || !/^\d+$/.test(first) || number(second) >= 12)) {
    return null;
  }
  if ([[first, unit], [second ?? '0', behind ?? 'in']].some(([part, of]) =>
    part.includes('/') && (UNITS[of] !== IN || !isProper(part)))) {
    return null;
  }
  const size = times(first, UNITS[unit]) + (second === undefined ? 0 : times(second, IN));
  return Number.isFinite(size) && size <= 1000 * M ? Number(`${sign}1`) * size + 0 : null;
}

/** The program takes no 3/2 for 1 1/2: it may be a 3/8 mistyped. */
const isProper = text => {
  const [, over, under] = text.match(/(\d+) ?\/ ?(\d+)$/);
  return Number(over) < Number(under);
};

function number(text) {
  const [, whole, over, under] = text.match(/^(?:(\d+) )?(\d+) ?\/ ?(\d+)$/) ?? [];
  return over === undefined ? Number(text) : Number(whole ?? 0) + Number(over) / Number(under);
}

/** A number of a unit, rounded to whole picometers. */
function times(text, unit) {
  const [, whole, over, under] = text.match(/^(?:(\d+) )?(\d+) ?\/ ?(\d+)$/) ?? [];
  if (over !== undefined) {
    return Number(whole ?? 0) * unit + Math.round(Number(over) * unit / Number(under));
  }
  const [, units, decimals = ''] = text.match(/^(\d+)(?:\.(\d+))?$/);
  return Number(units) * unit + Math.round(Number(`0.${decimals || '0'}`) * unit);
}

/** Whether a text is in feet or inches. */
export const isImperial = text => /ft|in|f[eo]{2}t|['"′″’”½¼¾]/.test(text);

/**
 * A length as a text that is read back as the very same. In the units of another text, as far as they can say it.
 *
 * @param like the text that it takes the place of
 */
export function lengthText(value, like) {
  if (isImperial(like)) {
    const parts = Math.abs(value) / (IN / 64);
    if (Number.isInteger(parts)) {
      return imperial(value, parts, /ft|f[eo]{2}t|['′’](?!['′’])/.test(like) || Math.abs(value) >= 3 * FT);
    }
    return `${decimal(value, M)} m`;
  }
  const unit = plain(like).match(/(cm|mm|m)$/)?.[1] ?? 'm';
  return `${decimal(value, UNITS[unit])} ${unit}`;
}

/** @param parts how many 64ths of an inch it is */
function imperial(value, parts, feetToo) {
  const feet = feetToo ? Math.floor(parts / 768) : 0;
  const rest = parts - feet * 768;
  const inches = Math.floor(rest / 64);
  let [over, under] = [rest % 64, 64];
  while (over > 0 && over % 2 === 0) {
    [over, under] = [over / 2, under / 2];
  }
  const words = [
    feet > 0 && `${feet} ft`,
    (inches > 0 || over > 0 || feet === 0)
      && `${[(inches > 0 || over === 0) && inches, over > 0 && `${over}/${under}`].filter(Boolean).join(' ') || 0} in`,
  ];
  return (value < 0 ? '-' : '') + words.filter(Boolean).join(' ');
}

/** Every decimal there is, without zeros behind. */
function decimal(value, unit) {
  const size = Math.abs(value);
  const places = String(unit).length - 1;
  const behind = String(size % unit).padStart(places, '0').replace(/0+$/, '');
  return `${value < 0 ? '-' : ''}${Math.floor(size / unit)}${behind && `.${behind}`}`;
}

/** A length to be read in the page's units: exact where a tape says it, else to a hundredth of an inch or 0.1 mm. */
export function tapeText(value, system) {
  if (system === 'us') {
    const parts = value / (IN / 64);
    return Number.isInteger(parts) ? imperial(value, Math.abs(parts), Math.abs(value) >= 2 * FT) : inchDecimals(value);
  }
  const tenths = Math.round(value / 1e8);
  return Math.abs(tenths) < 10_000 ? `${tenths / 10} mm` : `${tenths / 10_000} m`;
}

function inchDecimals(value) {
  const hundredths = Math.round(Math.abs(value) / (IN / 100));
  const feet = Math.abs(value) >= 2 * FT ? Math.floor(hundredths / 1200) : 0;
  return `${value < 0 && hundredths > 0 ? '-' : ''}${feet > 0 ? `${feet} ft ` : ''}`
    + `${(hundredths - feet * 1200) / 100} in`;
}

/** In meters, for drawings. */
export const meters = value => value / M;

/** A text of the file as the page's units say it: the text itself where it is in them already. */
export function shownLength(text, system) {
  const value = lengthOf(text);
  return value === null || isImperial(text) === (system === 'us') ? String(text ?? '') : tapeText(value, system);
}
