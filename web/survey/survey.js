/**
 * The survey of one hazard as a table: made of the route file, read back into it. Texts stay as they were written until
 * they are read. No DOM.
 *
 * A draft is {lines: [{name, offset}], rows: [[distance, height of each line...]], units: {distance, height}, fields:
 * {accuracy, source, date, ...}, notes}, all texts; units are those of bare numbers, notes as in leveling.js.
 */
import { HEIGHT_KEYS, heightField, heightsOf, isKnown, OVERHEAD_KINDS, readHeights } from './heights.js';
import { withMember } from '../text/jsontext.js';
import { lengthOf } from '../text/typedlength.js';
import { blankReading, hasReadings, isOwnNotes, notesOf, notesText, reduced, rowsFrom } from './leveling.js';

/** Hazards whose road is surveyed by lines. */
export const SURVEYED_KINDS = ['rail-crossing', 'dip', 'crest', ...OVERHEAD_KINDS];

/** What a survey says besides its numbers: where it stands in the file, and what a form calls it. */
export const FIELDS = [
  { key: 'accuracy', path: ['survey', 'accuracy'], label: 'Accuracy', example: '10 mm', needed: true },
  { key: 'source', path: ['survey', 'source'], label: 'Measured by, with', example: 'level and tape', needed: true },
  { key: 'date', path: ['survey', 'date'], label: 'Date', example: '2026-10-05' },
  { key: 'beforeGrade', path: ['approachBefore', 'grade'], label: 'Grade before', example: '1.5 %' },
  { key: 'beforeAccuracy', path: ['approachBefore', 'accuracy'], label: 'its accuracy', example: '0.2 %' },
  { key: 'afterGrade', path: ['approachAfter', 'grade'], label: 'Grade after', example: '-1 %' },
  { key: 'afterAccuracy', path: ['approachAfter', 'accuracy'], label: 'its accuracy', example: '0.2 %' },
];
export const RAILS = {
  key: 'tracks', path: ['tracks'], label: 'Rails at (middle of each track)', example: '0 ft; 14 ft',
};
const GROUPS = ['survey', 'approachBefore', 'approachAfter'];

/** Column of a structure's underside. */
const UNDERSIDE = 'underside';

/** Rows that wait for numbers where nothing was surveyed yet. */
const EMPTY_ROWS = 3;

/** Where a hazard stands among the features, or -1. */
export const featureOf = (route, id) => (Array.isArray(route?.json?.features) ? route.json.features : [])
  .findIndex(feature => feature?.properties?.hazard !== undefined && feature.properties.id === id);

/** @param unit of bare numbers where the file has none */
export function draftOf(properties, unit) {
  const road = properties.profile ?? [];
  const lines = road.length > 0
    ? road.map(({ line, offset }) => ({ name: line, offset: offset ?? '' }))
    : ['left', 'center', 'right'].map(name => ({ name, offset: '' }));
  if (properties.hazard === 'low-structure') {
    lines.push({ name: UNDERSIDE, offset: '', isSoffit: true });
  }
  const profile = [
    ...lines.map((line, k) => ({ points: (line.isSoffit ? properties.soffit : road[k]?.points) ?? [] })),
  ];
  const units = {
    distance: mostly(profile.flatMap(({ points }) => points.map(point => point[0])), unit),
    height: mostly(profile.flatMap(({ points }) => points.map(point => point[1])), unit),
  };
  const written = properties.tracks ?? [];
  return {
    kind: properties.hazard,
    lines,
    units,
    notes: notesOf(properties.survey?.notes, units.height, units.distance),
    rows: profile.some(({ points }) => points.length > 0) ? rowsOf(profile, units)
      : Array.from({ length: EMPTY_ROWS }, () => emptyRow({ lines })),
    fields: {
      ...Object.fromEntries(FIELDS.map(({ key, path }) => [key, properties[path[0]]?.[path[1]] ?? ''])),
      tracks: written.join('; '),
      ...heightsOf(properties),
    },
  };
}

export const emptyRow = ({ lines }) => ['', ...lines.map(() => '')];

/** The unit that most of these quantities have. */
function mostly(quantities, otherwise) {
  const count = new Map();
  quantities.forEach(text => {
    const unit = bareOf(text)?.unit;
    count.set(unit, (count.get(unit) ?? 0) + 1);
  });
  count.delete(undefined);
  return [...count].sort((a, b) => b[1] - a[1])[0]?.[0] ?? otherwise;
}

