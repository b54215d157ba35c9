import assert from 'node:assert/strict';
import test from 'node:test';
import { createActions } from '../../../web/page/actions.js';
import { Problem } from '../../../web/exchange/api.js';
import { createStore } from '../../../web/page/state.js';
import { passage, report } from './fixtures.js';

const LINE = { name: 'Invented', lengthM: 10000, line: [], hazards: [] };
const BODY = {
  routes: '{"cresthaul":"route/1"}',
  rigs: '{"cresthaul":"rig/1","stances":[{"name":"loaded"},{"name":"empty"}]}',
};
const NOWHERE = {
  route: null, rig: null, stance: null, margins: null, hazard: null, configuration: null,
  line: null, leveling: null, raised: false, steerM: null,
};

/** A page without a browser: an api whose answers the test gives when it likes. */
function page(overrides = {}) {
  const store = createStore();
  const asked = [];
  const api = {
    version: async () => ({ version: '0.1.0' }),
    settings: async () => ({ tiles: null }),
    samples: async () => ({
      routes: [{ id: 'r', name: 'Route' }],
      rigs: [{ id: 'a', name: 'Rig A' }, { id: 'b', name: 'Rig B' }],
    }),
    sample: async kind => BODY[kind],
    route: async () => LINE,
    check: async () => report(),
    passage: async (inputs, request) => {
      asked.push(request);
      return { ...passage(), configuration: request.configuration };
    },
    ...overrides,
  };
  return { store, actions: createActions(store, api), asked };
}

function later() {
  let settle;
  const promise = new Promise((resolve, reject) => { settle = { resolve, reject }; });
  return { promise, ...settle };
}

const file = (name, text) => ({ name, size: text.length, arrayBuffer: async () => new TextEncoder().encode(text).buffer });

test('the first start opens the first samples with the best configuration and no hazard chosen', async () => {
  const { store, actions } = page();
  await actions.openSamples();
  const { inputs, configuration, hazard, busy, problem, passage: shown } = store.get();
  assert.deepEqual([inputs.route.id, inputs.rig.id, inputs.stance, configuration, hazard, busy, problem, shown.status],
    ['r', 'a', null, 'up/none/low', null, false, null, 'none']);
});

test('a late passage never takes the place of a newer one', async () => {
  const answers = { 'down/none/high': later(), 'down/none/low': later() };
  const { store, actions } = page({
    passage: (inputs, { configuration }) => answers[configuration]?.promise ?? Promise.resolve(passage()),
  });
  await actions.openSamples();
  await actions.selectHazard('H1');
  const first = actions.chooseConfiguration('down/none/high');
  const second = actions.chooseConfiguration('down/none/low');
  assert.equal(store.get().passage.data, null, 'the drawing before is gone at once');
  const newer = { ...passage(), configuration: 'down/none/low' };
  answers['down/none/low'].resolve(newer);
  await second;
  answers['down/none/high'].resolve({ ...passage(), configuration: 'down/none/high' });
  await first;
  assert.equal(store.get().passage.data, newer);
});

test('a late failure of a passage given up is not shown', async () => {
  const slow = later();
  const { store, actions } = page({
    passage: (inputs, { configuration }) =>
      (configuration === 'down/none/high' ? slow.promise : Promise.resolve(passage())),
  });
  await actions.openSamples();
  await actions.selectHazard('H1');
  const first = actions.chooseConfiguration('down/none/high');
  await actions.chooseConfiguration('down/none/low');
  slow.reject(new Problem({ title: 'late' }));
  await first;
  assert.equal(store.get().passage.status, 'ready');
});

test('a late check never takes the place of a newer one', async () => {
  const slow = later();
  let count = 0;
  const { store, actions } = page({
    check: () => (count++ === 1 ? slow.promise : Promise.resolve({ ...report(), version: `${count}` })),
  });
  await actions.openSamples();
  const first = actions.setMargins({ ground: '3 in' });
  await actions.setMargins({ ground: '4 in' });
  slow.resolve({ ...report(), version: 'late' });
  await first;
  assert.equal(store.get().report.version, '3');
  assert.deepEqual(store.get().inputs.margins, { ground: '4 in' });
});

test('a refused file leaves the sheet as it was and shows the check\'s whole list', async () => {
  let refuse = false;
  const problems = [{ pointer: '/rig/a' }, { pointer: '/route/b' }];
  const whole = new Problem({ title: 'Refused', status: 422, problems });
  const { store, actions } = page({
    check: async () => { if (refuse) { throw whole; } return report(); },
    route: async () => { if (refuse) { throw new Problem({ title: 'only the route' }); } return LINE; },
  });
  await actions.openSamples();
  await actions.selectHazard('H1');
  const before = store.get();
  refuse = true;
  await actions.openFile('rig', file('bad.json', '{}'));
  const after = store.get();
  for (const key of ['inputs', 'report', 'line', 'hazard', 'configuration', 'passage', 'position']) {
    assert.equal(after[key], before[key], key);
  }
  assert.equal(after.problem, whole);
  assert.equal(after.candidate.rig.name, 'bad.json');
  actions.dismissProblem();
  assert.deepEqual([store.get().problem, store.get().candidate], [null, null]);
});

