import assert from 'node:assert/strict';
import test from 'node:test';
import { createActions } from '../../../web/page/actions.js';
import { decode, encode } from '../../../web/page/address.js';
import { Problem } from '../../../web/exchange/api.js';
import { createProjectActions } from '../../../web/project/projects.js';
import { createStore, initialState } from '../../../web/page/state.js';
import { passage, report } from './fixtures.js';

const LINE = { name: 'Invented', lengthM: 10000, line: [], hazards: [] };
const ROUTE = '{"cresthaul":"route/1",  "name":"Sample"}';
const RIG = '{"cresthaul":"rig/1","stances":[]}';

/** Timers that go off when a test says so. */
function clock() {
  let due = null;
  return {
    timers: {
      set: (call, after) => {
        assert.ok(after <= 1000 || after === 3000, 'within 2 s with all that follows, or again after a failure');
        due = call;
        return 1;
      },
      clear: () => { due = null; },
    },
    waits: () => due !== null,
    tick: async () => {
      const call = due;
      due = null;
      await call?.();
    },
  };
}

/** A server that keeps projects in memory; a file's hash is a number of its own. */
function keeper() {
  const texts = [];
  const revisions = [];
  const bodies = [];
  const take = body => {
    const read = JSON.parse(body);
    const files = read.files.map(({ kind, name, sha256, document }) => {
      if (sha256 === undefined) {
        assert.ok(document !== undefined);
        // As the server has it: the bytes between the colon and the brace.
        const before = JSON.stringify({ kind, name }).slice(0, -1);
        texts.push([ROUTE, RIG, OTHER_RIG].find(text => body.includes(`${before},"document":${text}}`)));
      }
      return { kind, name, sha256: sha256 ?? String(texts.length - 1), bytes: 1 };
    });
    bodies.push(body);
    const revision = {
      id: 'p1', revision: revisions.length + 1, name: read.name, author: read.author ?? '', view: read.view ?? '',
      saved: '2026-11-30T06:00:00Z', reason: read.reason, files,
    };
    revisions.push(revision);
    return revision;
  };
  return {
    revisions, bodies,
    api: {
      projects: async () => ({ projects: revisions.slice(-1) }),
      removedProjects: async () => ({ removed: [] }),
      project: async () => revisions.at(-1),
      projectRevision: async (id, number) => revisions[number - 1],
      projectRevisions: async () => ({ revisions: [...revisions] }),
      keptFile: async sha256 => texts[Number(sha256)],
      beginProject: async body => take(body),
      saveProject: async (id, on, body) => {
        if (on !== revisions.length) {
          throw new Problem({ title: 'Somebody has saved since', status: 412 });
        }
        return take(body);
      },
    },
  };
}

const OTHER_RIG = '{"cresthaul":"rig/1","name":"Other","stances":[]}';
const rigFile = text => ({ id: null, name: 'other.rig.json', text, json: JSON.parse(text) });

async function page(overrides = {}, server = keeper()) {
  const store = createStore();
  const time = clock();
  const api = {
    samples: async () => ({ routes: [{ id: 'r', name: 'Route' }], rigs: [{ id: 'a', name: 'Rig A' }] }),
    sample: async kind => (kind === 'routes' ? ROUTE : RIG),
    route: async () => LINE,
    check: async () => report(),
    passage: async () => passage(),
    ...server.api,
    ...overrides,
  };
  const checking = createActions(store, api);
  const actions = { ...checking, ...createProjectActions(store, api, checking, time.timers) };
  return { store, actions, time, server };
}

test('what is open is kept with its own text, and saved by itself when it changes', async () => {
  const { store, actions, time, server } = await page();
  await actions.openSamples();
  actions.setAuthor('A. Planner');
  await actions.beginProject('Mill road');
  assert.equal(store.get().project.status, 'saved');
  assert.ok(server.bodies[0].includes(`"document":${ROUTE}}`));
  assert.equal(server.revisions[0].author, 'A. Planner');
  assert.equal(time.waits(), false, 'nothing has changed');

  await actions.openRead('rig', rigFile(OTHER_RIG));
  assert.ok(time.waits());
  await time.tick();
  assert.equal(server.revisions.length, 2);
  assert.equal(server.revisions[1].reason, 'rig other.rig.json');
  assert.equal(store.get().project.revision, 2);
  assert.ok(!server.bodies[1].includes(ROUTE), 'the route is named by its hash');
  assert.ok(server.bodies[1].includes(OTHER_RIG));
});

test('margins and what is asked of the plan are changes; where somebody looks is none', async () => {
  const { store, actions, time, server } = await page();
  await actions.openSamples();
  await actions.beginProject('Mill road');
  await actions.selectHazard('H2');
  await time.tick();
  assert.equal(server.revisions.length, 1);
  await actions.setMargins({ ground: '3 in' });
  await time.tick();
  store.set({ planAsked: { ...store.get().planAsked, setAside: ['H1'] } });
  await time.tick();
  assert.deepEqual(server.revisions.map(({ reason }) => reason), ['begun', 'margins', 'what is asked of the plan']);
  assert.deepEqual(decode(server.revisions[2].view).plan.setAside, ['H1']);
});

