/** The plan: the route and its hazards on a map that needs no other host; its background is the route's own data. */
import { L } from '../parts/leaflet.js';
import { alongRow, calm, el, makeTabStop, replace, roving } from '../../dom.js';
import { chainage, chainageUnitM, chainageUnitName, room, round } from '../../text/format.js';
import { isFree, labelSides } from '../../drawing/labels.js';
import { drawnBeside, legPaths } from '../../line/legs.js';
import { posts } from '../../drawing/posts.js';
import { nearestChainage } from '../../line/places.js';
import { alongRoute } from '../../report/listing.js';
import { findCell, findHazard, severity } from '../../report/report.js';
import { stopSymbol, verdictSymbol } from '../../drawing/symbols.js';
import { openHazard, openStop } from '../parts/opening.js';
import { baseMapCredit } from '../../drawing/basemap.js';
import { createAerialLayer } from './aerialmap.js';
import { createLineLayer } from './linemap.js';
import { createBaseMap } from './basemap.js';
import { createNeatline } from './neatline.js';
import { stopIcon, verdictIcon } from '../parts/symbol.js';
import { kindOf } from '../../report/kinds.js';

const ITEM = '.plan-hazard';
const STOP = '.plan-stop';
/** Half a symbol and the room of a label, pixels. */
const SYMBOL = 11;
const LABEL_WIDTH = 28;
/** Of an identifier that fits such a label, characters. */
const LONGEST_LABEL = 6;
const LABEL_HEIGHT = 14;

const verdictAt = (hazard, configuration) => findCell(hazard, configuration)?.verdict ?? 'not surveyed';

