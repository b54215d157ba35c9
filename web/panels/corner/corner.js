/**
 * The combination going round a corner, from above: pavement and obstacles, what each unit passes over, the lead
 * line, the slider that drives it round, and the configurations side by side.
 */
import { el, onWidth, replace, say, set, svg } from '../../dom.js';
import { against, angle, clearance, dimension, required, room, round } from '../../text/format.js';
import { axlesWords, findCell, findConfiguration, findHazard, isCorner, reversingOf } from '../../report/report.js';
import { linePath, marksIn, northOf, poseMatrix, ringsPath, statesAt, windowOf } from '../../drawing/corner.js';
import { BOOSTER_WORDS } from '../../drawing/symbols.js';
import { axisUnitM, axisUnitName } from '../../text/format.js';
import { scaleBar } from '../../drawing/scale.js';
import { laneWidths, leastRoom, north, radius, text } from './cornermarks.js';
import { problemBox } from '../parts/problem.js';
import { verdictTag } from '../parts/symbol.js';

/** How many positions Page Up and Page Down move by. */
const PAGE = 10;
/** The live region speaks when the truck has stood still this long, milliseconds. */
const SPEAK_AFTER = 500;
const TALLEST_PX = 560;

/** What bends ahead of a unit: a booster's pivot, or a kingpin, told by its unit where there are jeeps. */
function coupling(units, i) {
  const behind = units[i + 1].unit;
  if (behind === 'booster') {
    return 'pivot';
  }
  return units.some(u => u.unit.startsWith('jeep')) ? `kingpin, ${behind}` : 'kingpin';
}

