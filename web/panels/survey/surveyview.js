/**
 * What a survey's numbers are, drawn as they are typed: every line from the side, heights enlarged; and the combination
 * on it, once the answer is that to these numbers.
 */
import { replace, svg } from '../../dom.js';
import { axisUnitM, axisUnitName, gapUnitM, gapUnitName, round } from '../../text/format.js';
import { unitMatrix } from '../../drawing/passage.js';

const HEIGHT = 240;
const EDGE = 34;
/** The most that heights are enlarged. */
const MOST_TIMES = 20;

/** The box of points [x, z], or null of none. */
function boxOf(points) {
  return points.length === 0 ? null : points.reduce(([a, b, c, d], [x, z]) =>
    [Math.min(a, x), Math.max(b, x), Math.min(c, z), Math.max(d, z)], [Infinity, -Infinity, Infinity, -Infinity]);
}

/**
 * @param lines {name, points: [[m, m, row]]} in the order of columns
 * @param rails meters along
 * @param passage the combination on them with the index of where it stands, or null
 */
export function surveyDrawing({ lines, rails, passage, position, width, units }) {
  const points = lines.flatMap(line => line.points);
  const box = boxOf(points);
  if (box === null || width < 1) {
    return svg('svg', { width, height: 0 });
  }
  const truck = passage ? wheelsOf(passage, position) : [];
  const [left, right] = [box[0], box[1]].map((at, k) => Math[k ? 'max' : 'min'](at, ...truck.map(([x]) => x)));
  const [low, high] = [box[2], box[3]];
  const along = (width - 2 * EDGE) / Math.max(right - left, 0.5);
  const up = Math.max(along, Math.min(along * MOST_TIMES, (HEIGHT - 2 * EDGE) * 0.62 / Math.max(high - low, 0.02)));
  const x = s => EDGE + (s - left) * along;
  const y = z => HEIGHT - EDGE - (z - low) * up;
  return svg('svg', {
    id: 'survey-view', class: 'drawing', width, height: HEIGHT, viewBox: `0 0 ${width} ${HEIGHT}`, role: 'img',
    'aria-label': words(lines, passage, units, high - low),
  },
    passage && combination(passage, position, { left, low, along, up }),
    rails.map(s => svg('path', { class: 'track', d: `M${x(s)} ${EDGE / 2}V${HEIGHT - EDGE / 2}` })),
    svg('path', { class: 'survey-zero', d: `M${x(0)} ${EDGE / 2}V${HEIGHT - EDGE / 2}` }),
    label(x(0), EDGE / 2 - 3, 'the point', 'middle'),
    lines.map(({ name, points: own }, k) => [
      svg('path', { class: `survey-line survey-line-${k % 4}`, d: pathOf(own, x, y) }),
      own.length <= 400 && own.map(([s, z, row]) =>
        svg('circle', { class: 'survey-dot', 'data-row': row, cx: x(s), cy: y(z), r: 2.5 })),
      label(width - EDGE + 3, 14 + 14 * k, name[0].toUpperCase(), 'start'),
      svg('path', { class: `survey-line survey-line-${k % 4}`, d: `M${width - EDGE - 22} ${10 + 14 * k}h20` }),
    ]),
    label(EDGE, HEIGHT - 6, `${figure((box[1] - box[0]) / axisUnitM(units), axisUnitName(units))} long, `
      + `${figure((high - low) / gapUnitM(units), gapUnitName(units))} high; heights × `
      + `${Number((up / along).toPrecision(2))}`,
    'start'));
}

const figure = (value, unit) => round(Number(value.toPrecision(4)), unit);
const label = (x, y, text, anchor) => svg('text', { class: 'label', x, y, 'text-anchor': anchor }, text);
const pathOf = (points, x, y) => points.map(([s, z], k) => `${k ? 'L' : 'M'}${x(s)} ${y(z)}`).join('');

const wheelsOf = (passage, position) => passage.positions[position]?.wheels ?? [];

/** Undersides and wheels where they stand, in the scales of the drawing. */
function combination(passage, position, { left, low, along, up }) {
  const at = passage.positions[position];
  if (!at) {
    return null;
  }
  return svg('g', {
    class: 'survey-truck',
    transform: `matrix(${along} 0 0 ${up} ${EDGE - left * along} ${HEIGHT - EDGE + low * up})`,
  },
    passage.units.map(unit => at.poses[unit.unit] && svg('path', {
      class: 'underside', transform: `matrix(${unitMatrix(at.poses[unit.unit]).join(' ')})`,
      d: unit.underside.map(([x, h], k) => `${k ? 'L' : 'M'}${x} ${-h}`).join(''),
    })),
    // Wheels as the stroke that meets the ground: a circle would be an ellipse as tall as the drawing.
    at.wheels.map(([x, z, radius]) => svg('path', {
      class: 'survey-wheel', d: `M${x - radius / 3} ${-(z - radius)}h${radius * 2 / 3}`,
    })));
}

function words(lines, passage, units, highM) {
  return `${lines.map(({ name, points }) => `line ${name} with ${points.length} points`).join(', ')}; the ground `
    + `differs by ${figure(highM / gapUnitM(units), gapUnitName(units))}`
    + `${passage ? '; the combination stands on it' : ''}`;
}

/** Draws into a frame. */
export function drawSurvey(frame, what) {
  replace(frame, surveyDrawing({ ...what, width: frame.clientWidth }));
}
