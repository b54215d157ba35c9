/** Detail A: the surroundings of the tightest point at this position, enlarged at equal scales, with its dimension. */
import { replace, set, svg } from '../../dom.js';
import { axisUnitM, clearance, gapUnitM, gapUnitName, round } from '../../text/format.js';
import { detailReach, dimensionLine, tighterSide } from '../../drawing/passage.js';
import { scaleBar } from '../../drawing/scale.js';
import { createScene } from './scene.js';
import { arrow, label } from './sideview.js';

const SIZE = 236;
const MIDDLE = SIZE / 2;
const RADIUS = MIDDLE - 4;

export function createDetailView() {
  const view = svg('g');
  const labels = svg('g', { class: 'labels' });
  const caption = svg('text', { class: 'label detail-caption', x: 6, y: 13 }, 'Detail A');
  const node = svg('svg', { id: 'detail-view', class: 'drawing', viewBox: `0 0 ${SIZE} ${SIZE + 22}`, role: 'img' },
    svg('title', {}, 'Detail at the tightest point'),
    svg('defs', {}, svg('clipPath', { id: 'detail-clip' }, svg('circle', { cx: MIDDLE, cy: MIDDLE, r: RADIUS }))),
    svg('circle', { class: 'detail-paper', cx: MIDDLE, cy: MIDDLE, r: RADIUS }),
    svg('g', { 'clip-path': 'url(#detail-clip)' }, view, labels),
    svg('circle', { class: 'detail-rim', cx: MIDDLE, cy: MIDDLE, r: RADIUS }),
    caption);
  const foot = svg('g', { class: 'scale' });
  node.append(foot);
  let current = null;

  function draw({ passage, cell, units, frame }) {
    const scale = RADIUS / detailReach(passage, cell);
    const scene = createScene(passage, frame);
    replace(view, scene.node);
    current = { passage, cell, units, scale, scene };
    const unitM = units === 'us' ? gapUnitM(units) : axisUnitM(units) / 1000;
    const bar = scaleBar(1 / scale, 110, unitM);
    const y = SIZE + 14;
    replace(foot,
      svg('path', { class: 'scale-bar', d: `M10 ${y - 4}V${y}H${10 + bar.pixels}V${y - 4}` }),
      label(16 + bar.pixels, y, `${round(bar.length, gapUnitName(units))}, equal scales`));
  }

  function move(index) {
    if (current === null) {
      return;
    }
    const { passage, cell, units, scale, scene } = current;
    const position = passage.positions[index];
    const side = tighterSide(position, cell);
    const line = dimensionLine(position, side);
    set(node, { visibility: line ? null : 'hidden' });
    if (line === null) {
      return;
    }
    const middleZ = (line.from + line.to) / 2;
    scene.move(index);
    set(view, { transform: `matrix(${scale} 0 0 ${scale} ${MIDDLE - line.x * scale} ${MIDDLE + middleZ * scale})` });
    const toY = z => MIDDLE - (z - middleZ) * scale;
    replace(labels, dimension(toY(line.from), toY(line.to), side, clearance(line.valueM, units)));
    set(node, { 'aria-label': `Detail at the ${line.unit}: clearance ${clearance(line.valueM, units)}` });
  }
  return { node, draw, move };
}

/** Extension lines from the two sides of the gap, and the dimension between them, beside the point itself. */
function dimension(from, to, side, text) {
  const x = MIDDLE + 34;
  const away = side === 'ground' ? 1 : -1;
  const roomy = Math.abs(to - from) > 34;
  const arrows = roomy
    ? [arrow(x, (from + to) / 2, from), arrow(x, (from + to) / 2, to)]
    : [arrow(x, from - away * 26, from), arrow(x, to + away * 26, to)];
  return svg('g', { class: 'dimension tighter' },
    svg('path', { class: 'extension', d: `M${MIDDLE} ${from}H${x + 8}M${MIDDLE} ${to}H${x + 8}` }),
    svg('circle', { class: 'point', cx: MIDDLE, cy: from, r: 3 }),
    arrows,
    label(x + 10, roomy ? (from + to) / 2 + 5 : to + away * 22, text, 'start', 'dimension-text'));
}