export function mountCorner(root, { store, actions }) {
  const world = svg('g');
  const labels = svg('g', { class: 'labels' });
  const drawing = svg('svg', { id: 'corner-view', class: 'drawing', role: 'img' },
    svg('title', {}, 'The corner from above'),
    svg('defs', {},
      svg('pattern', {
        id: 'corner-hatch', width: 1, height: 1, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)',
      },
        svg('rect', { class: 'hatch-ground', width: 1, height: 1 }),
        svg('path', { class: 'hatch-line', d: 'M0 0V1' })),
      svg('pattern', {
        id: 'corner-opposing', width: 2.4, height: 2.4, patternUnits: 'userSpaceOnUse',
        patternTransform: 'rotate(-45)',
      },
        svg('path', { class: 'opposing-line', d: 'M0 0V2.4' }))),
    world, labels);
  const frame = el('div', { class: 'corner-frame' }, drawing);
  const slider = el('input', {
    id: 'corner-slider', type: 'range', min: 0, step: 1, 'aria-label': 'Position of the steer axle along its line',
    on: { input: () => moved(Number(slider.value)), keydown: keyed },
  });
  const readings = {
    station: el('output', { id: 'corner-position' }),
    steer: el('output', { id: 'corner-steer' }),
    bends: el('output', { id: 'corner-bends' }),
  };
  const message = el('div', { class: 'passage-message' });
  const marked = el('div', { id: 'corner-marks' });
  const facts = el('div', { id: 'corner-facts' });
  const live = el('p', { id: 'corner-live', class: 'unseen', role: 'status' });
  const legend = el('ul', { class: 'corner-legend' });
  const body = el('tbody');
  const comparison = el('div', {
    class: 'table-frame', tabindex: '0', role: 'region', 'aria-label': 'Configurations at this corner',
  }, el('table', { id: 'corner-comparison' },
    el('caption', {}, 'Configurations side by side at this corner'),
    el('thead', {}, el('tr', {}, ['Setting', 'Verdict', 'Least room', 'Own lanes', 'Offtracking', 'Swept width',
      'Tail swing', 'Frontal swing', 'Booster trails wide'].map(name => el('th', { scope: 'col' }, name)))),
    body));
  const travel = el('div', { class: 'passage-travel corner-travel' },
    el('div', {}, slider, el('p', { class: 'passage-buttons' },
      button('corner-back', '‹ Back', () => moved(store.get().position - 1)),
      button('corner-tightest', 'To the tightest', () => moved(store.get().passage.data.tightest)),
      button('corner-forward', 'Forward ›', () => moved(store.get().position + 1)),
      button('corner-on-map', 'Show on the map', () => showOnMap()))),
    el('dl', { class: 'readings' },
      el('dt', {}, 'Steer axle'), el('dd', {}, readings.station),
      el('dt', {}, 'Front wheels'), el('dd', {}, readings.steer),
      el('dt', {}, 'Couplings'), el('dd', {}, readings.bends)));
  const sheet = el('div', { class: 'corner-sheet' }, frame, travel, legend, marked, facts);
  const backing = el('div', { id: 'backing-up' });
  root.append(message, sheet, comparison, backing, live);
  let units = [];
  let speaking = 0;

  const data = () => store.get().passage.data;

  function moved(index) {
    if (data()?.swept) {
      actions.moveTo(index);
    }
  }

  function keyed(event) {
    const { position } = store.get();
    const to = {
      ArrowRight: position + 1, ArrowUp: position + 1, ArrowLeft: position - 1, ArrowDown: position - 1,
      PageUp: position + PAGE, PageDown: position - PAGE, Home: 0, End: (data()?.positions.length ?? 1) - 1,
    }[event.key];
    if (to !== undefined && !event.altKey && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      moved(to);
    }
  }

  function showOnMap() {
    if (data()?.leadLonLat) {
      store.set({ focus: { lonLats: data().swept.flatMap(unit => unit.bodiesLonLat.flat()) } });
      document.getElementById('plan').scrollIntoView({ block: 'start' });
    }
  }

  function draw(state) {
    const hazard = findHazard(state.report, state.hazard);
    root.hidden = !isCorner(hazard);
    if (root.hidden) {
      return;
    }
    const { status, data: view } = state.passage;
    const cell = findCell(hazard, state.configuration);
    root.dataset.status = status;
    root.setAttribute('aria-busy', String(status === 'loading'));
    sheet.hidden = status === 'none' || status === 'failed';
    sheet.classList.toggle('waiting', status === 'loading');
    comparison.hidden = !hazard.cells.some(c => c.corner);
    replace(message, messageFor(state, hazard, actions));
    replace(body, statesAt(state.report, hazard, state.configuration).map(s => row(s, state)));
    replace(backing, backingUp(state));
    if (status !== 'ready' || !view?.swept) {
      return;
    }
    const box = windowOf(view);
    const width = frame.clientWidth;
    if (width === 0) {
      return;
    }
    const scale = Math.min(width / box.width, TALLEST_PX / box.height);
    set(drawing, { viewBox: `${box.left} ${box.top} ${box.width} ${box.height}`,
      width: Math.round(box.width * scale), height: Math.round(box.height * scale) });
    units = view.units.map(unit => svg('g', { class: `unit corner-unit-${unit.unit}`, 'data-unit': unit.unit },
      unit.bodies.map(([rear, front, half]) =>
        svg('rect', { class: 'body', x: rear, y: -half, width: front - rear, height: 2 * half })),
      unit.tires.map(([ahead, half]) => [-1, 1].map(side =>
        svg('rect', {
          class: 'tire', x: ahead - 0.45, y: side > 0 ? -half : half - 0.35, width: 0.9, height: 0.35,
        })))));
    replace(world,
      svg('path', { class: 'corner-escorted', d: ringsPath(view.escorted), 'fill-rule': 'evenodd' }),
      svg('path', { class: 'corner-pavement', d: ringsPath(view.pavement), 'fill-rule': 'evenodd' }),
      svg('path', { class: 'corner-opposing', d: ringsPath(view.opposing), 'fill-rule': 'evenodd' }),
      view.swept.map(unit => svg('path', {
        class: `swept swept-${unit.unit}`, 'data-unit': unit.unit, d: ringsPath(unit.bodies), 'fill-rule': 'evenodd',
      })),
      view.swept.map(unit => svg('path', { class: `swept-tires tires-${unit.unit}`, d: ringsPath(unit.tires) })),
      svg('path', { class: 'corner-obstacle', d: ringsPath(view.obstacles), 'fill-rule': 'evenodd' }),
      svg('path', { class: 'lead-line', d: linePath(view.lead) }),
      view.encroachments.map(e =>
        svg('path', { class: 'encroachment', d: ringsPath(e.rings), 'fill-rule': 'evenodd' })),
      [...units].reverse());
    const px = 1 / scale;
    const bar = scaleBar(px, 120, axisUnitM(state.units));
    const marks = marksIn(view, box);
    replace(labels,
      marks.map(mark => [
        mark.place && svg('path', { class: 'mark-abreast', d: linePath([mark.at, mark.place]) }),
        svg('circle', { class: 'mark', 'data-kind': mark.kind, cx: mark.at[0], cy: -mark.at[1], r: 8 * px }),
        text(mark.at[0], -mark.at[1] + 4 * px, px, mark.letter, 'mark-number')]),
      view.encroachments.map((e, i) => [
        svg('circle', { class: 'encroachment-point', cx: e.at[0], cy: -e.at[1], r: 3 * px }),
        text(e.at[0], -e.at[1] - (8 + 14 * (i % 3)) * px, px,
          `${e.unit} ${e.kind === e.unit ? 'body' : e.kind} ${required(e.byM, state.units)} over`,
          'encroachment-label')]),
      svg('path', {
        class: 'scale-bar', d: `M${box.left + 1} ${box.top + box.height - 1.6}v0.6h${bar.pixels * px}v-0.6`,
      }),
      text(box.left + 1 + bar.pixels * px / 2, box.top + box.height - 1.8, px,
        round(bar.length, axisUnitName(state.units)), ''),
      laneWidths(view, box, px, state.units),
      leastRoom(view, box, px, state.units),
      radius(view, cell.corner, px, state.units),
      north(northOf(view.lead, view.leadLonLat), view.lead, box, px));
    set(drawing, { 'aria-label': spoken(view, cell, state.units) });
    replace(legend, legendItems(view));
    replace(marked, marks.length > 0 && [el('h3', {}, 'Marks, of the steer axle'),
      el('ul', { class: 'corner-marks' }, marks.map(mark => el('li', {},
        el('button', { type: 'button', class: 'corner-mark', on: { click: () => moved(mark.position) } },
          `${mark.letter}: ${mark.kind === 'landmark' ? 'abreast of where the ' : ''}${mark.words}`))))]);
    replace(facts, factsOf(cell.corner, state.units));
    Object.assign(slider, { max: view.positions.length - 1 });
    move(state);
  }

  function move(state) {
    const { status, data: view } = state.passage;
    if (root.hidden || status !== 'ready' || !view?.swept) {
      return;
    }
    const position = view.positions[state.position];
    units.forEach((group, i) => set(group, { transform: `matrix(${poseMatrix(position.poses[i]).join(' ')})` }));
    slider.value = state.position;
    Object.assign(slider.dataset, { index: state.position, stationM: position.stationM });
    say(readings.station, `${dimension(position.stationM, state.units)} along its line`);
    say(readings.steer, degrees(position.steerRad));
    say(readings.bends, position.articulationRad
      .map((bend, i) => `${coupling(view.units, i)} ${degrees(bend)}`).join(', '));
    const words = `${readings.station.textContent}; front wheels ${readings.steer.textContent}; `
      + readings.bends.textContent + (state.position === view.tightest ? '; the tightest position' : '');
    slider.setAttribute('aria-valuetext', words);
    clearTimeout(speaking);
    speaking = setTimeout(() => say(live, words), SPEAK_AFTER);
  }

  function row({ configuration, cell }, { units: system, configuration: chosen }) {
    const c = cell?.corner;
    const figure = value => el('td', { class: 'figure' }, typeof value === 'number' ? required(value, system) : '—');
    const label = `${axlesWords(configuration)}, ${BOOSTER_WORDS[configuration.booster] ?? configuration.booster}`;
    return el('tr', {
      'data-configuration': configuration.key, 'data-verdict': cell?.verdict, 'data-value-m': c?.valueM,
      class: configuration.key === chosen ? 'chosen' : null,
    },
    el('th', { scope: 'row' }, el('button', {
      type: 'button', class: 'corner-pick', 'aria-pressed': String(configuration.key === chosen),
      on: { click: () => actions.chooseConfiguration(configuration.key) },
    }, label)),
    el('td', {}, verdictTag(cell?.verdict ?? 'not surveyed')),
    el('td', { class: 'figure' }, c ? clearance(c.valueM, system) : '—'),
    el('td', {}, c ? (c.escorts ? `${c.ownLanes}; needs the opposing lane` : c.ownLanes) : '—'),
    [c?.offtrackingM, c?.sweptWidthM, c?.tailSwingM, c?.frontalSwingM, c?.trailsWideM].map(figure));
  }

  const stops = [
    store.watch(['passage', 'report', 'hazard', 'configuration', 'units'], draw),
    store.watch(['position'], move),
    onWidth(frame, () => draw(store.get())),
  ];
  return { unmount: () => { clearTimeout(speaking); stops.forEach(stop => stop()); root.replaceChildren(); } };
}

