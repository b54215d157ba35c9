/** The strip map over the longitudinal profile: what stands where along the route, and at which height where known. */
import { alongRow, el, makeTabStop, onWidth, replace, roving, set, svg } from '../../dom.js';
import { chainage, chainageUnitM, chainageUnitName, clearance, raiseWords, room } from '../../text/format.js';
import { alongRoute } from '../../report/listing.js';
import { atStop } from '../../report/plan.js';
import { severity } from '../../report/report.js';
import {
  across, labelPlaces, placesIn, planPieces, rows, stationTicks, windowAround, windowWith,
} from '../../drawing/stations.js';
import { stopSymbol, verdictSymbol } from '../../drawing/symbols.js';
import { openHazard, openStop } from '../parts/opening.js';
import { profileParts } from './stationprofile.js';
import { legParts, planParts, text } from './stationrows.js';
import { stopMark, verdictMark } from '../parts/symbol.js';
import { kindOf } from '../../report/kinds.js';

const ITEM = ':is(.profile-hazard, .profile-stop)';
/** What one press of a button or key does to the length of the window. */
const STEP = 2;

export function mountStations(root, { store, actions }) {
  const drawing = svg('svg', {
    class: 'drawing', role: 'group', 'aria-label': 'Strip map and profile along the route',
  });
  const frame = el('div', { class: 'profile-frame' }, drawing);
  const shown = el('span', { id: 'stations-shown', role: 'status' });
  const legend = el('ul', { class: 'station-legend' });
  const button = (id, label, name, press) =>
    el('button', { id, type: 'button', 'aria-label': name, title: name, on: { click: press } }, label);
  root.append(
    el('p', { class: 'station-tools' },
      button('stations-out', '−', 'A longer stretch', () => zoom(STEP)),
      button('stations-in', '+', 'A shorter stretch', () => zoom(1 / STEP)),
      button('stations-back', '‹', 'Toward the start', () => shift(-0.5)),
      button('stations-on', '›', 'Toward the end', () => shift(0.5)),
      button('stations-all', 'Whole route', 'Whole route', () => show(null)), shown),
    frame, legend);
  const ruler = document.createElement('canvas').getContext('2d');
  let view = null;

  // What is worse is drawn over what is less so; keys go along the road all the same.
  const byStation = (a, b) => a.dataset.at - b.dataset.at;
  roving(drawing, ITEM, alongRow(drawing, ITEM, byStation));
  drawing.addEventListener('click', choose);
  drawing.addEventListener('keydown', event => {
    const press = {
      Enter: () => choose(event), ' ': () => choose(event), '+': () => zoom(1 / STEP), '=': () => zoom(1 / STEP),
      '-': () => zoom(STEP), '0': () => show(null), PageUp: () => shift(-0.5), PageDown: () => shift(0.5),
    }[event.key];
    if (press && !event.altKey && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      press();
    }
  });

  const whole = () => ({ fromM: 0, toM: store.get().report.route.lengthM });
  const length = () => store.get().report.route.lengthM;

  function show(next) {
    view = next && next.toM - next.fromM < length() * (1 - 1e-9) ? next : null;
    draw(store.get());
  }

  /** Around the place on show where it is in sight, else around the middle. */
  function zoom(times) {
    const { fromM, toM } = view ?? whole();
    const at = placeAt(store.get());
    const around = at !== null && at >= fromM && at <= toM ? at : (fromM + toM) / 2;
    show(windowAround(length(), around, (toM - fromM) * times));
  }

  function shift(share) {
    const { fromM, toM } = view ?? whole();
    show(windowAround(length(), (fromM + toM) / 2 + share * (toM - fromM), toM - fromM));
  }

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
    const { report, configuration, units, line } = state;
    if (report === null || width === 0) {
      return;
    }
    // On paper the whole route is drawn: nothing there says that it goes on.
    const seen = document.documentElement.classList.contains('printing') ? whole() : view ?? whole();
    const plan = state.plan.data;
    const toX = across(seen, width);
    const spots = line?.hazards ?? [];
    const places = placesIn(report, configuration, spots, seen, width, alongRoute(state));
    const measure = measurer(drawing);
    const labels = labelPlaces(
      places.map(({ hazard, x, verdict }) => ({ x, verdict, text: hazard.id })), width, measure);
    const row = rows(plan !== null, labels);
    const pieces = plan && planPieces(plan, seen, toX);
    const stops = (line?.stops ?? []).filter(({ chainageM }) => chainageM >= seen.fromM && chainageM <= seen.toM);
    const focused = drawing.contains(document.activeElement) ? { ...document.activeElement.dataset } : null;
    set(drawing, { viewBox: `0 0 ${width} ${row.height}`, width, height: row.height });
    const profile = profileParts({ places, spots, row, seen, width, units, measure });
    const setUps = pieces && planParts(pieces, row, measure);
    replace(drawing,
      profile.node,
      setUps?.node,
      legParts(report, seen, toX, row, measure),
      svg('path', { class: 'road', d: `M${toX(seen.fromM)} ${row.line}H${toX(seen.toM)}` }),
      stationTicks(seen, width, chainageUnitM(units)).map(({ value, x }, index) => [
        svg('path', { class: 'tick', d: `M${x} ${row.axis - 3}v6` }),
        text(x, row.axis + 15, index === 0 ? `${value} ${chainageUnitName(units)}` : String(value))]),
      svg('path', { class: 'axis', d: `M${toX(seen.fromM)} ${row.axis}H${toX(seen.toM)}` }),
      places.map((place, index) => ({ place, label: labels[index] }))
        .sort((a, b) => severity(b.place.verdict) - severity(a.place.verdict))
        .map(({ place, label }) => hazardItem(place, label, pieces, row, units, state)),
      stops.map(stop => stopItem(stop, toX(stop.chainageM), row, units, plan)),
      svg('g', { class: 'station-labels' }, setUps?.labels, profile.labels));
    replace(legend, profile.legend, labels.some(label => label === null)
      && el('li', {}, 'Names without room are left out: they stand in the table.'));
    shown.textContent = view === null ? '' : `${chainage(seen.fromM, units)} to ${chainage(seen.toM, units)}`;
    markChosen(state);
    if (focused) {
      const [key, id] = focused.stop ? ['stop', focused.stop] : ['hazard', focused.hazard];
      (drawing.querySelector(`${ITEM}[data-${key}="${CSS.escape(id)}"]`) ?? drawing.querySelector(ITEM))?.focus();
    }
  }

  function measurer(node) {
    ruler.font = `700 11.5px ${getComputedStyle(node).getPropertyValue('--lettering')}`;
    return content => ruler.measureText(content).width;
  }

  function markChosen({ hazard, stop: place }) {
    const items = [...drawing.querySelectorAll(ITEM)].sort(byStation);
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

  /** Chosen elsewhere: the window goes where it is. */
  function follow(state) {
    const at = placeAt(state);
    if (view !== null && at !== null) {
      const next = windowWith(view, length(), at);
      if (next.fromM !== view.fromM) {
        show(next);
      }
    }
    markChosen(state);
  }

  const stops = [
    store.watch(['inputs'], () => { view = null; }),
    store.watch(['report', 'configuration', 'units', 'line', 'listing', 'plan'], draw),
    store.watch(['hazard', 'stop'], follow),
    onWidth(frame, () => draw(store.get())),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(root.firstElementChild); } };
}