const bareOf = text => String(text).match(/^(?<number>-?\d+(?:\.\d+)?) (?<unit>ft|in|m|cm|mm)$/)?.groups ?? null;
const without = (text, unit) => (bareOf(text)?.unit === unit ? bareOf(text).number : String(text));

/** Lines that were surveyed at the same distances share rows. */
function rowsOf(profile, units) {
  const rows = new Map();
  profile.forEach(({ points }, k) => points.forEach(([distance, height]) => {
    const at = lengthOf(String(distance), units.distance).m ?? NaN;
    const key = Math.round(at * 1e7);
    const row = rows.get(key) ?? { at, cells: [without(distance, units.distance), ...profile.map(() => '')] };
    row.cells[k + 1] = without(height, units.height);
    rows.set(key, row);
  }));
  return [...rows.values()].sort((a, b) => a.at - b.at).map(({ cells }) => cells);
}

export const withCell = (draft, row, column, text) => ({
  ...draft, rows: draft.rows.map((cells, k) => (k === row ? cells.with(column, text) : cells)),
});
export const withRowAt = (draft, row) => ({ ...draft, rows: draft.rows.toSpliced(row, 0, emptyRow(draft)) });
export const withoutRow = (draft, row) => ({ ...draft, rows: draft.rows.toSpliced(row, 1) });
export const withField = (draft, key, text) => ({ ...draft, fields: { ...draft.fields, [key]: text } });
export const withUnit = (draft, which, unit) => ({ ...draft, units: { ...draft.units, [which]: unit } });
export const withOffset = (draft, line, offset) => ({
  ...draft, lines: draft.lines.map((one, k) => (k === line ? { ...one, offset } : one)),
});

export const withNotes = (draft, part) => ({ ...draft, notes: { ...draft.notes, ...part } });
export const withReading = (draft, row, column, text) => withNotes(draft, {
  rows: Array.from({ length: Math.max(row + 1, draft.notes.rows.length) }, (none, k) => {
    const cells = draft.notes.rows[k] ?? blankReading();
    return k === row ? cells.with(column, text) : cells;
  }),
});

/** Heights of the notes in the place of what the table has. */
export function withNotesTaken(draft) {
  const { points, problems } = reduced(draft.notes, draft.units.distance);
  if (problems.length > 0 || points.length === 0) {
    return draft;
  }
  const units = { ...draft.units, height: draft.notes.unit };
  const missing = [...new Set(points.map(({ line }) => line))]
    .filter(name => !draft.lines.some(one => one.name === name));
  const lines = [...draft.lines, ...missing.map(name => ({ name, offset: '' }))];
  return { ...draft, units, lines, rows: rowsFrom(points, lines.map(({ name }) => name), units) };
}

/** Rows in the order of their distances; those without one that can be read stay last. */
export function inOrder(draft) {
  const at = cells => lengthOf(cells[0], draft.units.distance).m ?? Infinity;
  const keyed = draft.rows.map(cells => ({ cells, at: at(cells) }));
  return { ...draft, rows: keyed.sort((a, b) => (a.at === b.at ? 0 : a.at - b.at)).map(({ cells }) => cells) };
}

/**
 * A pasted table, its upper left cell at a cell; columns that a head names go where they belong.
 *
 * @param table as `tableOf` makes it
 * @returns {draft, said}: what became of it, in words
 */
export function withPasted(draft, row, column, table) {
  const names = ['distance', ...draft.lines.map(({ name }) => name)];
  const named = table.names.some(name => names.includes(name));
  const targets = Array.from({ length: table.names.length }, (none, k) =>
    (named ? names.indexOf(table.names[k]) : column + k));
  const outside = new Set();
  const rows = [...draft.rows];
  const { units, write } = unitsOf(draft, table, targets);
  table.rows.forEach((cells, i) => {
    const at = row + i;
    const made = [...(rows[at] ?? emptyRow(draft))];
    cells.forEach((cell, k) => {
      if (targets[k] >= 0 && targets[k] < names.length) {
        made[targets[k]] = write(cell, targets[k]);
      } else if (cell !== '') {
        outside.add(k + 1);
      }
    });
    rows[at] = made;
  });
  const count = table.rows.length;
  return {
    draft: { ...draft, rows, units },
    said: count === 0 ? 'Nothing was pasted: no line of it begins with a number.' : [
      `${count} ${count === 1 ? 'row' : 'rows'} pasted.`,
      table.heads > 0 && `${table.heads === 1 ? 'The head line was' : `${table.heads} head lines were`} not taken as `
        + 'numbers.',
      table.comma && 'Decimal commas were read as points.',
      outside.size > 0 && `Not taken, there is no column for it: ${[...outside].map(k => `column ${k}`).join(', ')} of `
        + 'what was pasted.',
    ].filter(Boolean).join(' '),
  };
}

