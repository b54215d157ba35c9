/**
 * A template's numbers to scale, from above, in meters of its frame: x along the approach, y to its left, the roads'
 * center lines meeting in the origin. Edges, and for every number a dimension. Two roads with their curb and a
 * roundabout are drawn whole here, other layouts by their roads; the program draws the rest. No DOM.
 */

/** How much of either road is drawn beyond what the curb takes, meters. */
const BEYOND_M = 18;

const rotate = (angle, [x, y]) =>
  [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];
const known = (value, otherwise = 0) => (Number.isFinite(value) ? value : otherwise);

/** Edges of a road across it, to the left: own lanes, shoulder on one side, opposing lanes on the other. */
function across(numbers, at, side) {
  const [own, opposing, shoulder] = ['own', 'opposing', 'shoulder'].map(key => known(numbers[`${at}.${key}`]));
  return { own: side * own, opposing: -side * opposing, outer: side * (own + shoulder) };
}

/**
 * @param numbers meters by path as readDraft tells them
 * @param turn 1 to the left, -1 to the right; drives 'left' or 'right'
 * @returns {lines: [{name, points, closed}], arcs: [{d...}], dims: [{path, points, at}], box: [x0, y0, x1, y1]}
 */
export function templateDrawing({ layout, numbers, turn, drives, obstacles }) {
  const angle = turn * known(numbers.angle, Math.PI / 2);
  // Own lanes lie right of the center line, or left where one drives on the left.
  const side = drives === 'left' ? 1 : -1;
  const approach = across(numbers, 'approach', side);
  const isGate = layout === 'gate';
  const half = known(numbers['gate.width']) / 2;
  const exit = isGate ? { own: -half, opposing: half, outer: -half } : across(numbers, 'exit', side);
  const curb = layout === 'roundabout' ? null : curbOf(numbers, layout, approach, exit, angle);
  const ring = known(numbers['roundabout.outer']);
  const reach = BEYOND_M + Math.max(12, ring, curb?.reach ?? 0);
  const toward = point => rotate(angle, point);
  const lines = [
    { name: 'center', points: [[-reach, 0], [0, 0], toward([reach, 0])] },
    ...['own', 'opposing', 'outer'].flatMap(key => [
      { name: key === 'own' ? 'lane' : 'edge', points: [[-reach, approach[key]], [curb?.from(approach[key]) ?? 0,
        approach[key]]] },
      { name: key === 'own' ? 'lane' : 'edge', points: [toward([curb?.to(exit[key]) ?? 0, exit[key]]),
        toward([reach, exit[key]])] },
    ]),
    ...curb ? [{ name: 'curb', points: curb.points }] : [],
    ...layout === 'roundabout' ? [circle('edge', ring), circle('island', known(numbers['roundabout.island']))] : [],
    ...obstacles.map(({ at, radius }, k) => ({ ...circle('obstacle', radius, at), path: `obstacles.${k}.along` })),
  ];
  const dims = [
    ...roadDims('approach', approach, -reach + 4, point => point),
    ...isGate ? [] : roadDims('exit', exit, reach - 4, toward),
    { path: 'angle', points: arc([0, 0], 7, 0, angle), at: rotate(angle / 2, [10, 0]) },
    ...layout === 'roundabout' ? ringDims(numbers) : curb?.dims ?? [],
    ...obstacles.map(({ at }, k) => ({ path: `obstacles.${k}.along`, points: [], at: [at[0], at[1] + 2.5] })),
  ].filter(({ at }) => at.every(Number.isFinite));
  const all = [...lines, ...dims].flatMap(({ points }) => points).filter(point => point.every(Number.isFinite));
  const xs = all.map(([x]) => x);
  const ys = all.map(([, y]) => y);
  return { lines, dims, box: [Math.min(...xs) - 3, Math.min(...ys) - 3, Math.max(...xs) + 3, Math.max(...ys) + 3] };
}

/** Widths across a road at one place of it. */
function roadDims(at, { own, opposing, outer }, x, place) {
  const dim = (key, from, to) => (Math.abs(to - from) > 0.01 ? [{
    path: `${at}.${key}`, points: [place([x, from]), place([x, to])], at: place([x, (from + to) / 2]),
  }] : []);
  return [...dim('own', 0, own), ...dim('opposing', 0, opposing), ...dim('shoulder', own, outer)];
}

const ringDims = numbers => ['outer', 'island'].map((key, k) => {
  const radius = known(numbers[`roundabout.${key}`]);
  const end = rotate((k ? 2 : 1) * 2.2, [radius, 0]);
  return { path: `roundabout.${key}`, points: [[0, 0], end], at: end.map(part => part * 0.7) };
});

const circle = (name, radius, [x, y] = [0, 0]) => ({ name, closed: true, points: arc([x, y], radius, 0, 2 * Math.PI) });

