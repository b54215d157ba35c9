/** Questions asked of a route plan and of a comparison. No DOM, no arithmetic beyond picking, counting and ordering. */
import { letterOf } from '../text/letters.js';
import { findCell, findHazard, severity } from './report.js';

/** Identifies the limits of the whole route among a plan's hazards. */
export const WHOLE_ROUTE = 'whole route';

/** Outcomes from the best. A word this page does not know is as bad as the last. */
const OUTCOMES = ['way through', 'way through under conditions', 'no way through'];

export const outcomeRank = outcome => (OUTCOMES.includes(outcome) ? OUTCOMES.indexOf(outcome) : OUTCOMES.length - 1);

export const NO_WAY = OUTCOMES.at(-1);

/** Whether there is no way through; so too for an outcome this page does not know. */
export const isBlocked = ({ outcome }) => outcomeRank(outcome) === OUTCOMES.length - 1;

/** What the papers of a plan may be used for, in one sentence. */
export function standing({ outcome, conditions, blocking }) {
  if (outcome === OUTCOMES[0]) {
    return 'Nothing blocks and nothing is unresolved, as declared and surveyed.';
  }
  if (outcome === OUTCOMES[1] && conditions.every(({ settled }) => settled)) {
    return 'Every condition below was settled by the person named there. This page judged none of that.';
  }
  if (outcome === OUTCOMES[1]) {
    return `The plan is valid only when ${count(conditions.length, 'condition')} below `
      + `${conditions.length === 1 ? 'is' : 'are'} met.`;
  }
  return `Blocked at ${count(blocking.length, 'place')}. NOT FOR DRIVING: these steps hold only if `
    + 'the blocked places were resolved.';
}

const count = (number, word) => `${number} ${word}${number === 1 ? '' : 's'}`;

/** Steps with the configuration in force at each and after it: {step, set}. */
export function stepsWithSets(plan) {
  let set = null;
  return plan.steps.map(step => {
    set = step.change?.to ?? step.set ?? step.passage?.set ?? set;
    return { step, set };
  });
}

/** A letter for each configuration of a plan, in the order they come in. */
export function setUpLetters(plan) {
  const keys = [...new Set(stretches(plan).map(({ set }) => set.configuration))];
  return new Map(keys.map((key, index) => [key, letterOf(index)]));
}

/** The pieces of the route each in one configuration: {set, fromM, toM}, in driving order. */
export function stretches(plan) {
  const found = [];
  for (const step of plan.steps) {
    const set = step.change?.to ?? (step.step === 'depart' ? step.set : null);
    if (set) {
      found.push({ set, fromM: step.chainageM });
    }
  }
  return found.map((piece, index) => ({ ...piece, toM: found[index + 1]?.fromM ?? plan.route.lengthM }));
}

/** Passages of a plan, in driving order. */
export const passages = plan => plan.steps.map(step => step.passage).filter(Boolean);

export const findPassage = (plan, hazard) => passages(plan).find(passage => passage.hazard === hazard) ?? null;

/** Pieces of road passed raised, from where the deck goes up to where it goes down: {fromM, toM, hazards, raise}. */
export function raisedPieces(plan) {
  const found = [];
  for (const { step, chainageM, lift } of plan.steps) {
    if (step === 'raise') {
      found.push({ fromM: chainageM, toM: plan.route.lengthM, hazards: lift.hazards, raise: lift.raise });
    } else if (step === 'lower') {
      found.at(-1).toM = chainageM;
    }
  }
  return found;
}

/** Whether somebody may accept a place as tight, and what that takes: 'escorts', 'a spotter', or null. */
export function acceptable(report, id) {
  const cells = id === WHOLE_ROUTE ? [] : findHazard(report, id)?.cells ?? [];
  const tight = cells.filter(cell => cell.verdict === 'tight');
  if (tight.length === 0) {
    return null;
  }
  return tight.some(cell => cell.corner?.escorts) ? 'escorts' : 'a spotter';
}

/** Places the planner decided about: {id, name, what}, in the report's order. */
export function decisions(report, { acceptTight, setAside }) {
  const named = id => (id === WHOLE_ROUTE ? 'limits of the whole route' : findHazard(report, id)?.name ?? '');
  return [
    ...acceptTight.map(id => ({ id, name: named(id), what: 'accepted as tight' })),
    ...setAside.map(id => ({ id, name: named(id), what: 'set aside, undecided' })),
  ];
}

