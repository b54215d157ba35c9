/**
 * The plot of margins along the route, one band for each kind of spare, one below for what is not known. A spare stands
 * on its band's zero line; what has no number never stands there. No DOM.
 */
import { SPARE_KINDS } from '../report/plan.js';
import { linear, ticks } from './scale.js';

/** Gaps beyond this, and loads beyond this, are cut off and marked so: meters, kilograms. */
export const MOST = { ground: 0.3, overhead: 0.3, units: 0.3, corner: 1, load: 5000 };
const BAND = 74;
const GAP = 16;
const UNKNOWN_BAND = 30;
const TOP = 18;
/** Configurations stand beside one another at a place, this far apart. */
const BESIDE_PX = 7;

/**
 * @param picked compared configurations, three at most
 * @returns {bands: {kind, word, top, zero, bottom, toY}, unknown: {top, middle, bottom} or null,
 *     marks: {index, place, kind, x, y, zero, cut}, with kind null for what is not known, height, toX}
 */
export function marginPlot(picked, lengthM, width, inset) {
  // Room for marks beside one another at the very ends.
  const toX = linear([0, lengthM], [inset + 2 * BESIDE_PX, width - 2 * BESIDE_PX]);
  const kinds = SPARE_KINDS.filter(([kind]) => picked.some(({ along }) => along.some(p => p.spare?.kind === kind)));
  const bands = kinds.map(([kind, word], row) => {
    const top = TOP + row * (BAND + GAP);
    const [low, high] = reach(picked, kind);
    const toY = linear([low, high], [top + BAND, top]);
    return { kind, word, top, bottom: top + BAND, zero: toY(0), low, high, toY };
  });
  const end = TOP + bands.length * (BAND + GAP);
  const unknown = picked.some(({ along }) => along.some(place => place.spare === null))
    ? { top: end, middle: end + UNKNOWN_BAND / 2, bottom: end + UNKNOWN_BAND } : null;
  const marks = picked.flatMap(({ along }, index) => along.map(place => {
    const x = toX(place.chainageM) + (index - (picked.length - 1) / 2) * BESIDE_PX;
    if (place.spare === null) {
      return { index, place, kind: null, x, y: unknown.middle, zero: null, cut: false };
    }
    const band = bands.find(({ kind }) => kind === place.spare.kind);
    const left = Math.max(band.low, Math.min(band.high, place.spare.left));
    return { index, place, kind: band.kind, x, y: band.toY(left), zero: band.zero, cut: left !== place.spare.left };
  }));
  return { bands, unknown, marks, height: (unknown?.bottom ?? end) + 30, toX };
}

/** What a band reaches from and to: all its spares as far as the cut, and never a sliver about zero. */
function reach(picked, kind) {
  const lefts = picked.flatMap(({ along }) => along)
    .filter(place => place.spare?.kind === kind).map(place => place.spare.left);
  const least = MOST[kind] / 6;
  const high = Math.min(MOST[kind], Math.max(least, ...lefts));
  return [-Math.min(MOST[kind], Math.max(high / 3, -Math.min(0, ...lefts))), high];
}

/** Marks of the picked configurations, so that they stay apart in one color: centered paths, about 8 px wide. */
export const PICK_MARKS = ['M-4 0A4 4 0 1 1 4 0A4 4 0 1 1 -4 0Z', 'M-4 -4H4V4H-4Z', 'M0 -5L5 4H-5Z'];
/** And the dashes of their stems. */
export const PICK_DASHES = ['', '4 2', '1 2'];

/** Ticks of the axis of stations: {x, value} in the unit given. */
export function chainageTicks(lengthM, width, inset, unitM) {
  const across = linear([0, lengthM / unitM], [inset, width - inset]);
  return ticks(0, lengthM / unitM, Math.max(2, width / 90)).map(value => ({ value, x: across(value) }));
}
