/**
 * A corner as somebody draws it over the map: the pavement, lanes of the other direction, islands and obstacles as
 * outlines on the earth, written into the route file and read from it. No DOM.
 */
import { withItem, without } from '../text/jsonedit.js';
import { spanOf, withMember } from '../text/jsontext.js';
import { lengthOf } from '../text/typedlength.js';

/** What can be drawn: word, how many points it has at least, and what else is asked. */
export const SHAPES = [
  { kind: 'pavement', word: 'pavement that tires may use', least: 3 },
  { kind: 'opposing', word: 'lanes of the other direction', least: 3 },
  { kind: 'obstacle', word: 'obstacle', least: 3, named: true },
  { kind: 'pole', word: 'pole or sign', least: 1, named: true, asked: { label: 'Radius', needed: true } },
  { kind: 'island', word: 'island', least: 3, asked: { label: 'Height, if known', needed: false } },
];
export const shapeOf = kind => SHAPES.find(one => one.kind === kind);
const LISTS = { opposing: 'opposing', obstacle: 'obstacles', pole: 'obstacles', island: 'islands' };

/** Every shape of a corner: {kind, list, index, name, lonLats, radius, height}. */
export function shapesOf({ pavement, opposing = [], obstacles = [], islands = [] }) {
  const ring = polygon => polygon?.coordinates?.[0] ?? [];
  return [
    ...pavement ? [{ kind: 'pavement', list: null, index: 0, lonLats: ring(pavement) }] : [],
    ...opposing.map((one, index) => ({ kind: 'opposing', list: 'opposing', index, lonLats: ring(one) })),
    ...obstacles.map((one, index) => ({
      kind: one.at ? 'pole' : 'obstacle', list: 'obstacles', index, name: one.name, radius: one.radius,
      lonLats: one.at ? [one.at] : ring(one.outline),
    })),
    ...islands.map((one, index) => ({
      kind: 'island', list: 'islands', index, height: one.height, lonLats: ring(one.outline),
    })),
  ];
}

/**
 * What is wrong with a shape that was drawn: [{at, text}].
 *
 * @param given {kind, lonLats, name, size, accuracy, source, leastM}: leastM is the least that an edge may be off
 */
export function problemsOf(properties, { kind, lonLats, size, accuracy, source, leastM = 0 }, unit) {
  const { least, asked } = shapeOf(kind);
  const problems = [];
  const wrong = (at, text) => problems.push({ at, text });
  if (lonLats.length < least) {
    wrong('shape', least === 1 ? 'Press the map where it stands.'
      : `An outline has ${least} points or more, each once; it closes by itself.`);
  }
  if (kind !== 'pavement' && !properties.pavement) {
    wrong('shape', 'Draw the pavement first: what is in it or beside it comes then.');
  }
  if (asked && (asked.needed || size !== '')) {
    const found = lengthOf(size, unit);
    if (found.problem) {
      wrong('size', found.problem);
    }
  }
  const found = lengthOf(accuracy, unit);
  if (found.problem) {
    wrong('accuracy', 'How far may an edge be off? Write half of the interval that holds 95 of 100, such as 1 m.');
  } else if (found.m < leastM) {
    wrong('accuracy', 'The picture alone is off by more than that, as told below it.');
  }
  if (source === '') {
    wrong('source', 'What is it drawn from? Such as: base map, aerial picture of 2025.');
  }
  return problems;
}

/** Of all that is drawn of a corner the least exact counts, and every source is named. */
function surveyWith(before, { accuracy, source }, unit) {
  const said = lengthOf(accuracy, unit);
  if (before === undefined) {
    return { accuracy: said.text, source };
  }
  const worse = !(lengthOf(before.accuracy, 'm').m >= said.m);
  return {
    ...before, ...(worse && { accuracy: said.text }),
    ...(!before.source.includes(source) && { source: `${before.source}; ${source}` }),
  };
}

