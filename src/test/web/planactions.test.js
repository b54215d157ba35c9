import assert from 'node:assert/strict';
import test from 'node:test';
import { createActions } from '../../../web/page/actions.js';
import { Problem } from '../../../web/exchange/api.js';
import { asRequest, createPlanActions } from '../../../web/page/planactions.js';
import { createStore, PLAIN_PLAN } from '../../../web/page/state.js';
import { report } from './fixtures.js';
import { plan } from './planfixtures.js';

const BODY = { routes: '{"a":1}', rigs: '{"stances":[{"name":"loaded"}]}' };

function later() {
  let settle;
  const promise = new Promise((resolve, reject) => { settle = { resolve, reject }; });
  return { promise, ...settle };
}

/** A page without a browser, whose store asks for a plan as its panel does. */
function page(overrides = {}) {
  const store = createStore();
  const asked = [];
  const api = {
    samples: async () => ({ routes: [{ id: 'r', name: 'R' }], rigs: [{ id: 'a', name: 'A' }, { id: 'b', name: 'B' }] }),
    sample: async (kind, id) => BODY[kind].replace('}]', `}, {"name":"${id}"}]`),
    route: async () => ({ line: [], stops: [] }),
    check: async () => report(),
    plan: async (inputs, question) => {
      asked.push(question);
      return plan();
    },
    comparison: async () => ({ configurations: [] }),
    ...overrides,
  };
  const actions = { ...createActions(store, api), ...createPlanActions(store, api) };
  return { store, actions, asked };
}

test('what is not said stays out of the request', () => {
  assert.equal(asRequest(PLAIN_PLAN), null);
  assert.deepEqual(asRequest({ ...PLAIN_PLAN, times: { notch: '20 min' }, avoidRaising: true, setAside: ['H3'] }),
    { times: { notch: '20 min' }, avoidRaising: true, setAside: ['H3'] });
});

test('how far a plan has come is asked under the id that it was asked with, and no longer than it takes', async () => {
  const slow = later();
  const ids = [];
  const { store, actions } = page({
    plan: (inputs, question, signal, id) => {
      ids.push(id);
      return slow.promise;
    },
    checkProgress: async id => {
      ids.push(id);
      return { state: 'planning', at: 'H2', asked: 4, answered: ids.length - 1, found: [] };
    },
  });
  await actions.openSamples();
  const drawn = actions.drawPlan();
  assert.equal(store.get().planProgress, null);
  await new Promise(resolve => { store.watch(['planProgress'], state => state.planProgress && resolve()); });
  assert.equal(store.get().planProgress.answered, 1);
  slow.resolve(plan());
  await drawn;
  const asked = ids.length;
  await new Promise(resolve => { setTimeout(resolve, 700); });
  assert.equal(ids.length, asked);
  assert.equal(new Set(ids).size, 1);
});

test('a late plan never takes the place of a newer one, and none stands while another is asked for', async () => {
  const answers = [later(), later()];
  let count = 0;
  const { store, actions } = page({ plan: () => answers[count++].promise });
  await actions.openSamples();
  const first = actions.drawPlan();
  actions.setAside('H3');
  const second = actions.drawPlan();
  assert.deepEqual([store.get().plan.status, store.get().plan.data], ['loading', null]);
  const newer = { ...plan(), outcome: 'way through under conditions' };
  answers[1].resolve(newer);
  await second;
  answers[0].resolve(plan());
  await first;
  assert.equal(store.get().plan.data, newer);
});

test('a plan that is stopped is shown to nobody, even when it comes', async () => {
  const slow = later();
  const { store, actions } = page({ plan: () => slow.promise });
  await actions.openSamples();
  const asking = actions.drawPlan();
  actions.stopPlan();
  slow.resolve(plan());
  await asking;
  assert.deepEqual([store.get().plan.status, store.get().plan.data], ['stopped', null]);
});

test('a refused plan leaves no plan, and keeps the question for its undo', async () => {
  const refusal = new Problem({ title: 'Refused', status: 422, problems: [{ pointer: '/plan/times/notch' }] });
  const { store, actions } = page({ plan: async () => { throw refusal; } });
  await actions.openSamples();
  actions.askPlan({ times: { notch: 'soon' } });
  await actions.drawPlan();
  assert.deepEqual([store.get().plan.status, store.get().plan.data, store.get().plan.problem],
    ['failed', null, refusal]);
  assert.deepEqual(store.get().planAsked.times, { notch: 'soon' });
});

test('a place is accepted or set aside, never both, once, and can be undone', async () => {
  const { store, actions } = page();
  await actions.openSamples();
  actions.setAside('H1');
  actions.acceptTight('H1');
  actions.acceptTight('H1');
  assert.deepEqual([store.get().planAsked.acceptTight, store.get().planAsked.setAside], [['H1'], []]);
  actions.undecide('H1');
  assert.deepEqual(store.get().planAsked, PLAIN_PLAN);
});

test('a fourth configuration is not plotted', () => {
  const { store, actions } = page();
  ['a', 'b', 'c', 'd'].forEach(key => actions.pick(key, true));
  assert.deepEqual(store.get().picks, ['a', 'b', 'c']);
  actions.pick('a', false);
  actions.pick('d', true);
  assert.deepEqual(store.get().picks, ['b', 'c', 'd']);
});

