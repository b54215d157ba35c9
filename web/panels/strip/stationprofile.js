/** The profile under the strip map: ground where it was surveyed, structures at their height, nothing anywhere else. */
import { el, svg } from '../../dom.js';
import { axisUnitM, axisUnitName, clearance } from '../../text/format.js';
import { OVERHEAD_KINDS } from '../../survey/heights.js';
import { SURVEYED_KINDS } from '../../survey/survey.js';
import { heightsShown, thinned } from '../../drawing/stations.js';
import { linear, ticks } from '../../drawing/scale.js';
import { text } from './stationrows.js';

/** A structure or wire is drawn this wide at least. */
const LEAST_PX = 5;

/** @returns {node, labels, legend}: the drawing, what is lettered over it, and what its marks mean */
export function profileParts({ places, spots, row, seen, width, units, measure }) {
  const ids = new Set(places.map(({ hazard }) => hazard.id));
  const [low, high] = heightsShown(spots.filter(({ id }) => ids.has(id)));
  const toY = linear([low, high], [row.bottom, row.top]);
  const unitM = axisUnitM(units);
  const steps = ticks(low / unitM, high / unitM, 4);
  const shown = places.map(place => ({
    ...place,
    ground: place.ground?.map(([x, y]) => [x, y + row.top]) ?? null,
    over: place.over && widened(place.over.map(([x, y]) => [x, y + row.top])),
  }));
  const heights = shown.filter(({ over }) => over !== null)
    .map(({ over, hazard }) => ({ over, x: middle(over), text: heightWords(hazard, spots, units) }))
    .filter(({ x, text: words }) => x - measure(words) / 2 > 36 && x + measure(words) / 2 < width);
  const lettered = thinned(heights, measure);
  const unknown = shown.filter(isUnknown);
  const marked = thinned(unknown.map(({ x }) => ({ x, text: '?' })), measure, 2);
  return {
    node: [
      svg('defs', {}, svg('clipPath', { id: 'stations-clip' },
        svg('rect', { x: 0, y: row.top, width, height: row.bottom - row.top }))),
      steps.map(value => [
        svg('path', { class: 'grid', d: `M36 ${toY(value * unitM)}H${width}` }),
        text(33, toY(value * unitM) + 4, value === 0 ? `0 ${axisUnitName(units)}` : String(value), '', 'end')]),
      svg('g', { 'clip-path': 'url(#stations-clip)' },
        shown.map(({ hazard, over }) => over && overhead(hazard, over, row)),
        shown.map(({ ground }) => ground && svg('path', { class: 'station-ground', d: path(ground) }))),
    ],
    labels: [
      heights.map(({ over, x, text: words }, index) => lettered[index]
        && text(x, Math.max(...over.map(([, y]) => y)) + 13, words)),
      unknown.map(({ x }, index) => marked[index] && text(x, row.unknown, '?', 'station-unknown')),
    ],
    legend: [
      shown.some(({ ground }) => ground) && entry('station-ground', 'M1 9L8 4L14 5L22 9', 'surveyed ground'),
      shown.some(({ over }) => over) && entry('soffit', 'M1 4H22', 'underside, as measured, posted or declared'),
      unknown.length > 0 && el('li', {}, el('strong', {}, '?'), ' height not known'),
      el('li', {}, 'No line: ground not surveyed. Heights above the road at each place, drawn '
        + `${exaggeration(seen, width, high - low, row)} times as tall as stations are long.`),
    ],
  };
}

/** What could be drawn at a height if anybody had measured it. */
function isUnknown({ hazard, ground, over }) {
  return OVERHEAD_KINDS.includes(hazard.kind) ? over === null
    : SURVEYED_KINDS.includes(hazard.kind) && ground === null;
}

function overhead({ kind }, over, row) {
  const ends = [over[0], over.at(-1)];
  return [
    kind !== 'overhead-wire' && svg('path', {
      class: 'structure', d: `${path(over)}L${ends[1][0]} ${row.top}L${ends[0][0]} ${row.top}Z`,
    }),
    svg('path', { class: 'soffit', d: path(over) })];
}

/** Least height over the road at the place. */
function heightWords({ id }, spots, units) {
  const { over } = spots.find(spot => spot.id === id).heights;
  return clearance(Math.min(...over.map(([, z]) => z)), units);
}

/** As wide as can be seen, around its own middle. */
function widened(points) {
  const wide = points.at(-1)[0] - points[0][0];
  return wide >= LEAST_PX ? points
    : points.map(([x, y]) => [middle(points) + (x - middle(points)) * (LEAST_PX / Math.max(wide, 1e-9)), y]);
}

const middle = points => (points[0][0] + points.at(-1)[0]) / 2;
const path = points => points
  .map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`).join('');

function exaggeration({ fromM, toM }, width, heightM, row) {
  const times = ((row.bottom - row.top) / heightM) / ((width - 58) / (toM - fromM));
  return Number(times.toPrecision(2));
}

function entry(name, d, words) {
  return el('li', {}, svg('svg', { class: 'legend-sample', viewBox: '0 0 24 12', width: 24, height: 12,
    'aria-hidden': 'true' }, svg('path', { class: name, d })), ` ${words}`);
}
