/**
 * Which hazards are shown and in what order: one choice for the table, both maps and the steps from one
 * hazard to the next. No DOM, no judgment: what is not listed is counted, never forgotten.
 */
import { findCell, governing, severity, shareLeft } from './report.js';

export const ALL = Object.freeze({ only: 'all', kind: null, sort: 'chainage', descending: false });

/** What can be shown: value and words. */
export const ONLY = [['all', 'all'], ['open', 'not clear'], ['blocks', 'blocking the plan']];

/** Columns that sort. The worst comes first. */
const ORDERS = {
  chainage: ({ hazard }) => hazard.chainageM,
  verdict: ({ cell }) => severity(cell?.verdict ?? 'not surveyed'),
  clearance: ({ cell }) => {
    const least = governing(cell);
    // Nothing known is nothing left.
    return least ? shareLeft(least.clearance) : Number.NEGATIVE_INFINITY;
  },
};
export const SORTS = Object.keys(ORDERS);

/** Ids of the hazards without which there would be a way, or null while no plan says so. */
const blocking = plan => (plan.data ? new Set(plan.data.blocking.map(({ hazard }) => hazard)) : null);

/** The hazards to show, in order. Those that block are known with a plan alone: until then every one is shown. */
export function listed({ report, configuration, plan, listing: { only, kind, sort, descending } }) {
  const blocks = only === 'blocks' ? blocking(plan) : null;
  const rows = report.hazards
    .map(hazard => ({ hazard, cell: findCell(hazard, configuration) }))
    .filter(({ hazard }) => kind === null || hazard.kind === kind)
    .filter(({ hazard }) => blocks === null || blocks.has(hazard.id))
    .filter(({ cell }) => only !== 'open' || cell?.verdict !== 'clear');
  const order = ORDERS[sort];
  const compare = (a, b) => (order(a) < order(b) ? -1 : order(a) > order(b) ? 1 : 0)
    || a.hazard.chainageM - b.hazard.chainageM;
  rows.sort((a, b) => (descending ? compare(b, a) : compare(a, b)));
  return rows.map(({ hazard }) => hazard);
}

/** The hazards that are shown, in order of travel: what is drawn along the route. */
export function alongRoute(state) {
  const shown = new Set(listed(state));
  return state.report.hazards.filter(hazard => shown.has(hazard));
}

/** The hazard before and after one in the order shown; one that is not shown stands in the order of travel. */
export function around(state, id) {
  const shown = listed(state);
  const hazards = shown.some(hazard => hazard.id === id) ? shown : state.report.hazards;
  const index = hazards.findIndex(hazard => hazard.id === id);
  return { before: hazards[index - 1] ?? null, after: hazards[index + 1] ?? null };
}

/** "7 of 24 shown", or nothing when all are. */
export function shownWords(state) {
  const count = listed(state).length;
  const all = state.report.hazards.length;
  return count === all ? '' : `${count} of ${all} hazards shown; the others were judged too.`;
}