export function mountMap(root, { store, actions }) {
  const node = el('div', {
    id: 'plan-map', role: 'region',
    'aria-label': 'Map of the route. Arrow keys move it, plus and minus change its scale.',
  });
  const credit = el('p', { class: 'plan-credit' });
  const frame = el('div', { class: 'plan-frame' }, node);
  root.append(frame, credit);
  // Lines and labels around the map are drawn for where it stands, so it goes from one view to the next in one step.
  const map = L.map(node, {
    attributionControl: false, zoomAnimation: false, fadeAnimation: false, markerZoomAnimation: false,
    // The wheel is the page's: the map is zoomed by its buttons, plus and minus, two fingers.
    scrollWheelZoom: false, zoomSnap: 0.25, zoomDelta: 0.5, minZoom: 3, maxZoom: 19, inertia: !calm(),
  });
  const neatline = createNeatline(map, () => store.get().units);
  frame.append(neatline.node);
  const base = createBaseMap(map);
  const route = L.layerGroup().addTo(map);
  const way = L.layerGroup().addTo(map);
  const stopping = L.layerGroup().addTo(map);
  const hazards = L.layerGroup().addTo(map);
  const aerial = createAerialLayer(map, { store, drawn });
  const lineLayer = createLineLayer(map, { store, actions, drawn, quietly });
  frame.after(lineLayer.note);
  const pane = map.getPane('markerPane');
  let bounds = null;
  let tiles = null;
  /** Whether somebody has moved the map since its route was loaded: it then stays where it was put. */
  let moved = false;
  let own = false;
  let legends = [];
  let onScreen = null;
  roving(pane, ITEM, alongRow(pane, ITEM));
  roving(pane, STOP, alongRow(pane, STOP));
  map.on('zoomend', placeLabels);
  map.on('click', ({ latlng: { lat, lng } }) => {
    const { picking, line } = store.get();
    if (picking && line) {
      store.set({ picking: false, picked: nearestChainage(line.line, [lng, lat]) });
    }
  });
  map.on('movestart zoomstart', () => {
    moved = moved || !own;
    node.dataset.moved = String(moved);
  });

  /** Moves of the program's own, which are none of the reader's. */
  function quietly(move) {
    own = true;
    try {
      move();
    } finally {
      own = false;
    }
  }

  /** [lon, lat] as it is drawn on this map. */
  function drawn(lonLat) {
    return drawnBeside(store.get().line?.line)(lonLat);
  }

  function drawRoute({ line, units }) {
    route.clearLayers();
    if (line === null) {
      return;
    }
    const legs = legPaths(line.line);
    const still = { interactive: false };
    legs.forEach(leg => L.polyline(leg, { ...still, className: 'route-casing' }).addTo(route));
    legs.forEach(leg => L.polyline(leg, { ...still, className: 'route-line' }).addTo(route));
    legends = [
      ...posts(line.line, line.lengthM, chainageUnitM(units), 8).map(({ value, at }) =>
        place(at, 'plan-post', round(value, chainageUnitName(units)))),
      place(legs[0][0], 'plan-end', 'Start'),
      place(legs.at(-1).at(-1), 'plan-end', 'End'),
    ];
    const before = bounds;
    bounds = L.latLngBounds(legs.flat());
    // While its points are moved, the map stays where the hand is.
    if (before === null || (!before.equals(bounds) && store.get().lineEdit.mode === 'off')) {
      moved = false;
      node.dataset.moved = 'false';
      fit();
    }
  }

  /** Words along the route, with a dot where they belong. */
  function place(at, name, words) {
    const node = el('span', { class: name }, el('span', {}, words));
    L.marker(at, { icon: icon(node), interactive: false, keyboard: false }).addTo(route);
    return { at, node };
  }

  /** Puts every label where it is free at this scale; words along the route give way to hazards. */
  function placeLabels() {
    const items = [...pane.querySelectorAll(ITEM)];
    if (items.length === 0 || store.get().report === null) {
      return;
    }
    const { configuration } = store.get();
    const points = alongRoute(store.get()).map(hazard => ({
      ...map.latLngToContainerPoint(drawn(hazard.lonLat)), width: LABEL_WIDTH,
      verdict: verdictAt(hazard, configuration),
    }));
    const sides = labelSides(points, SYMBOL, LABEL_HEIGHT);
    items.forEach((item, index) => { item.dataset.side = sides[index]; });
    legends.forEach(({ at, node: words }) => {
      const { x, y } = map.latLngToContainerPoint(at);
      const free = [1, -1].find(down => isFree({
        left: x - LABEL_WIDTH / 2, right: x + LABEL_WIDTH / 2,
        top: y + (down > 0 ? 4 : -18), bottom: y + (down > 0 ? 18 : -4),
      }, points, sides, SYMBOL, LABEL_HEIGHT));
      words.dataset.side = { 1: 'below', '-1': 'above' }[free] ?? 'none';
    });
  }

  function fit() {
    if (bounds) {
      quietly(() => map.fitBounds(bounds, { padding: [36, 30], animate: false }));
      placeLabels();
    }
  }

  function drawHazards(state) {
    hazards.clearLayers();
    (state.report ? alongRoute(state) : []).forEach(hazard => {
      const verdict = verdictAt(hazard, state.configuration);
      const button = el('button', {
        type: 'button', class: 'plan-hazard', tabindex: '-1',
        'data-hazard': hazard.id, 'data-verdict': verdict,
        'aria-label': `${hazard.id} ${hazard.name}, ${kindOf(hazard.kind).word} at `
          + `${chainage(hazard.chainageM, state.units)}, ${verdictSymbol(verdict).word}`,
        on: { click: event => openHazard(actions, hazard.id, event) },
      }, verdictIcon(verdict, 18),
      // What an import called by its object in a map would cover the map; it is named where it is chosen.
      hazard.id.length <= LONGEST_LABEL && el('span', { class: 'hazard-id' }, hazard.id));
      L.marker(drawn(hazard.lonLat), {
        icon: icon(button), keyboard: false, zIndexOffset: (3 - severity(verdict)) * 100,
      }).addTo(hazards);
    });
    placeLabels();
    markChosen(state);
  }

  function markChosen({ report, hazard: id }) {
    const items = [...pane.querySelectorAll(ITEM)];
    items.forEach(item => {
      item.classList.toggle('chosen', item.dataset.hazard === id);
      item.setAttribute('aria-pressed', String(item.dataset.hazard === id));
    });
    const stop = items.find(item => item.dataset.hazard === id) ?? items[0];
    if (stop) {
      makeTabStop(pane, ITEM, stop);
    }
    const hazard = findHazard(report, id);
    if (hazard && bounds) {
      quietly(() => map.panInside(drawn(hazard.lonLat), { padding: [40, 40], animate: !calm() }));
    }
  }

  /** Stopping places and set-up areas, under the hazards. */
  function drawStops({ line, units, stop: chosen }) {
    const focused = pane.contains(document.activeElement) ? document.activeElement.dataset.stop : null;
    stopping.clearLayers();
    (line?.stops ?? []).forEach(stop => {
      const button = el('button', {
        type: 'button', class: stop.id === chosen ? 'plan-stop chosen' : 'plan-stop', tabindex: '-1',
        'data-stop': stop.id, 'data-kind': stop.kind, 'aria-pressed': String(stop.id === chosen),
        title: `${stop.id} ${stop.name}`,
        'aria-label': `${stop.id} ${stop.name}, ${stopSymbol(stop.kind).word} at ${chainage(stop.chainageM, units)}, `
          + `room ${room(stop.roomM, units, 'down')}`,
        on: { click: event => openStop(actions, stop.id, event) },
      }, stopIcon(stop.kind));
      L.marker(drawn(stop.lonLat), { icon: icon(button), keyboard: false, zIndexOffset: -500 }).addTo(stopping);
    });
    const items = [...pane.querySelectorAll(STOP)];
    const tab = items.find(item => item.dataset.stop === chosen) ?? items[0];
    if (tab) {
      makeTabStop(pane, STOP, tab);
    }
    items.find(item => item.dataset.stop === focused)?.focus({ preventScroll: true });
  }

  /** What the combination passes over at the corner on show, and the line of its steer axle. */
  function drawWay({ passage }) {
    way.clearLayers();
    if (!passage.data?.leadLonLat) {
      return;
    }
    const flip = points => points.map(drawn);
    const still = { interactive: false };
    passage.data.swept.forEach(unit => L.polygon(unit.bodiesLonLat.map(flip),
      { ...still, smoothFactor: 0.2, className: `plan-swept plan-swept-${unit.unit}` }).addTo(way));
    L.polyline(flip(passage.data.leadLonLat), { ...still, className: 'plan-lead' }).addTo(way);
  }

  function showFocus({ focus }) {
    if (focus !== null && focus.lonLats.length > 0) {
      const all = L.latLngBounds(focus.lonLats.map(drawn));
      map.fitBounds(all, { padding: [20, 20], animate: false });
      store.set({ focus: null });
    }
  }

  function drawBackground({ settings, baseMap }) {
    tiles?.remove();
    tiles = null;
    const source = settings?.tiles;
    base.draw(source ? null : baseMap, store.get().line?.line);
    // Who made the map is thanked on paper too.
    credit.dataset.owed = String(Boolean(source ?? baseMap));
    replace(credit, source ? source.attribution : baseMap ? baseMapCredit(baseMap)
      : 'Drawn from the route file alone; no other map data.');
    if (source) {
      tiles = L.tileLayer(source.url, { maxZoom: 19 });
      tiles.on('tileerror', () => replace(credit, `${source.attribution} (some of its map pictures did not load)`));
      tiles.addTo(map);
    }
  }

  /** Paper shows the whole route; the screen gets back what it showed. */
  function beforePrint() {
    onScreen = bounds ? { center: map.getCenter(), zoom: map.getZoom() } : null;
    quietly(() => map.invalidateSize({ animate: false }));
    fit();
  }

  function afterPrint() {
    quietly(() => {
      map.invalidateSize({ animate: false });
      if (onScreen) {
        map.setView(onScreen.center, onScreen.zoom, { animate: false });
      }
    });
  }

  const resize = new ResizeObserver(() => {
    quietly(() => map.invalidateSize({ animate: false }));
    if (!moved && node.clientWidth > 0) {
      fit();
    }
  });
  resize.observe(node);
  window.addEventListener('beforeprint', beforePrint);
  window.addEventListener('afterprint', afterPrint);
  const stops = [
    store.watch(['line', 'units'], drawRoute),
    store.watch(['report', 'configuration', 'units', 'listing', 'plan'], drawHazards),
    store.watch(['line', 'units', 'stop'], drawStops),
    store.watch(['passage'], drawWay),
    store.watch(['focus'], showFocus),
    store.watch(['hazard'], markChosen),
    store.watch(['settings', 'baseMap'], drawBackground),
    store.watch(['units'], () => neatline.draw()),
  ];
  return {
    unmount: () => {
      stops.forEach(stop => stop());
      lineLayer.unmount();
      aerial.unmount();
      resize.disconnect();
      window.removeEventListener('beforeprint', beforePrint);
      window.removeEventListener('afterprint', afterPrint);
      map.remove();
      frame.remove();
      credit.remove();
    },
  };
}

/** An element that stands at a place of the map; its own styles say how. */
function icon(element) {
  return L.divIcon({ className: 'plan-place', html: element, iconSize: [0, 0] });
}
