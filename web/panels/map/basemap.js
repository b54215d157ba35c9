/** Draws a base map beneath the route, from the program's own file; one path for each layer, styled by the sheet. */
import { L } from '../parts/leaflet.js';
import { el } from '../../dom.js';
import { baseMapPlaces, baseMapShapes, freeNames } from '../../drawing/basemap.js';

/** @param map Leaflet's. Answers {draw(baseMap or null, line beside which it is drawn)} */
export function createBaseMap(map) {
  const pane = map.createPane('basemap');
  const renderer = L.svg({ pane: 'basemap', padding: 0.2 });
  const layer = L.layerGroup().addTo(map);
  let names = [];
  map.on('zoomend resize', writeNames);

  /** Those for which there is room at this scale. */
  function writeNames() {
    const free = freeNames(names.map(({ name, at }) => ({ name, ...map.latLngToLayerPoint(at) })));
    names.forEach(({ marker }, index) => {
      marker.getElement().hidden = !free[index];
    });
  }

  return {
    draw(baseMap, line) {
      layer.clearLayers();
      names = [];
      pane.dataset.shown = String(baseMap !== null);
      if (baseMap === null) {
        return;
      }
      const still = { interactive: false, renderer, pane: 'basemap', smoothFactor: 1 };
      baseMapShapes(baseMap, line).forEach(({ layer: name, area, parts }) => {
        const drawn = { ...still, className: `base-${name}${area ? ' base-area' : ''}` };
        if (name === 'railway') {
          L.polyline(parts, { ...drawn, className: 'base-railway-ties' }).addTo(layer);
        }
        (area ? L.polygon(parts, drawn) : L.polyline(parts, drawn)).addTo(layer);
      });
      names = baseMapPlaces(baseMap, line).map(({ name, at }) => ({ name, at, marker: L.marker(at, {
        icon: L.divIcon({ className: 'plan-place', html: el('span', { class: 'base-place' }, name), iconSize: [0, 0] }),
        interactive: false, keyboard: false, pane: 'basemap',
      }).addTo(layer) }));
      map.whenReady(writeNames);
    },
  };
}
