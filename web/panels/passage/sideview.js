/** The combination on the surveyed profile, to scale, seen from the right-hand side: it travels to the right. */
import { replace, set, svg } from '../../dom.js';
import { axisUnitM, axisUnitName, clearance, grade, round } from '../../text/format.js';
import { camera, detailReach, dimensionLine, groundZ, roadKnown, tighterSide } from '../../drawing/passage.js';
import { scaleBar } from '../../drawing/scale.js';
import { createScene, wheelLabels } from './scene.js';

/** An exaggerated view is no taller than this: it is exaggerated as far as the whole combination has room. */
const TALLEST_PX = 460;
const SHORTEST_PX = 96;
const ARROW_PX = 16;
/** Strip of earth below the window, for dimensions. */
const BELOW_PX = 30;
/** Strip under the drawing for its scale. */
const FOOT_PX = 20;

export function createSideView() {
  const view = svg('g');
  const labels = svg('g', { class: 'labels' });
  const node = svg('svg', { id: 'side-view', class: 'drawing', role: 'img' },
    svg('title', {}, 'Side view of the combination on the profile'), view, labels);
  let current = null;

  function draw({ passage, cell, units, exaggeration, frame }) {
    const width = node.parentElement.clientWidth;
    if (width === 0) {
      return;
    }
    const scaleX = width / frame.widthM;
    const stretch = stretched(exaggeration, TALLEST_PX / (frame.heightM * scaleX));
    const scaleZ = scaleX * stretch;
    const windowPx = Math.round(Math.max(SHORTEST_PX, frame.heightM * scaleZ));
    const height = windowPx + BELOW_PX;
    const scene = createScene(passage, frame, stretch);
    const reachM = detailReach(passage, cell);
    current = {
      passage, cell, units, stretch, frame, scaleX, scaleZ, width, height, windowPx, reachM, scene,
    };
    set(node, { viewBox: `0 0 ${width} ${height + FOOT_PX}`, width, height: height + FOOT_PX });
    replace(view, scene.node);
  }

  function move(index) {
    if (current === null) {
      return;
    }
    const { frame, scaleX, scaleZ, windowPx, scene, cell, stretch, passage } = current;
    const position = passage.positions[index];
    const side = tighterSide(position, cell);
    const corner = camera(frame, index, windowPx / scaleZ);
    scene.move(index);
    const toX = x => (x - corner.left) * scaleX;
    const toY = z => windowPx - (z - corner.bottom) * scaleZ;
    set(view, { transform: `matrix(${scaleX} 0 0 ${scaleZ} ${toX(0)} ${toY(0)})` });
    const window = { ...current, toX, toY };
    replace(labels,
      endLabels(window),
      trackLabels(window, dimensionLine(position, 'ground')),
      wheelLabels(position, stretch).map(({ x, z, text }) => label(toX(x), toY(z) - 4, text, 'middle', 'wheel-label')),
      scaleLabels(window),
      ['ground', 'overhead'].map(which => dimensionMark(window, position, which, which === side)));
    set(node, { 'aria-label': describe(position, window) });
  }
  return { node, draw, move };
}

/** What the drawing shows, for those who do not see it. */
function describe(position, { units, stretch }) {
  const parts = [['under the combination', position.groundM], ['over the load', position.overheadM]]
    .filter(([, value]) => typeof value === 'number')
    .map(([where, value]) => `${clearance(value, units)} ${where}`);
  const scales = stretch === 1 ? 'equal scales' : `vertical scale exaggerated ${stretch} times`;
  return `Side view, ${scales}: ${parts.join(', ')}`;
}

/** A dimension line whose arrows stand outside the gap and point at its two sides, as for all small dimensions. */
function dimensionMark({ toX, toY, scaleX, scaleZ, reachM, units, height }, position, side, tighter) {
  const line = dimensionLine(position, side);
  if (line === null || (side === 'overhead' && !tighter)) {
    return null;
  }
  const x = toX(line.x);
  const from = toY(line.from);
  const to = toY(line.to);
  const away = side === 'ground' ? 1 : -1;
  const [rx, ry] = [Math.max(7, reachM * scaleX), Math.max(7, reachM * scaleZ)];
  const textY = Math.max(12, Math.min(height - 5, to + away * (ARROW_PX + 18) + (away > 0 ? 4 : 0)));
  return svg('g', { class: `dimension dimension-${side}${tighter ? ' tighter' : ''}` },
    arrow(x, from - away * ARROW_PX, from),
    arrow(x, to + away * ARROW_PX, to),
    tighter && [
      svg('ellipse', { class: 'detail-circle', cx: x, cy: (from + to) / 2, rx, ry }),
      label(x - rx - 3, (from + to) / 2 + 4, 'A', 'end', 'detail-letter')],
    label(x, textY, clearance(line.valueM, units), 'middle', 'dimension-text'));
}

