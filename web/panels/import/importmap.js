/** The line of an import and its candidates on a map of its own. */
import { L } from '../parts/leaflet.js';
import { el } from '../../dom.js';
import { drawnBeside, legPaths } from '../../line/legs.js';
import { kindWords } from '../../import/imported.js';
import { createBaseMap } from '../map/basemap.js';

/** Close enough to see a crossing and its neighbors. */
const NEAR_ZOOM = 16;

/** @param baseMap to draw beneath the line, or null */
export function createImportMap(line, preview, baseMap) {
  const node = el('div', {
    id: 'import-map', role: 'region',
    'aria-label': 'Map of the imported line. Arrow keys move it, plus and minus change its scale.',
  });
  let map = null;
  let resize = null;

  /** Once the node is on the page. */
  function draw() {
    map = L.map(node, {
      attributionControl: false, zoomAnimation: false, fadeAnimation: false, markerZoomAnimation: false,
      scrollWheelZoom: false, zoomSnap: 0.25, zoomDelta: 0.5, minZoom: 2, maxZoom: 19,
    });
    const still = { interactive: false };
    const legs = legPaths(line);
    const at = drawnBeside(line);
    const all = L.latLngBounds(legs.flat());
    map.fitBounds(all, { padding: [20, 20], animate: false });
    createBaseMap(map).draw(baseMap, line);
    legs.forEach(leg => L.polyline(leg, { ...still, className: 'route-casing' }).addTo(map));
    legs.forEach(leg => L.polyline(leg, { ...still, className: 'route-line' }).addTo(map));
    preview.candidates.forEach(one => {
      L.circleMarker(at(one.lonLat), { radius: 5, className: `import-mark import-${one.status}` })
        .bindTooltip(`${one.name}: ${kindWords(one.kind)}, ${one.status}`).addTo(map);
    });
    preview.turns.forEach(({ lonLat }) =>
      L.circleMarker(at(lonLat), { ...still, radius: 3, className: 'import-mark import-turn' }).addTo(map));
    resize = new ResizeObserver(() => map.invalidateSize({ animate: false }));
    resize.observe(node);
  }

  return {
    node,
    draw,
    show: lonLat => {
      map.setView(drawnBeside(line)(lonLat), Math.max(map.getZoom(), NEAR_ZOOM), { animate: false });
      node.scrollIntoView({ block: 'nearest' });
    },
    remove: () => {
      resize?.disconnect();
      map?.remove();
    },
  };
}
