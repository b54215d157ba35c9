/** Heights of structures and wires as a form: what a sign says, what was measured, where it holds. No DOM. */
import { lengthOf } from '../text/typedlength.js';

const STRUCTURE = ['low-structure'];
const WIRE = ['overhead-wire'];
const BOTH = [...STRUCTURE, ...WIRE];
/** Hazards that hang over the road. */
export const OVERHEAD_KINDS = BOTH;

/**
 * Fields of a form: where each stands in the file, of which kinds; `words` is chosen from, `of` says which unit a bare
 * number has, nothing where the text goes in as it is.
 */
export const HEIGHTS = [
  { key: 'measured', path: ['measured'], kinds: BOTH, label: 'Height known by',
    words: { 'low-structure': ['surveyed', 'posted', 'reported', 'unknown'],
      'overhead-wire': ['surveyed', 'declared', 'reported', 'unknown'] } },
  { key: 'reportedBy', path: ['reportedBy'], kinds: BOTH, label: 'Reported by', example: 'who says so' },
  { key: 'clearance', path: ['clearance'], kinds: BOTH, of: 'height', label: 'Least height above the road',
    example: '14 ft 2 in' },
  { key: 'from', path: ['extent', 0], kinds: BOTH, of: 'distance', label: 'It holds from', example: '-3 m' },
  { key: 'to', path: ['extent', 1], kinds: BOTH, of: 'distance', label: 'to', example: '5 m' },
  { key: 'carries', path: ['carries'], kinds: WIRE, label: 'It carries',
    words: { 'overhead-wire': ['power', 'communication', 'unknown'] } },
  { key: 'voltage', path: ['voltage'], kinds: WIRE, label: 'Voltage', example: '12.5 kV' },
  { key: 'keepAway', path: ['keepAway'], kinds: WIRE, of: 'height', label: 'Owner asks to keep away',
    example: '10 ft' },
  { key: 'lowering', path: ['lowering'], kinds: WIRE, of: 'height', label: 'Lower in heat or ice by',
    example: '18 in' },
  { key: 'firstAt', path: ['wire', 'supports', 0, 0], kinds: WIRE, of: 'distance', label: 'First support at',
    example: '-4 m' },
  { key: 'firstHeight', path: ['wire', 'supports', 0, 1], kinds: WIRE, of: 'height', label: 'its height',
    example: '30 ft' },
  { key: 'secondAt', path: ['wire', 'supports', 1, 0], kinds: WIRE, of: 'distance', label: 'Second support at',
    example: '9 m' },
  { key: 'secondHeight', path: ['wire', 'supports', 1, 1], kinds: WIRE, of: 'height', label: 'its height',
    example: '31 ft' },
  { key: 'midSpan', path: ['wire', 'midSpan'], kinds: WIRE, of: 'height', label: 'Height in the middle',
    example: '24 ft' },
  { key: 'span', path: ['wire', 'span'], kinds: WIRE, of: 'distance', label: 'From support to support',
    example: '140 ft' },
];
export const HEIGHT_KEYS = [...new Set(HEIGHTS.map(({ path }) => path[0]))];

const at = (value, path) => path.reduce((inside, step) => inside?.[step], value);

/** The texts of the form. */
export const heightsOf = properties =>
  Object.fromEntries(HEIGHTS.map(({ key, path }) => [key, at(properties, path) ?? '']));

/**
 * What the form says, as members of a file's properties; undefined where it says nothing.
 *
 * @param problems gets what cannot be read, at the key of its field
 */
export function readHeights(fields, units, kind, problems) {
  const members = Object.fromEntries(HEIGHT_KEYS.map(key => [key, undefined]));
  if (!BOTH.includes(kind)) {
    return {};
  }
  const read = {};
  for (const { key, of } of HEIGHTS.filter(one => one.kinds.includes(kind))) {
    const text = String(fields[key] ?? '').trim();
    const length = text !== '' && of ? lengthOf(text, units[of]) : { text: text || undefined };
    if (length.problem) {
      problems.push({ at: key, text: length.problem });
    }
    read[key] = length.text;
  }
  const all = (keys, what) => {
    const given = keys.filter(key => String(fields[key] ?? '').trim() !== '');
    keys.filter(key => given.length > 0 && !given.includes(key))
      .forEach(key => problems.push({ at: key, text: `${what} needs this too.` }));
    return given.length > 0;
  };
  ['measured', 'reportedBy', 'clearance', 'carries', 'voltage', 'keepAway', 'lowering']
    .forEach(key => { members[key] = read[key]; });
  members.extent = all(['from', 'to'], 'The stretch it holds for') ? [read.from, read.to] : undefined;
  if (kind === 'overhead-wire'
    && all(['firstAt', 'firstHeight', 'secondAt', 'secondHeight', 'midSpan', 'span'], 'A hanging wire')) {
    members.wire = {
      supports: [[read.firstAt, read.firstHeight], [read.secondAt, read.secondHeight]],
      midSpan: read.midSpan, span: read.span,
    };
  }
  return members;
}

/** Whether somebody was there: measured, read from a sign, or told by its owner. */
export const isKnown = ({ measured, clearance, soffit, wire }) =>
  ['surveyed', 'posted', 'declared'].includes(measured) && [clearance, soffit, wire].some(one => one !== undefined);

/** The field that a place in the file is about, or null. */
export const heightField = steps => HEIGHTS.find(({ path }) => path.every((step, k) => String(step) === steps[k]))?.key
  ?? HEIGHTS.find(({ path }) => path[0] === steps[0])?.key ?? null;
