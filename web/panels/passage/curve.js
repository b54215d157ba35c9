/** Clearance at every position of the truck, over the slider that moves it; both share one scale along the road. */
import { replace, set, svg } from '../../dom.js';
import { axisFigure, axisUnitM, axisUnitName, gapUnitM, gapUnitName, required } from '../../text/format.js';
import { nearestIndex } from '../../drawing/passage.js';
import { curvePath, gapRange } from '../../drawing/curve.js';
import { linear, ticks } from '../../drawing/scale.js';
import { label } from './sideview.js';

const HEIGHT = 160;
const TOP = 10;
const BOTTOM = HEIGHT - 20;
/** Half of the slider's thumb: its center runs this far inside the track's ends. */
const INSET = 8;
const LEFT = 40;

/** The stroke of one of the curves, for beside its figure. @param side 'ground' or 'overhead' */
export const strokeSample = side => svg('svg', {
  class: 'drawing stroke-sample', viewBox: '0 0 24 8', width: 24, height: 8, 'aria-hidden': 'true',
}, svg('path', { class: `curve curve-${side}`, d: 'M1 4H23' }));

/** @param moveTo called with the index of the position that was pointed at */
export function createCurve(moveTo) {
  const content = svg('g');
  const cursor = svg('path', { class: 'cursor' });
  const dots = svg('g');
  const node = svg('svg', { id: 'clearance-curve', class: 'drawing', height: HEIGHT, role: 'img',
    'aria-label': 'Clearance along the passage' },
  svg('defs', {}, svg('clipPath', { id: 'curve-clip' },
    svg('rect', { x: 0, y: TOP, width: '100%', height: BOTTOM - TOP }))),
  content, cursor, dots);
  let current = null;

  node.addEventListener('pointerdown', event => {
    node.setPointerCapture(event.pointerId);
    point(event);
  });
  node.addEventListener('pointermove', event => {
    if (node.hasPointerCapture(event.pointerId)) {
      point(event);
    }
  });

  function point(event) {
    if (current) {
      const x = event.clientX - node.getBoundingClientRect().left;
      moveTo(nearestIndex(current.positions, current.fromX(x)));
    }
  }

  function draw({ passage, cell, units }) {
    const width = node.parentElement.clientWidth;
    if (width === 0) {
      return;
    }
    const { positions } = passage;
    const span = [positions[0].steerM, positions.at(-1).steerM];
    const across = [LEFT + INSET, width - INSET];
    const toX = linear(span, across);
    const range = gapRange(positions, cell);
    const toY = linear(range, [BOTTOM, TOP]);
    current = { positions, toX, toY, fromX: linear(across, span), range };
    set(node, { viewBox: `0 0 ${width} ${HEIGHT}`, width });
    const unitM = axisUnitM(units);
    const gapM = gapUnitM(units);
    const tightest = positions[passage.tightest];
    replace(content,
      range[0] < 0 && svg('rect', {
        class: 'interference', x: LEFT, y: toY(0), width: width - LEFT, height: BOTTOM - toY(0),
      }),
      ticks(range[0] / gapM, range[1] / gapM, 3).map(value => [
        svg('path', { class: 'grid', d: `M${LEFT} ${toY(value * gapM)}H${width}` }),
        label(LEFT - 5, toY(value * gapM) + 4, axisFigureOf(value), 'end')]),
      label(0, TOP + 2, gapUnitName(units)),
      label(0, HEIGHT - 4, 'steer axle'),
      ticks(span[0] / unitM, span[1] / unitM, Math.max(2, width / 110)).map(value =>
        roadTick(toX(value * unitM), value * unitM, units)),
      svg('path', { class: 'axis', d: `M${LEFT} ${toY(0)}H${width}` }),
      needs(cell, passage.soffit !== null, units, toY, range, width),
      svg('g', { 'clip-path': 'url(#curve-clip)' },
        svg('path', { class: 'curve curve-overhead', d: curvePath(positions, 'overheadM', toX, toY) }),
        svg('path', { class: 'curve curve-ground', d: curvePath(positions, 'groundM', toX, toY) })),
      svg('path', { class: 'tightest', d: `M${toX(tightest.steerM)} ${TOP}V${BOTTOM}` }),
      label(toX(tightest.steerM) + (toX(tightest.steerM) > width - 70 ? -4 : 4), TOP + 8, 'tightest',
        toX(tightest.steerM) > width - 70 ? 'end' : 'start', 'tightest-label'));
  }

  function move(index) {
    if (current === null) {
      return;
    }
    const { positions, toX, toY, range } = current;
    const position = positions[index];
    const x = toX(position.steerM);
    set(cursor, { d: `M${x} ${TOP}V${BOTTOM}` });
    replace(dots, ['groundM', 'overheadM'].filter(key => position[key] <= range[1] && position[key] !== null).map(key =>
      svg('circle', { class: 'dot', cx: x, cy: toY(position[key]), r: 4 })));
  }
  return { node, draw, move };
}

/** What each clearance has to reach; the lower of two stands under its line. */
function needs(cell, structure, units, toY, range, width) {
  return [['under', cell?.ground], ['over', structure && cell?.overhead]]
    .filter(([, side]) => side && side.requiredM <= range[1])
    .sort(([, a], [, b]) => b.requiredM - a.requiredM)
    .map(([word, side], index) => {
      const y = toY(side.requiredM);
      return [svg('path', { class: 'needs', d: `M${LEFT} ${y}H${width}` }),
        label(width - 4, y + (index === 0 ? -4 : 12), `needed ${word} ${required(side.requiredM, units)}`, 'end')];
    });
}

/** A tick of the road axis; its left corner belongs to the axis's name. */
function roadTick(x, valueM, units) {
  const figure = axisFigure(valueM, units);
  return x > LEFT + 32 && [
    svg('path', { class: 'tick', d: `M${x} ${BOTTOM}v4` }),
    label(x, HEIGHT - 4, valueM === 0 ? `${figure} ${axisUnitName(units)}` : figure, 'middle')];
}

function axisFigureOf(value) {
  return value < 0 ? `−${-value}` : String(value);
}
