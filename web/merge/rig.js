/** Three versions of a rig, row by row of what was taped, and all else by its key. No DOM. */
import { pointerOf, valueAt } from '../rig/frame.js';
import { rowsOf, tapeOf } from '../rig/tape.js';
import { withRow } from '../rig/tapechange.js';
import { lengthOf, lengthText, tapeText } from '../text/length.js';
import { difference, rawAt, same, short, withRaw, worded } from './parts.js';

/** Rows of every stance by key; those of the whole rig once. */
function rowsIn(json) {
  const rows = new Map();
  (json.stances ?? []).forEach((one, stance) => rowsOf(tapeOf(json, stance)).forEach(row => {
    rows.set(row.id.startsWith('rig/') ? row.id : `${stance}:${row.id}`, { ...row, stance });
  }));
  return rows;
}

const figureOf = row => (row === undefined ? undefined : row.kind === 'written' ? row.text : row.value);

/** @returns {differences, put: (mine ids) → text}, or null where it can only be taken as a whole */
export function compareRigs(texts, units) {
  const [, mine, theirs] = texts;
  const jsons = texts.map(text => JSON.parse(text));
  const rows = jsons.map(rowsIn);
  const keys = [...rows[0].keys()];
  const names = json => (json.stances ?? []).map(({ name }) => name);
  if (rows.some(one => !same([...one.keys()], keys)) || jsons.some(json => !same(names(json), names(jsons[0])))) {
    return null;
  }
  const differences = [...ofRows(jsons, rows, units), ...ofRest(jsons, rows[0])];
  const put = ids => differences.filter(({ id }) => ids.has(id))
    .reduce((text, one) => (one.path ? withRaw(text, one.path, rawAt(mine, one.path))
      : takeRow(text, mine, one.id, rows[1].get(one.id))), theirs);
  const all = put(new Set(differences.map(({ id }) => id)));
  return same(plain(JSON.parse(all)), plain(jsons[1])) ? { differences, put } : null;
}

/** Lengths as what they are, however they are written, and keys in order. */
const plain = value => (Array.isArray(value) ? value.map(plain)
  : value !== null && typeof value === 'object'
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)).map(([k, one]) => [k, plain(one)]))
    : lengthOf(value) ?? value);

function takeRow(text, mine, key, row) {
  if (row.kind === 'written') {
    return withRaw(text, row.path, rawAt(mine, row.path));
  }
  const json = JSON.parse(text);
  const now = rowsIn(json).get(key);
  return now.value === row.value ? text : withRow(text, json, now, lengthText(row.value, '1 m'));
}

/** What is moved as a whole comes first, so that its points have gone along when they are looked at. */
function ofRows(jsons, rows, units) {
  const told = value => (typeof value === 'number' ? tapeText(value, units) : short(value));
  const stances = jsons[0].stances.length > 1;
  const found = [...rows[0].keys()].map(key => {
    const all = rows.map(one => one.get(key));
    const one = difference({
      id: key, where: stances && all[0].stance !== undefined ? `Rig, ${jsons[0].stances[all[0].stance].name}` : 'Rig',
      what: all[0].label,
    }, all.map(figureOf), told);
    return one && { ...one, rows: all };
  }).filter(Boolean);
  const wholes = found.filter(({ rows: [row] }) => row.whole);
  const others = found.filter(one => !one.rows[0].whole && !wholes.some(whole => rides(one, whole)));
  return [...wholes, ...others].map(({ rows: dropped, ...one }) => one);
}

/** Whether a row has changed by nothing but what it belongs to having been moved, in both versions. */
function rides({ rows: own }, { rows: whole }) {
  const moved = whole[0].moves.map(pointerOf);
  const by = (all, k) => all[k].value - all[0].value;
  return own[0].kind === 'offset' && moved.includes(own[0].pointer)
    && [1, 2].every(k => by(own, k) === by(whole, k));
}

/** All that no row says: by key, as deep as all three have the same shape. */
function ofRest(jsons, rows) {
  const covered = new Set([...rows.values()].flatMap(row =>
    [row.pointer, ...(row.moves ?? []).map(pointerOf)].filter(Boolean)));
  const found = [];
  walk([], jsons);
  return found;

  function walk(path, values) {
    if (same(values[1], values[2]) || covered.has(pointerOf(path))) {
      return;
    }
    const [isList, isObject] = [values.every(Array.isArray),
      values.every(one => one !== null && typeof one === 'object' && !Array.isArray(one))];
    if (isObject || (isList && values.every(one => one.length === values[0].length))) {
      [...new Set(values.flatMap(one => Object.keys(one)))]
        .forEach(key => walk([...path, isList ? Number(key) : key], values.map(one => one[key])));
      return;
    }
    const one = difference({ id: pointerOf(path), where: 'Rig', what: pathWords(jsons[0], path) }, values, short);
    found.push({ ...one, path });
  }
}

/** "stances, loaded, booster, states": numbers as the names that stand there. */
const pathWords = (json, path) => path.map((step, k) => (typeof step === 'number'
  ? valueAt(json, [...path.slice(0, k + 1), 'name']) ?? step + 1 : worded(step))).join(', ');
