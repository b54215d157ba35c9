/**
 * The one place where numbers become words. Everything arrives in SI: meters, radians, slopes as ratios.
 *
 * A clearance is rounded down (toward the unsafe side: 1.99 in never reads 2 in), what is required and what must be
 * raised is rounded up. Down and up are along the number line, so a clearance of −1.01 in reads −1 1/8 in.
 *
 * `system` is 'us' or 'metric'. A missing number (null, undefined, NaN) reads UNKNOWN, never 0.
 */

export const SYSTEMS = ['us', 'metric'];
export const UNKNOWN = 'unknown';

const INCH_M = 0.0254;
const FOOT_M = 0.3048;
const MILE_M = 1609.344;
const POUND_KG = 0.45359237;
const PSI_PA = POUND_KG * 9.80665 / (INCH_M * INCH_M);
/** Counts of a rounding step closer together than this are the same count: the noise of binary fractions. */
const NOISE = 1e-9;

/**
 * Whole number of steps in a value.
 *
 * @param rounding 'down', 'up' or 'nearest'
 */
export function stepsIn(value, step, rounding) {
  const count = value / step;
  switch (rounding) {
    case 'down': return Math.floor(count + NOISE) + 0;
    case 'up': return Math.ceil(count - NOISE) + 0;
    case 'nearest': return Math.round(count) + 0;
    default: throw new Error(`rounding is down, up or nearest, was ${rounding}`);
  }
}

/** A gap under the deck or over the load; to 1/8 in or 1 mm, rounded down. */
export const clearance = (valueM, system) => smallLength(valueM, system, 'down');

/** What a gap has to reach (margin, uncertainty, or their sum); to 1/8 in or 1 mm, rounded up. */
export const required = (valueM, system) => smallLength(valueM, system, 'up');

/**
 * A gap rounded down and what it has to reach rounded up, by one step: 1/8 in or 1 mm, unless a gap that meets its need
 * would read as if it did not. Then the step is halved down to 1/64 in, and is 0.1 mm after that.
 *
 * @returns {{gap: string, need: string}}
 */
export function against(gapM, needM, system) {
  if (!isNumber(gapM) || !isNumber(needM)) {
    return { gap: clearance(gapM, system), need: required(needM, system) };
  }
  const read = (stepM, write) => {
    const [gap, need] = [stepsIn(gapM, stepM, 'down'), stepsIn(needM, stepM, 'up')];
    return gapM < needM || gap >= need ? { gap: write(gap), need: write(need) } : null;
  };
  const usual = system === 'us'
    ? [8, 16, 32, 64].reduce(
      (found, parts) => found ?? read(INCH_M / parts, count => feetAndInches(count, parts)), null)
    : read(0.001, millimeters);
  const tenths = count => `${decimals(count / 10, 1)} mm`;
  return usual ?? { gap: tenths(stepsIn(gapM, 0.0001, 'down')), need: tenths(stepsIn(needM, 0.0001, 'up')) };
}

/**
 * How far to raise; to 1/8 in or 1 mm, rounded up, but never farther than it goes: then by a finer step, or how far it
 * goes.
 *
 * @param endM how far it goes at most; null or left out where that is not known
 */
export function raise(valueM, system, endM = null) {
  const fits = (count, stepM) => endM === null || count * stepM <= endM + NOISE;
  const usual = system === 'us' ? INCH_M / 8 : 0.001;
  if (!isNumber(valueM) || fits(stepsIn(valueM, usual, 'up'), usual)) {
    return smallLength(valueM, system, 'up');
  }
  if (system !== 'us') {
    return `${decimals(stepsIn(endM, 0.0001, 'down') / 10, 1)} mm, as far as it goes`;
  }
  const parts = [16, 32, 64].find(finer => fits(stepsIn(valueM, INCH_M / finer, 'up'), INCH_M / finer));
  return parts === undefined
    ? `${feetAndInches(stepsIn(endM, INCH_M / 64, 'down'), 64)}, as far as it goes`
    : feetAndInches(stepsIn(valueM, INCH_M / parts, 'up'), parts);
}

