/** The line of the route while it is drawn or changed, on the map: a handful of handles, and what is on its way. */
import { L } from '../parts/leaflet.js';
import { el, replace } from '../../dom.js';
import { between, rounded, shortWay } from '../../line/course.js';
import { createShapeLayer } from './shapelayer.js';

/** More points than this in sight, and only the one on show and its neighbors have handles. */
const MOST_HANDLES = 40;
/** How many neighbors those are, on each side. */
const NEIGHBORS = 2;

const TOWARD = { ArrowUp: 'north', ArrowDown: 'south', ArrowLeft: 'west', ArrowRight: 'east' };

/** @param drawn [lon, lat] → [lat, lon] as it is drawn on this map; quietly (move): moves the map by the program */
export function createLineLayer(map, { store, actions, drawn, quietly }) {
  const layer = L.layerGroup().addTo(map);
  /** Below the map: what became of the last change, for those who look at the map. */
  const note = el('div', { id: 'line-note' });
  const still = { interactive: false };
  let focus = false;
  /** A handle that is held stays, though the map goes with it at its edge. */
  let held = false;

  const shapes = createShapeLayer(map, {
    store, actions, drawn, icon, dragged, lonLatOf: latlng => lonLatOf(latlng), focusNext: () => { focus = true; },
  });

  const lonLatOf = ({ lat, lng }) => [shortWay(lng), lat];
  const isDrawing = mode => ['on', 'new', 'shape'].includes(mode);

  map.on('click', ({ latlng }) => {
    const { picking, lineEdit: { mode, working } } = store.get();
    if (picking || working) {
      return;
    }
    if (isDrawing(mode)) {
      actions.drawLinePoint(lonLatOf(latlng).map(rounded));
    } else if (mode === 'points') {
      actions.selectLinePoint(nearest(latlng));
    }
  });
  map.on('moveend', draw);

  /** The point that is nearest on the screen. */
  function nearest(latlng) {
    const at = map.latLngToContainerPoint(latlng);
    const away = ({ lonLat }) => map.latLngToContainerPoint(drawn(lonLat)).distanceTo(at);
    const { points } = actions.lineParts();
    return points.reduce((best, point, k) => {
      const distance = away(point);
      return distance < best.distance ? { distance, k } : best;
    }, { distance: Infinity, k: 0 }).k;
  }

  /** Numbers of the points that have handles. */
  function handled(points, at) {
    const view = map.getBounds();
    const seen = [];
    for (let k = 0; k < points.length && seen.length <= MOST_HANDLES; k++) {
      if (view.contains(drawn(points[k].lonLat))) {
        seen.push(k);
      }
    }
    const near = points.map((point, k) => k).slice(Math.max(0, at - NEIGHBORS), at + NEIGHBORS + 1);
    return seen.length <= MOST_HANDLES ? [...new Set([...seen, ...near])] : near;
  }

  function draw() {
    const { lineEdit, inputs } = store.get();
    if (held) {
      return;
    }
    map.getContainer().dataset.line = lineEdit.mode;
    const focused = focus || Boolean(document.activeElement?.matches('#plan-map .line-place'));
    layer.clearLayers();
    shapes.clear();
    if (lineEdit.mode === 'off' || inputs === null) {
      return;
    }
    if (isDrawing(lineEdit.mode)) {
      drawNew(lineEdit);
      if (lineEdit.mode === 'shape') {
        shapes.draw(lineEdit, focused);
        focus = false;
      }
      return;
    }
    const { points } = actions.lineParts();
    const { at } = lineEdit;
    handled(points, at).forEach(k => handle(points, k, k === at, lineEdit));
    [at - 1, at].filter(k => k >= 0 && k + 1 < points.length).forEach(k => middle(points, k));
    if (lineEdit.moved) {
      onItsWay(points, at, lineEdit.moved);
    }
    focus = false;
    if (focused) {
      map.getContainer().querySelector('.line-handle[data-chosen="true"]')?.parentElement
        .focus({ preventScroll: true });
    }
  }

  function drawNew({ drawn: made }) {
    L.polyline(made.map(drawn), { ...still, className: 'line-drawn' }).addTo(layer);
    made.forEach((lonLat, k) => L.marker(drawn(lonLat), {
      interactive: false, keyboard: false, zIndexOffset: 2000,
      icon: icon(el('span', { class: 'line-dot', 'data-last': String(k === made.length - 1) })),
    }).addTo(layer));
  }

  function onItsWay(points, at, lonLat) {
    const around = [points[at - 1]?.lonLat, lonLat, points[at + 1]?.lonLat].filter(Boolean);
    return L.polyline(around.map(drawn), { ...still, className: 'line-drawn' }).addTo(layer);
  }

  /** A point that can be dragged, and moved by the arrow keys while it has the focus. */
  function handle(points, k, chosen, { moved }) {
    const shape = el('span', { class: 'line-handle', 'data-point': k, 'data-chosen': String(chosen) });
    const marker = L.marker(drawn((chosen && moved) || points[k].lonLat), {
      icon: icon(shape), draggable: true, autoPan: true, keyboard: chosen, zIndexOffset: chosen ? 3000 : 2000,
    }).addTo(layer);
    const node = marker.getElement();
    // The one on show is among what has the focus; the others are reached from it, or by the form.
    node.setAttribute(...(chosen
      ? ['aria-label', `Point ${k + 1} of ${points.length} of the line. Arrow keys move it, Page Up and Page Down go `
        + 'to the point before and after, Delete takes it out.']
      : ['aria-hidden', 'true']));
    let way = null;
    marker.on('drag', () => {
      way?.remove();
      way = onItsWay(points, k, lonLatOf(marker.getLatLng()));
    });
    dragged(marker, lonLat => actions.dragLinePoint(k, lonLat));
    marker.on('click', () => { focus = true; actions.selectLinePoint(k); });
    node.addEventListener('keydown', event => keyed(event, k));
  }

  function keyed(event, k) {
    const toward = TOWARD[event.key];
    const step = { PageUp: -1, PageDown: 1 }[event.key];
    if (toward) {
      focus = true;
      actions.stepLinePoint(toward);
    } else if (step) {
      focus = true;
      actions.selectLinePoint(k + step);
    } else if (event.key === 'Delete') {
      focus = true;
      actions.removeLinePoint(k);
    } else {
      return;
    }
    event.preventDefault();
    event.stopPropagation();
  }

  /** Calls with where a marker was let go. */
  function dragged(marker, call) {
    marker.on('dragstart', () => { held = true; });
    marker.on('dragend', () => {
      held = false;
      call(lonLatOf(marker.getLatLng()));
      draw();
    });
  }

  /** Between two points: pressed or dragged away it becomes one. */
  function middle(points, k) {
    const shape = el('span', { class: 'line-between', 'data-point': k }, '+');
    const marker = L.marker(drawn(between(points[k].lonLat, points[k + 1].lonLat, 0.5)), {
      icon: icon(shape), draggable: true, keyboard: false, zIndexOffset: 1900,
    }).addTo(layer);
    marker.getElement().title = 'Put a point here';
    marker.getElement().setAttribute('aria-hidden', 'true');
    marker.on('click', () => actions.insertLinePoint(k));
    dragged(marker, lonLat => actions.insertLinePoint(k, lonLat.map(rounded)));
  }

  /** The point on show is in sight. */
  function follow({ lineEdit: { mode, at } }) {
    if (mode === 'points') {
      const { points } = actions.lineParts();
      quietly(() => map.panInside(drawn(points[at].lonLat), { padding: [50, 50], animate: false }));
    }
    tell(store.get().lineEdit);
    draw();
  }

  /** The form has it all, and speaks; here it is in sight of the map. */
  function tell({ mode, said, refused, working, drawn: made }) {
    const words = working ? 'Judging the route on this line…' : refused.length > 0 ? refused.join(' ')
      : isDrawing(mode) && said === '' ? `${made.length} ${made.length === 1 ? 'point' : 'points'} drawn.` : said;
    note.dataset.refused = String(refused.length > 0);
    replace(note, mode !== 'off' && [
      el('span', {}, words),
      isDrawing(mode) && el('button', { type: 'button', on: { click: () => actions.undrawLinePoint() } },
        'Take back the last point'),
      el('button', { type: 'button', on: { click: toForm } }, 'To the form'),
    ]);
  }

  function toForm() {
    const form = document.getElementById(store.get().lineEdit.mode === 'shape' ? 'outline-edit' : 'line-edit');
    form.scrollIntoView({ block: 'nearest' });
    form.querySelector('[aria-pressed="true"]').focus();
  }

  const stops = [
    store.watch(['lineEdit', 'line'], follow),
  ];
  return { note, unmount: () => { stops.forEach(stop => stop()); layer.remove(); note.remove(); } };
}

const icon = element => L.divIcon({ className: 'line-place', html: element, iconSize: [0, 0] });
