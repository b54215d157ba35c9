/**
 * The template of a corner as a form: made of the route file, read back into it. Texts stay as they were written until
 * they are read. No DOM.
 *
 * A draft is {layout, fields: {path: text}, borrow: [road], obstacles: [{name, along, left, radius} or {kept}],
 * islands: [{kept}], unit}; paths are those of the file, such as "approach.own", kept what only a drawing can say.
 */
import { withMember } from '../text/jsontext.js';
import { lengthOf } from '../text/typedlength.js';

const length = (path, label, more = {}) => ({ path, label, ...more });
const maybe = { optional: true };
const road = (at, word) => [
  length(`${at}.own`, `${word}: own lanes`), length(`${at}.opposing`, `${word}: opposing lanes`),
  length(`${at}.shoulder`, `${word}: firm shoulder`, maybe),
];
const RADIUS = [length('curb.radius', 'Radius of the curb')];
const TURNS = ['left', 'right'];

/** Layouts: the key of the file, the word, the numbers it has besides those of every corner, and what may be lent. */
export const LAYOUTS = [
  { key: 'radius', word: 'two roads, curb of one radius', fields: RADIUS },
  { key: 'radii', word: 'two roads, curb of three radii', fields: [
    length('curb.radii.0', 'First radius'), length('curb.radii.1', 'Middle radius'),
    length('curb.radii.2', 'Last radius'), length('curb.offset', 'Middle set in by')] },
  { key: 'roundabout', word: 'roundabout', fields: [
    length('roundabout.outer', 'Radius of the outer edge'), length('roundabout.island', 'Radius of the island'),
    length('roundabout.curb', 'Radius of the curbs'),
    length('roundabout.islandHeight', 'Height of the island', maybe)] },
  { key: 'bend', word: 'bend of one road', fields: [
    length('bend.radius', 'Radius of the inner edge'), length('bend.width', 'Width from edge to edge')] },
  { key: 'uTurn', word: 'U-turn across a median', fields: [
    length('uTurn.median', 'Width of the median'), length('uTurn.opening', 'Opening along the road'),
    length('uTurn.nose', 'Radius of its ends', maybe), length('uTurn.loon.depth', 'Pavement beyond: depth', maybe),
    length('uTurn.loon.length', 'Pavement beyond: length', maybe)] },
  { key: 'fork', word: 'fork of three roads', lends: 'third', fields: [
    ...RADIUS, { path: 'fork.third.turn', label: 'Third road turns', words: TURNS },
    { path: 'fork.third.angle', label: 'Third road, from straight on', isAngle: true },
    ...road('fork.third', 'Third road'), length('fork.nose', 'Radius of the noses')] },
  { key: 'crossing', word: 'offset crossroads', lends: 'crossing', fields: [
    ...RADIUS, ...road('crossing', 'Road between'), length('crossing.offset', 'From center line to center line')] },
  { key: 'gate', word: 'gate that is backed into', isGate: true, fields: [
    length('gate.width', 'Width of the gate'), length('gate.near', 'Return passed first'),
    length('gate.far', 'The other return')] },
];
const OWN_KEYS = LAYOUTS.map(({ key }) => key);

/** What every corner says; the exit of a gate is its drive. */
const COMMON = [
  { path: 'turn', label: 'Turns', words: TURNS },
  { path: 'angle', label: 'by', isAngle: true },
  ...road('approach', 'Approach'),
];
const REST = [
  length('apron', 'Apron, where tires may run up', maybe), length('curbHeight', 'Height of the curb', maybe),
  { path: 'drives', label: 'One drives on the', words: ['right', 'left'], optional: true },
];
export const SURVEY = [
  { path: 'survey.accuracy', label: 'Accuracy', example: '3 in' },
  { path: 'survey.source', label: 'Measured by, with', isText: true, example: 'measuring wheel' },
  { path: 'survey.date', label: 'Date', isText: true, optional: true, example: '2026-10-05' },
];

export const layoutOf = key => LAYOUTS.find(one => one.key === key);

/** The fields of a layout, in the order of the form. */
export const fieldsOf = ({ layout }) => [
  ...COMMON, ...layoutOf(layout).isGate ? [] : road('exit', 'Exit'), ...layoutOf(layout).fields, ...REST, ...SURVEY,
];

