import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';
import { Problem } from '../../../web/exchange/api.js';
import { createActions } from '../../../web/page/actions.js';
import { createRigActions, rigOnPage } from '../../../web/rig/rigactions.js';
import { createStore, initialState } from '../../../web/page/state.js';
import { createUndoing, isUnsavedFile } from '../../../web/project/undoing.js';
import { passage, report } from './fixtures.js';

const LINE = { name: 'Invented', lengthM: 10000, line: [], hazards: [] };
const rigText = second => `{ "cresthaul":"rig/1","name":"Rig","stances":[ {"name":"loaded","tractor":{"steer":{"x":"0 m","radius":"0.5 m"},
  "drive":{"axles":[{"x":"-4 m","radius":"0.5 m"}, {"x":"${second}","radius":"0.5 m"}]}},"trailer":{}}]}`;
const RIG = rigText('-5.3 m');
const ROUTE = '{"cresthaul":"route/1"}';
const SECOND = 'tractor/drive-1/along';
const settled = () => new Promise(resolve => { setTimeout(resolve, 0); });

/** A page with a rig in force. @param judge inputs → throws, or waits, where the server would */
async function page(judge = async () => {}, rig = RIG) {
  const store = createStore(initialState());
  const api = {
    samples: async () => ({ routes: [{ id: 'r', name: 'Route' }], rigs: [{ id: 'g', name: 'Rig' }] }),
    sample: async kind => (kind === 'routes' ? ROUTE : rig),
    route: async () => LINE,
    check: async inputs => { await judge(inputs); return report(); },
    passage: async () => passage(),
    corner: async () => passage(),
  };
  const checking = createActions(store, api);
  const undoing = createUndoing(store, checking.openRead);
  await checking.openSamples();
  return { store, actions: { ...checking, ...undoing.actions, ...createRigActions(store, api, undoing) } };
}

const text = store => store.get().inputs.rig.text;
const refusing = pattern => async ({ rig }) => {
  if (pattern.test(rig.text)) {
    throw new Problem({
      title: 'The rig file has 1 mistake',
      problems: [{ pointer: '/stances/0/tractor/drive/axles/1/x', code: 'order', message: 'No.', remedy: 'Other.' }],
    });
  }
};

test('a figure that is taken is in force, is one change, and is not saved', async () => {
  const { store, actions } = await page();
  assert.equal(actions.setRigRow(SECOND, '1.4 m'), null);
  assert.equal(rigOnPage(store.get()).text, rigText('-5.4 m'));
  await settled();
  assert.equal(text(store), rigText('-5.4 m'));
  assert.equal(store.get().rigDraft, null);
  assert.deepEqual(store.get().revisions.map(({ kind, what }) => [kind, what]),
    [['rig', 'drive axle 1 to drive axle 2, 1.4 m']]);
  assert.ok(isUnsavedFile(store.get(), 'rig'));
  assert.ok(!isUnsavedFile(store.get(), 'route'));
  actions.markSaved('rig', text(store));
  assert.ok(!isUnsavedFile(store.get(), 'rig'));
  await actions.undoRevision();
  assert.equal(text(store), RIG);
  assert.ok(!isUnsavedFile(store.get(), 'rig'));
});

test('120 changes are taken back one by one, to the very bytes, and made again', async () => {
  const { store, actions } = await page();
  const texts = [];
  for (let n = 1; n <= 120; n++) {
    actions.setRigRow(SECOND, `${1300 + n} mm`);
    await settled();
    texts.push(text(store));
  }
  assert.equal(new Set(texts).size, 120);
  assert.equal(texts[119], rigText('-5.42 m'));
  for (const expected of [...texts.slice(0, -1).reverse(), RIG]) {
    await actions.undoRevision();
    assert.equal(text(store), expected);
  }
  for (const expected of texts) {
    await actions.redoRevision();
    assert.equal(text(store), expected);
  }
});

test('what is refused is kept on the page, and what comes next builds on it', async () => {
  const { store, actions } = await page(refusing(/-5.9 m","radius":"0.5/));
  actions.setRigRow(SECOND, '1.9 m');
  await settled();
  assert.equal(text(store), RIG);
  assert.equal(rigOnPage(store.get()).text, rigText('-5.9 m'));
  assert.equal(store.get().problem.problems.length, 1);
  assert.deepEqual(store.get().revisions, []);
  actions.setRigRow('tractor/drive-1/height', '0.6 m');
  await settled();
  assert.equal(text(store), rigText('-5.9 m').replace('-5.9 m","radius":"0.5', '-5.9 m","radius":"0.6'));
  assert.deepEqual(store.get().revisions.map(({ what }) => what),
    ['drive axle 1 to drive axle 2, 1.9 m; hub of drive axle 2 over the ground, 0.6 m']);
  await actions.undoRevision();
  assert.equal(text(store), RIG);
});

