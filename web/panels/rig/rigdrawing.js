/** The rig to scale from the side and from above, with every distance that was taped dimensioned on it. */
import { alongRow, el, makeTabStop, replace, roving, set, svg } from '../../dom.js';
import { axisUnitM, axisUnitName, round } from '../../text/format.js';
import { dimensions, levels, standing } from '../../drawing/tape.js';
import { closed, toScale } from '../../drawing/loads.js';
import { scaleBar } from '../../drawing/scale.js';

/** Room for one row of figures, and a figure's letters, pixels. */
const LINE_PX = 14;
const LETTER_PX = 6.1;
/** How far below the chain of distances the others are drawn, pixels. */
const BESIDE_PX = 9;
/** Narrower than this the drawing is moved within its frame. */
const LEAST_PX = 820;

/** @param choose called with the id of the row that was pressed */
export function createRigDrawing(choose) {
  const side = svg('svg', { id: 'rig-side', class: 'drawing', role: 'group' });
  const above = svg('svg', { id: 'rig-above', class: 'drawing', role: 'group' });
  const node = el('div', {
    class: 'rig-drawing-frame', tabindex: '0', role: 'region', 'aria-label': 'Drawing of the rig',
  }, side, above);
  for (const view of [side, above]) {
    roving(view, '.tape-dim', alongRow(view, '.tape-dim'));
    view.addEventListener('keydown', event => {
      const dim = event.target.closest('.tape-dim');
      if (dim && (event.key === 'Enter' || event.key === ' ')) {
        event.preventDefault();
        choose(dim.dataset.row);
      }
    });
    view.addEventListener('click', event => {
      const dim = event.target.closest('[data-row]');
      if (dim) {
        choose(dim.dataset.row);
      }
    });
  }

  /** @param text row → what was typed, or what it comes to */
  function draw({ json, stance, parts, chosen, units, text }) {
    const frame = node.clientWidth;
    if (frame === 0) {
      return;
    }
    const scene = standing(json, stance);
    const width = Math.max(LEAST_PX, frame - 2);
    const dims = dimensions(parts, scene, chosen)
      .map(dim => ({ ...dim, text: text(dim.row), chosen: dim.id === chosen }));
    drawSide(side, scene, dims, { width, units, parts });
    drawAbove(above, scene, dims.filter(dim => dim.wide !== undefined), { width });
    for (const view of [side, above]) {
      const first = view.querySelector('.tape-dim.chosen') ?? view.querySelector('.tape-dim');
      if (first) {
        makeTabStop(view, '.tape-dim', first);
      }
    }
  }

  /** Moves what is looked at into sight, within the frame. */
  function show() {
    const dim = node.querySelector('.tape-dim.chosen');
    if (dim) {
      const box = dim.getBoundingClientRect();
      const frame = node.getBoundingClientRect();
      node.scrollLeft += box.left + box.width / 2 - frame.left - frame.width / 2;
      node.scrollTop += box.top + box.height / 2 - frame.top - frame.height / 2;
    }
  }
  return { node, draw, show };
}