/** A dimension that decides nothing: a place on the unit, a notch offset; to 1/8 in or 1 mm, nearest. */
export const dimension = (valueM, system) => smallLength(valueM, system, 'nearest');

function smallLength(valueM, system, rounding) {
  if (!isNumber(valueM)) {
    return UNKNOWN;
  }
  if (system === 'us') {
    return feetAndInches(stepsIn(valueM, INCH_M / 8, rounding));
  }
  return millimeters(stepsIn(valueM, 0.001, rounding));
}

const millimeters = mm => (Math.abs(mm) < 1000 ? `${signed(mm)} mm` : `${decimals(mm / 1000, 3)} m`);

function feetAndInches(count, inParts = 8) {
  const size = Math.abs(count);
  const feet = Math.floor(size / (12 * inParts));
  const inches = Math.floor((size / inParts) % 12);
  const fraction = asFraction(size % inParts, inParts);
  const parts = [];
  if (feet > 0) {
    parts.push(`${feet} ft`);
  }
  if (feet > 0 || inches > 0 || fraction === '') {
    parts.push(`${inches}`);
  }
  if (fraction !== '') {
    parts.push(fraction);
  }
  return `${count < 0 ? '−' : ''}${parts.join(' ')} in`;
}

/** In lowest terms; nothing of nothing. @param parts a power of two */
function asFraction(count, parts) {
  return count === 0 ? '' : count % 2 === 0 ? asFraction(count / 2, parts / 2) : `${count}/${parts}`;
}

/** The same length with decimals (0.01 in, 0.1 mm), where two close numbers must be told apart. */
export function fine(valueM, system, rounding) {
  if (!isNumber(valueM)) {
    return UNKNOWN;
  }
  return system === 'us'
    ? `${decimals(stepsIn(valueM, INCH_M / 100, rounding) / 100, 2)} in`
    : `${decimals(stepsIn(valueM, 0.0001, rounding) / 10, 1)} mm`;
}

/** A share, rounded down: "12.5 %". */
export const percentDown = share => `${(Math.floor(share * 1000 + 1e-9) / 10).toFixed(1)} %`;

/**
 * A signed distance along the road at a hazard, to 1 in or 1 cm, in words: "12 ft 3 in past".
 *
 * @param there what is said where there is none
 */
export function alongRoad(distanceM, system, there = 'at the point') {
  if (!isNumber(distanceM)) {
    return UNKNOWN;
  }
  const step = system === 'us' ? INCH_M : 0.01;
  const count = stepsIn(distanceM, step, 'nearest');
  if (count === 0) {
    return there;
  }
  const size = Math.abs(count);
  const text = system === 'us' ? feetAndInches(size * 8) : `${decimals(size / 100, 2)} m`;
  return `${text} ${count < 0 ? 'before' : 'past'}`;
}

/** A signed distance along the road as a bare figure for an axis: feet or meters, no unit. */
export function axisFigure(distanceM, system, places = 0) {
  return decimals(distanceM / axisUnitM(system), places);
}

/** Meters in one unit of a road axis at a hazard. */
export const axisUnitM = system => (system === 'us' ? FOOT_M : 1);

/** Its name. */
export const axisUnitName = system => (system === 'us' ? 'ft' : 'm');

/** Meters in one unit of an axis of clearances: inches or millimeters. */
export const gapUnitM = system => (system === 'us' ? INCH_M : 0.001);

/** Its name. */
export const gapUnitName = system => (system === 'us' ? 'in' : 'mm');

/** Meters in one unit of chainage: a mile or a kilometer. */
export const chainageUnitM = system => (system === 'us' ? MILE_M : 1000);

/** Its name. */
export const chainageUnitName = system => (system === 'us' ? 'mi' : 'km');

/** A load told as the mass it is the weight of: whole pounds or tens of kilograms, nearest. */
export const weight = (valueKg, system) => mass(valueKg, system, 'nearest');

/** What is left to a limit, rounded down; negative where the limit is not kept. */
export const weightLeft = (valueKg, system) => mass(valueKg, system, 'down');