/** Roads whose opposing lanes may be borrowed with escorts. */
export const lentBy = ({ layout }) => ['approach', ...layoutOf(layout).isGate ? [] : ['exit'],
  ...layoutOf(layout).lends ? [layoutOf(layout).lends] : []];

const at = (value, path) => path.split('.').reduce((now, key) => now?.[key], value);

/** Whether a form can say all that a template says. */
export function isForm(template) {
  const draft = draftOf({ template }, 'ft');
  const { template: made, problems } = readDraft(draft);
  return problems.every(({ at: where }) => where.startsWith('survey')) && alike(made, template);
}

/** Whether two values say the same, in whatever order of keys and spelling of lengths. */
function alike(a, b) {
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') {
    return a === b || (typeof a === 'string' && typeof b === 'string' && lengthOf(a, 'm').m !== undefined
      && lengthOf(a, 'm').m === lengthOf(b, 'm').m);
  }
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  return Array.isArray(a) === Array.isArray(b) && keys.every(key => key in a && key in b && alike(a[key], b[key]));
}

/** @param unit of bare numbers */
export function draftOf({ template = null, survey = {} }, unit) {
  const key = template === null ? 'radius'
    : OWN_KEYS.slice(2).find(one => template[one]) ?? (template.curb?.radii ? 'radii' : 'radius');
  const said = { ...template ?? { turn: 'left', drives: 'right' }, survey };
  const fields = Object.fromEntries(LAYOUTS.flatMap(({ key: layout }) => fieldsOf({ layout }))
    .map(({ path, words }) => [path, at(said, path) ?? words?.[0] ?? '']));
  return {
    layout: key, fields, said: fields, unit, isNew: template === null,
    borrow: template?.borrow ?? [],
    saidBorrow: template?.borrow !== undefined, saidDrives: template?.drives !== undefined,
    obstacles: (template?.obstacles ?? []).map(one => (one.outline ? { kept: one }
      : { name: one.name ?? '', along: one.at[0], left: one.at[1], radius: one.radius })),
    islands: (template?.islands ?? []).map(kept => ({ kept })),
    saidLists: Object.fromEntries(['obstacles', 'islands'].map(list => [list, template?.[list] !== undefined])),
  };
}

export const withField = (draft, path, text) => ({ ...draft, fields: { ...draft.fields, [path]: text } });
export const withLayout = (draft, layout) => ({
  ...draft, layout, borrow: draft.borrow.filter(one => lentBy({ layout }).includes(one)),
});
export const withBorrow = (draft, name, lent) => ({
  ...draft, borrow: lentBy(draft).filter(one => (one === name ? lent : draft.borrow.includes(one))),
});
export const withObstacle = (draft, index, key, text) => ({
  ...draft, obstacles: draft.obstacles.map((one, k) => (k === index ? { ...one, [key]: text } : one)),
});
export const withObstacleAdded = draft => ({
  ...draft, obstacles: [...draft.obstacles, { name: '', along: '', left: '', radius: '' }],
});
export const withoutItem = (draft, list, index) => ({ ...draft, [list]: draft[list].toSpliced(index, 1) });

/** "82 deg" of what people write. */
function angleOf(text) {
  const said = text.trim().match(/^(\d+(?:\.\d+)?)\s*(?:°|deg|degrees)?$/);
  return said ? { text: /^\d+(\.\d+)? deg$|°$/.test(text.trim()) ? text.trim() : `${said[1]} deg`,
    value: Number(said[1]) * Math.PI / 180 } : { problem: `"${text}" is no angle. Write degrees, such as 82.` };
}

/**
 * What a draft says: {template, survey, problems: [{at, text}], numbers: {path: meters or radians}}; `at` is a path, or
 * "obstacles.0.along".
 */
