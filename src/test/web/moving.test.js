import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';
import { Problem } from '../../../web/exchange/api.js';
import { createActions } from '../../../web/page/actions.js';
import { createLoadActions } from '../../../web/page/loadactions.js';
import { createMoving, isOutdated, keptFile, movedPieces, shownInputs } from '../../../web/rig/moving.js';
import { createProjectActions } from '../../../web/project/projects.js';
import { createRigActions } from '../../../web/rig/rigactions.js';
import { movedWords } from '../../../web/rig/piecewords.js';
import { createStore, initialState } from '../../../web/page/state.js';
import { createUndoing, isUnsavedFile } from '../../../web/project/undoing.js';
import { passage, report } from './fixtures.js';

const RIG = readFileSync(new URL('../../../sample-routes/lowbed-loaded.rig.json', import.meta.url), 'utf8');
const LINE = { name: 'Invented', lengthM: 10000, line: [], hazards: [] };
const inches = value => value * 25.4e9;
const settled = () => new Promise(resolve => { setTimeout(resolve, 0); });

/** Timers that run when they are told to. */
function handTimers() {
  const waiting = new Map();
  let next = 1;
  return {
    set: (call, after) => { waiting.set(next, { call, after }); return next++; },
    clear: timer => waiting.delete(timer),
    /** Runs those that wait at most so long. */
    run: async most => {
      for (const [timer, { call, after }] of [...waiting].filter(([, one]) => one.after <= most)) {
        waiting.delete(timer);
        call();
      }
      await settled();
    },
    count: () => waiting.size,
  };
}

async function page(judge = async () => {}) {
  const store = createStore(initialState());
  const asked = { checks: [], loads: [], saves: [] };
  const answer = (id, revision) => ({
    id, name: 'p', revision, saved: '2026-01-01T00:00:00Z', files: [{ sha256: 'a' }, { sha256: 'b' }],
  });
  const api = {
    samples: async () => ({ routes: [{ id: 'r', name: 'Route' }], rigs: [{ id: 'g', name: 'Rig' }] }),
    sample: async kind => (kind === 'routes' ? '{"cresthaul":"route/1"}' : RIG),
    route: async () => LINE,
    check: async inputs => { asked.checks.push(inputs.rig.text); await judge(inputs); return report(); },
    loads: async inputs => { asked.loads.push(inputs.rig.text); return { verdict: 'clear', sheet: {} }; },
    passage: async () => passage(),
    corner: async () => passage(),
    projects: async () => ({ projects: [] }),
    removedProjects: async () => ({ removed: [] }),
    beginProject: async () => answer('p', 1),
    saveProject: async (id, on, body) => { asked.saves.push(body); return answer(id, on + 1); },
  };
  const timers = handTimers();
  const saving = handTimers();
  const checking = createActions(store, api);
  const undoing = createUndoing(store, checking.openRead);
  const loading = createLoadActions(store, api);
  const moving = createMoving(store, {
    undoing, open: checking.openRead, drawLoads: loading.drawLoads, told: shift => movedWords(shift, 'us'),
  }, timers);
  await checking.openSamples();
  const actions = {
    ...checking, ...loading, ...undoing.actions, ...moving, ...createRigActions(store, api, undoing),
    ...createProjectActions(store, api, checking, saving),
  };
  return { store, actions, asked, timers, saving };
}

const rigText = store => store.get().inputs.rig.text;

test('a piece that is moved makes all else outdated until it is answered; the loads come first', async () => {
  const { store, actions, asked, timers } = await page();
  actions.movePiece(0, 0, inches(-6));
  assert.ok(isOutdated(store.get()));
  assert.equal(rigText(store), RIG);
  assert.notEqual(shownInputs(store.get()).rig.text, RIG);
  actions.movePiece(0, 0, inches(-12));
  await timers.run(120);
  assert.deepEqual(asked.loads, [shownInputs(store.get()).rig.text]);
  assert.ok(isOutdated(store.get()));
  await timers.run(450);
  assert.ok(!isOutdated(store.get()));
  assert.equal(asked.checks.length, 2);
  assert.equal(JSON.parse(rigText(store)).stances[0].weights.pieces[0].cg.x, '-26 ft');
  assert.deepEqual(movedPieces(store.get().whatIf).map(({ name, shift }) => [name, shift]),
    [['wheel loader', inches(-12)]]);
  assert.equal(store.get().revisions.length, 0);
});

