/** Weight limits of the whole route that stand in a file of their own, such as a permit's, and as a form. No DOM. */
import { spanOf, withMember } from '../text/jsontext.js';

/** In the place of a file where there is none: what there is to undo has a text before and after it like any other. */
export const NO_LIMITS = Object.freeze({ id: null, name: 'no limits file', text: 'null', json: null });

/** The limits file in force, or `NO_LIMITS`. */
export const limitsOf = inputs => inputs?.limits ?? NO_LIMITS;

export const hasLimits = inputs => limitsOf(inputs).json !== null;

const MASS = 'such as 140,000 lb or 63.5 t';

/** What the form asks for once: key of the file, words, what is written there. */
export const SINGLE = [
  { key: 'name', label: 'Name', hint: 'such as permit of the haul', needed: true },
  { key: 'source', label: 'Where it is written', hint: 'such as permit 0, attachment 1', needed: true },
  { key: 'date', label: 'As of', hint: 'such as 2026-11-02', needed: true },
  { key: 'origin', label: 'Who has read it', choices: [['', 'read here'], ['reported', 'somebody else says so']] },
  { key: 'gross', label: 'Gross weight', hint: MASS },
  { key: 'axle', label: 'Any one axle', hint: MASS },
  { key: 'steerAxle', label: 'Steer axle, where it differs', hint: MASS },
  { key: 'bridgeFormula', label: 'Bridge formula', choices: [['', 'none'], ['federal', 'federal']] },
  { key: 'lastDay', label: 'Last day', hint: 'such as 2026-12-31' },
  { key: 'hours', label: 'Hours, in the words of the permit', hint: 'such as daylight only' },
];

const BY_AXLES = [
  { key: 'axles', label: 'Axles', count: true, needed: true }, { key: 'weight', label: 'Most', needed: true },
];

/** What it asks for row by row. */
export const LISTS = [
  { key: 'groups', title: 'On a group of axles that share a suspension', columns: BY_AXLES },
  { key: 'grossByAxles', title: 'Gross weight by the number of axles on the road', columns: BY_AXLES },
  { key: 'spans', title: 'On consecutive axles, by how far the outer ones are apart', columns: [
    { key: 'name', label: 'Name', needed: true }, { key: 'over', label: 'More than', needed: true },
    { key: 'upTo', label: 'Up to', needed: true }, { key: 'axles', label: 'Axles, if counted', count: true },
    { key: 'weight', label: 'Most', needed: true },
  ] },
];

const ASKED = new Set(['cresthaul', 'note', ...SINGLE.map(({ key }) => key), ...LISTS.map(({ key }) => key)]);
const FURTHER = { tireWidth: 'weight by tire width', leastShares: 'least shares', bridgeTables: 'bridge tables' };

/** What the file says beyond the form, in words; it stays as it is. */
export const beyondForm = json => Object.keys(json).filter(key => !ASKED.has(key)).map(key => FURTHER[key] ?? key);

/**
 * What the form begins with: the file in force, else what the route file says of the whole route, else nothing.
 *
 * @returns {name, text}: of the file that it would be
 */
export function beginning(inputs) {
  if (hasLimits(inputs)) {
    const { name, text } = limitsOf(inputs);
    return { name, text };
  }
  const own = inputs?.route.json?.limits;
  if (own) {
    const [from, to] = spanOf(inputs.route.text, ['limits']);
    return { name: own.name, text: withFormat(inputs.route.text.slice(from, to)) };
  }
  return { name: 'limits', text: '{"cresthaul": "limits/1"}' };
}

const withFormat = text => text.replace('{', '{"cresthaul": "limits/1", ');

/** What stands in the form: {KEY: text, LIST: [{COLUMN: text}]}. */
export function formOf(json) {
  return {
    ...Object.fromEntries(SINGLE.map(({ key }) => [key, written(json?.[key])])),
    ...Object.fromEntries(LISTS.map(({ key, columns }) => [key, (Array.isArray(json?.[key]) ? json[key] : [])
      .map(row => Object.fromEntries(columns.map(one => [one.key, written(row?.[one.key])])))])),
  };
}

const written = value => (value === undefined || value === null ? '' : String(value));

/** The text with what the form says; whatever it does not ask for, and whatever is the same, stays as it is. */
export function withForm(text, given) {
  const json = JSON.parse(text);
  const before = formOf(json);
  let made = text;
  for (const { key } of SINGLE) {
    if (given[key].trim() !== before[key]) {
      made = withMember(made, [], key, given[key].trim() === '' ? undefined : JSON.stringify(given[key].trim()));
    }
  }
  for (const { key, columns } of LISTS) {
    const rows = given[key].filter(row => columns.some(one => row[one.key].trim() !== ''));
    if (JSON.stringify(rows) !== JSON.stringify(before[key])) {
      const list = rows.map(row => Object.fromEntries(columns.filter(one => row[one.key].trim() !== '')
        .map(one => [one.key, valueOf(one, row[one.key].trim())])));
      made = withMember(made, [], key, list.length === 0 ? undefined : JSON.stringify(list));
    }
  }
  return made;
}

/** A count that is none goes as it was typed: the reader says what is wrong with it. */
const valueOf = ({ count }, typed) => (count && /^\d+$/.test(typed) ? Number(typed) : typed);
