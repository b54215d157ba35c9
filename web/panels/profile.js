/** The section along the route: every hazard at its chainage, its clearances standing on the road line. */
import { alongRow, el, makeTabStop, onWidth, replace, roving, svg } from '../dom.js';
import {
  chainage, chainageUnitM, chainageUnitName, clearance, gapUnitM, gapUnitName, required, room,
} from '../format.js';
import { alongRoute } from '../listing.js';
import { chainageTicks, hazardMarks, legSpans, MOST_M, rows } from '../drawing/profile.js';
import { linear, ticks } from '../drawing/scale.js';
import { stopSymbol, verdictSymbol } from '../drawing/symbols.js';
import { openHazard } from './detail.js';
import { openStop } from './stops.js';
import { stopMark, verdictMark } from './symbol.js';
import { kindOf } from '../kinds.js';

const INSET = 34;
/** Longer identifiers, such as those of map objects, stand where they are chosen. */
const LONGEST_LABEL = 6;
const ITEM = ':is(.profile-hazard, .profile-stop)';

export function mountProfile(root, { store, actions }) {
  const drawing = svg('svg', { class: 'drawing', role: 'group', 'aria-label': 'Section along the route' });
  const frame = el('div', { class: 'profile-frame' }, drawing);
  root.append(frame);
  roving(drawing, ITEM, alongRow(drawing, ITEM));
  drawing.addEventListener('click', choose);
  drawing.addEventListener('keydown', event => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      choose(event);
    }
  });

  function choose(event) {
    const item = event.target.closest(ITEM);
    if (item?.dataset.stop) {
      openStop(actions, item.dataset.stop, event);
    } else if (item) {
      openHazard(actions, item.dataset.hazard, event);
    }
  }

  function draw(state) {
    const width = frame.clientWidth;
    if (state.report === null || width === 0) {
      return;
    }
    const { report, configuration, units } = state;
    const row = rows(report);
    const marks = hazardMarks(report, configuration, width, INSET, alongRoute(state));
    const focused = drawing.contains(document.activeElement) ? document.activeElement.dataset : null;
    for (const [name, value] of [['viewBox', `0 0 ${width} ${row.height}`], ['width', width], ['height', row.height]]) {
      drawing.setAttribute(name, value);
    }
    replace(drawing,
      axes(report, row, width, units),
      legs(report, row, width),
      marks.map(mark => hazardGroup(mark, row, units)),
      (state.line?.stops ?? []).map(stop => stopItem(stop, report, row, width, units)),
      // Beside the buttons, not in them: their names already tell every value.
      svg('g', { class: 'hazard-values', 'aria-hidden': 'true' }, marks.filter(({ roomy }) => roomy).map(mark =>
        text(mark.labelX, row.labels + 9, shortest(mark.stems, mark.cell, units), 'middle', 'hazard-value'))));
    markChosen(store.get());
    if (focused) {
      const [key, id] = focused.stop ? ['stop', focused.stop] : ['hazard', focused.hazard];
      drawing.querySelector(`${ITEM}[data-${key}="${CSS.escape(id)}"]`)?.focus();
    }
  }

  function markChosen({ hazard, stop: place }) {
    const items = [...drawing.querySelectorAll(ITEM)];
    items.forEach(item => {
      const chosen = item.dataset.stop ? item.dataset.stop === place : item.dataset.hazard === hazard;
      item.classList.toggle('chosen', chosen);
      item.setAttribute('aria-pressed', String(chosen));
    });
    const stop = items.find(item => item.dataset.hazard === hazard && hazard !== null) ?? items[0];
    if (stop) {
      makeTabStop(drawing, ITEM, stop);
    }
  }

  const stops = [
    store.watch(['report', 'configuration', 'units', 'line', 'listing', 'plan'], draw),
    store.watch(['hazard', 'stop'], markChosen),
    onWidth(frame, () => draw(store.get())),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); frame.remove(); } };
}