function drawSide(node, scene, dims, { width, units, parts }) {
  const heights = dims.filter(dim => dim.h !== undefined);
  const lengths = dims.filter(dim => dim.along !== undefined && (dim.along[0] !== dim.along[1] || dim.chosen));
  const { scale, toX } = toScale(scene, width);
  const sized = (list, at) => list.map(dim => labeled(dim, at(dim), width));
  const over = place(sized(heights, dim => toX(dim.at)));
  const under = place(sized(lengths, dim => toX((dim.along[0] + dim.along[1]) / 2)));
  const top = over.rows * LINE_PX + 8;
  const groundY = top + scene.top * scale;
  const toY = h => groundY - h * scale;
  const lineY = groundY + 13;
  const height = lineY + BESIDE_PX + under.rows * LINE_PX + 30;
  set(node, {
    viewBox: `0 0 ${width} ${height}`, width, height,
    'aria-label': 'Side view, traveling to the right. Arrow keys go from distance to distance, Enter to its figure.',
  });
  const spot = ([x, h]) => `${toX(x).toFixed(1)} ${toY(h).toFixed(1)}`;
  const outline = points => `M${points.map(spot).join('L')}Z`;
  replace(node,
    scene.units.flatMap(unit => [
      ...unit.loads.map(({ points }) => svg('path', { class: 'load', d: outline(onDeck(unit, points)) })),
      svg('path', { class: 'body', d: outline(closed(unit)) }),
    ]),
    scene.units.flatMap(unit => unit.wheels.map(wheel => svg('g', {},
      svg('circle', { class: 'tire', cx: toX(wheel.x), cy: toY(wheel.r), r: wheel.r * scale }),
      svg('circle', { class: 'hub', cx: toX(wheel.x), cy: toY(wheel.r), r: wheel.r * scale * 0.4 })))),
    svg('path', { class: 'road', d: `M0 ${groundY}H${width}` }),
    outlinePoints(parts, scene, toX, toY),
    over.list.map(dim => heightDim(dim, { toX, toY, groundY, top })),
    under.list.map(dim => lengthDim(dim, { toX, toY, groundY, lineY })),
    scaleLabel(width, height, scale, units));
}

const labeled = (dim, at, width) => {
  const size = Math.max(dim.text.length * LETTER_PX, 20);
  return { ...dim, width: size, textAt: Math.min(Math.max(at, size / 2 + 2), width - size / 2 - 2) };
};

function place(dims) {
  const found = levels(dims.map(dim => ({ at: dim.textAt, width: dim.width })));
  // What is chosen is drawn over all others.
  const list = dims.map((dim, k) => ({ ...dim, level: found[k] })).sort((a, b) => a.chosen - b.chosen);
  return { rows: Math.max(0, ...found.map(level => level + 1)), list };
}

/** A load stands on the deck. */
function onDeck(unit, points) {
  const [rear, front] = [points[0], points.at(-1)];
  const near = x => unit.topside.filter(([at]) => Math.abs(at - x) < 6).map(([, h]) => h);
  const under = x => Math.min(...near(x), rear[1], front[1]);
  return [[rear[0], under(rear[0])], ...points, [front[0], under(front[0])]];
}

/** Points of outlines, to be pressed; their figures are in the list. */
function outlinePoints(parts, scene, toX, toY) {
  const shifts = new Map(scene.units.map(unit => [unit.key, unit.shift]));
  return parts.filter(({ key }) => shifts.has(key)).flatMap(({ key, groups }) => groups
    .filter(group => !['main', 'weights', 'limits', 'widths'].includes(group.key))
    .flatMap(group => group.places).filter(place => place.height && place.height.h !== null)
    .map(({ x, height }) => svg('circle', {
      class: 'tape-point', 'data-row': height.id, cx: toX(shifts.get(key) + x / 1e12), cy: toY(height.h / 1e12), r: 3,
    })));
}

const dimGroup = (dim, ...children) => svg('g', {
  class: `tape-dim${dim.chosen ? ' chosen' : ''}`, 'data-row': dim.id, role: 'button', tabindex: '-1',
  'aria-label': `${dim.label}: ${dim.text}`,
}, ...children);

const figure = (dim, y) => [
  svg('rect', {
    class: 'tape-hit', x: dim.textAt - dim.width / 2 - 2, y: y - 11, width: dim.width + 4, height: LINE_PX,
  }),
  svg('text', { class: 'label tape-figure', x: dim.textAt, y, 'text-anchor': 'middle' }, dim.text),
];

