import assert from 'node:assert/strict';
import test from 'node:test';
import { createActions } from '../../../web/page/actions.js';
import { checkRequest, Problem } from '../../../web/exchange/api.js';
import { createLimitsActions } from '../../../web/limits/limitsactions.js';
import { beginning, beyondForm, formOf, hasLimits, limitsOf, NO_LIMITS, withForm } from '../../../web/limits/limits.js';
import { compareVersions } from '../../../web/merge/versions.js';
import { createProjectActions } from '../../../web/project/projects.js';
import { createStore } from '../../../web/page/state.js';
import { createUndoing } from '../../../web/project/undoing.js';
import { passage, report } from './fixtures.js';

const PERMIT = `{ "cresthaul": "limits/1", "name": "trial permit",   "source": "permit 0", "date": "2026-11-02",
  "gross": "140,000 lb", "axle": "24,000 lb", "note": "Invented.",
  "groups": [{"axles": 2,   "weight": "46,000 lb"}, {"axles": 3, "weight": "60,000 lb"}], "leastShares": {"steer": "11 %"} }`;
const ROUTE = '{"cresthaul":"route/1","limits":{"name":"own","source":"s","date":"2026-01-01","axle":"20,000 lb"}}';
const RIG = '{"cresthaul":"rig/1","stances":[]}';
const LINE = { name: 'Invented', lengthM: 10000, line: [], hazards: [] };
const disk = (text, name = 'permit.limits.json') => new File([text], name);

async function page(overrides = {}) {
  const store = createStore();
  const asked = [];
  const saved = [];
  const api = {
    samples: async () => ({ routes: [{ id: 'r', name: 'Route' }, { id: 's', name: 'Other' }],
      rigs: [{ id: 'g', name: 'Rig' }] }),
    sample: async (kind, id) => (kind === 'rigs' ? RIG : id === 's' ? '{"cresthaul":"route/1"}' : ROUTE),
    route: async () => LINE,
    check: async inputs => {
      asked.push(checkRequest(inputs));
      if (inputs.limits?.text.includes('heavy')) {
        throw new Problem({ title: 'refused', problems: [{ pointer: '/limits/axle', message: 'no weight' }] });
      }
      return report();
    },
    passage: async () => passage(),
    projects: async () => ({ projects: [] }),
    removedProjects: async () => ({ removed: [] }),
    beginProject: async body => {
      saved.push(body);
      const files = JSON.parse(body).files.map(({ kind, name }) => ({ kind, name, sha256: kind }));
      return { id: 'p', name: 'P', revision: 1, saved: '', files };
    },
    ...overrides,
  };
  const checking = createActions(store, api);
  const undoing = createUndoing(store, checking.openRead);
  const actions = {
    ...checking, ...undoing.actions, ...createLimitsActions(store, undoing), ...createProjectActions(store, api, checking),
  };
  await actions.openSamples();
  return { store, actions, asked, saved };
}

test('a limits file goes to the check as it is written, and is taken out and brought back by undo', async () => {
  const { store, actions, asked } = await page();
  assert.ok(!asked.at(-1).includes('"limits":{ "cresthaul"'));
  assert.equal(await actions.openLimits(disk(PERMIT)), true);
  assert.ok(asked.at(-1).endsWith(`,"limits":${PERMIT}}`), asked.at(-1));
  assert.equal(await actions.removeLimits(), true);
  assert.equal(asked.at(-1), `{"route":${ROUTE},"rig":${RIG}}`);
  await actions.undoRevision();
  assert.equal(limitsOf(store.get().inputs).text, PERMIT);
  await actions.undoRevision();
  assert.equal(hasLimits(store.get().inputs), false);
  await actions.redoRevision();
  assert.equal(limitsOf(store.get().inputs).text, PERMIT);
});