function factsOf(c, units) {
  const line = c.line;
  const side = value => `${dimension(Math.abs(value), units)} ${value < 0 ? 'right' : 'left'} of the center`;
  const place = value => `${dimension(Math.abs(value), units)} ${value < 0 ? 'before' : 'past'} the corner's point`;
  const { gap, need } = against(c.valueM, c.requiredM, units);
  if (c.backing) {
    return backedInto(c, need, units);
  }
  const rows = [
    ['Least room', `${gap}: `
      + `${c.unit}${c.part === c.unit ? '' : ` ${c.part}`}, ${c.side}, to ${c.against}`],
    ['Needs', `${need} = margin ${required(c.marginM, units)} `
      + `+ driver off the line ${required(c.driverM, units)} + uncertainty ${required(c.uncertaintyM, units)}`],
    ['On the line', `${clearance(c.onLineM, units)}; the least room counts a turn-in `
      + `${required(c.turnInM, units)} early or late`],
    ['Line in', `steer axle ${side(line.offsetInM)}`],
    ['Wheel first goes over', `to the ${line.firstWay}, steer axle ${place(line.startM)} on the approach`],
    line.swingAwayM > 0 && ['Swing away first', dimension(line.swingAwayM, units)],
    ['Turn in', `steer axle ${place(line.turnInM)} on the approach`],
    ['Turn', `radius ${dimension(line.radiusM, units)}, front wheels up to ${degrees(c.steerRad, false)}`],
    ['Wheels straight', `steer axle ${place(line.endM)} on the exit`],
    ['Line out', `steer axle ${side(line.offsetOutM)}`],
    ['Watch', `${line.mirror} mirror: ${line.watch}`],
    ...c.overhangs.map(o => [`Over ${o.ground}`, `${o.unit}: ${o.gapM === null
      ? 'height unknown, measure it'
      : (({ gap, need }) => `gap ${gap}, needs ${need}`)(against(o.gapM, o.requiredM, units))}`]),
    c.leansBeforeM + c.leansBehindM > 0 && ['Taken to be straight', `${dimension(c.leansBeforeM, units)} before `
      + `and ${dimension(c.leansBehindM, units)} behind what is given`],
    c.pivotSwingM !== null && ['Booster', `tires ${required(c.trailsWideM, units)} outside the trailer's; `
      + `pivot swings out ${required(c.pivotSwingM, units)}`],
  ].filter(Boolean);
  return [el('h3', {}, 'The line to drive'), el('dl', { class: 'facts' },
    rows.map(([name, value]) => [el('dt', {}, name), el('dd', {}, value)])), swingsOf(c, units)];
}