test('a page that is opened anew finds everything', async () => {
  const first = await page();
  await first.actions.openSamples();
  await first.actions.setMargins({ ground: '3 in' });
  await first.actions.selectHazard('H2');
  await first.actions.beginProject('Mill road');

  const { store, actions, time, server } = await page({}, first.server);
  await actions.openProject('p1');
  const { inputs, project, hazard } = store.get();
  assert.equal(inputs.route.text, ROUTE);
  assert.equal(inputs.rig.text, RIG);
  assert.deepEqual(inputs.margins, { ground: '3 in' });
  assert.equal(hazard, 'H2');
  assert.equal(project.status, 'saved');
  await time.tick();
  assert.equal(server.revisions.length, 1, 'opening changes nothing');
  assert.equal(encode(store.get()).split('&')[0], '#project=p1');
  assert.equal(decode('#project=p1').project, 'p1');
});

test('while the server is away the page says so, and saves when it is back', async () => {
  let away = true;
  const server = keeper();
  const { store, actions, time } = await page({
    saveProject: async (...asked) => {
      if (away) {
        throw new Problem({ title: 'The server does not answer' });
      }
      return server.api.saveProject(...asked);
    },
  }, server);
  await actions.openSamples();
  await actions.beginProject('Mill road');
  await actions.openRead('rig', rigFile(OTHER_RIG));
  await time.tick();
  assert.equal(store.get().project.status, 'offline');
  assert.ok(time.waits(), 'it tries again');
  await time.tick();
  assert.equal(server.revisions.length, 1);
  away = false;
  await time.tick();
  assert.equal(store.get().project.status, 'saved');
  assert.equal(server.revisions.length, 2);
});

test('saved by somebody else, nothing is saved over it until a person decides', async () => {
  const { store, actions, time, server } = await page();
  await actions.openSamples();
  await actions.beginProject('Mill road');
  server.revisions.push({ ...server.revisions[0], revision: 2, reason: 'by somebody else' });
  await actions.openRead('rig', rigFile(OTHER_RIG));
  await time.tick();
  assert.equal(store.get().project.status, 'saved since');
  await actions.setMargins({ ground: '3 in' });
  assert.equal(time.waits(), false);
  assert.equal(server.revisions.length, 2);

  await actions.saveOnTop();
  assert.equal(store.get().project.status, 'saved');
  assert.deepEqual(server.revisions.map(({ reason }) => reason), ['begun', 'by somebody else', 'saved on top of it']);
});

test('an earlier revision is looked at without saving, and restored as a new one', async () => {
  const { store, actions, time, server } = await page();
  await actions.openSamples();
  await actions.beginProject('Mill road');
  await actions.openRead('rig', rigFile(OTHER_RIG));
  await time.tick();
  await actions.listRevisions();
  assert.deepEqual(store.get().project.revisions.map(({ revision }) => revision), [2, 1]);

  await actions.openProject('p1', 1);
  assert.equal(store.get().inputs.rig.text, RIG);
  assert.deepEqual([store.get().project.revision, store.get().project.latest], [1, 2]);
  await actions.setMargins({ ground: '3 in' });
  assert.equal(time.waits(), false, 'what is only looked at is not saved');
  await actions.setMargins(null);

  await actions.restoreRevision();
  assert.equal(server.revisions.length, 3);
  assert.equal(server.revisions[2].reason, 'restored revision 1');
  assert.deepEqual(server.revisions[2].files.map(({ sha256 }) => sha256), server.revisions[0].files.map(f => f.sha256));
  assert.equal(store.get().project.status, 'saved');
});

test('a project whose check fails is not saved over with what was open before', async () => {
  const first = await page();
  await first.actions.openSamples();
  await first.actions.beginProject('Mill road');
  let fails = true;
  const { store, actions, time, server } = await page({
    check: async () => {
      if (fails) {
        throw new Problem({ title: 'busy', status: 503 });
      }
      return report();
    },
  }, first.server);
  await actions.openProject('p1');
  assert.equal(store.get().project.status, 'opening');
  assert.equal(time.waits(), false);
  fails = false;
  await actions.retry();
  assert.equal(store.get().project.status, 'saved');
  assert.equal(server.revisions.length, 1);
});

test('closed, a project is left alone', async () => {
  const { store, actions, time, server } = await page();
  await actions.openSamples();
  await actions.beginProject('Mill road');
  await actions.closeProject();
  await actions.openRead('rig', rigFile(OTHER_RIG));
  assert.equal(time.waits(), false);
  assert.equal(server.revisions.length, 1);
  assert.equal(store.get().projects.length, 1);
  assert.deepEqual(encode({ ...initialState(), project: { id: 'p1' } }), '#project=p1');
});