test('limits that are refused leave those in force; what is no JSON and what is a track never get there', async () => {
  const { store, actions, asked } = await page();
  await actions.openLimits(disk(PERMIT));
  assert.equal(await actions.changeLimits('permit', withForm(PERMIT, { ...formOf(JSON.parse(PERMIT)), axle: 'heavy' })), false);
  assert.equal(store.get().problem.problems[0].pointer, '/limits/axle');
  assert.equal(limitsOf(store.get().inputs).text, PERMIT);
  const before = asked.length;
  assert.equal(await actions.openLimits(disk('{"name"')), false);
  assert.match(store.get().problem.title, /permit\.limits\.json is not JSON/);
  await actions.openLimits(disk('<gpx/>', 'drive.gpx'));
  assert.match(store.get().problem.title, /is a track, not a limits file/);
  assert.equal(asked.length, before);
});

test('another route is not judged by limits that were opened for this one; another rig is', async () => {
  const { store, actions } = await page();
  await actions.openLimits(disk(PERMIT));
  await actions.openSample('rig', 'g');
  assert.equal(limitsOf(store.get().inputs).text, PERMIT);
  await actions.openSample('route', 's');
  assert.equal(hasLimits(store.get().inputs), false);
  assert.match(store.get().notice, /permit\.limits\.json is no longer in force/);
  assert.deepEqual(store.get().revisions, []);
});

test('they are saved with the project', async () => {
  const { actions, saved } = await page();
  await actions.openLimits(disk(PERMIT));
  await actions.beginProject('P');
  assert.ok(saved[0].includes(`{"kind":"limits","name":"permit.limits.json","document":${PERMIT}}`), saved[0]);
});

test('the form writes what was changed, and every other byte stays', () => {
  const form = formOf(JSON.parse(PERMIT));
  assert.equal(withForm(PERMIT, form), PERMIT);
  assert.equal(withForm(PERMIT, { ...form, gross: ' 150,000 lb ' }), PERMIT.replace('140,000 lb', '150,000 lb'));
  assert.equal(withForm(PERMIT, { ...form, gross: '' }), PERMIT.replace(',\n  "gross": "140,000 lb"', ''));
  const groups = [{ axles: '2', weight: '44,000 lb' }, { axles: '', weight: '' }, { axles: 'three', weight: '1 t' }];
  assert.deepEqual(JSON.parse(withForm(PERMIT, { ...form, groups })).groups,
    [{ axles: 2, weight: '44,000 lb' }, { axles: 'three', weight: '1 t' }]);
  assert.equal('groups' in JSON.parse(withForm(PERMIT, { ...form, groups: [] })), false);
  assert.deepEqual(beyondForm(JSON.parse(PERMIT)), ['least shares']);
});

test('it begins with the file in force, else with what the route file says, else empty', () => {
  const inputs = { route: { text: ROUTE, json: JSON.parse(ROUTE) }, limits: NO_LIMITS };
  assert.deepEqual(JSON.parse(beginning(inputs).text), { cresthaul: 'limits/1', ...JSON.parse(ROUTE).limits });
  const own = { id: null, name: 'a', text: PERMIT, json: JSON.parse(PERMIT) };
  assert.equal(beginning({ ...inputs, limits: own }).text, PERMIT);
  assert.equal(formOf(JSON.parse(beginning({ route: { text: '{}', json: {} } }).text)).gross, '');
});

test('two versions of a project: limits of one side alone are put in, none is a side too', () => {
  const version = limits => ({ name: 'P', view: '', files: limits ? { limits } : {} });
  const added = compareVersions([version(), version(PERMIT), version()], 'us');
  assert.deepEqual(added.differences.map(({ where, by }) => [where, by]), [['Limits file', 'mine']]);
  assert.equal(added.put({}).limits, PERMIT);
  const gone = compareVersions([version(PERMIT), version(), version(PERMIT)], 'us');
  assert.equal(gone.put({}).limits, undefined);
  const both = compareVersions([version(PERMIT), version(), version(`${PERMIT} `)], 'us');
  assert.deepEqual(both.differences.map(({ by }) => by), ['both']);
});
