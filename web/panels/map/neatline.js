/** The frame around the plan: graticule, coordinates on the neatline, north arrow, scale bar. */
import { replace, svg } from '../../dom.js';
import { chainageUnitM, chainageUnitName, coordinate, round } from '../../text/format.js';
import { graticule, scaleBar } from '../../drawing/scale.js';

/** @param unitsOf tells the unit system in force */
export function createNeatline(map, unitsOf) {
  const node = svg('svg', { class: 'neatline', 'aria-hidden': 'true' });
  // A Leaflet map has no place before its first view is set.
  let placed = false;
  map.on('move zoomend resize viewreset', draw);
  map.whenReady(() => { placed = true; draw(); });

  function draw() {
    if (!placed) {
      return;
    }
    const { x: width, y: height } = map.getSize();
    if (width === 0 || height === 0) {
      return;
    }
    node.setAttribute('viewBox', `0 0 ${width} ${height}`);
    replace(node, meridians(width, height), parallels(width, height), north(width), bar(width, height));
  }

  function meridians(width, height) {
    const bounds = map.getBounds();
    return graticule(bounds.getWest(), bounds.getEast(), Math.max(2, width / 150)).map(lon => {
      const { x } = map.latLngToContainerPoint([bounds.getNorth(), lon]);
      return [
        svg('path', { class: 'graticule', d: `M${x} 0V${height}` }),
        x > 10 && x < width - 90 && text(x + 3, 11, coordinate(lon, 'lon'), 'start')];
    });
  }

  function parallels(width, height) {
    const bounds = map.getBounds();
    return graticule(bounds.getSouth(), bounds.getNorth(), Math.max(2, height / 110)).map(lat => {
      const { y } = map.latLngToContainerPoint([lat, bounds.getWest()]);
      return [
        svg('path', { class: 'graticule', d: `M0 ${y}H${width}` }),
        y > 84 && text(width - 4, y - 3, coordinate(lat, 'lat'), 'end')];
    });
  }

  function north(width) {
    return svg('g', { class: 'north', transform: `translate(${width - 24} 14)` },
      svg('path', { class: 'north-half', d: 'M0 0L6 26L0 21Z' }),
      svg('path', { class: 'north-line', d: 'M0 0L6 26L0 21L-6 26Z' }),
      text(0, 40, 'N', 'middle'));
  }

  function bar(width, height) {
    const middle = height / 2;
    const [from, to] = [0, 100].map(px => map.containerPointToLatLng([px, middle]));
    const meters = map.distance(from, to) / 100;
    const system = unitsOf();
    const { length, pixels } = scaleBar(meters, Math.min(180, width * 0.4), chainageUnitM(system));
    const x = 10;
    const y = height - 14;
    const part = pixels / 4;
    return svg('g', { class: 'map-scale' },
      svg('rect', { class: 'map-scale-paper', x: x - 6, y: y - 16, width: pixels + 60, height: 26 }),
      svg('path', { class: 'scale-bar', d: `M${x} ${y}h${pixels}v6h${-pixels}Z` }),
      [x, x + 2 * part].map(start => svg('path', { class: 'scale-fill', d: `M${start} ${y}h${part}v6h${-part}Z` })),
      text(x, y - 4, '0', 'middle'),
      text(x + pixels, y - 4, round(length, chainageUnitName(system)), 'middle'));
  }

  return { node, draw };
}

function text(x, y, content, anchor) {
  return svg('text', { class: 'label', x, y, 'text-anchor': anchor }, content);
}
