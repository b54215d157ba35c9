/**
 * Questions asked of a kept run sheet: {cresthaul: 'cab/1', language, line, sheet}. The sheet is the run sheet as the
 * program wrote it; nothing here says anything of a place in words of its own. No DOM.
 */
export const FORM = 'cab/1';

/** Sections of an entry, in the order in which they are read; their titles are words of the same name. */
export const SECTIONS = ['before', 'through', 'after', 'gauges'];

/** Points of the line that are kept, at most: enough to know a place by, little to store. */
const MOST_POINTS = 4000;

/** What is kept of a sheet. @param line for each leg its points [lon, lat, chainage], or null */
export function kept(sheet, language, line) {
  return { cresthaul: FORM, language, line: line && thinned(line), sheet };
}

/** A kept sheet from the text of a file, or null when it is none. */
export function read(text) {
  try {
    const file = JSON.parse(text);
    const sheet = file?.sheet;
    const sound = file?.cresthaul === FORM && sheet?.cresthaul === 'runsheet/1' && Array.isArray(sheet.legs)
      && Array.isArray(sheet.cards) && typeof sheet.banner?.headline === 'string';
    return sound ? file : null;
  } catch {
    return null;
  }
}

function thinned(line) {
  const points = line.reduce((sum, leg) => sum + leg.length, 0);
  const step = Math.ceil(points / MOST_POINTS);
  return line.map(leg => leg.filter((_, index) => index % step === 0 || index === leg.length - 1));
}

/** Tells one sheet from another: equal texts have equal identities. Two sums of 26 bits each; it guards nothing. */
export function identity(text) {
  let [a, b] = [0xdeadbeef, 0x41c6ce57];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 2654435761);
    b = Math.imul(b ^ code, 1597334677);
  }
  a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
  b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
  return (b >>> 0).toString(16).padStart(8, '0') + (a >>> 0).toString(16).padStart(8, '0');
}

/** Whether the sheet has steps to drive by: a blocked one says what blocks and nothing else. */
export const hasWay = ({ sheet }) => sheet.blocking.length === 0;

/** The steps in driving order. */
export const entries = ({ sheet }) => sheet.legs.flatMap(({ entries: own }) => own);

/** What is ticked off at an entry, in order: {key, line}. */
export function ticksOf(entry, index) {
  return ['comes', ...SECTIONS].flatMap(section => entry[section]
    .map((line, n) => ({ key: tickKey(index, section, n), line })))
    .filter(({ line }) => line.tick);
}

export const tickKey = (...parts) => parts.join('.');

/** What the cab's first page shows of a step: what it is and what is set, as the sheet says it. */
export function told(entry) {
  const doing = ['change', 'raise', 'lower', 'depart'].includes(entry.step);
  const lines = [...entry.comes, ...(doing ? [...entry.before, ...entry.after, ...entry.gauges] : [])];
  return lines.map(({ text, code }) => ({ text, code }));
}

/** Meters from one step to the next, or null at the first. */
export const sinceM = (list, index) => (index === 0 ? null : list[index].chainageM - list[index - 1].chainageM);

/** The crossing that a driver at a step is most likely on: the one of the step, else the last before, else the next. */
export function likelyCrossing({ sheet }, list, index) {
  const isCrossing = entry => sheet.crossings.some(({ hazard }) => hazard === entry?.id);
  const before = list.slice(0, index + 1).reverse().find(isCrossing);
  const found = isCrossing(list[index]) ? list[index] : before ?? list.slice(index).find(isCrossing);
  return found?.id ?? null;
}

/** A telephone number as a link: digits alone, a plus first where it has one. */
export const telephone = phone => `tel:${phone.replace(/(?!^\+)[^0-9]/g, '')}`;