function arc([x, y], radius, from, to) {
  const count = Math.max(2, Math.ceil(Math.abs(to - from) / 0.08));
  return Array.from({ length: count + 1 }, (none, k) => {
    const angle = from + (to - from) * k / count;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

/**
 * The return inside the turn: its line, how far the edges go that it takes, and its dimensions; null where the layout
 * has none. Between the edges it is one arc, or a middle arc set in between two wider ones that touch it.
 */
function curbOf(numbers, layout, approach, exit, angle) {
  const inner = edges => (angle > 0 ? Math.max(edges.opposing, edges.outer) : Math.min(edges.opposing, edges.outer));
  const radii = layout === 'radii' ? [0, 1, 2].map(k => known(numbers[`curb.radii.${k}`]))
    : Array(3).fill(known(numbers[layout === 'gate' ? 'gate.near' : 'curb.radius'], NaN));
  const offset = layout === 'radii' ? known(numbers['curb.offset']) : 0;
  if (radii.some(Number.isNaN) || Math.abs(Math.sin(angle)) < 0.05) {
    return null;
  }
  const hand = Math.sign(angle);
  // In a frame of the inside: both edges seen with the turn to the left, the corner of the edges in the origin.
  const [a, b] = [hand * inner(approach), hand * inner(exit)];
  const turn = Math.abs(angle);
  const corner = [(a * Math.cos(turn) - b) / Math.sin(turn), a];
  const middle = radii[1] + offset;
  const center = [-middle * Math.tan(turn / 2), middle];
  const wider = k => {
    const reach = radii[k] - radii[1];
    const drop = reach - offset;
    return { drop, along: Math.sqrt(Math.max(0, reach * reach - drop * drop)) };
  };
  const first = wider(0);
  const last = wider(2);
  const start = [center[0] - first.along, 0];
  const in1 = [start[0], radii[0]];
  // The last arc is the first one of the turn driven backward.
  const mirrored = ([x, y]) => rotate(turn, [-x, y]);
  const end = [-(center[0] - last.along), 0];
  const out1 = rotate(turn, [end[0], radii[2]]);
  const angleOf = (from, to) => Math.atan2(to[1] - from[1], to[0] - from[0]);
  const join1 = radii[0] > radii[1] ? angleOf(in1, center) : -Math.PI / 2;
  const join2 = radii[2] > radii[1] ? angleOf(out1, center) : turn - Math.PI / 2;
  const local = [
    ...arc(in1, radii[0], -Math.PI / 2, join1), ...arc(center, radii[1], join1, join2).slice(1),
    ...arc(out1, radii[2], join2, turn - Math.PI / 2).slice(1),
  ];
  const whole = ([x, y]) => [x + corner[0], hand * (y + corner[1])];
  const leader = (path, at, radius, direction, long = 9) => {
    const tip = [at[0] + radius * Math.cos(direction), at[1] + radius * Math.sin(direction)];
    const tail = [tip[0] - Math.cos(direction) * long, tip[1] - Math.sin(direction) * long];
    return { path, points: [whole(tip), whole(tail)], at: whole(tail) };
  };
  const bisector = (join1 + join2) / 2;
  const near = value => Math.abs(value - hand * a) < 0.005;
  const after = value => Math.abs(value - hand * b) < 0.005;
  // On the outside of the turn the edges go on until they meet.
  const outer = edges => (angle > 0 ? Math.min : Math.max)(edges.opposing, edges.outer);
  const [c, d] = [hand * outer(approach), hand * outer(exit)];
  const meet = [(c * Math.cos(turn) - d) / Math.sin(turn), c];
  const isOuter = (value, edge) => Math.abs(value - hand * edge) < 0.005;
  const alongExit = Math.hypot(...mirrored([0, 0])) + rotate(-turn, corner)[0] + end[0];
  return {
    reach: Math.max(-(start[0] + corner[0]), alongExit, 0),
    points: local.map(whole),
    from: value => (near(value) ? start[0] + corner[0] : isOuter(value, c) ? meet[0] : 0),
    to: value => (after(value) ? alongExit : isOuter(value, d) ? rotate(-turn, meet)[0] : 0),
    dims: layout === 'radii' ? [
      leader('curb.radii.0', in1, radii[0], (join1 - Math.PI / 2) / 2),
      leader('curb.radii.1', center, radii[1], bisector, 16),
      leader('curb.radii.2', out1, radii[2], (join2 + turn - Math.PI / 2) / 2),
      { path: 'curb.offset', points: [[center[0], 0], [center[0], offset]].map(whole), at: whole([center[0], -2]) },
    ] : [leader(layout === 'gate' ? 'gate.near' : 'curb.radius', center, radii[1], bisector)],
  };
}
