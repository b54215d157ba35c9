/** Cells of a table that somebody copied from a spreadsheet or an instrument. No DOM. */
import { hasDecimalCommas, unitOf, withPoint } from './typedlength.js';

/**
 * {rows, units, names, heads, comma}: rows of cells as text; what head lines said of each column, as a unit and as a
 * column of a survey, and how many there were; whether decimal commas became points.
 */
export function tableOf(text) {
  const lines = text.replace(/\r\n?/g, '\n').split('\n').filter(line => line.trim() !== '');
  const rows = lines.map(cutter(lines));
  const width = Math.max(0, ...rows.map(row => row.length));
  const heads = [];
  while (rows.length > 0 && isHead(rows[0])) {
    heads.push(rows.shift());
  }
  const column = read => Array.from({ length: width }, (none, k) =>
    heads.map(head => read(head[k] ?? '')).find(found => found !== null) ?? null);
  const comma = hasDecimalCommas(rows.flat());
  return {
    rows: comma ? rows.map(row => row.map(withPoint)) : rows,
    units: column(unitIn),
    names: column(nameIn),
    heads: heads.length,
    comma,
  };
}

/** How a line is cut: at tabs, else semicolons, else commas that cannot be decimal signs, else blanks. */
function cutter(lines) {
  if (lines.some(line => line.includes('\t'))) {
    return line => line.split('\t').map(unquoted);
  }
  if (lines.some(line => line.includes(';'))) {
    return line => line.split(';').map(unquoted);
  }
  const figures = lines.filter(line => /\d/.test(line));
  if (figures.length > 0 && figures.every(line => /,\s|,.*,|\.\d+\s*,|,\s*-?\d+\.\d/.test(line))) {
    return line => line.split(',').map(unquoted);
  }
  if (figures.some(line => /\S {2,}\S/.test(line))) {
    return line => line.trim().split(/ {2,}/).map(unquoted);
  }
  const bare = line => /^\s*[-+−–]?[\d.,]+(\s+[-+−–]?[\d.,]+)+\s*$/.test(line);
  return line => (bare(line) ? line.trim().split(/\s+/) : [line.trim()]);
}

/** A spreadsheet quotes cells that hold quotes. */
function unquoted(cell) {
  const inside = cell.trim().match(/^"((?:[^"]|"")*)"$/);
  return inside && cell.trim().length > 1 ? inside[1].replaceAll('""', '"').trim() : cell.trim();
}

/** A head has words and no cell that begins as a number does. */
const isHead = row => row.some(cell => /\p{L}/u.test(cell)) && !row.some(cell => /^[-+−–]?\s*[.,]?\d/.test(cell));

/** The unit a head names, by itself or in brackets or behind a comma. */
function unitIn(head) {
  const [, word] = head.match(/[([,/]\s*([\p{L}'"]+)\s*[)\]]?\s*$/u) ?? [null, head];
  return unitOf(word);
}

const NAMES = [
  ['distance', /^(dist|station|sta\b|chainage|along)/i],
  ['left', /^(left|l)\b/i],
  ['center', /^(cent|middle|mid\b|c\b|cl\b)/i],
  ['right', /^(right|r)\b/i],
  ['underside', /^(under|soffit|bottom)/i],
];

/** Which column of a survey a head means, or null. */
const nameIn = head => NAMES.find(([, words]) => words.test(head.trim()))?.[0] ?? null;
