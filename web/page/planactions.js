/** What a user can do about the route plan, the comparison and the papers, as functions on the store. */
import { lastOnly, PLAIN_PLAN } from './state.js';
import { asProblem, wasAborted } from '../exchange/api.js';
import { followed, newId } from '../exchange/underway.js';

const NONE = { status: 'none', data: null, problem: null };
const MOST_PICKS = 3;
/** How often is asked how far a plan has come, milliseconds. */
const ASKED_EACH = 500;
/** More places than any check has: none of those judged is told again. */
const NO_PLACES = 999999;

export function createPlanActions(store, api) {
  const plans = lastOnly();
  const comparisons = lastOnly();
  const combinations = lastOnly();

  /** Asks `question`; its answer stands under `key` only as long as nothing else was asked since. */
  async function ask(key, requests, question) {
    const turn = requests.begin();
    store.set({ [key]: { status: 'loading', data: null, problem: null } });
    try {
      const data = await question(turn.signal);
      if (turn.isCurrent()) {
        store.set({ [key]: { status: 'ready', data, problem: null } });
      }
    } catch (error) {
      if (!wasAborted(error) && turn.isCurrent()) {
        store.set({ [key]: { status: 'failed', data: null, problem: asProblem(error) } });
      }
    }
  }

  function stop(key, requests) {
    if (store.get()[key].status === 'loading') {
      requests.cancel();
      store.set({ [key]: { ...NONE, status: 'stopped' } });
    }
  }

  function drawPlan() {
    const { inputs, planAsked } = store.get();
    store.set({ planProgress: null });
    return ask('plan', plans, async signal => {
      const id = newId();
      let running = true;
      followed(
        () => api.checkProgress(id, NO_PLACES, signal),
        () => running && !signal.aborted,
        planProgress => store.set({ planProgress }),
        ASKED_EACH,
      );
      try {
        return await api.plan(inputs, asRequest(planAsked), signal, id);
      } finally {
        running = false;
      }
    });
  }

  /** Compares with the times and decisions of the plan; what it keeps or forbids does not matter here. */
  function drawComparison() {
    const { inputs, planAsked } = store.get();
    const { forbid, fix, ...asked } = planAsked;
    return ask('comparison', comparisons,
      signal => api.comparison(inputs, asRequest({ ...asked, forbid: [], fix: null }), signal));
  }

  /** Plans every combination; what was decided for one of them does not matter here. */
  function drawCombinations() {
    const { inputs, planAsked: { times, avoidRaising, leastReserve, fewestConditions } } = store.get();
    return ask('combinations', combinations, signal => api.combinations(inputs,
      asRequest({ ...PLAIN_PLAN, times, avoidRaising, leastReserve, fewestConditions }), signal));
  }

  function forgetCombinations() {
    combinations.cancel();
    store.set({ combinations: NONE });
  }

  /** What was answered to another question is gone at once. */
  function forgetComparison() {
    comparisons.cancel();
    store.set({ comparison: NONE });
  }

  /** Asks something else of the plan; the panel that watches the question fetches the answer. */
  const askPlan = patch => store.set({ planAsked: { ...store.get().planAsked, ...patch } });

  function add(key, id, without) {
    const asked = store.get().planAsked;
    askPlan({ [key]: [...new Set([...asked[key], id])], [without]: asked[without].filter(other => other !== id) });
  }

  return {
    drawPlan,
    stopPlan: () => stop('plan', plans),
    askPlan,
    drawComparison,
    stopComparison: () => stop('comparison', comparisons),
    forgetComparison,
    drawCombinations,
    stopCombinations: () => stop('combinations', combinations),
    forgetCombinations,
    acceptTight: id => add('acceptTight', id, 'setAside'),
    setAside: id => add('setAside', id, 'acceptTight'),
    /** Somebody settled a condition: {hazard, what, by, date, agreed}. */
    settle: entry => {
      const { settled } = store.get().planAsked;
      askPlan({ settled: [...settled.filter(other => !isSame(other, entry)), entry] });
    },
    unsettle: entry => {
      askPlan({ settled: store.get().planAsked.settled.filter(other => !isSame(other, entry)) });
    },
    undecide: id => {
      const { acceptTight, setAside } = store.get().planAsked;
      askPlan({
        acceptTight: acceptTight.filter(other => other !== id), setAside: setAside.filter(other => other !== id),
      });
    },
    /** Nothing forbidden, kept, accepted or set aside any more; the times of the rig. */
    plainPlan: () => store.set({ planAsked: PLAIN_PLAN }),
    /** Plots a configuration or no longer; a fourth is refused. */
    pick: (key, wanted) => {
      const others = store.get().picks.filter(other => other !== key);
      if (!wanted || others.length < MOST_PICKS) {
        store.set({ picks: wanted ? [...others, key] : others });
      }
    },
    /** A paper of the plan that is asked for, as a file; over the base map on show, where it has maps. */
    paper: (kind, how, signal) => {
      const { inputs, planAsked, project, baseMap } = store.get();
      return api.paper(kind, inputs, {
        plan: asRequest(planAsked), project: project?.id, baseMap: how.form === 'json' ? null : baseMap, ...how,
      }, signal);
    },
  };
}

const isSame = (a, b) => a.hazard === b.hazard && a.what === b.what;

/** The question as a request spells it; null when there is nothing to say. */
export function asRequest({
  times, forbid, fix, avoidRaising, acceptTight, setAside, leastReserve = null, fewestConditions = false, settled = [],
}) {
  const said = Object.entries({
    times: Object.keys(times).length > 0 ? times : null,
    forbid: forbid.length > 0 ? forbid : null,
    fix,
    avoidRaising: avoidRaising || null,
    acceptTight: acceptTight.length > 0 ? acceptTight : null,
    setAside: setAside.length > 0 ? setAside : null,
    leastReserve,
    fewestConditions: fewestConditions || null,
    settled: settled.length > 0 ? settled : null,
  }).filter(([, value]) => value !== null);
  return said.length > 0 ? Object.fromEntries(said) : null;
}