test('two files that only fit each other can be opened one after the other', async () => {
  const { store, actions } = page({
    check: async ({ route, rig }) => {
      if ((route.name === 'own.geojson') !== (rig.name === 'own.json')) {
        throw new Problem({ title: 'do not fit', status: 422 });
      }
      return report();
    },
  });
  await actions.openSamples();
  await actions.openFile('route', file('own.geojson', '{}'));
  assert.equal(store.get().problem.title, 'do not fit');
  await actions.openFile('rig', file('own.json', '{}'));
  assert.deepEqual([store.get().problem, store.get().inputs.route.name, store.get().inputs.rig.name],
    [null, 'own.geojson', 'own.json']);
});

test('a file that is not JSON, or too large, never reaches the server', async () => {
  let checks = 0;
  const { store, actions } = page({ check: async () => { checks++; return report(); } });
  await actions.openSamples();
  await actions.openFile('rig', file('broken.json', '{'));
  assert.match(store.get().problem.title, /broken\.json is not JSON/);
  await actions.openFile('rig', { name: 'huge.json', size: 1e9, arrayBuffer: () => assert.fail('must not be read') });
  assert.match(store.get().problem.title, /huge\.json is larger/);
  assert.equal(checks, 1);
});

test('a link to a sample that is not there shows a problem, never another sample', async () => {
  const { store, actions } = page();
  await actions.openSamples({ route: 'gone' });
  assert.match(store.get().problem.title, /no sample "gone"/);
  assert.equal(store.get().report, null);
});

test('a link to a file from disk says which, and goes on once that file is opened', async () => {
  const { store, actions } = page();
  await actions.openSamples({ route: 'file:own.geojson', rig: 'b' });
  assert.match(store.get().problem.title, /own\.geojson/);
  assert.equal(store.get().report, null);
  await actions.openFile('route', file('own.geojson', '{}'));
  assert.deepEqual([store.get().inputs.route.name, store.get().inputs.rig.id], ['own.geojson', 'b']);
});

test('what a link asks for in vain is said', async () => {
  const { store, actions } = page();
  await actions.openSamples({ hazard: 'H9', configuration: 'up/none/low' });
  assert.match(store.get().notice, /hazard H9/);
  assert.equal(store.get().hazard, null);
});

test('the raise of the cell is asked for with its unit, and only when it is wanted', async () => {
  const { actions, asked } = page();
  await actions.openSamples({ hazard: 'H1', configuration: 'down/none/low' });
  await actions.setView({ raised: true });
  assert.deepEqual(asked.map(({ frontRaise, rearRaise }) => [frontRaise, rearRaise]),
    [[null, null], ['0.090000000 m', '0.000000000 m']]);
});

test('another configuration begins at its own tightest case, not at the last one\'s line or raise', async () => {
  const { store, actions, asked } = page();
  await actions.openSamples({ hazard: 'H1', configuration: 'down/none/low' });
  await actions.setView({ line: 'right', raised: true });
  actions.moveTo(0);
  await actions.chooseConfiguration('down/none/high');
  assert.deepEqual([asked.at(-1).line, asked.at(-1).frontRaise, store.get().position],
    [null, null, passage().tightest]);
});

test('an unsurveyed hazard asks for no passage and keeps no old one', async () => {
  const { store, actions, asked } = page();
  await actions.openSamples({ hazard: 'H1', configuration: 'down/none/low' });
  await actions.selectHazard('H3');
  assert.deepEqual([asked.length, store.get().passage.status, store.get().passage.data], [1, 'none', null]);
});

test('the truck stops at the ends of the passage', async () => {
  const { store, actions } = page();
  await actions.openSamples({ hazard: 'H1', steerM: 3.2 });
  assert.equal(store.get().position, 3);
  actions.moveTo(99);
  assert.equal(store.get().position, 4);
  actions.moveTo(-1);
  assert.equal(store.get().position, 0);
});

test('an address that names the files in force moves the selection without opening them again', async () => {
  let opened = 0;
  const { store, actions } = page({ sample: async kind => { opened++; return BODY[kind]; } });
  await actions.openSamples();
  await actions.follow({ ...NOWHERE, route: 'r', rig: 'a', hazard: 'H2', configuration: 'down/none/low' });
  assert.deepEqual([opened, store.get().hazard, store.get().configuration], [2, 'H2', 'down/none/low']);
  await actions.follow({ ...NOWHERE, route: 'r', rig: 'b', stance: 'empty' });
  assert.deepEqual([opened, store.get().inputs.rig.id, store.get().inputs.stance], [4, 'b', 'empty']);
});