/** How far every unit swings and trails, outside and inside of the turn apart. */
function swingsOf(c, units) {
  const pair = (outside, inside) => el('td', { class: 'figure' }, outside === null
    ? '—' : `${required(outside, units)} / ${required(inside, units)}`);
  return el('div', { class: 'table-frame', tabindex: '0', role: 'region', 'aria-label': 'How far each unit swings' },
    el('table', { class: 'corner-swings' },
      el('caption', {}, c.beyondLimits ? 'How far each unit swings on this line, which cannot be steered'
        : 'How far each unit swings, outside / inside of the turn'),
      el('thead', {}, el('tr', {}, ['Unit', 'Offtracking', 'Tail swing', 'Frontal swing', 'Tires beside those ahead']
        .map(name => el('th', { scope: 'col' }, name)))),
      el('tbody', {}, c.swings.map(s => el('tr', {},
        el('th', { scope: 'row' }, s.unit), el('td', { class: 'figure' }, required(s.offtrackingM, units)),
        pair(s.tailOutsideM, s.tailInsideM), pair(s.frontOutsideM, s.frontInsideM),
        pair(s.trailsOutsideM, s.trailsInsideM))))));
}

/** A gate, in the terms of backing. */
function backedInto(c, need, units) {
  const b = c.backing;
  const past = value => `steer axle ${dimension(Math.abs(value), units)} ${value < 0 ? 'before' : 'past'} the middle `
    + 'of the gate';
  const rows = [
    ['Least room', `${clearance(c.onLineM, units)} on the line itself: ${c.unit}`
      + `${c.part === c.unit ? '' : ` ${c.part}`}, ${c.side}, to ${c.against}; needs ${need}`],
    b.pivot && ['Booster', `pivot ${b.pivot}`],
    ['Stop', `all straight, ${past(b.stopM)}, ${b.edgeSide} steer tire ${dimension(b.edgeM, units)} `
      + `from the ${b.edgeSide} edge`],
    ['Wheel first goes over', `to the ${b.firstWay}, ${past(b.wheelM)}`],
    ['Turn', `radius ${dimension(b.radiusM, units)}, front wheels up to ${degrees(c.steerRad, false)}`],
    ['Wheels straight', `steer axle ${dimension(Math.abs(b.straightM), units)} ${b.straightM < 0
      ? 'short of the road’s center line' : 'in from the road’s center line'}`],
    ['Watch', `${b.mirror} mirror: ${b.watch}`],
    ['Caution', 'judged as the pull-out, which rolls the same way; backing, every bend has to be held: a spotter, '
      + 'at a walk'],
  ].filter(Boolean);
  return [el('h3', {}, 'Backing in'), el('dl', { class: 'facts' },
    rows.map(([name, value]) => [el('dt', {}, name), el('dd', {}, value)]))];
}

