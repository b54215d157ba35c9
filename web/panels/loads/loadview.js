/** The combination to scale in its level stance, with what every group carries against its limit. */
import { replace, set, svg } from '../../dom.js';
import { axisUnitM, axisUnitName, round, weight } from '../../text/format.js';
import { closed, extent, fullness, groupPlaces, toScale } from '../../drawing/loads.js';
import { scaleBar } from '../../drawing/scale.js';
import { createPieceHandles } from './loadpiece.js';
import { verdictMark } from '../parts/symbol.js';

/** Room under the ground for bars and figures. */
const BAR_PX = 46;
const BELOW_PX = 152;
const LABEL_PX = 76;

/** @param hands what moves a piece, as for its handle */
export function createLoadView(hands) {
  const base = svg('g', {});
  const node = svg('svg', { id: 'load-view', class: 'drawing', role: 'group' }, base);
  const handles = createPieceHandles(node, hands);
  node.append(handles.layer);

  /**
   * @param data the loads, rig the one they are of
   * @param pieces where they are on show, which may be elsewhere already
   * @param chosen index of the one that is asked about
   */
  function draw({ data, rig }, pieces, chosen, units) {
    const width = node.parentElement.clientWidth;
    if (width === 0) {
      return;
    }
    const { scale, groundY, toX, toY } = toScale(extent(data), width);
    const height = groundY + BELOW_PX;
    set(node, { viewBox: `0 0 ${width} ${height}`, width, height, 'aria-label': describe(data, units) });
    const place = ([x, h]) => `${toX(x).toFixed(1)} ${toY(h).toFixed(1)}`;
    const path = points => `M${points.map(place).join('L')}Z`;
    const { sheet } = data;
    const moved = pieces.map(piece => ({
      ...piece, byM: (piece.shift - (rig?.shifts?.[`${piece.stance}/${piece.index}`] ?? 0)) / 1e12,
      wasM: (rig?.shifts?.[`${piece.stance}/${piece.index}`] ?? 0) / 1e12,
    }));
    const { load: loads = [] } = data.units.find(({ load }) => load.length > 0) ?? {};
    const isPiece = k => moved.find(piece => piece.load === k);
    replace(base,
      moved.filter(({ shift, load }) => shift !== 0 && loads[load]).map(({ load, wasM }) =>
        svg('path', { class: 'load-before', d: path(shifted(loads[load], -wasM)) })),
      data.units.flatMap(unit => [
        ...unit.load.map((points, k) => svg('path', {
          class: 'load', d: path(onDeck(unit, shifted(points, isPiece(k)?.byM ?? 0))),
        })),
        svg('path', { class: 'body', d: path(closed(unit)) }),
      ]),
      data.wheels.map(w => svg('g', { class: w.lifted ? 'wheel-lifted' : null },
        svg('circle', { class: 'tire', cx: toX(w.xM), cy: toY(w.hM), r: w.radiusM * scale }),
        svg('circle', { class: 'hub', cx: toX(w.xM), cy: toY(w.hM), r: w.radiusM * scale * 0.4 }))),
      svg('path', { class: 'road', d: `M0 ${groundY}H${width}` }),
      groupPlaces(sheet, toX, width, LABEL_PX).map(place => groupFigures(place, sheet, toX, groundY, units)),
      scaleLabel(width, height, scale, units));
    const trailer = data.units.find(({ load }) => load.length > 0);
    handles.draw(moved.filter(({ load }) => loads[load]).map(piece => {
      const points = onDeck(trailer, shifted(loads[piece.load], piece.byM));
      const [xs, ys] = [points.map(([x]) => toX(x)), points.map(([, h]) => toY(h))];
      return {
        piece, left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys),
      };
    }), chosen, { scale, units });
  }

  return { node, draw };
}

/** Points of the load, moved to the rear. */
const shifted = (points, byM) => points.map(([x, h]) => [x - byM, h]);

const onDeck = (unit, points) =>
  [[points[0][0], deckUnder(unit, points)], ...points, [points.at(-1)[0], deckUnder(unit, points)]];

/** The lowest that the load's outline is drawn down to: what is beneath it, as the trailer's topside shows it. */
function deckUnder({ topside }, points) {
  const [rear, front] = [points[0][0], points.at(-1)[0]];
  const beneath = topside.slice(1).flatMap(([x, h], k) => {
    const [before, low] = topside[k];
    return [rear, front].filter(at => before < at && at < x)
      .map(at => low + ((h - low) * (at - before)) / (x - before));
  });
  const within = topside.filter(([x]) => rear <= x && x <= front).map(([, h]) => h);
  return Math.min(...beneath, ...within, points[0][1], points.at(-1)[1]);
}

/** Bars under a group's axles, full to its rule, and its figures, joined by a line. */
function groupFigures({ group, from, to, at }, sheet, toX, groundY, units) {
  const full = fullness(group);
  const top = groundY + 6;
  const bars = sheet.axles.filter(axle => axle.group === group.group).map(axle => {
    const x = toX(axle.xM);
    const filled = Math.min(1, Math.max(0, full ?? 0)) * BAR_PX;
    return svg('g', { class: `load-bar verdict-${group.verdict.replaceAll(' ', '-')}` },
      svg('rect', { class: 'bar-limit', x: x - 4, y: top, width: 8, height: BAR_PX }),
      svg('rect', { class: 'bar-load', x: x - 4, y: top + BAR_PX - filled, width: 8, height: filled }),
      full > 1 && svg('path', { class: 'bar-over', d: `M${x - 7} ${top - 1}L${x} ${top + 8}L${x + 7} ${top - 1}Z` }));
  });
  const bracket = top + BAR_PX + 5;
  const text = bracket + 26;
  const line = (dy, content, cls) => svg('text', { class: cls, x: at, y: text + dy, 'text-anchor': 'middle' }, content);
  return svg('g', { 'data-group': group.group },
    bars,
    svg('path', {
      class: 'bracket',
      d: `M${from - 5} ${bracket - 3}V${bracket}H${to + 5}V${bracket - 3}`
        + `M${(from + to) / 2} ${bracket}L${at} ${bracket + 12}`,
    }),
    line(0, group.group, 'load-name label'),
    line(14, weight(group.loadKg, units), 'load-figure label'),
    group.axles > 1 && line(28, `${group.axles} × ${weight(group.perAxleKg, units)}`, 'label'),
    line(42, full === null ? 'no limit' : `${Math.ceil(full * 100 - 1e-6)} % of limit`, 'label'),
    svg('g', { transform: `translate(${at - 6} ${text + 47}) scale(0.75)` }, verdictMark(group.verdict)));
}

function scaleLabel(width, height, scale, units) {
  const bar = scaleBar(1 / scale, Math.min(110, width / 4), axisUnitM(units));
  return svg('g', { class: 'scale' },
    svg('path', { class: 'scale-bar', d: `M6 ${height - 6}V${height - 10}H${6 + bar.pixels}V${height - 6}` }),
    svg('text', { class: 'label', x: 12 + bar.pixels, y: height - 5 }, round(bar.length, axisUnitName(units))));
}

function describe({ label, sheet }, units) {
  const by = f => (f ? `, ${weight(f.loadKg, units)} of ${weight(f.limitKg, units)} by ${f.rule}` : '');
  return `Side view, traveling to the right: ${label}. `
    + sheet.groups.map(g => `${g.label} ${weight(g.loadKg, units)}, ${g.verdict}${by(g.finding)}`).join('; ');
}
