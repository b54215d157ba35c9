/**
 * A strip map over a longitudinal profile, on one axis of stations, in pixels: what stands where, and which labels have
 * room. No DOM. A window is {fromM, toM} of stations.
 */
import { findCell, severity } from '../report/report.js';
import { passages, raisedPieces, setUpLetters, stretches, WHOLE_ROUTE } from '../report/plan.js';
import { linear, niceStep } from './scale.js';

/** Room beside the first and the last station: heights are lettered on the left. */
export const INSET = { left: 40, right: 18 };
/** No window is shorter, meters: less than a survey is long. */
export const SHORTEST_M = 60;
const LABEL_ROW = 14;
const LABEL_ROWS = 3;
const BAR = 18;
const PROFILE = 116;
/** A stretch or a raise is drawn this wide at least, however short it is. */
const LEAST_PX = 3;
/** Ground and structures are drawn within these heights at least, meters above the road at a place. */
const LEAST_HEIGHTS = [-1, 6];

/**
 * Where the rows stand; without a plan there are no set-ups.
 *
 * @param labels as placed, of which the rows that none is in are left out
 */
export function rows(hasPlan, labels = []) {
  const free = Math.min(LABEL_ROWS - 1, ...labels.filter(label => label !== null).map(({ row }) => row));
  const line = (LABEL_ROWS - free) * LABEL_ROW + 20;
  const stops = line + 24;
  const bar = stops + 16;
  const raised = bar + (hasPlan ? BAR + 4 : 0);
  const legs = raised + (hasPlan ? 12 : 0);
  const top = legs + 30;
  const bottom = top + PROFILE;
  const axis = bottom + 24;
  return {
    labels: (1 - free) * LABEL_ROW - 3, line, stops, bar, barEnd: bar + BAR, raised, legs, top,
    bottom, unknown: bottom + 11, axis,
    height: axis + 20,
  };
}

/** The whole route, or the part of it that a window of this length takes around a station. */
export function windowAround(lengthM, atM, spanM) {
  const span = Math.min(lengthM, Math.max(SHORTEST_M, spanM));
  const fromM = Math.max(0, Math.min(lengthM - span, atM - span / 2));
  return { fromM, toM: fromM + span };
}

/** The window moved no farther than needed to show a station, a twelfth of it in from its end. */
export function windowWith({ fromM, toM }, lengthM, atM) {
  const span = toM - fromM;
  const edge = span / 12;
  if (atM >= fromM && atM <= toM) {
    return { fromM, toM };
  }
  return windowAround(lengthM, atM < fromM ? atM + span / 2 - edge : atM - span / 2 + edge, span);
}

/** Stations to pixels. */
export const across = ({ fromM, toM }, width) => linear([fromM, toM], [INSET.left, width - INSET.right]);

/** What is drawn within a window: {from, to} in pixels, at least so wide; null outside of it. */
export function span(view, toX, fromM, toM, leastPx = 0) {
  if (toM < view.fromM || fromM > view.toM) {
    return null;
  }
  const from = toX(Math.max(fromM, view.fromM));
  return { from, to: Math.max(from + leastPx, toX(Math.min(toM, view.toM))) };
}

/** Ticks of the axis of stations: {value, x}, in a unit of so many meters. */
export function stationTicks(view, width, unitM) {
  const toX = across(view, width);
  const step = niceStep((view.toM - view.fromM) / unitM / Math.max(2, width / 90));
  const found = [];
  for (let n = Math.ceil(view.fromM / unitM / step - 1e-9); n * step * unitM <= view.toM * (1 + 1e-12); n++) {
    found.push({ value: Number((n * step).toPrecision(12)), x: toX(n * step * unitM) });
  }
  return found;
}

/**
 * Set-ups, raises and what blocks, of a plan, from and to in pixels, undefined outside of the window:
 * {bars: [{set, letter, index, from, to}], raised: [{from, to}], blocked: ids}.
 */
