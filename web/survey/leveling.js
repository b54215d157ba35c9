/**
 * Level and rod notes: reduced by height of instrument, checked by rise and fall, closed on a known level. No DOM.
 *
 * Notes are {unit, start, closing, end, loop, spread, rows: [[distance, line, backsight, intermediate, foresight,
 * remark]]}, all texts but spread; closing is 'start', 'other' or 'none'. Readings and levels without a unit are in
 * `unit`.
 */
import { lengthOf, metersIn, unitOf } from '../text/typedlength.js';

export const CLOSINGS = ['start', 'other', 'none'];
const LINES = { l: 'left', left: 'left', c: 'center', center: 'center', r: 'right', right: 'right' };
const [DISTANCE, LINE, BACK, BETWEEN, FORE] = [0, 1, 2, 3, 4];
export const COLUMNS = ['Distance', 'Line', 'Backsight', 'Intermediate sight', 'Foresight', 'Remark'];

export const blankReading = () => COLUMNS.map(() => '');
const NO_NOTES = Object.freeze({
  unit: 'ft', start: '', closing: 'start', end: '', loop: '', spread: false, rows: [],
});
export const hasReadings = notes => notes.rows.some(row => row.some(cell => cell.trim() !== ''));

/**
 * Allowable misclosure of a loop, meters: 12 mm times the root of its length in kilometers, third order of leveling,
 * Federal Geodetic Control Committee, Standards and Specifications for Geodetic Control Networks (1984), from memory.
 */
export const allowableM = loopM => 0.012 * Math.sqrt(loopM / 1000);

/**
 * @param distanceUnit of distances without a unit
 * @returns {points: [{row, distance, line, heightM}], levels: [m or null by row], problems: [{at, text}], sums, setUps,
 *     misclosureM, allowedM, agrees}; at is "row,column" or a key of the notes; heights with the misclosure taken out
 *     where it is spread
 */
export function reduced(notes, distanceUnit) {
  const units = { distance: distanceUnit, height: notes.unit };
  const problems = [];
  const quantity = (text, unit, at) => {
    const read = lengthOf(text, unit);
    if (read.problem) {
      problems.push({ at, text: text.trim() === '' ? 'Which level? Any figure will do where only the road counts, such '
        + 'as 100.' : read.problem });
    }
    return read.m ?? NaN;
  };
  if (!hasReadings(notes)) {
    return { points: [], levels: [], problems, sums: null, setUps: 0, misclosureM: null, allowedM: null, agrees: true };
  }
  const startM = quantity(notes.start, units.height, 'start');
  const read = notes.rows.map((row, k) => readingsOf(row, k, units, quantity, problems));
  const walked = walk(read, startM, problems);
  const knownM = notes.closing === 'other' ? quantity(notes.end, units.height, 'end') : startM;
  const misclosureM = misclosureOf(notes, walked, knownM, problems);
  const loopM = notes.loop.trim() === '' ? NaN : quantity(notes.loop, units.distance, 'loop');
  const share = notes.spread && misclosureM !== null ? misclosureM / walked.setUps : 0;
  const levels = walked.levels.map(level => (level === null ? null : level.m - share * level.setUp));
  return {
    points: read.flatMap((one, row) => (one.line && levels[row] !== null && one.distance
      ? [{ row, distance: one.distance, line: one.line, heightM: levels[row] }] : [])),
    levels, problems, sums: walked.sums, setUps: walked.setUps, misclosureM,
    allowedM: Number.isFinite(loopM) && loopM > 0 ? allowableM(loopM) : null,
    agrees: walked.agrees,
  };
}

/** The readings of one row, meters; null where there is none. */
function readingsOf(row, k, units, quantity, problems) {
  if (row.every(cell => cell.trim() === '')) {
    return { blank: true };
  }
  const reading = column => (row[column].trim() === '' ? null : quantity(row[column], units.height, `${k},${column}`));
  const at = row[DISTANCE].trim();
  const line = LINES[row[LINE].trim().toLowerCase()] ?? null;
  if (at !== '' && line === null) {
    problems.push({ at: `${k},${LINE}`, text: 'On which line is the rod? Write left, center or right.' });
  } else if (at === '' && row[LINE].trim() !== '') {
    problems.push({ at: `${k},${DISTANCE}`, text: 'How far along is it? A point of the road has a distance.' });
  }
  if (at !== '') {
    quantity(at, units.distance, `${k},${DISTANCE}`);
  }
  return { blank: false, distance: at, line, back: reading(BACK), between: reading(BETWEEN), fore: reading(FORE) };
}

/** Through the notes from the first set-up to the last, by both methods. */
function walk(read, startM, problems) {
  const levels = read.map(() => null);
  const sums = { back: 0, fore: 0, rises: 0, falls: 0, first: startM, last: startM };
  let at = null;
  let instrumentM = NaN;
  let byRise = startM;
  let before = NaN;
  let setUps = 0;
  let closes = false;
  let isStuck = false;
  read.forEach((one, row) => {
    if (one.blank || isStuck) {
      return;
    }
    const trouble = troubleIn(one, at === null);
    if (trouble) {
      // What comes after it has no level before it is mended.
      problems.push({ at: `${row},${trouble.column}`, text: trouble.text });
      isStuck = true;
      return;
    }
    if (at === null) {
      at = startM;
      levels[row] = { m: startM, setUp: 0 };
    } else {
      const reading = one.between ?? one.fore;
      const up = before - reading;
      sums.rises += Math.max(0, up);
      sums.falls += Math.max(0, -up);
      byRise += up;
      before = reading;
      at = instrumentM - reading;
      levels[row] = { m: at, setUp: setUps };
      closes = one.fore !== null && one.back === null;
    }
    if (one.fore !== null) {
      sums.fore += one.fore;
      sums.last = at;
    }
    if (one.back !== null) {
      sums.back += one.back;
      instrumentM = at + one.back;
      before = one.back;
      setUps += 1;
      closes = false;
    }
  });
  const agrees = !closes || (Math.abs(sums.back - sums.fore - (sums.last - startM)) < 1e-9
    && Math.abs(sums.rises - sums.falls - (sums.last - startM)) < 1e-9 && Math.abs(byRise - sums.last) < 1e-9);
  return { levels, sums, setUps, closes, agrees, isStuck };
}

