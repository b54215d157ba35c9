/** Group loads against something that can be set, limits drawn, the part where every limit is kept marked. */
import { el, replace, set, svg } from '../../dom.js';
import {
  axisUnitM, axisUnitName, dimension, loadUnitKg, loadUnitName, pressure, pressureUnitName, pressureUnitPa, weight,
} from '../../text/format.js';
import { DASHES, plotScales } from '../../drawing/loads.js';
import { spread, ticks } from '../../drawing/scale.js';

const HEIGHT = 250;
const AREA = { top: 26, bottom: HEIGHT - 34, left: 38 };
const NAMES_PX = 62;

export function createLoadPlot(id) {
  const node = svg('svg', { id, class: 'drawing load-plot', role: 'img', height: HEIGHT });
  const words = el('p', { class: 'plot-words' });

  function draw(plot, units) {
    const width = node.parentElement.clientWidth;
    if (plot === null || width === 0) {
      return;
    }
    const area = { ...AREA, right: width - NAMES_PX };
    const { toX, toY, most } = plotScales(plot, area);
    set(node, { viewBox: `0 0 ${width} ${HEIGHT}`, width, 'aria-label': say(plot, units) });
    words.textContent = say(plot, units);
    const ends = plot.lines.map(line => toY(line.points.at(-1)[1]));
    const order = ends.map((y, index) => ({ y, index })).sort((a, b) => a.y - b.y);
    const names = spread(order.map(({ y }) => y), 13, area.top, area.bottom + 6);
    const nameY = new Map(order.map(({ index }, place) => [index, names[place]]));
    replace(node,
      svg('defs', {}, svg('pattern', {
        id: `${id}-hatch`, width: 7, height: 7, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)',
      }, svg('path', { class: 'hatch', d: 'M0 0V7' }))),
      axes(plot, units, area, toX, toY, most),
      window(plot, area, toX, id),
      plot.lines.map((line, index) => [
        line.mostKg !== null && svg('path', { class: 'plot-limit', 'stroke-dasharray': DASHES[line.group],
          d: `M${area.left} ${toY(line.mostKg)}H${area.right}` }),
        line.mostKg !== null && svg('path', { class: 'plot-limit-tick', d: limitMark(line, plot, toX, toY) }),
        svg('path', { class: 'plot-line', 'stroke-dasharray': DASHES[line.group],
          d: `M${line.points.map(([at, kg]) => `${toX(at)} ${toY(kg)}`).join('L')}` }),
        svg('path', { class: 'leader', d: `M${area.right} ${ends[index]}L${area.right + 6} ${nameY.get(index) - 4}` }),
        svg('text', { class: 'label', x: area.right + 8, y: nameY.get(index) }, line.group),
      ]),
      svg('path', { class: 'cursor', d: `M${toX(plot.at)} ${area.top}V${area.bottom}` }),
      text(toX(plot.at), area.top - 14, 'now', anchor(toX(plot.at), area), 'label plot-now'));
  }

  return { node, words, draw };
}

/** Downward teeth on a limit: the load must stay below. */
function limitMark({ mostKg }, { from, to }, toX, toY) {
  const y = toY(mostKg);
  const marks = [];
  for (let i = 0; i <= 12; i++) {
    const x = toX(from + ((to - from) * i) / 12);
    marks.push(`M${x} ${y}l-4 -4`);
  }
  return marks.join('');
}

const text = (x, y, content, textAnchor, cls = 'label') =>
  svg('text', { class: cls, x, y, 'text-anchor': textAnchor }, content);

const anchor = (x, { left, right }) => (x < left + 20 ? 'start' : x > right - 20 ? 'end' : 'middle');

/** What lies outside the window is hatched; the window has posts and its name. */
function window(plot, area, toX, id) {
  const height = area.bottom - area.top;
  const shade = (from, to) => to > from && svg('rect', {
    class: 'plot-outside', fill: `url(#${id}-hatch)`, x: from, y: area.top, width: to - from, height,
  });
  if (plot.allowed === null) {
    return [shade(area.left, area.right),
      text((area.left + area.right) / 2, area.top - 3, 'nowhere within limits', 'middle')];
  }
  const [from, to] = plot.allowed.map(toX);
  return [
    shade(area.left, from), shade(to, area.right),
    svg('path', { class: 'plot-window', d: `M${from} ${area.bottom}V${area.top}H${to}V${area.bottom}` }),
    text((from + to) / 2, area.top - 3, 'within limits', anchor((from + to) / 2, area)),
    plot.best && svg('path', { class: 'plot-best', d: `M${toX(plot.best.at) - 5} ${area.bottom + 1}h10l-5 -8Z` }),
  ];
}

function axes(plot, units, area, toX, toY, most) {
  const unitKg = loadUnitKg(units);
  const along = plot.of === 'position'
    ? { unit: axisUnitM(units), name: `${axisUnitName(units)} behind the deck front` }
    : { unit: pressureUnitPa(units), name: `${pressureUnitName(units)} at the regulator` };
  return [
    ticks(0, most / unitKg, 5).map(value => [
      svg('path', { class: 'grid', d: `M${area.left} ${toY(value * unitKg)}H${area.right}` }),
      text(area.left - 5, toY(value * unitKg) + 4, String(value), 'end'),
    ]),
    svg('text', { class: 'label', x: 0, y: 10 }, loadUnitName(units)),
    svg('path', { class: 'axis', d: `M${area.left} ${area.top}V${area.bottom}H${area.right}` }),
    ticks(plot.from / along.unit, plot.to / along.unit, 5).map(value => [
      svg('path', { class: 'tick', d: `M${toX(value * along.unit)} ${area.bottom}v4` }),
      text(toX(value * along.unit), area.bottom + 16, String(value), 'middle'),
    ]),
    text((area.left + area.right) / 2, HEIGHT - 4, along.name, 'middle'),
  ];
}

/** The plot in words. */
export function say(plot, units) {
  const shown = (value, side) => (plot.of === 'position'
    ? `${dimension(value, units)} behind the deck front`
    : pressure(value, units, side));
  const what = plot.of === 'position' ? `Center of gravity of ${plot.piece}` : 'Regulator';
  const window = plot.allowed === null
    ? `Within limits ${plot.note ?? 'nowhere'}.`
    : `Within limits from ${shown(plot.allowed[0], 'up')} to ${shown(plot.allowed[1], 'down')}`
      + `${plot.best ? `, best at ${shown(plot.best.at)} (governed there by ${plot.best.rule})` : ''}.`;
  const limits = plot.lines.filter(line => line.mostKg !== null)
    .map(line => `${line.label} at most ${weight(line.mostKg, units)}`).join(', ');
  return `${what}: now ${shown(plot.at)}. ${window} Limits drawn: ${limits || 'none'}.`;
}
