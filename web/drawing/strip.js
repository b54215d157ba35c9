/** The strip along the chainage: which configuration runs where, stops, raised passages, what blocks. No DOM. */
import { passages, raisedPieces, stretches, WHOLE_ROUTE } from '../plan.js';
import { linear, spread } from './scale.js';

export const ROWS = { places: 42, bar: 62, barEnd: 86, raised: 92, raisedEnd: 100, stops: 124, axis: 146, height: 166 };
/** A bar keeps this width, however short its stretch. */
const LEAST_PX = 3;
const LABEL_PX = 28;

/**
 * Everything on the strip, in pixels.
 *
 * @returns {bars: {set, x, width, index}, raised: {x, width, piece},
 *     places: {passage, x, labelX, labeled}, stops: {stop, x}, toX}
 */
export function strip(plan, stops, width, inset) {
  const toX = linear([0, plan.route.lengthM], [inset, width - inset]);
  const span = (fromM, toM) => ({ x: toX(fromM), width: Math.max(LEAST_PX, toX(toM) - toX(fromM)) });
  const all = passages(plan).filter(({ hazard }) => hazard !== WHOLE_ROUTE);
  const keys = [...new Set(stretches(plan).map(({ set }) => set.configuration))];
  const xs = all.map(passage => toX(passage.fromChainageM));
  const labeled = all.length * LABEL_PX <= width;
  const order = xs.map((x, index) => index).sort((a, b) => xs[a] - xs[b]);
  const spaced = spread(order.map(index => xs[index]), labeled ? LABEL_PX : 0, 0, width);
  const labelX = new Map(order.map((index, place) => [index, spaced[place]]));
  return {
    toX,
    bars: stretches(plan).map(({ set, fromM, toM }) =>
      ({ set, ...span(fromM, toM), index: keys.indexOf(set.configuration) })),
    raised: raisedPieces(plan).map(piece => ({ piece, ...span(piece.fromM, piece.toM) })),
    places: all.map((passage, index) => ({ passage, x: xs[index], labelX: labelX.get(index), labeled })),
    stops: stops.map(stop => ({ stop, x: toX(stop.chainageM) })),
  };
}