/** A stroke that ends in an arrow head at `tip`. */
export function arrow(x, tail, tip) {
  const back = tip + Math.sign(tail - tip) * 7;
  return svg('path', { class: 'arrow', d: `M${x} ${tail}V${tip}M${x - 2.6} ${back}L${x} ${tip}L${x + 2.6} ${back}` });
}

export function label(x, y, text, anchor = 'start', name = '') {
  return svg('text', { class: `label ${name}`, x, y, 'text-anchor': anchor }, text);
}

/** Where the survey ends, and what stands in for it beyond. */
function endLabels({ passage, toX, toY, width, height }) {
  const points = passage.ground.points;
  if (!roadKnown(passage)) {
    return svg('g', { class: 'survey-end' },
      label(width / 2, Math.min(height - 8, toY(points[0][1]) + 30), 'road not surveyed, drawn straight', 'middle'));
  }
  const ends = [['before', points[0], 'end', -6], ['after', points[points.length - 1], 'start', 6]];
  return ends.map(([end, [s, z], anchor, gap]) => {
    const x = toX(s);
    if (x < -20 || x > width + 20) {
      return null;
    }
    const { slope, declared } = passage.ground[end];
    const room = anchor === 'end' ? x : width - x;
    const text = declared ? `declared grade ${grade(slope)}` : 'end slope continued';
    const y = Math.min(height - 20, toY(z) + 34);
    return svg('g', { class: 'survey-end' },
      svg('path', { d: `M${x} ${toY(z)}V${y + 4}` }),
      room > 120 && label(x + gap, y - 8, 'not surveyed', anchor),
      room > 120 && label(x + gap, y + 4, text, anchor));
  });
}

/** Names of the tracks, save one that the dimension would write over. */
function trackLabels({ passage, toX, toY }, dimension) {
  return passage.tracks.map((s, index) => {
    const covered = dimension !== null && Math.abs(toX(s) - toX(dimension.x)) < 52;
    const name = passage.tracks.length > 1 ? `track ${index + 1}` : 'track';
    return !covered && label(toX(s), toY(groundZ(passage.ground, s) - 0.6) + 12, name, 'middle', 'track-label');
  });
}

/** What was asked for, no more than there is room for, to a tenth; never flatter than equal scales. */
const stretched = (asked, most) => Math.max(1, Math.min(asked, Math.floor(most * 10) / 10));

/** Scale bar, the word on the vertical scale and a bar of its own for it, the direction of travel. */
function scaleLabels({ scaleX, scaleZ, width, height, units, stretch }) {
  const bar = scaleBar(1 / scaleX, Math.min(150, width * 0.3), axisUnitM(units));
  const y = height + FOOT_PX - 5;
  return svg('g', { class: 'scale' },
    svg('rect', { class: 'foot', x: 0, y: height, width, height: FOOT_PX }),
    svg('path', {
      class: 'scale-bar',
      d: `M1 ${y - 5}V${y}H${1 + bar.pixels}V${y - 5}M${1 + bar.pixels / 2} ${y - 3}V${y}`,
    }),
    label(8 + bar.pixels, y, `${round(bar.length, axisUnitName(units))}, `
      + (stretch === 1 ? 'equal scales' : `vertical × ${stretch}`)),
    stretch > 1 && verticalBar(scaleBar(1 / scaleZ, height / 3, axisUnitM(units)), height, units),
    svg('path', { class: 'travel-arrow', d: `M${width - 46} ${y - 4}H${width - 2}m-7 -3.5l7 3.5l-7 3.5` }),
    label(width - 52, y, 'travel', 'end'));
}

/** At the left edge, from the foot up. */
function verticalBar({ length, pixels }, height, units) {
  const from = height - 4;
  return svg('g', { class: 'vertical-scale' },
    svg('path', {
      class: 'scale-bar', d: `M7 ${from}H2V${from - pixels}H7M2 ${from - pixels / 2}H5`,
    }),
    label(10, from - pixels + 9, `${round(length, axisUnitName(units))} of height`));
}
