/**
 * The things in a side view, as one group in world meters (y = −Z): ground, soffit, tracks, the combination. Every
 * drawing makes its own and shows it through its own window.
 */
import { set, svg } from '../../dom.js';
import { groundParts, groundZ, loadPolygon, roadKnown, unitMatrix } from '../../drawing/passage.js';

/** Length of the ticks that tell ground from air, and their spacing, meters. */
const TICK_M = 0.22;
const TICK_EVERY_M = 0.55;

/** Width of the hatch where the combination and the road are drawn into one another, meters. */
const HATCH_M = 0.12;
/** Every scene names its hatch and its clip for itself. */
let scenes = 0;

/**
 * With the truck at no position yet.
 *
 * @param stretch how many times as tall as long the drawing is shown: wheels stay round, on what they stand on
 * @returns {node, move(index)}
 */
export function createScene(passage, frame, stretch = 1) {
  const outlines = passage.units.map(unit => [
    ...unit.load.map(line => ['load', `${path(loadPolygon(line, unit.topside))}Z`]),
    ['body', `${path(unit.underside)}${path([...unit.topside].reverse(), 'L')}Z`]]);
  const units = passage.units.map((unit, i) => svg('g', { class: `unit unit-${unit.unit}` },
    outlines[i].map(([name, d]) => svg('path', { class: name, d })),
    svg('path', { class: 'underside', d: path(unit.underside) })));
  const inside = outlines.map(own => svg('g', {}, own.map(([, d]) => svg('path', { d }))));
  const wheelCount = Math.max(...passage.positions.map(position => position.wheels.length));
  const wheels = Array.from({ length: wheelCount }, () =>
    svg('g', {}, svg('circle', { class: 'tire' }), svg('circle', { class: 'hub' })));
  const node = svg('g', {}, earth(passage, frame), structure(passage), trackLines(passage), [...units].reverse(),
    // Over the combination, so that where it reaches into the ground or a structure both outlines are seen.
    overlap(passage, frame, inside), roadLine(passage, frame), soffitLine(passage), wheels);

  function move(index) {
    const position = passage.positions[index];
    units.forEach((group, i) => {
      const pose = position.poses[passage.units[i].unit];
      const stands = {
        transform: pose ? `matrix(${unitMatrix(pose).join(' ')})` : null, display: pose ? null : 'none',
      };
      set(group, stands);
      set(inside[i], stands);
    });
    wheels.forEach((group, i) => {
      set(group, { display: i < position.wheels.length ? null : 'none' });
    });
    position.wheels.forEach(([x, z, radius, , state], i) => {
      const [tire, hub] = wheels[i].children;
      set(wheels[i], {
        class: `wheel wheel-${state}`, transform: `translate(${x} ${radius - z}) scale(1 ${1 / stretch})`,
      });
      set(tire, { cy: -radius, r: radius });
      set(hub, { cy: -radius, r: radius * 0.42 });
    });
  }
  return { node, move };
}

function earth(passage, frame) {
  const { surveyed } = groundParts(passage.ground, frame.roadFrom, frame.roadTo);
  return [
    svg('path', { class: 'earth', d: earthPath(passage, frame) }),
    roadKnown(passage) && svg('path', { class: 'earth-ticks', d: ticksUnder(surveyed) }),
  ];
}

function earthPath(passage, { roadFrom, roadTo }) {
  const { before, surveyed, after } = groundParts(passage.ground, roadFrom, roadTo);
  const all = [...before.slice(0, 1), ...surveyed, ...after.slice(-1)];
  const lowest = Math.min(...all.map(([, z]) => z)) - 20;
  return `${path(all)}L${roadTo} ${-lowest}L${roadFrom} ${-lowest}Z`;
}

/** What of the combination is drawn inside the road or a structure, hatched; a road nobody surveyed hatches nothing. */
function overlap(passage, frame, inside) {
  const id = `overlap-${scenes++}`;
  return [
    svg('defs', {},
      svg('pattern', {
        id: `${id}-hatch`, width: HATCH_M, height: HATCH_M, patternUnits: 'userSpaceOnUse',
        patternTransform: 'rotate(45)',
      },
        svg('rect', { class: 'hatch-ground', width: HATCH_M, height: HATCH_M }),
        svg('rect', { class: 'hatch-stroke', width: HATCH_M / 2, height: HATCH_M })),
      svg('clipPath', { id },
        roadKnown(passage) && svg('path', { d: earthPath(passage, frame) }),
        passage.soffit && svg('path', { d: structurePath(passage) }))),
    svg('g', { class: 'overlap', 'clip-path': `url(#${id})`, fill: `url(#${id}-hatch)` }, inside),
  ];
}

function roadLine(passage, { roadFrom, roadTo }) {
  const { before, surveyed, after } = groundParts(passage.ground, roadFrom, roadTo);
  if (!roadKnown(passage)) {
    return svg('path', { class: 'road unsurveyed', d: path([...before.slice(0, 1), ...surveyed, ...after.slice(-1)]) });
  }
  return [
    [before, after].filter(part => part.length > 0)
      .map(part => svg('path', { class: 'road unsurveyed', d: path(part) })),
    svg('path', { class: 'road', d: path(surveyed) }),
    surveyed.map(([s, z]) => svg('path', { class: 'survey-point', d: `M${s} ${-z}h0` })),
  ];
}

/** Short strokes under a surveyed line at even steps along it. */
function ticksUnder(points) {
  const strokes = [];
  let next = 0;
  let walked = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    for (; next <= walked + length; next += TICK_EVERY_M) {
      const t = (next - walked) / length;
      const [x, z] = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
      strokes.push(`M${x} ${-z}l${-TICK_M} ${TICK_M}`);
    }
    walked += length;
  }
  return strokes.join('');
}

function structure(passage) {
  return passage.soffit && svg('path', { class: 'structure', d: structurePath(passage) });
}

function structurePath({ soffit }) {
  const first = soffit[0];
  const last = soffit[soffit.length - 1];
  const top = Math.max(...soffit.map(([, z]) => z)) + 0.6;
  return `${path(soffit)}L${last[0]} ${-top}L${first[0]} ${-top}Z`;
}

function soffitLine({ soffit }) {
  return soffit && svg('path', { class: 'soffit', d: path(soffit) });
}

/** Center lines of the tracks, standing on the road. */
function trackLines({ tracks, ground }) {
  return tracks.map(s => {
    const z = groundZ(ground, s);
    return svg('path', { class: 'track', d: `M${s} ${-z - 0.45}V${-z + 0.6}` });
  });
}

function path(points, start = 'M') {
  return points.map(([x, z], index) => `${index === 0 ? start : 'L'}${x} ${-z}`).join('');
}

/** Where the labels of the wheels that do not simply ride go: {x, z, text} in the world. */
export function wheelLabels(position, stretch) {
  return position.wheels
    .filter(([, , , , state]) => state !== 'riding')
    .map(([x, z, radius, , state]) => ({ x, z: z - radius + (2 * radius) / stretch, text: state }));
}
