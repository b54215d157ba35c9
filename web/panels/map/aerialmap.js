/** The picture from above on the map, below all lines. */
import { matrixOf } from '../../drawing/aerial.js';

/** @param drawn [lon, lat] → [lat, lon] as it is drawn on this map */
export function createAerialLayer(map, { store, drawn }) {
  const pane = map.createPane('aerial');
  pane.classList.add('aerial-pane');
  let shown = null;

  function draw() {
    const { aerial, lineEdit } = store.get();
    if (aerial === null || lineEdit.mode !== 'shape') {
      pane.replaceChildren();
      shown = null;
      return;
    }
    if (shown?.source !== aerial.canvas || pane.childElementCount === 0) {
      const copy = document.createElement('canvas');
      Object.assign(copy, { width: aerial.canvas.width, height: aerial.canvas.height });
      copy.getContext('2d').drawImage(aerial.canvas, 0, 0);
      pane.replaceChildren(copy);
      shown = { source: aerial.canvas, copy };
    }
    const project = lonLat => {
      const { x, y } = map.latLngToLayerPoint(drawn(lonLat));
      return [x, y];
    };
    shown.copy.style.transform = `matrix(${matrixOf(aerial.pairs, project).join(', ')})`;
  }

  map.on('zoomend viewreset moveend', draw);
  const stop = store.watch(['aerial', 'lineEdit'], draw);
  return { unmount: stop };
}