const BARE = /^[-+−–]?[\d.,]+$/;

/** The unit that heads of a pasted table name: of the whole column where nothing else is in it, else of each number. */
function unitsOf(draft, table, targets) {
  const units = { ...draft.units };
  const added = {};
  for (const [which, holds] of [['distance', column => column === 0], ['height', column => column > 0]]) {
    const named = [...new Set(table.units.filter((unit, k) => unit !== null && holds(targets[k])))];
    const [unit] = named;
    const others = draft.rows.some(cells => cells.some((cell, k) => holds(k) && BARE.test(cell.trim())));
    if (named.length === 1 && !others) {
      units[which] = unit;
    } else if (named.length > 0) {
      added[which] = named.length === 1 ? () => unit : column => table.units[targets.indexOf(column)];
    }
  }
  return {
    units,
    write: (cell, column) => {
      const unit = added[column === 0 ? 'distance' : 'height']?.(column);
      return unit && BARE.test(cell) ? `${cell} ${unit}` : cell;
    },
  };
}

/**
 * What a draft says: {isEmpty, problems: [{at, text}], drawn: [{name, points: [[m, m, row]]}], members, places}.
 * `at` is "row,column" or the key of a field. members are those of the file's properties, undefined where they are
 * left out; places says where a point of the file stands in the table.
 */
export function readDraft(draft) {
  const problems = [];
  const lines = draft.lines.map(line => ({ ...line, points: [], drawn: [], rows: [] }));
  draft.rows.forEach((cells, row) => readRow(draft, cells, row, lines, problems));
  const isEmpty = draft.rows.every(cells => cells.every(cell => cell.trim() === ''));
  const used = lines.filter(line => line.rows.length > 0);
  used.filter(({ rows }) => rows.length === 1).forEach(line => problems.push({
    at: `${line.rows[0]},${lines.indexOf(line) + 1}`,
    text: `The line "${line.name}" has one point. A line has two or more.`,
  }));
  if (!isEmpty && used.length === 0 && problems.length === 0) {
    problems.push({ at: '0,1', text: 'There are distances, but no heights beside them.' });
  }
  const road = used.filter(line => !line.isSoffit);
  const members = {
    profile: road.length > 0 ? road.map(line => lineOf(line, draft, lines.indexOf(line), problems)) : undefined,
    soffit: used.find(line => line.isSoffit)?.points,
    ...readHeights(draft.fields, draft.units, draft.kind, problems),
  };
  readFields(draft, isEmpty, members, problems);
  return {
    isEmpty, problems, members,
    drawn: used.map(({ name, drawn }) => ({ name, points: drawn })),
    soffit: used.filter(line => line.isSoffit)
      .map(line => ({ column: lines.indexOf(line) + 1, rows: line.rows }))[0] ?? null,
    places: road.map(line => ({ column: lines.indexOf(line) + 1, rows: line.rows })),
  };
}

function readRow(draft, cells, row, lines, problems) {
  if (cells.every(cell => cell.trim() === '')) {
    return;
  }
  const read = (column, unit) => {
    const found = lengthOf(cells[column], unit);
    if (found.problem) {
      problems.push({ at: `${row},${column}`, text: found.problem });
    }
    return found;
  };
  const distance = cells[0].trim() === '' ? null : read(0, draft.units.distance);
  if (distance === null) {
    problems.push({ at: `${row},0`, text: 'These heights need a distance from the point.' });
  }
  lines.forEach((line, k) => {
    if (cells[k + 1].trim() === '') {
      return;
    }
    const height = read(k + 1, draft.units.height);
    line.rows.push(row);
    line.points.push([distance?.text, height.text]);
    if (distance?.text && height.text) {
      line.drawn.push([distance.m, height.m, row]);
    }
  });
}

function lineOf({ name, offset, points }, draft, index, problems) {
  if (offset.trim() === '') {
    return { line: name, points };
  }
  const read = lengthOf(offset, draft.units.distance);
  if (read.problem) {
    problems.push({ at: `offset${index}`, text: read.problem });
  }
  return { line: name, offset: read.text, points };
}