const polygon = lonLats => ({ type: 'Polygon', coordinates: [[...lonLats, lonLats[0]]] });

/** The text of the route with a shape more; of the pavement there is one, which takes the place of that before. */
export function withShape(text, index, properties, given, unit) {
  const { kind, lonLats, name, size } = given;
  const path = ['features', index, 'properties'];
  const length = written => lengthOf(written, unit).text;
  const survey = surveyWith(properties.survey, given, unit);
  let made = JSON.stringify(survey) === JSON.stringify(properties.survey) ? text
    : withMember(text, path, 'survey', JSON.stringify(survey));
  if (kind === 'pavement') {
    made = withMember(made, path, 'pavement', JSON.stringify(polygon(lonLats)));
    return properties.candidate?.state === 'open'
      ? withMember(made, [...path, 'candidate'], 'state', '"surveyed"') : made;
  }
  const shape = {
    opposing: () => polygon(lonLats),
    obstacle: () => ({ ...(name && { name }), outline: polygon(lonLats) }),
    pole: () => ({ ...(name && { name }), at: lonLats[0], radius: length(size) }),
    island: () => ({ outline: polygon(lonLats), ...(size && { height: length(size) }) }),
  }[kind]();
  const list = LISTS[kind];
  return properties[list] === undefined ? withMember(made, path, list, JSON.stringify([shape]))
    : withItem(made, [...path, list], properties[list].length, shape);
}

/** The text without a shape; without its pavement a corner has no outlines at all, and nobody has surveyed it. */
export function withoutShape(text, index, properties, { kind, list, index: item }) {
  const path = ['features', index, 'properties'];
  if (kind !== 'pavement') {
    return properties[list].length > 1 ? without(text, [...path, list, item]) : withMember(text, path, list, undefined);
  }
  const made = ['pavement', 'opposing', 'obstacles', 'islands', 'curbHeight', 'drives', 'survey']
    .reduce((now, key) => withMember(now, path, key, undefined), text);
  return properties.candidate?.state === 'surveyed'
    ? withMember(made, [...path, 'candidate'], 'state', '"open"') : made;
}

/** Every point of the shapes of a corner that can be moved: [{shape, k, lonLat}], those that close a ring once. */
export const verticesOf = properties => shapesOf(properties).flatMap(shape =>
  (shape.kind === 'pole' ? shape.lonLats : shape.lonLats.slice(0, -1)).map((lonLat, k) => ({ shape, k, lonLat })));

/** Where the points of a shape stand in the properties. */
const ringOf = ({ kind, list, index }) => ({
  pavement: ['pavement', 'coordinates', 0], opposing: [list, index, 'coordinates', 0],
}[kind] ?? [list, index, 'outline', 'coordinates', 0]);

/** What is wrong with a point that is moved: how exact it is now has to be said, as of a shape that is drawn. */
export const vertexProblems = (properties, { shape }, given, unit) =>
  problemsOf(properties, { ...given, kind: shape.kind, lonLats: shape.lonLats, size: shape.radius ?? '' }, unit);

/**
 * The text of the route with a point of a shape elsewhere; the corner is as exact as the least exact edge.
 *
 * @param given {accuracy, source} as written
 */
export function withVertexAt(text, index, properties, { shape, k }, lonLat, given, unit) {
  const path = ['features', index, 'properties'];
  const survey = surveyWith(properties.survey, given, unit);
  const made = JSON.stringify(survey) === JSON.stringify(properties.survey) ? text
    : withMember(text, path, 'survey', JSON.stringify(survey));
  const points = shape.kind === 'pole' ? [[shape.list, shape.index, 'at']]
    // The first point closes the ring as well.
    : [k, ...k === 0 ? [shape.lonLats.length - 1] : []].map(at => [...ringOf(shape), at]);
  return points.reduce((now, point) => {
    const [from, to] = spanOf(now, [...path, ...point]);
    return now.slice(0, from) + JSON.stringify(lonLat) + now.slice(to);
  }, made);
}