/** What a plan does at a stopping place: {change} made there or null, {held} the caution that says why not or null. */
export function atStop(plan, stop) {
  const change = plan.steps.find(step => step.change?.stop === stop.id)?.change ?? null;
  const named = plan.cautions.filter(caution => caution.startsWith(`${stop.id} ${stop.name} `));
  const held = named.find(caution => /cannot|shorter/.test(caution));
  return { change, held: held ?? null };
}

/** Kinds of spare with their words, in the order of a sheet. */
export const SPARE_KINDS = [
  ['ground', 'under'], ['overhead', 'over the load'], ['units', 'between the units'], ['corner', 'beside'],
  ['load', 'to the load limit'],
];

export const spareWord = kind => SPARE_KINDS.find(([key]) => key === kind)?.[1] ?? kind;

/** The worst spare of one kind in a comparison's row, or null. */
export const worstOf = (compared, kind) => compared.worst.find(({ spare }) => spare.kind === kind) ?? null;

/** Columns that a comparison can be sorted by: what each reads from a row {verdict, compared}. Null sorts last. */
export const SORTS = {
  axles: ({ verdict }) => verdict.axles,
  booster: ({ verdict }) => verdict.booster,
  notch: ({ verdict }) => verdict.notchOffsetM,
  verdict: ({ verdict }) => severity(verdict.verdict),
  loads: ({ verdict }) => severity(verdict.loads ?? 'loads not known'),
  clear: ({ verdict }) => verdict.clear,
  tight: ({ verdict }) => verdict.tight,
  contact: ({ verdict }) => verdict.contact,
  notSurveyed: ({ verdict }) => verdict.notSurveyed,
  outsideLimits: ({ verdict }) => verdict.outsideLimits ?? 0,
  loadsNotKnown: ({ verdict }) => verdict.loadsNotKnown ?? 0,
  raisedOnly: ({ verdict }) => verdict.raisedOnly,
  outcome: ({ compared }) => compared && outcomeRank(compared.outcome),
  blocking: ({ compared }) => compared && compared.blocking.length,
  seconds: ({ compared }) => compared && compared.seconds,
  raised: ({ compared }) => compared && compared.raised,
  ground: ({ compared }) => compared && (worstOf(compared, 'ground')?.spare.left ?? null),
  overhead: ({ compared }) => compared && (worstOf(compared, 'overhead')?.spare.left ?? null),
  units: ({ compared }) => compared && (worstOf(compared, 'units')?.spare.left ?? null),
  corner: ({ compared }) => compared && (worstOf(compared, 'corner')?.spare.left ?? null),
  load: ({ compared }) => compared && (worstOf(compared, 'load')?.spare.left ?? null),
  gross: ({ compared }) => compared && compared.grossKg,
  length: ({ compared }) => compared && compared.lengthM,
};

/** Rows in the order of a column; equal ones, and all without a column, keep the order they have. */
export function sorted(rows, column, descending) {
  if (column === null) {
    return rows;
  }
  const value = row => SORTS[column](row) ?? null;
  return [...rows].sort((a, b) => {
    const [x, y] = [value(a), value(b)];
    if (x === null || y === null) {
      return (x === null) - (y === null);
    }
    const order = typeof x === 'string' ? (x < y ? -1 : Number(x > y)) : x - y;
    return descending ? -order : order;
  });
}

/** Where two compared configurations fare differently: {id, name, chainageM, first, second}, in driving order. */
export function differences(first, second) {
  const seen = new Map();
  for (const [side, { along }] of [['first', first], ['second', second]]) {
    for (const place of along) {
      const entry = seen.get(place.hazard)
        ?? { id: place.hazard, name: place.name, chainageM: place.chainageM, first: null, second: null };
      seen.set(place.hazard, { ...entry, [side]: place });
    }
  }
  return [...seen.values()]
    .filter(entry => fare(entry.first) !== fare(entry.second))
    .sort((a, b) => a.chainageM - b.chainageM);
}

const fare = place => place && JSON.stringify([place.verdict, place.raise, place.spare]);

/** The plan's weakest point, its re-survey and what is not known, as sentences; empty without a plan. */
export function robustnessWords(robustness) {
  return [
    robustness?.weakest && `Weakest point: ${robustness.weakest.hazard} ${robustness.weakest.text}`,
    robustness?.resurvey && `Re-survey that would help most: ${robustness.resurvey.hazard} ${robustness.resurvey.text}`,
    ...(robustness?.notKnown ?? []).map(({ hazard, text }) => `${hazard} ${text}`),
  ].filter(Boolean);
}

/** The verdict of the report where the plan goes: for a place without a number, why there is none. */
export const reasonsAt = (report, hazard, key) => findCell(findHazard(report, hazard), key)?.reasons ?? [];
