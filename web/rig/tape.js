/**
 * Everything that is measured on a stance, in the order a person walks along it with a tape. Each row says what stands
 * in the file and which of the file's places change with it. No DOM.
 */
import { createFrame, endsOf, outlineItems, pointerOf, pointsOf, valueAt, xOf } from './frame.js';
import { lengthOf } from '../text/length.js';
import { alongRow, steps, writtenRow } from './rows.js';
import { limitGroups, rigGroups, weightGroup } from './taperows.js';

/**
 * @returns parts from front to rear, then the whole rig: {key, title, groups: [{title, open, places}]}; a place is
 *          {id, name, hold, along, height, value}, each of the last three a row or null. A row is {id, label, pointer}
 *          with {kind: 'span' | 'offset', value, moves, sign, fromX, toX, unit} or {kind: 'written', path, text}
 */
export function tapeOf(json, stance) {
  const at = ['stances', stance];
  if (!valueAt(json, at)) {
    return [];
  }
  const jeeps = valueAt(json, [...at, 'jeeps']) ?? [];
  const behind = valueAt(json, [...at, 'boostersBehind']) ?? [];
  return [
    tractor(json, at),
    ...jeeps.map((jeep, k) => jeepPart(json, at, k, jeeps.length)),
    trailer(json, at),
    ...valueAt(json, [...at, 'booster']) ? [booster(json, at, 'booster', 0, behind.length)] : [],
    ...behind.map((one, k) => booster(json, at, `boostersBehind-${k}`, k + 1, behind.length)),
    { key: 'rig', title: 'Whole rig', path: null, groups: rigGroups(json) },
  ];
}

/** Every row of it. */
export const rowsOf = parts => parts.flatMap(({ groups }) => groups).flatMap(({ places }) => places)
  .flatMap(({ along, height, value }) => [along, height, value].filter(Boolean));

const END = { path: null };

/** A number behind a word where there are several. */
const nth = (word, index, count) => (count > 1 ? `${word} ${index + 1}` : word);

function axleMarks(json, path, word) {
  const axles = valueAt(json, path) ?? [];
  return axles.map((axle, k) => ({
    key: `${word}-${k}`, name: nth(`${word} axle`, k, axles.length), hold: 'center of the hub',
    x: xOf(json, [...path, k, 'x']), path: [...path, k, 'x'], heightPath: [...path, k, 'radius'], heightName: 'hub of',
  }));
}

/** A place of its own with x and h. */
const fixed = (json, path, key, name, hold) => ({
  key, name, hold, x: xOf(json, [...path, 'x']), path: [...path, 'x'],
  heightPath: valueAt(json, [...path, 'h']) === undefined ? null : [...path, 'h'],
});

function ends(json, path, front, rear) {
  const { front: frontX, rearMost } = endsOf(json, path);
  return [
    { ...END, key: 'front', name: front, hold: 'plumb down from its foremost point', x: frontX },
    { ...END, key: 'rear', name: rear, hold: 'plumb down from its rearmost point', x: rearMost, rear: true },
  ];
}

function tractor(json, at) {
  const path = [...at, 'tractor'];
  const [front, rear] = ends(json, path, 'front of the tractor', 'rear end of the tractor');
  return part(json, {
    key: 'tractor', title: 'Tractor', path, at,
    marks: [front, { ...fixed(json, [...path, 'steer'], 'steer', 'steer axle', 'center of the hub'),
      heightPath: [...path, 'steer', 'radius'], heightName: 'hub of' },
    ...axleMarks(json, [...path, 'drive', 'axles'], 'drive'), rear],
    beside: [fixed(json, [...path, 'fifthWheel'], 'fifthWheel', 'fifth wheel', 'center of the plate')],
    weights: [['tractor', 'tractor']],
  });
}

function jeepPart(json, at, k, count) {
  const path = [...at, 'jeeps', k];
  const word = nth('jeep', k, count);
  const [front, rear] = ends(json, path, `front of ${word}`, `rear end of ${word}`);
  return part(json, {
    key: `jeep-${k}`, title: `Jeep${count > 1 ? ` ${k + 1}` : ''}`, path, at,
    marks: [front, fixed(json, [...path, 'kingpin'], 'kingpin', `kingpin of ${word}`, 'center of the pin'),
      ...axleMarks(json, [...path, 'axles'], word), rear],
    beside: [fixed(json, [...path, 'fifthWheel'], 'fifthWheel', `fifth wheel of ${word}`, 'center of the plate')],
    weights: [[`jeeps/${k}`, word]],
  });
}

