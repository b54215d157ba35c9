/** The outlines of the corner on show, on the map while they are drawn: every point of them can be moved. */
import { L } from '../parts/leaflet.js';
import { el } from '../../dom.js';
import { shapeOf, shapesOf, verticesOf } from '../../corner/corneroutline.js';
import { rounded } from '../../line/course.js';
import { featureOf } from '../../survey/survey.js';

const TOWARD = { ArrowUp: 'north', ArrowDown: 'south', ArrowLeft: 'west', ArrowRight: 'east' };

/**
 * @param drawn [lon, lat] → [lat, lon] as it is drawn on this map
 * @param dragged (marker, call) → calls with where it was let go
 * @param focusNext the point on show has the focus when it is drawn next
 */
export function createShapeLayer(map, { store, actions, drawn, icon, dragged, lonLatOf, focusNext }) {
  const layer = L.layerGroup().addTo(map);
  const still = { interactive: false };

  function draw({ vertex, working }, focused) {
    const { inputs, hazard } = store.get();
    const own = inputs.route.json.features[featureOf(inputs.route, hazard)]?.properties ?? {};
    const at = vertex?.of === hazard ? vertex.at : 0;
    const to = vertex?.of === hazard ? vertex.to : null;
    const points = verticesOf(own);
    shapesOf(own).forEach(shape => outline(shape, points[at], to));
    if (!working) {
      points.forEach((point, k) => handle(points, k, k === at, (k === at && to) || point.lonLat));
    }
    if (focused) {
      map.getContainer().querySelector('.outline-handle[data-chosen="true"]')?.parentElement
        .focus({ preventScroll: true });
    }
  }

  /** A shape, with the point on show where it is on its way to. */
  function outline({ kind, list, index, lonLats }, chosen, to) {
    const isOwn = to !== null && chosen?.shape.list === list && chosen.shape.index === index;
    const last = lonLats.length - 1;
    const where = lonLats.map((lonLat, k) =>
      drawn(isOwn && (k === chosen.k || (chosen.k === 0 && k === last)) ? to : lonLat));
    (kind === 'pole' ? L.circleMarker(where[0], { ...still, radius: 4, className: 'outline-pole' })
      : L.polygon(where, { ...still, className: `outline-${kind}` })).addTo(layer);
  }

  function handle(points, k, chosen, lonLat) {
    const { shape } = points[k];
    const name = shape.name ?? shapeOf(shape.kind).word;
    const marker = L.marker(drawn(lonLat), {
      icon: icon(el('span', { class: 'line-handle outline-handle', 'data-point': k, 'data-chosen': String(chosen) })),
      draggable: true, autoPan: true, keyboard: chosen, zIndexOffset: chosen ? 3000 : 2000,
    }).addTo(layer);
    const node = marker.getElement();
    node.setAttribute(...(chosen
      ? ['aria-label', `Point ${k + 1} of ${points.length} of the outlines, ${name}. Arrow keys move it by about a `
        + 'foot, with Shift ten times as far; Page Up and Page Down go to the point before and after.']
      : ['aria-hidden', 'true']));
    dragged(marker, lonLatNow => actions.dragVertex(k, lonLatNow.map(rounded)));
    marker.on('drag', () => redrawOutline(k, lonLatOf(marker.getLatLng())));
    marker.on('click', () => { focusNext(); actions.selectVertex(k); });
    node.addEventListener('keydown', event => keyed(event, k));
  }

  /** While a point is held its outline goes along, dashed. */
  let way = null;
  function redrawOutline(k, lonLat) {
    const { inputs, hazard } = store.get();
    const { shape, k: own } = verticesOf(inputs.route.json.features[featureOf(inputs.route, hazard)].properties)[k];
    const ring = shape.kind === 'pole' ? [] : shape.lonLats.slice(0, -1).map((one, i) => (i === own ? lonLat : one));
    way?.remove();
    way = L.polygon(ring.map(drawn), { ...still, fill: false, className: 'line-drawn' }).addTo(layer);
  }

  function keyed(event, k) {
    const toward = TOWARD[event.key];
    const step = { PageUp: -1, PageDown: 1 }[event.key];
    if (!toward && !step) {
      return;
    }
    focusNext();
    event.preventDefault();
    event.stopPropagation();
    if (step) {
      actions.selectVertex(k + step);
    } else {
      actions.stepVertex(toward, event.shiftKey);
    }
  }

  return { draw, clear: () => layer.clearLayers() };
}