function heightDim(dim, { toX, toY, groundY, top }) {
  const y = top - 8 - dim.level * LINE_PX;
  const x = toX(dim.at);
  return dimGroup(dim,
    svg('path', { class: 'tape-leader', d: `M${x} ${toY(dim.h)}V${y + 8}L${dim.textAt} ${y + 2}` }),
    svg('path', { class: 'tape-line', d: `M${x} ${groundY}V${toY(dim.h)}M${x - 3} ${toY(dim.h)}H${x + 3}` }),
    ...figure(dim, y));
}

function lengthDim(dim, { toX, groundY, lineY }) {
  const [a, b] = dim.along.map(toX);
  const y = lineY + BESIDE_PX + 13 + dim.level * LINE_PX;
  const middle = (a + b) / 2;
  // Neighbor to neighbor is one chain; what is taped past others stands under it.
  const at = dim.row.kind === 'span' ? lineY : lineY + BESIDE_PX;
  return dimGroup(dim,
    svg('path', {
      class: 'tape-line', d: `M${a} ${groundY + 3}V${at + 4}M${b} ${groundY + 3}V${at + 4}M${a} ${at}H${b}`,
    }),
    svg('path', { class: 'tape-leader', d: `M${middle} ${at}L${dim.textAt} ${y - 9}` }),
    ...figure(dim, y));
}

function drawAbove(node, scene, dims, { width }) {
  const { scale, toX } = toScale(scene, width);
  const widest = Math.max(0,
    ...scene.units.flatMap(unit => [unit.width, unit.overTires, unit.loadWidth].filter(Boolean)));
  const placed = place(dims.map(dim => labeled(dim, toX(dim.at), width)));
  const middle = (widest / 2) * scale + 8;
  const height = middle * 2 + placed.rows * LINE_PX + 8;
  node.toggleAttribute('hidden', widest === 0);
  set(node, {
    viewBox: `0 0 ${width} ${height}`, width, height,
    'aria-label': 'View from above, traveling to the right. Arrow keys go from width to width, Enter to its figure.',
  });
  const box = (name, from, to, across) => svg('rect', {
    class: name, x: toX(from), y: middle - (across / 2) * scale,
    width: Math.max(0, (to - from) * scale), height: across * scale,
  });
  replace(node,
    scene.units.flatMap(unit => [
      unit.width && box('body', unit.rear, unit.front, unit.width),
      unit.overTires && unit.wheels.flatMap(wheel => [-1, 1].map(hand => svg('rect', {
        class: 'tire', x: toX(wheel.x - wheel.r), width: 2 * wheel.r * scale,
        y: middle + hand * (unit.overTires / 2 - wheel.across / 2) * scale - (wheel.across / 2) * scale,
        height: wheel.across * scale,
      }))),
      unit.loads.map(({ points }) => (unit.loadWidth ?? unit.width)
        && box('load tape-load', points[0][0], points.at(-1)[0], unit.loadWidth ?? unit.width)),
    ]),
    svg('path', { class: 'tape-center', d: `M0 ${middle}H${width}` }),
    placed.list.map(dim => {
      const x = toX(dim.at);
      const half = (dim.wide / 2) * scale;
      const y = middle * 2 + 8 + dim.level * LINE_PX;
      return dimGroup(dim,
        svg('path', {
          class: 'tape-line',
          d: `M${x} ${middle - half}V${middle + half}M${x - 3} ${middle - half}h6M${x - 3} ${middle + half}h6`,
        }),
        svg('path', { class: 'tape-leader', d: `M${x} ${middle + half}L${dim.textAt} ${y - 9}` }),
        ...figure(dim, y));
    }));
}

function scaleLabel(width, height, scale, units) {
  const bar = scaleBar(1 / scale, Math.min(110, width / 4), axisUnitM(units));
  return svg('g', { class: 'scale' },
    svg('path', { class: 'scale-bar', d: `M6 ${height - 6}V${height - 10}H${6 + bar.pixels}V${height - 6}` }),
    svg('text', { class: 'label', x: 12 + bar.pixels, y: height - 5 },
      `${round(bar.length, axisUnitName(units))}, equal scales; travel to the right`));
}