/** How far the configuration goes straight back; it is the combination's, not this corner's. */
function backingUp({ report, configuration, units }) {
  const state = reversingOf(report, findConfiguration(report, configuration));
  if (state === null) {
    return [];
  }
  const { bendRad, mostM, cautions } = report.reversing;
  const words = way => (way.limitMetM === null
    ? `no limit within ${room(mostM, units, 'down')}`
    : `${room(way.limitMetM, units, 'down')} until the ${way.coupling} is at its limit of ${angle(way.limitRad)}`);
  const rows = [
    [state.locked === null ? 'Couplings free' : 'Pivot free', 'free', state.free],
    ['Pivot locked', 'locked', state.locked],
    ['Locked, booster air out', 'lockedLight', state.lockedLight],
  ].filter(([, , way]) => way !== null);
  return [
    el('h3', {}, 'Backing up'),
    el('p', {}, state.free === null
      ? `${state.label}: ${state.unknown}.`
      : `${state.label}: how far it can be pushed straight back with the steering held straight, from `
        + `${angle(bendRad)} at every coupling. For information; not a verdict.`),
    el('dl', { class: 'facts' }, rows.map(([name, key, way]) => [el('dt', {}, name),
      el('dd', { 'data-backing': key, 'data-value-m': way.limitMetM, 'data-coupling': way.coupling }, words(way))])),
    el('div', { class: 'cautions' }, el('h4', {}, 'Caution'),
      el('ul', {}, cautions.map(caution => el('li', {}, caution)))),
  ];
}

function legendItems(view) {
  const item = (name, words, unit = null) => el('li', {},
    svg('svg', { class: 'legend-sample', width: 44, height: 14, 'aria-hidden': 'true' },
      svg('rect', { class: name, 'data-unit': unit, x: 1, y: 1, width: 42, height: 12 })), words);
  const line = (name, words) => el('li', {},
    svg('svg', { class: 'legend-sample', width: 44, height: 14, 'aria-hidden': 'true' },
      svg('path', { class: name, d: 'M1 7H43M1 3v8M43 3v8' })), words);
  return [
    item('corner-pavement', 'pavement that tires may use'),
    view.escorted.length > 0 && item('corner-escorted', 'also with escorts'),
    view.opposing.length > 0 && item('corner-opposing', 'opposing lanes'),
    view.obstacles.length > 0 && item('corner-obstacle', 'obstacles'),
    ...view.swept.map(({ unit }) => item(`swept swept-${unit}`, `${unit} passes over`, unit)),
    item('lead-line', 'line of the steer axle'),
    view.encroachments.length > 0 && item('encroachment', 'encroachment'),
    view.least.roomM >= 0 && line('least-line', `least room on the line: ${view.least.unit} to ${view.least.against}`),
    view.widths.length > 0 && line('lane-line', 'width of the lanes, own with their shoulder'),
  ];
}

function spoken(view, cell, units) {
  const c = cell.corner;
  const over = view.encroachments.map(e => `${e.unit} ${e.kind} goes ${required(e.byM, units)} over ${e.against}`);
  const room = `Least room ${clearance(c.valueM, units)} at the ${c.unit}`;
  return `The corner from above. ${over.length > 0 ? over.join('; ') : room}.`
    + (view.escorts ? ' The line uses the opposing lane.' : '');
}

function degrees(rad, hand = true) {
  const value = Math.round(Math.abs(rad) * 1800 / Math.PI) / 10;
  return `${value}°${hand && value > 0 ? (rad > 0 ? ' left' : ' right') : ''}`;
}

function messageFor({ passage, configuration }, hazard, actions) {
  if (passage.status === 'failed') {
    return problemBox(passage.problem, button('corner-retry', 'Try again', () => actions.drawPassage()));
  }
  if (passage.status === 'none') {
    const cell = findCell(hazard, configuration);
    return el('p', { class: 'nothing' }, 'There is nothing to draw. ', cell?.reasons[0] ?? '');
  }
  return null;
}

function button(id, label, click) {
  return el('button', { id, type: 'button', on: { click } }, label);
}