/** Kilograms in one unit of a load axis: a thousand pounds or a tonne. */
export const loadUnitKg = system => (system === 'us' ? 1000 * POUND_KG : 1000);

/** Its name. */
export const loadUnitName = system => (system === 'us' ? 'thousand lb' : 't');

function mass(valueKg, system, rounding) {
  if (!isNumber(valueKg)) {
    return UNKNOWN;
  }
  const step = system === 'us' ? POUND_KG : 10;
  const count = stepsIn(valueKg, step, rounding);
  const size = grouped(Math.abs(count * (system === 'us' ? 1 : 10)), system === 'us' ? ',' : ' ');
  return `${count < 0 ? '−' : ''}${size} ${system === 'us' ? 'lb' : 'kg'}`;
}

/** A whole number with a mark between thousands. */
const grouped = (count, mark) => String(count).replace(/\B(?=(\d{3})+$)/g, mark);

/** A gauge pressure: whole psi or 0.1 bar; of a range "up" for its least and "down" for its most. */
export function pressure(valuePa, system, side = 'nearest') {
  if (!isNumber(valuePa)) {
    return UNKNOWN;
  }
  return system === 'us'
    ? `${grouped(stepsIn(valuePa, PSI_PA, side), ',')} psi`
    : `${decimals(stepsIn(valuePa, 1e4, side) / 10, 1)} bar`;
}

/** Pascals in one unit of a pressure axis. */
export const pressureUnitPa = system => (system === 'us' ? PSI_PA : 1e5);

/** Its name. */
export const pressureUnitName = system => (system === 'us' ? 'psi' : 'bar');

/** How long something takes, to the minute, rounded up: "16 min", "1 h 30 min". */
export function duration(seconds) {
  if (!isNumber(seconds)) {
    return UNKNOWN;
  }
  const minutes = stepsIn(seconds, 60, 'up');
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return hours === 0 ? `${rest} min` : `${hours} h${rest === 0 ? '' : ` ${rest} min`}`;
}

/** What a crossing takes, rounded up to the second; what there is, down. @param rounding 'up' or 'down' */
export const seconds = (value, rounding) => (isNumber(value) ? `${stepsIn(value, 1, rounding)} s` : UNKNOWN);

/** A time the way files and requests spell it, exactly: "15 min", "90 s", "1 h 30 min". */
export function asTime(value) {
  const [hours, rest] = [Math.floor(value / 3600), value % 3600];
  if (rest % 60 !== 0) {
    return `${value} s`;
  }
  return [hours > 0 && `${hours} h`, (rest > 0 || hours === 0) && `${rest / 60} min`].filter(Boolean).join(' ');
}

/** A speed, to the tenth, rounded down: "3 mph", "4.8 km/h". */
export function speed(valueMps, system) {
  return isNumber(valueMps)
    ? `${signed(stepsIn(valueMps / speedUnitMps(system), 0.1, 'down') / 10)} ${speedUnitName(system)}`
    : UNKNOWN;
}

/** A speed that must not be exceeded: whole 5 mph or 5 km/h, rounded down. */
export const speedDown = (valueMps, system) => (isNumber(valueMps)
  ? `${5 * Math.floor(valueMps / speedUnitMps(system) / 5 + 1e-3)} ${speedUnitName(system)}`
  : UNKNOWN);

/** A speed the way files and requests spell it, near enough to be what was read. */
export const asSpeed = (valueMps, system) =>
  `${Number((valueMps / speedUnitMps(system)).toPrecision(6))} ${speedUnitName(system)}`;

const speedUnitMps = system => (system === 'us' ? MILE_M / 3600 : 1 / 3.6);

/** Its name. */
export const speedUnitName = system => (system === 'us' ? 'mph' : 'km/h');

/** A spare of a plan: what is left beyond what is required, rounded down; loads by weight, gaps by length. */
export const spareLeft = (kind, left, system) =>
  (kind === 'load' ? weightLeft(left, system) : clearance(left, system));