function trailer(json, at) {
  const path = [...at, 'trailer'];
  const [front, rear] = ends(json, path, 'nose of the gooseneck', 'rear end of the trailer');
  const axles = axleMarks(json, [...path, 'axles'], 'trailer');
  const closePath = [...at, 'booster', 'closeCoupledAxle'];
  return part(json, {
    key: 'trailer', title: 'Trailer', path, at,
    marks: [front, fixed(json, [...path, 'kingpin'], 'kingpin', 'kingpin', 'center of the pin'),
      fixed(json, [...path, 'deckFront'], 'deckFront', 'deck front', 'top of the front edge of the deck'),
      fixed(json, [...path, 'deckRear'], 'deckRear', 'deck rear', 'top of the rear edge of the deck'), ...axles,
      ...valueAt(json, [...path, 'boosterHinge'])
        ? [fixed(json, [...path, 'boosterHinge'], 'boosterHinge', 'booster hinge', 'center of the hinge pin')] : [],
      rear],
    beside: valueAt(json, closePath) ? [{
      ...fixed(json, closePath, 'closeCoupledAxle', 'booster axle, close-coupled', 'center of the hub'),
      from: axles.at(-1)?.key,
    }] : [],
    bodies: [
      ...(valueAt(json, [...path, 'load']) ?? []).map((load, k) => ({
        key: `load-${k}`, name: load?.name ?? `load ${k + 1}`, path: [...path, 'load', k, 'outline'],
        more: pieceIndex(json, at, load?.name).map(piece => [...at, 'weights', 'pieces', piece, 'cg', 'x']),
      })),
      ...valueAt(json, [...at, 'booster', 'carried']) ? [{
        key: 'carried', name: 'booster on the deck', path: [...at, 'booster', 'carried'],
        more: [[...at, 'weights', 'booster', 'carriedCg', 'x']],
      }] : [],
    ],
    weights: [['trailer', 'trailer'], ['gooseneck', 'gooseneck'],
      ...(valueAt(json, [...at, 'weights', 'pieces']) ?? [])
        .map((piece, k) => [`pieces/${k}`, piece?.name ?? `piece ${k + 1}`])],
  });
}

const pieceIndex = (json, at, name) => (valueAt(json, [...at, 'weights', 'pieces']) ?? [])
  .flatMap((piece, index) => (piece?.name === name ? [index] : []));

function booster(json, at, key, index, behind) {
  const path = index === 0 ? [...at, 'booster'] : [...at, 'boostersBehind', index - 1];
  const word = behind > 0 ? `booster ${index + 1}` : 'booster';
  const [front, rear] = ends(json, path, `front of the frame of ${word}`, `rear end of ${word}`);
  const single = valueAt(json, [...path, 'axle']) && {
    ...fixed(json, [...path, 'axle'], 'axle', `${word} axle`, 'center of the hub'),
    heightPath: [...path, 'axle', 'radius'], heightName: 'hub of',
  };
  return part(json, {
    key, title: `Booster${behind > 0 ? ` ${index + 1}` : ''}`, path, at,
    marks: [front, fixed(json, [...path, 'hinge'], 'hinge', `hinge of ${word}`, 'center of the hinge pin'),
      ...single ? [single] : axleMarks(json, [...path, 'axles'], word),
      ...valueAt(json, [...path, 'nextHinge'])
        ? [fixed(json, [...path, 'nextHinge'], 'nextHinge', `hinge for booster ${index + 2}`,
          'center of the hinge pin')] : [],
      rear],
    weights: [[index === 0 ? 'booster' : `boostersBehind/${index - 1}`, word]],
  });
}