export function planPieces(plan, view, toX) {
  const letters = setUpLetters(plan);
  const order = [...letters.keys()];
  return {
    bars: stretches(plan).map(({ set, fromM, toM }) => ({
      set, letter: letters.get(set.configuration), index: order.indexOf(set.configuration),
      ...span(view, toX, fromM, toM, LEAST_PX),
    })),
    raised: raisedPieces(plan).map(piece => ({ piece, ...span(view, toX, piece.fromM, piece.toM, LEAST_PX) })),
    blocked: new Set(passages(plan).filter(({ hazard, blocked }) => blocked && hazard !== WHOLE_ROUTE)
      .map(({ hazard }) => hazard)),
  };
}

/** Heights that the profile has to show, meters: those that are known there. */
export function heightsShown(spots) {
  const all = spots.flatMap(({ heights }) => [...heights?.ground ?? [], ...heights?.over ?? []]).map(([, z]) => z);
  return [Math.min(LEAST_HEIGHTS[0], ...all), Math.max(LEAST_HEIGHTS[1], ...all)];
}

/**
 * Places of the window in order of travel: {hazard, cell, verdict, spot, x, ground, over}, ground and over as points in
 * pixels where heights are known there, else null.
 */
export function placesIn(report, key, spots, view, width, hazards = report.hazards) {
  const toX = across(view, width);
  const byId = new Map(spots.map(spot => [spot.id, spot]));
  const { top, bottom } = rows(false);
  const near = hazards.filter(({ chainageM }) => chainageM >= view.fromM && chainageM <= view.toM);
  const toY = linear(heightsShown(near.map(({ id }) => byId.get(id) ?? {})), [bottom - top, 0]);
  const drawn = (chainageM, points) => points?.map(([s, z]) => [toX(chainageM + s), toY(z)]) ?? null;
  return near.map(hazard => {
    const cell = findCell(hazard, key);
    const heights = byId.get(hazard.id)?.heights;
    return {
      hazard, cell, verdict: cell?.verdict ?? 'not surveyed', x: toX(hazard.chainageM),
      ground: drawn(hazard.chainageM, heights?.ground), over: drawn(hazard.chainageM, heights?.over),
    };
  });
}

/**
 * Labels over their places, the worst verdict first, in the first of the rows where neither a label nor a line to one
 * is in the way: {x, row, anchor} by place, null where there is no room.
 *
 * @param places {x, text, verdict} in order
 * @param measure width of a text, pixels
 */
export function labelPlaces(places, width, measure) {
  const taken = [];
  const result = places.map(() => null);
  const order = places.map((place, index) => index)
    .sort((a, b) => severity(places[a].verdict) - severity(places[b].verdict) || a - b);
  for (const index of order) {
    const { x, text } = places[index];
    const w = measure(text) + 4;
    result[index] = candidates(x, w).find(({ left, row }) =>
      left >= 0 && left + w <= width
      && taken.every(other => isApart(left, left + w, row, other)
        && isApart(other.left, other.right, other.row, { x, row })))
      ?? null;
    if (result[index]) {
      taken.push({ left: result[index].left, right: result[index].left + w, row: result[index].row, x });
    }
  }
  return result;
}

/** A label over its place, beside the line to it, or across it, in the lowest row first. */
function candidates(x, w) {
  const found = [];
  for (let row = LABEL_ROWS - 1; row >= 0; row--) {
    found.push(
      { x, left: x - w / 2, row, anchor: 'middle' },
      { x: x + 3, left: x + 1, row, anchor: 'start' },
      { x: x - 3, left: x - w - 1, row, anchor: 'end' });
  }
  return found;
}

/** Whether a label from left to right in a row touches neither another label nor the line down from it. */
function isApart(left, right, row, other) {
  const ofLabel = other.left === undefined || row !== other.row || right < other.left || left > other.right;
  const ofLine = row <= other.row || other.x < left - 1 || other.x > right + 1;
  return ofLabel && ofLine;
}

/** Those of some texts along one row that do not touch: true for each that stays. @param marks {x, text}, in order */
export function thinned(marks, measure, gap = 6) {
  let end = Number.NEGATIVE_INFINITY;
  return marks.map(({ x, text }) => {
    const half = measure(text) / 2;
    const stays = x - half >= end + gap;
    end = stays ? x + half : end;
    return stays;
  });
}