function readFields({ kind, fields, units, notes }, isEmpty, members, problems) {
  for (const { key, path, needed } of FIELDS) {
    const text = fields[key].trim();
    if (text !== '') {
      members[path[0]] = { ...members[path[0]], [path[1]]: text };
    } else if (needed && (!isEmpty || hasReadings(notes))) {
      problems.push({
        at: key,
        text: key === 'accuracy' ? 'How far may a height be off? Write half of the interval that holds 95 of 100, such '
          + 'as 10 mm.' : 'Who measured it, and with what?',
      });
    }
  }
  const rails = fields.tracks.split(/[;\n]|,\s/).map(text => text.trim()).filter(Boolean)
    .map(text => lengthOf(text, units.distance));
  rails.filter(({ problem }) => problem).forEach(({ problem }) => problems.push({ at: 'tracks', text: problem }));
  members.tracks = rails.length > 0 ? rails.map(({ text }) => text) : undefined;
  if (hasReadings(notes) && members.survey) {
    members.survey.notes = notesText(notes, units.distance);
  }
  if (isEmpty) {
    GROUPS.filter(group => group !== 'survey' || !(hasReadings(notes) || OVERHEAD_KINDS.includes(kind)))
      .forEach(group => { members[group] = undefined; });
  }
}

/** The text of the route with what a draft says of a hazard; the same text where it says nothing else. */
export function withSurvey(text, index, properties, { isEmpty, members }) {
  const path = ['features', index, 'properties'];
  const state = properties.candidate?.state;
  const others = properties.survey?.notes;
  const known = OVERHEAD_KINDS.includes(properties.hazard) ? isKnown(members) || Boolean(members.profile) : !isEmpty;
  const wanted = {
    ...members,
    // Notes that the page cannot read are somebody's all the same.
    ...(members.survey && !members.survey.notes && others && !isOwnNotes(others)
      && { survey: { ...members.survey, notes: others } }),
    // Only a rail crossing has rails.
    ...(properties.hazard !== 'rail-crossing' && { tracks: properties.tracks }),
    candidate: state === 'open' && known ? { ...properties.candidate, state: 'surveyed' }
      : state === 'surveyed' && !known ? { ...properties.candidate, state: 'open' } : properties.candidate,
  };
  const keys = ['candidate', 'survey', 'approachBefore', 'approachAfter', 'profile', 'tracks'];
  const over = OVERHEAD_KINDS.includes(properties.hazard) ? [...HEIGHT_KEYS, 'soffit'] : [];
  return [...keys, ...over].reduce((made, key) =>
    (JSON.stringify(wanted[key]) === JSON.stringify(properties[key]) ? made
      : withMember(made, path, key, wanted[key] === undefined ? undefined : JSON.stringify(wanted[key]))), text);
}

/**
 * The server's problems at the cells they are about: {here: [{at, text}], elsewhere: [problem]}.
 *
 * @param read what readDraft made of the draft that was sent
 */
export function placed(problems, index, { places, soffit }) {
  const here = [];
  const elsewhere = [];
  for (const problem of problems) {
    const [, inside] = problem.pointer.match(new RegExp(`/features/${index}/properties/(.+)$`)) ?? [];
    const at = inside === undefined ? null : cellOf(inside.split('/'), places, soffit);
    (at === null ? elsewhere : here).push(at === null ? problem
      : { at, text: [problem.message, problem.remedy].filter(Boolean).join(' ') });
  }
  return { here, elsewhere };
}

function cellOf([key, ...rest], places, soffit) {
  if (key === 'survey' && rest[0] === 'notes') {
    return 'notes';
  }
  if (key === 'profile' && places[rest[0]]) {
    const { column, rows } = places[rest[0]];
    if (rest[1] === 'points') {
      const row = rows[Number(rest[2] ?? 0)];
      return `${row},${rest[3] === '0' ? 0 : column}`;
    }
    return `offset${column - 1}`;
  }
  if (key === 'soffit') {
    return soffit && `${soffit.rows[Number(rest[0] ?? 0)]},${rest[1] === '0' ? 0 : soffit.column}`;
  }
  if (HEIGHT_KEYS.includes(key)) {
    return heightField([key, ...rest]);
  }
  const field = [...FIELDS, RAILS].find(({ path }) => path[0] === key && (path.length === 1 || path[1] === rest[0]))
    ?? FIELDS.find(({ path }) => path[0] === key);
  return field?.key ?? (key === 'profile' ? '0,0' : null);
}