test('the ends hold, and back at the start there is no what-if', async () => {
  const { store, actions, timers, asked } = await page();
  actions.movePiece(0, 0, inches(500));
  assert.equal(store.get().whatIf.shifts['0/0'], inches(9));
  actions.movePiece(0, 0, inches(-500));
  assert.equal(store.get().whatIf.shifts['0/0'], inches(-12));
  actions.movePiece(0, 0, 0);
  assert.equal(store.get().whatIf, null);
  assert.equal(timers.count(), 0);
  assert.equal(asked.checks.length, 1);
});

test('dropped, the rig is what it was, to the byte, and nothing is there to undo', async () => {
  const { store, actions, timers } = await page();
  actions.movePiece(0, 0, inches(-6));
  await timers.run(450);
  assert.notEqual(rigText(store), RIG);
  actions.dropMoved();
  assert.ok(isOutdated(store.get()));
  await settled();
  assert.equal(rigText(store), RIG);
  assert.equal(store.get().whatIf, null);
  assert.deepEqual(store.get().revisions, []);
});

test('two pieces kept are one change, undone and made again', async () => {
  const { store, actions, timers } = await page();
  actions.movePiece(0, 0, inches(-6));
  actions.movePiece(0, 1, inches(-4));
  await timers.run(450);
  const tried = rigText(store);
  assert.ok(await actions.keepMoved());
  assert.equal(rigText(store), tried);
  assert.equal(store.get().whatIf, null);
  assert.deepEqual(store.get().revisions.map(({ kind, what }) => [kind, what]), [['rig', 'moving wheel loader 6 in '
    + 'farther forward; moving chain box on the gooseneck 4 in farther forward']]);
  assert.ok(isUnsavedFile(store.get(), 'rig'));
  await actions.undoRevision();
  assert.equal(rigText(store), RIG);
  await actions.redoRevision();
  assert.equal(rigText(store), tried);
});

test('undo gives up what is only tried, and leaves what was kept before', async () => {
  const { store, actions, timers } = await page();
  actions.movePiece(0, 0, inches(-6));
  await timers.run(450);
  await actions.keepMoved();
  const first = rigText(store);
  actions.movePiece(0, 0, inches(-3));
  await timers.run(450);
  assert.equal(store.get().revisions.length, 1);
  await actions.undoRevision();
  await settled();
  assert.equal(rigText(store), first);
  assert.equal(store.get().revisions.length, 1);
  await actions.undoRevision();
  assert.equal(rigText(store), RIG);
});

test('what is only tried is never saved in the project; kept, it is', async () => {
  const { store, actions, timers, saving, asked } = await page();
  await actions.beginProject('p');
  actions.movePiece(0, 0, inches(-6));
  await timers.run(450);
  await saving.run(5000);
  assert.deepEqual(asked.saves, []);
  assert.equal(keptFile(store.get().inputs.rig).text, RIG);
  await actions.keepMoved();
  await saving.run(5000);
  assert.equal(asked.saves.length, 1);
  assert.match(asked.saves[0], /moving wheel loader 6 in farther forward/);
});

test('another change of the rig waits until it is kept or dropped', async () => {
  const { store, actions, timers } = await page();
  actions.movePiece(0, 0, inches(-6));
  await timers.run(450);
  const tried = rigText(store);
  assert.equal(actions.setRigRow('tractor/drive-1/along', '4 ft 5 in'), null);
  await settled();
  assert.equal(rigText(store), tried);
  assert.match(store.get().problem.title, /what-if/);
});

test('another rig opened ends it', async () => {
  const { store, actions } = await page();
  actions.movePiece(0, 0, inches(-6));
  await actions.openRead('rig', { id: null, name: 'other', text: '{}', json: {} });
  assert.equal(store.get().whatIf, null);
});

test('refused or not answered, it stays outdated, and is asked again', async () => {
  let down = true;
  const { store, actions, timers } = await page(async ({ rig }) => {
    if (down && rig.text !== RIG) {
      throw new Problem({ title: 'The server does not answer', passing: true });
    }
  });
  actions.movePiece(0, 0, inches(-6));
  await timers.run(450);
  assert.ok(isOutdated(store.get()));
  assert.equal(rigText(store), RIG);
  down = false;
  await actions.retry();
  assert.ok(!isOutdated(store.get()));
});