/** Room or length, to whole feet or 0.1 m. @param rounding 'down' for what there is, 'up' for what is needed */
export function room(valueM, system, rounding) {
  if (!isNumber(valueM)) {
    return UNKNOWN;
  }
  return system === 'us'
    ? `${grouped(stepsIn(valueM, FOOT_M, rounding), ',')} ft`
    : `${decimals(stepsIn(valueM, 0.1, rounding) / 10, 1)} m`;
}

/** An angle to the tenth of a degree. */
export const angle = valueRad => (isNumber(valueRad) ? `${decimals(valueRad * 180 / Math.PI, 1)}°` : UNKNOWN);

/** A distance that is left on the road, rounded down: "2.4 mi", "850 ft", "3.9 km", "290 m". */
export function distanceLeft(distanceM, system) {
  const [small, smallM, step, large, largeM] = system === 'us'
    ? ['ft', FOOT_M, 50, 'mi', MILE_M] : ['m', 1, 10, 'km', 1000];
  return distanceM < largeM * 0.3
    ? `${stepsIn(distanceM, smallM * step, 'down') * step} ${small}`
    : `${decimals(stepsIn(distanceM, largeM / 10, 'down') / 10, 1)} ${large}`;
}

/** Distance from the start of the route, nearest hundredth: "12.67 mi", "20.39 km". */
export function chainage(valueM, system) {
  return isNumber(valueM) ? `${chainageFigure(valueM, system)} ${chainageUnitName(system)}` : UNKNOWN;
}

/** The same without its unit, for a column that names it. */
export function chainageFigure(valueM, system) {
  return isNumber(valueM) ? decimals(valueM / chainageUnitM(system), 2) : UNKNOWN;
}

/** A chainage as fine as a place can be put by it: to a foot or less. */
export function chainageFine(valueM, system) {
  return `${decimals(valueM / chainageUnitM(system), 4)} ${chainageUnitName(system)}`;
}

/** What "3.2 mi", "5.1 km", "2640 ft" or "800 m" is, meters; null for anything else. */
export function distanceOf(text) {
  const said = text.trim().match(/^(\d+(?:\.\d+)?)\s*(mi|km|ft|m)$/);
  return said && Number(said[1]) * { mi: MILE_M, km: 1000, ft: FOOT_M, m: 1 }[said[2]];
}

/** A figure with its unit, trailing zeros dropped: for scale bars and axes ("0.5 mi", "20 ft"). */
export function round(value, unit) {
  return `${signed(Number(value.toPrecision(6)))} ${unit}`;
}

/** A slope as a grade: "1.5 %", climbing in the direction of travel positive. */
export function grade(slope) {
  return isNumber(slope) ? `${decimals(slope * 100, 1)} %` : UNKNOWN;
}

/** Degrees and minutes with a hemisphere: "41°12′N". */
export function coordinate(degrees, axis) {
  const hemisphere = axis === 'lat' ? (degrees < 0 ? 'S' : 'N') : degrees < 0 ? 'W' : 'E';
  const minutes = Math.round(Math.abs(degrees) * 60);
  return `${Math.floor(minutes / 60)}°${String(minutes % 60).padStart(2, '0')}′${hemisphere}`;
}

/** A length the way files and requests spell it, to a nanometer. */
export const asQuantity = valueM => `${valueM.toFixed(9)} m`;

/** "raise front 2 1/8 in, rear 1 in" */
export function raiseWords({ frontM, rearM, frontEndM, rearEndM }, units) {
  const parts = [
    frontM > 0 && `front ${raise(frontM, units, frontEndM)}`, rearM > 0 && `rear ${raise(rearM, units, rearEndM)}`];
  return `raise ${parts.filter(Boolean).join(', ')}`;
}

/** A notch's offset from the reference: "+5/8 in", "reference". */
export function offset(offsetM, units) {
  return offsetM === 0 ? ' reference' : ` ${offsetM > 0 ? '+' : ''}${dimension(offsetM, units)}`;
}

function decimals(value, places) {
  const text = Math.abs(value).toFixed(places);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

function signed(value) {
  return value < 0 ? `−${-value}` : `${value}`;
}

function isNumber(value) {
  return typeof value === 'number' && Number.isFinite(value);
}
