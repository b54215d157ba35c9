/** Rows between strip map and profile: set-ups and raises of the plan, legs. */
import { svg } from '../../dom.js';
import { span, thinned } from '../../drawing/stations.js';

export function text(x, y, content, name = '', anchor = 'middle') {
  return svg('text', { class: `label ${name}`, x, y, 'text-anchor': anchor }, content);
}

/** @returns {node, labels}: letters stand over whatever else is drawn */
export function planParts({ bars, raised }, row, measure) {
  const seen = bars.filter(({ from }) => from !== undefined);
  const lettered = thinned(
    seen.map(({ from, to, letter }) => ({ x: (from + to) / 2, text: letter })), measure, 4);
  return {
    node: [
      seen.map(({ from, to, index, letter, set }) => svg('rect', {
        class: `strip-bar strip-bar-${index % 3}`, x: from, y: row.bar, width: to - from, height: row.barEnd - row.bar,
        'data-configuration': set.configuration,
      }, svg('title', {}, `${letter}: ${set.label}`))),
      raised.filter(({ from }) => from !== undefined).map(({ from, to }) => svg('path', {
        class: 'strip-raised', d: `M${from} ${row.raised + 6}V${row.raised}H${to}V${row.raised + 6}`,
      })),
    ],
    labels: seen.map(({ from, to, letter }, k) => lettered[k] && to - from > measure(letter) + 4
      && text((from + to) / 2, row.bar + 14, letter, 'strip-letter')),
  };
}

/** Legs with their names, as far as these fit between their ends. */
export function legParts(report, view, toX, row, measure) {
  return report.route.legs.map(({ name, startChainageM, endChainageM }) => {
    const piece = span(view, toX, startChainageM, endChainageM);
    return piece && [
      svg('path', {
        class: 'leg',
        d: `M${piece.from} ${row.legs}v9M${piece.to} ${row.legs}v9M${piece.from} ${row.legs + 4}H${piece.to}`,
      }, svg('title', {}, name)),
      measure(name) + 16 < piece.to - piece.from
        && text((piece.from + piece.to) / 2, row.legs + 21, name, 'leg-name')];
  });
}