export function readDraft(draft) {
  const problems = [];
  const numbers = {};
  const made = {};
  const read = (where, text, { isAngle = false } = {}) => {
    const found = isAngle ? angleOf(text) : lengthOf(text, draft.unit);
    if (found.problem) {
      problems.push({ at: where, text: found.problem });
    }
    numbers[where] = found.problem ? NaN : isAngle ? found.value : found.m;
    // What the file says in its own spelling stays so.
    return !draft.isNew && draft.said[where]?.trim() === text ? draft.said[where] : found.text;
  };
  for (const field of fieldsOf(draft)) {
    const text = String(draft.fields[field.path]).trim();
    if (text === '' && !field.optional) {
      problems.push({ at: field.path, text: 'This is needed.' });
    } else if (text !== '' && !(field.path === 'drives' && text === 'right' && !draft.saidDrives)) {
      put(made, field.path, field.words || field.isText ? text : read(field.path, text, field));
    }
  }
  if (draft.borrow.length > 0 || draft.saidBorrow) {
    made.borrow = draft.borrow;
  }
  if (draft.islands.length > 0 || draft.saidLists.islands) {
    made.islands = draft.islands.map(({ kept }) => kept);
  }
  if (draft.obstacles.length > 0 || draft.saidLists.obstacles) {
    made.obstacles = draft.obstacles.map((one, k) => obstacle(one, k, read, problems));
  }
  const { survey, ...template } = made;
  return { template, survey, problems, numbers };
}

function obstacle(one, k, read, problems) {
  if (one.kept) {
    return one.kept;
  }
  const part = key => {
    const where = `obstacles.${k}.${key}`;
    if (one[key].trim() === '') {
      problems.push({ at: where, text: 'This is needed.' });
      return undefined;
    }
    return read(where, one[key]);
  };
  const name = one.name.trim();
  return { ...(name && { name }), at: [part('along'), part('left')], radius: part('radius') };
}

/** Puts a value where a path leads, through lists where a step is a number. */
function put(target, path, value) {
  const steps = path.split('.');
  steps.slice(0, -1).reduce((now, step, k) => {
    now[step] ??= /^\d+$/.test(steps[k + 1]) ? [] : {};
    return now[step];
  }, target)[steps.at(-1)] = value;
}

/** The text of the route with what a draft says of a corner; only what says something else is written. */
export function withCorner(text, index, properties, { template, survey }) {
  const path = ['features', index, 'properties'];
  const differs = (a, b) => JSON.stringify(a) !== JSON.stringify(b);
  let made = text;
  if (properties.template === undefined) {
    made = withMember(made, path, 'template', JSON.stringify(template));
  } else {
    const keys = [...new Set([...Object.keys(properties.template), ...Object.keys(template)])];
    // What is left out of a template has no JSON text either.
    made = keys.filter(key => differs(template[key], properties.template[key])).reduce((now, key) =>
      withMember(now, [...path, 'template'], key, JSON.stringify(template[key])), made);
  }
  const kept = { ...properties.survey, ...survey };
  if (survey?.date === undefined) {
    delete kept.date;
  }
  made = differs(kept, properties.survey) ? withMember(made, path, 'survey', JSON.stringify(kept)) : made;
  return properties.candidate?.state === 'open'
    ? withMember(made, [...path, 'candidate'], 'state', '"surveyed"') : made;
}

/** The server's problems at the fields they are about: {here: [{at, text}], elsewhere: [problem]}. */
export function placed(problems, index, draft) {
  const here = [];
  const elsewhere = [];
  const fields = fieldsOf(draft).map(({ path }) => path);
  for (const problem of problems) {
    const [, inside] = problem.pointer.match(new RegExp(`/features/${index}/properties/(.+)$`)) ?? [];
    const steps = inside?.replace(/^template\/?/, '').split('/').filter(Boolean);
    const path = steps?.join('.');
    const where = steps && (obstacleAt(steps) ?? fields.find(one => one === path)
      ?? fields.find(one => one.startsWith(`${path}.`)) ?? fields.find(one => one === steps[0]) ?? 'all');
    (where ? here : elsewhere).push(where
      ? { at: where, text: [problem.message, problem.remedy].filter(Boolean).join(' ') } : problem);
  }
  return { here, elsewhere };
}

const obstacleAt = ([list, k, key, part]) => (list !== 'obstacles' || k === undefined ? null
  : `obstacles.${k}.${key === 'at' ? ['along', 'left'][Number(part ?? 0)] : 'radius'}`);