test('a stance the new rig does not have is dropped, one it has is kept', async () => {
  const { store, actions } = page();
  await actions.openSamples({ stance: 'empty' });
  assert.equal(store.get().inputs.stance, 'empty');
  await actions.openFile('rig', file('own.json', '{"stances":[{"name":"loaded"}]}'));
  assert.equal(store.get().inputs.stance, null);
});

/** A store with the sample's report, whose plan departs in another configuration than the best of the report. */
const departing = key => ({ status: 'ready', problem: null, data: { steps: [{ step: 'depart', set: { configuration: key } }] } });

test('the sheet opens in the configuration the plan departs with, until somebody chooses one', async () => {
  const { store, actions } = page();
  await actions.openSamples();
  const first = store.get().configuration;
  const other = store.get().report.configurations.map(c => c.key).find(key => key !== first);
  actions.openOnPlan(departing(other));
  assert.equal(store.get().configuration, other);
  await actions.chooseConfiguration(first);
  actions.openOnPlan(departing(other));
  assert.equal(store.get().configuration, first, 'what was chosen stays');
});

test('a link\'s configuration is chosen, and a plan without a way in leaves the sheet as it is', async () => {
  const { store, actions } = page();
  await actions.openSamples({ configuration: 'down/none/low' });
  actions.openOnPlan(departing('down/none/high'));
  assert.equal(store.get().configuration, 'down/none/low');
  const { store: plain, actions: its } = page();
  await its.openSamples();
  const before = plain.get().configuration;
  its.openOnPlan({ status: 'ready', problem: null, data: { steps: [] } });
  its.openOnPlan({ status: 'loading', problem: null, data: null });
  its.openOnPlan(departing('of/another/rig'));
  assert.equal(plain.get().configuration, before);
});

test('another route carries nothing over; another rig keeps what was chosen', async () => {
  const { store, actions } = page();
  await actions.openSamples({ hazard: 'H1', configuration: 'down/none/low' });
  await actions.openFile('rig', file('other.json', '{"cresthaul":"rig/1","stances":[{"name":"loaded"}]}'));
  const { hazard, configuration, chosen } = store.get();
  assert.deepEqual([hazard, configuration, chosen], ['H1', 'down/none/low', true]);
  await actions.openFile('route', file('other.json', '{"cresthaul":"route/1","name":"Other"}'));
  assert.deepEqual([store.get().hazard, store.get().configuration, store.get().chosen], [null, 'up/none/low', false]);
});

test('a track in the place of a route file is told what to do with it, and the sheet stays', async () => {
  const { store, actions } = page();
  await actions.openSamples();
  const { inputs } = store.get();
  for (const [name, text] of [['drive.gpx', '<gpx/>'], ['office.KML', '<kml/>'], ['points.csv', 'lon,lat'],
    ['noname', '\ufeff <?xml version="1.0"?>'], ['packed.bin', 'PK\u0003\u0004']]) {
    await actions.openFile('route', file(name, text));
    assert.match(store.get().problem.title, /is a track/, name);
    assert.match(store.get().problem.remedy, /under Import tracks and maps/, name);
    assert.equal(store.get().inputs, inputs);
  }
  await actions.openFile('route', file('plain.geojson', ' {"cresthaul":"route/1","name":"Other"}'));
  assert.equal(store.get().problem, null);
});

test('a base map that is opened is drawn beneath the route on show, and goes with it', async () => {
  let checks = 0;
  const { store, actions } = page({ check: async () => { checks += 1; return report(); } });
  await actions.openSamples();
  const map = { cresthaul: 'basemap/1', attribution: 'invented', whole: true, features: [] };
  await actions.openFile('route', file('valley.basemap.geojson', JSON.stringify(map)));

  assert.deepEqual(store.get().baseMap, map);
  assert.deepEqual([store.get().inputs.route.id, store.get().busy, checks], ['r', false, 1]);

  await actions.openFile('route', file('other.json', '{"cresthaul":"route/1","name":"other"}'));
  assert.equal(store.get().baseMap, null);
});

test('the base map of a sample is asked for only where there is one', async () => {
  const asked = [];
  const map = { cresthaul: 'basemap/1', attribution: 'invented', whole: true, features: [] };
  const sampleMap = async id => { asked.push(id); return map; };
  const plain = page({ sampleMap });
  await plain.actions.openSamples();
  assert.deepEqual([asked, plain.store.get().baseMap], [[], null]);

  const mapped = page({
    sampleMap,
    samples: async () => ({
      routes: [{ id: 'r', name: 'Route', map: true }], rigs: [{ id: 'a', name: 'Rig A', map: false }],
    }),
  });
  await mapped.actions.openSamples();
  await new Promise(resolve => { setTimeout(resolve); });
  assert.deepEqual([asked, mapped.store.get().baseMap], [['r'], map]);
});