const placeAt = ({ report, hazard }) => report?.hazards.find(({ id }) => id === hazard)?.chainageM ?? null;

function hazardItem({ hazard, cell, verdict, x }, label, pieces, row, units, { plan }) {
  const blocks = pieces?.blocked.has(hazard.id);
  const raise = plan.data?.steps.find(({ passage }) => passage?.hazard === hazard.id)?.passage.raise;
  const name = [`${hazard.id} ${hazard.name}`, kindOf(hazard.kind).word, `at ${chainage(hazard.chainageM, units)}`,
    verdictSymbol(verdict).word, cell?.ground && `${clearance(cell.ground.valueM, units)} under`,
    cell?.overhead && `${clearance(cell.overhead.valueM, units)} over`,
    raise && `the plan: ${raiseWords(raise, units)}`, blocks && 'blocks the plan'].filter(Boolean).join(', ');
  const labelY = label && row.labels + label.row * 14;
  return svg('g', {
    class: 'profile-hazard', role: 'button', tabindex: '-1', 'data-hazard': hazard.id, 'data-verdict': verdict,
    'data-at': hazard.chainageM, 'data-blocked': blocks ? 'true' : null, 'aria-label': name,
  },
  svg('title', {}, name),
  svg('rect', { class: 'hit', x: x - 12, y: row.line - 12, width: 24, height: 24 }),
  svg('path', {
    class: 'leader', d: `M${x} ${label ? labelY + 3 : row.line - 9}V${row.line}M${x} ${row.top}V${row.axis}`,
  }),
  blocks && svg('path', { class: 'strip-blocked', d: `M${x} ${row.bar - 3}V${row.barEnd + 3}` }),
  verdictMark(verdict, { transform: `translate(${x - 7} ${row.line - 7}) scale(0.875)` }),
  label && text(label.x, labelY, hazard.id, 'hazard-id', label.anchor));
}

/** A stopping place stands beside the line. */
function stopItem(stop, x, row, units, plan) {
  const { change, held } = plan === null ? {} : atStop(plan, stop);
  const name = [`${stop.id} ${stop.name}`, `${stopSymbol(stop.kind).word} at ${chainage(stop.chainageM, units)}`,
    `room ${room(stop.roomM, units, 'down')}`, change ? `change to ${change.to.label}` : held && 'cannot be used']
    .filter(Boolean).join(', ');
  return svg('g', {
    class: change ? 'profile-stop used' : 'profile-stop', role: 'button', tabindex: '-1',
    'data-stop': stop.id, 'data-kind': stop.kind, 'data-at': stop.chainageM, 'aria-label': name,
  },
  svg('title', {}, name),
  svg('rect', { class: 'hit', x: x - 12, y: row.stops - 12, width: 24, height: 24 }),
  stopMark(stop.kind, x, row.stops));
}