test('a refused change is given up by its button, by undoing, in the list of problems, and by typing back', async () => {
  for (const giveUp of ['giveUpRig', 'undoRevision', 'dismissProblem', null]) {
    const { store, actions } = await page(refusing(/-5.9 m/));
    actions.setRigRow(SECOND, '1.4 m');
    await settled();
    actions.setRigRow(SECOND, '1.9 m');
    await settled();
    assert.notEqual(store.get().rigDraft, null);
    if (giveUp === null) {
      actions.setRigRow(SECOND, '1.4 m');
    } else {
      await actions[giveUp]();
    }
    assert.deepEqual([store.get().rigDraft, store.get().problem, store.get().candidate], [null, null, null]);
    assert.equal(text(store), rigText('-5.4 m'));
    assert.equal(store.get().revisions.length, 1);
  }
});

test('two figures typed before the first is checked are both there, as one change', async () => {
  let release = () => {};
  const { store, actions } = await page(({ rig }) => (rig.text === rigText('-5.4 m')
    ? new Promise(resolve => { release = resolve; }) : Promise.resolve()));
  actions.setRigRow(SECOND, '1.4 m');
  await settled();
  actions.setRigRow('tractor/steer/height', '0.55 m');
  await settled();
  release();
  await settled();
  assert.equal(text(store), rigText('-5.4 m').replace('"0 m","radius":"0.5 m"', '"0 m","radius":"0.55 m"'));
  assert.equal(store.get().revisions.length, 1);
  await actions.undoRevision();
  assert.equal(text(store), RIG);
});

test('a figure in force while the drawing of the passage is still asked for is a change of its own', async () => {
  const { store, actions } = await page();
  actions.setRigRow(SECOND, '1.4 m');
  while (store.get().inputs.rig.text === RIG) {
    await Promise.resolve();
  }
  actions.setRigRow(SECOND, '1.5 m');
  await settled();
  assert.deepEqual(store.get().revisions.map(({ before, made }) => [before.text, made.text]),
    [[RIG, rigText('-5.4 m')], [rigText('-5.4 m'), rigText('-5.5 m')]]);
});

test('changes of the route stay when another rig is opened, and those of the rig go', async () => {
  const { store, actions } = await page();
  actions.setRigRow(SECOND, '1.4 m');
  await settled();
  const { route } = store.get().inputs;
  store.set({ revisions: [...store.get().revisions, { kind: 'route', what: 'x', before: null, made: route, fresh: false }] });
  await actions.openRead('rig', { id: null, name: 'other', text: rigText('-6 m'), json: JSON.parse(rigText('-6 m')) });
  assert.deepEqual(store.get().revisions.map(({ kind }) => kind), ['route']);
});

test('a stopped check leaves the change on the page, to be checked again', async () => {
  let hang = true;
  const { store, actions } = await page(({ rig }) => (hang && rig.text !== RIG ? new Promise(() => {}) : Promise.resolve()));
  actions.setRigRow(SECOND, '1.4 m');
  await settled();
  actions.stopCheck();
  assert.equal(rigOnPage(store.get()).text, rigText('-5.4 m'));
  assert.equal(text(store), RIG);
  hang = false;
  await actions.checkRigAgain();
  assert.equal(text(store), rigText('-5.4 m'));
  assert.deepEqual(store.get().revisions.map(({ what }) => what), ['drive axle 1 to drive axle 2, 1.4 m']);
});

test('what is no length is refused before anything is asked', async () => {
  const { store, actions } = await page();
  assert.match(actions.setRigRow(SECOND, '44'), /not a length/);
  assert.equal(store.get().rigDraft, null);
});

const SAMPLE = readFileSync(new URL('../../../sample-routes/lowbed-loaded.rig.json', import.meta.url), 'utf8');

test('another rig is begun from an invented one under its name, and taken back', async () => {
  const { store, actions } = await page();
  assert.ok(await actions.beginRig({ source: 'g', name: 'Ours', bare: false }));
  assert.equal(store.get().inputs.rig.name, 'Ours');
  assert.equal(store.get().inputs.rig.json.name, 'Ours');
  assert.deepEqual(store.get().revisions.map(({ what, fresh }) => [what, fresh]), [['beginning Ours', true]]);
  await actions.undoRevision();
  assert.equal(text(store), RIG);
});

test('what a change asks for and does not get is said, and nothing is changed', async () => {
  const { store, actions } = await page(async () => {}, SAMPLE);
  assert.deepEqual(actions.changeRigBy('axle-on-trailer', { spacing: '4 ft 6 in' }),
    { key: 'radius', sentence: 'Hub over the ground is missing.' });
  assert.equal(store.get().rigDraft, null);
  assert.equal(actions.changeRigBy('axle-on-trailer', { spacing: ' 4 ft 6 in', radius: '17 in', weight: '2,500 lb ' }), null);
  await settled();
  assert.equal(store.get().inputs.rig.json.stances[0].trailer.axles.length, 4);
  assert.deepEqual(store.get().revisions.map(({ what }) => what), ['one more of the trailer axles']);
});

test('a piece from scale tickets is one change of the rig', async () => {
  const { store, actions } = await page(async () => {}, SAMPLE);
  assert.ok(await actions.putPiece(0, { kg: 31000, arm: 25 * 0.3048e12 }));
  const [piece] = store.get().inputs.rig.json.stances[0].weights.pieces;
  assert.deepEqual([piece.weight, piece.cg.x], ['68,343 lb', '-25 ft']);
  assert.deepEqual(store.get().revisions.map(({ what }) => what), ['wheel loader from scale tickets']);
});