function axes(report, row, width, units) {
  const gapM = gapUnitM(units);
  const scales = [
    { base: row.road, direction: -1, marginM: report.margins.groundM, word: 'road', wordY: row.deepest - 5 },
    row.structure !== null && {
      base: row.structure, direction: 1, marginM: report.margins.overheadM, word: 'structures',
      wordY: row.structure - 8,
    },
  ].filter(Boolean);
  return [
    svg('rect', {
      class: 'earth', x: INSET - 8, y: row.road, width: width - INSET + 8, height: row.deepest - row.road,
    }),
    svg('path', { class: 'road', d: `M${INSET - 8} ${row.road}H${width}` }),
    row.structure !== null && svg('path', { class: 'soffit', d: `M${INSET - 8} ${row.structure}H${width}` }),
    scales.map(({ base, direction, marginM, word, wordY }) => {
      const toY = linear([0, MOST_M], [base, base + direction * MOST_M * 200]);
      return [
        ticks(0, MOST_M / gapM, 3).map(value => [
          svg('path', { class: 'grid', d: `M${INSET - 8} ${toY(value * gapM)}H${width}` }),
          text(INSET - 11, toY(value * gapM) + 4, value === 0 ? `0 ${gapUnitName(units)}` : String(value), 'end')]),
        marginM <= MOST_M && svg('path', { class: 'needs', d: `M${INSET - 8} ${toY(marginM)}H${width}` }),
        text(width - 2, wordY, `${word}; dashed: margin ${required(marginM, units)}`, 'end', 'margin-label'),
      ];
    }),
    svg('path', { class: 'axis', d: `M${INSET} ${row.axis}H${width - INSET}` }),
    chainageTicks(report.route.lengthM, width, INSET, chainageUnitM(units)).map(({ value, x }) => [
      svg('path', { class: 'tick', d: `M${x} ${row.axis - 3}v6` }),
      text(x, row.axis + 15, value === 0 ? `0 ${chainageUnitName(units)}` : String(value), 'middle')]),
  ];
}

function legs(report, row, width) {
  return legSpans(report, width, INSET).map(({ name, from, to }) => [
    svg('path', { class: 'leg', d: `M${from} ${row.legs}v18M${to} ${row.legs}v18M${from} ${row.legs + 9}H${to}` }),
    // Condensed lettering runs to about 6 px a character; a name that does not fit stays out of the drawing.
    name.length * 6 + 12 < to - from && text((from + to) / 2, row.legs + 13, name, 'middle', 'leg-name')]);
}

function hazardGroup({ hazard, cell, verdict, x, labelX, labelRow, labeled, roomy, stems }, row, units) {
  const labelY = row.labels + labelRow * 13 - (roomy ? 4 : 0);
  const values = stems.map(({ side }) =>
    `${clearance(cell[side].valueM, units)} ${side === 'ground' ? 'under' : 'over'}`);
  return svg('g', {
    class: labeled ? 'profile-hazard' : 'profile-hazard unlabeled', role: 'button', tabindex: '-1',
    'data-hazard': hazard.id, 'data-verdict': verdict,
    'aria-label': [`${hazard.id} ${hazard.name}`, kindOf(hazard.kind).word,
      `at ${chainage(hazard.chainageM, units)}`, verdictSymbol(verdict).word, ...values].join(', '),
  },
  svg('rect', { class: 'hit', x: x - 12, y: 4, width: 24, height: row.deepest - 4 }),
  svg('rect', { class: 'hit', x: labelX - 14, y: labelY - 13, width: 28, height: roomy ? 30 : 17 }),
  svg('path', { class: 'leader', d: `M${x} ${row.deepest}L${labelX} ${labelY - 12}` }),
  stems.length === 0 && [
    svg('path', { class: 'stem unsurveyed', d: `M${x} ${row.road}v-44` }),
    verdictMark(verdict, { transform: `translate(${x - 8} ${row.road - 60})` })],
  stems.map(stem => [
    svg('path', { class: `stem verdict-${stem.verdict}`, d: `M${x} ${stem.base}V${stem.y}` }),
    stem.needsY !== null && svg('path', { class: 'stem-needs', d: `M${x - 6} ${stem.needsY}h12` }),
    stem.cut && svg('path', { class: 'cut', d: cutMark(x, (stem.base + stem.y) / 2) }),
    verdictMark(stem.verdict, { transform: `translate(${x - 7} ${stem.y - 7}) scale(0.875)` })]),
  text(labelX, labelY, hazard.id, 'middle', hazard.id.length > LONGEST_LABEL ? 'hazard-id long' : 'hazard-id'));
}

/** A stopping place stands on the axis of chainage. */
function stopItem(stop, report, row, width, units) {
  const x = linear([0, report.route.lengthM], [INSET, width - INSET])(stop.chainageM);
  return svg('g', {
    class: 'profile-stop', role: 'button', tabindex: '-1', 'data-stop': stop.id, 'data-kind': stop.kind,
    'aria-label': `${stop.id} ${stop.name}, ${stopSymbol(stop.kind).word} at ${chainage(stop.chainageM, units)}, `
      + `room ${room(stop.roomM, units, 'down')}`,
  },
  svg('rect', { class: 'hit', x: x - 12, y: row.axis - 13, width: 24, height: 24 }),
  stopMark(stop.kind, x, row.axis));
}

/** Two slanted strokes across a stem that is longer than drawn. */
function cutMark(x, y) {
  return `M${x - 5} ${y + 1}l10 -5M${x - 5} ${y + 6}l10 -5`;
}

function shortest(stems, cell, units) {
  const values = stems.map(({ side }) => cell[side].valueM);
  return values.length > 0 ? clearance(Math.min(...values), units) : '?';
}

function text(x, y, content, anchor, name = '') {
  return svg('text', { class: `label ${name}`, x, y, 'text-anchor': anchor }, content);
}