/** What is wrong with the readings of a row, or null. */
function troubleIn({ back, between, fore }, isFirst) {
  if (isFirst) {
    return back !== null && between === null && fore === null ? null
      : { column: BACK, text: 'The notes begin with the backsight on the benchmark, and nothing else.' };
  }
  if (between !== null && (back !== null || fore !== null)) {
    return { column: BETWEEN, text: 'An intermediate sight stands alone in its row.' };
  }
  if (between === null && fore === null) {
    return back === null ? { column: BETWEEN, text: 'This row has no reading.' }
      : { column: FORE, text: 'A new set-up needs the foresight on the same point, from the one before.' };
  }
  return null;
}

/** How far off the last foresight is; null where nothing is closed on, or nothing known. */
function misclosureOf({ closing }, { sums, closes, isStuck }, knownM, problems) {
  if (closing === 'none' || isStuck) {
    return null;
  }
  if (!closes) {
    problems.push({
      at: 'closing',
      text: 'The notes do not close: the last row is the foresight on the benchmark, with no backsight.',
    });
    return null;
  }
  return Number.isFinite(sums.last - knownM) ? sums.last - knownM : null;
}

/** Height of a point as a table has it: to 0.1 mm, in the unit. */
export const heightText = (heightM, unit) =>
  (heightM / metersIn(unit)).toFixed({ m: 4, cm: 2, mm: 1, ft: 4, in: 3 }[unit]);

/** Rows of a survey table from the points of notes, in the order of travel. @param names of the table's lines */
export function rowsFrom(points, names, units) {
  const rows = new Map();
  for (const { distance, line, heightM } of points) {
    const m = lengthOf(distance, units.distance).m;
    const key = Math.round(m * 1e6);
    const row = rows.get(key) ?? { m, cells: [distance, ...names.map(() => '')] };
    row.cells[names.indexOf(line) + 1] = heightText(heightM, units.height);
    rows.set(key, row);
  }
  return [...rows.values()].sort((a, b) => a.m - b.m).map(({ cells }) => cells);
}

const HEAD = 'level and rod';
const CUT = ' | ';
const plain = text => text.replaceAll('|', '/').trim();

/** Lines of text as a file keeps notes, every distance with its unit; undefined of none. */
export function notesText(notes, distanceUnit) {
  if (!hasReadings(notes)) {
    return undefined;
  }
  const { unit, start, closing, end, loop, spread, rows } = notes;
  const spelled = text => (text.trim() === '' ? '' : lengthOf(text, distanceUnit).text ?? plain(text));
  const result = resultWords(reduced(notes, distanceUnit), notes);
  return [
    [HEAD, `unit ${unit}`, plain(start), `closed on ${closing}`, plain(end), `loop ${spelled(loop)}`,
      spread ? 'misclosure spread' : 'misclosure left'].join(CUT),
    ...rows.filter(row => row.some(cell => cell.trim() !== ''))
      .map(([distance, ...rest]) => [spelled(distance), ...rest.map(plain)].join(CUT)),
    ...(result ? [`${RESULT}${result}`] : []),
  ];
}

const RESULT = 'result: ';

/** Whether they close and how well, in words; nothing where they cannot be reduced. */
export function resultWords({ misclosureM, allowedM, setUps, problems }, { unit, closing, spread }) {
  if (problems.length > 0) {
    return '';
  }
  if (closing === 'none') {
    return 'not closed on a known level';
  }
  const size = Math.abs(misclosureM);
  return `misclosure ${heightText(misclosureM, unit)} ${unit}`
    + `${allowedM === null ? '' : `, ${size > allowedM ? 'more than' : 'within'} the allowable `
      + `${heightText(allowedM, unit)} ${unit}`}, ${spread ? 'spread over' : 'left as it is in'} `
    + `${setUps} ${setUps === 1 ? 'set-up' : 'set-ups'}`;
}

/** Whether lines of notes are level and rod readings that this page wrote. */
export const isOwnNotes = lines => Boolean(lines?.[0]?.startsWith(`${HEAD} |`));

/** The notes that these lines are; empty ones in this unit where there are none, or somebody else's. */
export function notesOf(lines, unit, distanceUnit) {
  const head = lines?.[0]?.split(CUT.trim()).map(cell => cell.trim()) ?? [];
  if (head[0] !== HEAD || head.length !== 7) {
    return { ...NO_NOTES, unit };
  }
  const closing = head[3].replace('closed on ', '');
  const bare = text => (text.endsWith(` ${distanceUnit}`) ? text.slice(0, -distanceUnit.length - 1) : text);
  return {
    unit: unitOf(head[1].replace('unit ', '')) ?? unit, start: head[2],
    closing: CLOSINGS.includes(closing) ? closing : 'start', end: head[4],
    loop: bare(head[5].replace(/^loop ?/, '')), spread: head[6] === 'misclosure spread',
    rows: lines.slice(1).filter(line => !line.startsWith(RESULT)).map(line => {
      const cells = line.split('|').map(cell => cell.trim());
      return blankReading().map((none, k) => (k === DISTANCE ? bare(cells[k] ?? '') : cells[k] ?? ''));
    }),
  };
}