/** A unit with its frame, its main places, its outlines, what lies on it, its limits and weights. */
function part(json, { key, title, path, at, marks, beside = [], bodies = [], weights }) {
  const { front, rear } = endsOf(json, path);
  const first = Math.max(...marks.filter(mark => mark.path && mark.x !== null).map(({ x }) => x));
  const rigid = bodies.map(body => ({
    ...body, points: pointsOf(json, body.path),
    more: body.more.filter(one => valueAt(json, one) !== undefined),
  })).filter(({ points }) => points.length > 0).map(body => ({
    ...body, x: Math.max(...body.points.map(({ x }) => x)), paths: [...body.points.map(one => one.path), ...body.more],
  }));
  const taken = new Set(rigid.flatMap(({ more }) => more.map(pointerOf)));
  const cgs = weights.map(([where]) => [...at, 'weights', ...steps(where), 'cg', 'x'])
    .filter(one => !taken.has(pointerOf(one)) && valueAt(json, one) !== undefined);
  const frame = createFrame(marks.filter(mark => mark.key !== 'front' || front > first), [
    ...outlineItems(json, [...path, 'underside'], rear), ...outlineItems(json, [...path, 'topside'], rear),
    ...beside.map(({ x, path: own }) => ({ x, paths: [own] })), ...rigid,
    ...cgs.map(one => ({ x: xOf(json, one), paths: [one] })),
  ]);
  const rows = { json, key, title, frame };
  return {
    key, title, path,
    groups: [
      { key: 'main', title: `Along the ${title.toLowerCase()}`, open: true, places: mainPlaces(rows, beside) },
      ...['underside', 'topside'].map(line => ({
        key: line, title: line === 'underside' ? 'Underside' : 'Topside', open: false,
        places: pointPlaces(rows, [...path, line], line),
      })),
      ...rigid.map(body => ({
        key: body.key, title: `On the deck: ${body.name}`, open: false, places: bodyPlaces(rows, body),
      })),
      ...limitGroups(json, path, at, key),
      ...weightGroup(rows, at, weights),
    ].filter(({ places }) => places.length > 0),
  };
}

function mainPlaces({ json, key, frame }, beside) {
  const marks = frame.order.map((mark, index) => ({ ...mark, row: frame.span(index) }));
  const others = beside.filter(({ x }) => x !== null)
    .map(one => ({ ...one, row: frame.offset(one.name, one.x, [one.path], one.from) }));
  return [...marks, ...others].sort((a, b) => b.x - a.x).map(one => ({
    id: `${key}/${one.key}`, name: one.name, hold: one.hold, x: one.x,
    along: alongRow({ key }, one.key, one.row, one.path),
    height: one.heightPath ? heightRow(json, `${key}/${one.key}`, one, key) : null,
    value: null,
  }));
}

const heightRow = (json, id, { heightPath, heightName = 'height of', name, x }, unit) =>
  writtenRow(json, `${id}/height`,
    `${heightName} ${name}${heightName === 'hub of' ? ' over the ground' : ''}`, heightPath,
    { atX: x, unit, h: lengthOf(valueAt(json, heightPath)), long: true });

/** Points of an outline, front to rear. */
function pointPlaces({ json, key, frame }, path, line) {
  const points = pointsOf(json, path);
  return points.map((point, index) => pointPlace({ json, key }, point, `${line}-${index}`,
    point.part || `${line} point ${points.length - index}`, frame)).reverse();
}

function pointPlace({ json, key }, point, id, name, frame) {
  return {
    id: `${key}/${id}`, name, hold: '', x: point.x, value: null,
    along: alongRow({ key }, id, frame.offset(name, point.x, [point.path]), point.path),
    height: writtenRow(json, `${key}/${id}/height`, `height of ${name}`, [...point.at, 'h'],
      { atX: point.x, unit: key, h: point.h, long: true }),
  };
}

/** All of it, which is moved as one, and every point of it. */
function bodyPlaces({ json, key, frame }, body) {
  const whole = frame.offset(`front of ${body.name}`, body.x, body.paths);
  return [
    {
      id: `${key}/${body.key}`, name: `all of ${body.name}`, hold: 'plumb down from its foremost point', x: body.x,
      along: { ...alongRow({ key }, body.key, whole, body.path), whole: true }, height: null, value: null,
    },
    ...body.points.map((point, index) => pointPlace({ json, key }, point, `${body.key}-${index}`,
      point.part || `point ${body.points.length - index} of ${body.name}`, frame)).reverse(),
  ];
}