test('the same files keep what is asked of the plan; other files begin anew', async () => {
  const { store, actions } = page();
  await actions.openSamples();
  actions.setAside('H3');
  await actions.setMargins({ ground: '3 in' });
  assert.deepEqual(store.get().planAsked.setAside, ['H3']);
  await actions.openSample('rig', 'b');
  assert.deepEqual(store.get().planAsked, PLAIN_PLAN);
});

test('an address brings the question along; the same question is not asked twice', async () => {
  const { store, actions } = page();
  const planned = { ...PLAIN_PLAN, setAside: ['H3'] };
  await actions.openSamples({ plan: planned, picks: ['a', 'b', 'c', 'd'], stop: 'P1' });
  assert.deepEqual([store.get().planAsked, store.get().picks, store.get().stop], [planned, ['a', 'b', 'c'], 'P1']);
  const before = store.get().planAsked;
  await actions.follow({ route: 'r', rig: 'a', stance: null, margins: null, plan: { ...planned }, picks: [], stop: null });
  assert.equal(store.get().planAsked, before);
});

test('a check that is stopped leaves the sheet, and its answer is shown to nobody', async () => {
  const slow = later();
  let count = 0;
  const { store, actions } = page({ check: () => (count++ === 0 ? Promise.resolve(report()) : slow.promise) });
  await actions.openSamples();
  const before = store.get().report;
  const checking = actions.setMargins({ ground: '3 in' });
  assert.equal(store.get().busy, true);
  actions.stopCheck();
  assert.deepEqual([store.get().busy, store.get().problem], [false, null]);
  assert.match(store.get().notice, /Stopped/);
  slow.resolve({ ...report(), version: 'late' });
  await checking;
  assert.deepEqual([store.get().report, store.get().inputs.margins], [before, null]);
});

test('a first check that is stopped can be tried again', async () => {
  let wait = later();
  const { store, actions } = page({ check: () => wait.promise });
  const opening = actions.openSamples();
  while (!store.get().busy || store.get().samples === null) {
    await new Promise(resolve => setTimeout(resolve));
  }
  actions.stopCheck();
  wait.resolve(report());
  await opening;
  assert.deepEqual([store.get().report, store.get().problem.passing], [null, true]);
  wait = { promise: Promise.resolve(report()) };
  await actions.retry();
  assert.equal(store.get().report.cresthaul, 'report/1');
});

test('a passage chosen in the plan shows the hazard in the plan\'s configuration, with its raise', async () => {
  const { store, actions } = page({ passage: async () => ({ positions: [{ steerM: 0 }], tightest: 0 }) });
  await actions.openSamples();
  const { passage } = plan().steps.find(step => step.passage?.hazard === 'H1');
  await actions.selectPassage(passage);
  assert.deepEqual([store.get().hazard, store.get().configuration, store.get().view.raised], ['H1', 'down/none/low', true]);
});

test('a comparison leaves out what the plan keeps or forbids', async () => {
  const asked = [];
  const { actions } = page({ comparison: async (inputs, question) => { asked.push(question); return {}; } });
  await actions.openSamples();
  actions.askPlan({ fix: 'down/none/low', forbid: ['up/none/low'], times: { crawl: '2 mph' } });
  await actions.drawComparison();
  assert.deepEqual(asked, [{ times: { crawl: '2 mph' } }]);
});

test('combinations are planned without what was decided for one of them', async () => {
  const asked = [];
  const { store, actions } = page({ combinations: async (inputs, question) => { asked.push(question); return {}; } });
  await actions.openSamples();
  actions.askPlan({
    fix: 'down/none/low', forbid: ['up/none/low'], acceptTight: ['H1'], setAside: ['H2'], times: { crawl: '2 mph' },
    avoidRaising: true, leastReserve: '10 %',
    settled: [{ hazard: 'H1', what: 'up', by: 'clerk', date: '2026-11-01', agreed: 'yes' }],
  });
  await actions.drawCombinations();
  assert.deepEqual(asked, [{ times: { crawl: '2 mph' }, avoidRaising: true, leastReserve: '10 %' }]);
  assert.equal(store.get().combinations.status, 'ready');
  actions.forgetCombinations();
  assert.equal(store.get().combinations.status, 'none');
});

test('a paper takes the base map on show along, where its form has maps', async () => {
  const sent = [];
  const { store, actions } = page({
    paper: async (kind, inputs, { baseMap, form }) => { sent.push([kind, form, baseMap]); },
  });
  await actions.openSamples();
  await actions.paper('statement', { form: 'pdf' });
  const baseMap = { cresthaul: 'basemap/1', attribution: 'invented', features: [] };
  store.set({ baseMap });
  await actions.paper('statement', { form: 'html' });
  await actions.paper('runsheet', { form: 'json' });
  assert.deepEqual(sent, [
    ['statement', 'pdf', null], ['statement', 'html', baseMap], ['runsheet', 'json', null],
  ]);
});
