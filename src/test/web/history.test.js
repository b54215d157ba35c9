import assert from 'node:assert/strict';
import test from 'node:test';
import { Problem } from '../../../web/exchange/api.js';
import { createActions } from '../../../web/page/actions.js';
import {
  backward, forward, markOf, readHistory, spliceOf, stepsAround, writeHistory,
} from '../../../web/project/history.js';
import { createHistoryKeeping } from '../../../web/project/historykeeping.js';
import { createProjectActions } from '../../../web/project/projects.js';
import { createRigActions } from '../../../web/rig/rigactions.js';
import { createStore, initialState } from '../../../web/page/state.js';
import { createUndoing } from '../../../web/project/undoing.js';
import { passage, report } from './fixtures.js';

const LINE = { name: 'Invented', lengthM: 10000, line: [], hazards: [] };
const RIG = `{ "cresthaul":"rig/1","name":"Rig","stances":[ {"name":"loaded","tractor":{"steer":{"x":"0 m","radius":"0.5 m"},
  "drive":{"axles":[{"x":"-4 m","radius":"0.5 m"}, {"x":"-5.3 m","radius":"0.5 m"}]}},"trailer":{}}]}`;
const ROUTE = '{"cresthaul":"route/1"}';
const SECOND = 'tractor/drive-1/along';
const settled = () => new Promise(resolve => { setTimeout(resolve, 0); });
const file = (text, name = 'f', id = null) => ({ id, name, text, json: JSON.parse(text) });

/** Storage with room for so many characters; none at all where room is null. */
function storageOf(room = Infinity) {
  const kept = new Map();
  return {
    kept,
    getItem: key => { refuse(); return kept.get(key) ?? null; },
    setItem: (key, text) => {
      refuse();
      const others = [...kept].filter(([other]) => other !== key).reduce((sum, [, one]) => sum + one.length, 0);
      if (others + text.length > room) {
        throw new Error('full');
      }
      kept.set(key, text);
    },
    removeItem: key => { refuse(); kept.delete(key); },
  };
  function refuse() {
    if (room === null) {
      throw new Error('refused');
    }
  }
}

/** A server that keeps one project. */
function serverOf() {
  const files = new Map();
  const revisions = [];
  const add = body => {
    const { name, view, files: given } = JSON.parse(body);
    const texts = [...body.matchAll(/"document":/g)];
    assert.ok(texts.length <= given.length);
    const kept = given.map(({ kind, name: called, sha256, document }) => {
      const id = sha256 ?? `${kind}-${files.size}`;
      if (document) {
        // The text as it was sent: from behind the key to the brace that ends the file.
        const from = body.indexOf('"document":', body.indexOf(`"kind":"${kind}"`)) + '"document":'.length;
        const text = [...Array(body.length - from).keys()].map(k => body.slice(from, body.length - k - 1))
          .find(one => { try { JSON.parse(one); return true; } catch { return false; } });
        files.set(id, text);
      }
      return { kind, name: called, sha256: id };
    });
    revisions.push({ id: 'p', name, view: view ?? '', revision: revisions.length + 1, saved: '2026-01-01T00:00:00Z',
      files: kept });
    return revisions.at(-1);
  };
  return { files, revisions, add };
}

/** A page, opened anew: on what a server and a browser keep. */
async function page(server, storage, judge = () => {}) {
  const store = createStore(initialState());
  const api = {
    samples: async () => ({ routes: [{ id: 'r', name: 'Route' }], rigs: [{ id: 'g', name: 'Rig' }] }),
    sample: async kind => (kind === 'routes' ? ROUTE : RIG),
    route: async () => LINE,
    check: async inputs => { judge(inputs); return report(); },
    passage: async () => passage(),
    corner: async () => passage(),
    projects: async () => ({ projects: [] }),
    removedProjects: async () => ({ removed: [] }),
    project: async () => server.revisions.at(-1),
    projectRevision: async (id, number) => server.revisions[number - 1],
    keptFile: async sha256 => server.files.get(sha256),
    beginProject: async body => server.add(body),
    saveProject: async (id, on, body) => server.add(body),
  };
  const immediate = { set: call => { const one = setTimeout(call, 0); return one; }, clear: clearTimeout };
  const checking = createActions(store, api);
  const undoing = createUndoing(store, checking.openRead);
  const surveys = {
    check: checking.check, surveyDrafts: () => surveys.begun ?? [], cornerDrafts: () => [], movePiece() {},
    restoreSurveyDrafts: drafts => { surveys.restored = drafts; }, restoreCornerDrafts() {},
    resumeDrawing: drawn => { surveys.drawn = drawn; },
  };
  const actions = {
    ...checking, ...undoing.actions, ...createRigActions(store, api, undoing),
    ...createProjectActions(store, api, checking, immediate),
  };
  const history = createHistoryKeeping(store, storage, surveys, immediate);
  return { store, actions, history, surveys };
}

async function begun(server, storage, judge) {
  const one = await page(server, storage, judge);
  await one.actions.openSamples();
  await one.actions.beginProject('p');
  return one;
}

async function reopened(server, storage, judge) {
  const one = await page(server, storage, judge);
  await one.actions.openProject('p');
  await settled();
  return one;
}

const text = store => store.get().inputs.rig.text;

test('where two texts differ, there and back', () => {
  for (const [a, b] of [['abc', 'abXc'], ['', 'x'], ['x', ''], ['aaaa', 'aa'], ['same', 'same'], ['ab', 'ba'],
    ['"1 ft 2 in"', '"1 ft 12 in"'], ['\ud83d\ude00', '\ud83d\ude01']]) {
    const splice = JSON.parse(JSON.stringify(spliceOf(a, b)));
    assert.equal(forward(a, splice), b);
    assert.equal(backward(b, splice), a);
  }
  assert.deepEqual(spliceOf('"x": "4 ft"', '"x": "5 ft"'), { from: 6, was: '4', is: '5' });
  assert.notEqual(markOf('44'), markOf('46'));
});

test('120 changes, a reload, 120 undos: the bytes of the start; and 120 redos', async () => {
  const server = serverOf();
  const storage = storageOf();
  const first = await begun(server, storage);
  const texts = [];
  for (let n = 1; n <= 120; n++) {
    first.actions.setRigRow(SECOND, `${1300 + n} mm`);
    await settled();
    texts.push(text(first.store));
  }
  assert.equal(new Set(texts).size, 120);
  await first.actions.saveNow();
  first.history.writeHistory();
  assert.equal(server.files.get(server.revisions.at(-1).files[1].sha256), texts[119]);
  assert.ok(storage.kept.get('cresthaul.history.p').length < 60_000, 'changes are kept, not files');

  const again = await reopened(server, storage);
  assert.equal(again.store.get().revisions.length, 120);
  for (const expected of [...texts.slice(0, -1).reverse(), RIG]) {
    await again.actions.undoRevision();
    assert.equal(text(again.store), expected);
  }
  assert.equal(text(again.store), RIG);
  await again.actions.saveNow();
  again.history.writeHistory();

  const third = await reopened(server, storage);
  assert.equal(third.store.get().undone.length, 120);
  for (const expected of texts) {
    await third.actions.redoRevision();
    assert.equal(text(third.store), expected);
  }
});

test('a change that was not saved when the page was left is made again by redo', async () => {
  const server = serverOf();
  const storage = storageOf();
  const first = await begun(server, storage);
  first.actions.setRigRow(SECOND, '1.4 m');
  await settled();
  await first.actions.saveNow();
  first.store.set({ revisions: [...first.store.get().revisions] });
  const saved = text(first.store);
  first.actions.setRigRow(SECOND, '1.5 m');
  await settled();
  first.history.writeHistory();
  server.revisions.splice(2);

  const again = await reopened(server, storage);
  assert.equal(text(again.store), saved);
  assert.match(again.store.get().notice, /^One change was not saved/);
  await again.actions.redoRevision();
  assert.equal(JSON.parse(text(again.store)).stances[0].tractor.drive.axles[1].x, '-5.5 m');
});

test('a refused draft of the rig is there again', async () => {
  const server = serverOf();
  const storage = storageOf();
  const judge = ({ rig }) => {
    if (rig.text.includes('-9 m')) {
      throw new Problem({ title: 'The rig file has 1 mistake', problems: [] });
    }
  };
  const first = await begun(server, storage, judge);
  first.actions.setRigRow(SECOND, '5 m');
  await settled();
  assert.notEqual(first.store.get().rigDraft, null);
  await settled();
  first.history.writeHistory();
  const again = await reopened(server, storage, judge);
  assert.equal(JSON.parse(again.store.get().rigDraft.text).stances[0].tractor.drive.axles[1].x, '-9 m');
  assert.equal(text(again.store), RIG);
});

test('changed elsewhere, the steps lead to other files: undo begins anew, and says so', async () => {
  const server = serverOf();
  const storage = storageOf();
  const first = await begun(server, storage);
  first.actions.setRigRow(SECOND, '1.4 m');
  await settled();
  await first.actions.saveNow();
  first.history.writeHistory();
  const { files } = server.revisions.at(-1);
  server.files.set('other', RIG.replace('"Rig"', '"Other"'));
  server.revisions.push({ ...server.revisions.at(-1), revision: server.revisions.length + 1,
    files: [files[0], { ...files[1], sha256: 'other' }] });
  const again = await reopened(server, storage);
  assert.deepEqual(again.store.get().revisions, []);
  assert.match(again.store.get().notice, /changed elsewhere/);
});

test('no storage, or none left: undo goes on in the page, and it is said', async () => {
  for (const room of [null, 100]) {
    const one = await begun(serverOf(), storageOf(room));
    one.actions.setRigRow(SECOND, '1.4 m');
    await settled();
    await settled();
    one.history.writeHistory();
    assert.match(one.store.get().undoNote, /as long as this page is open/);
    await one.actions.undoRevision();
    assert.equal(text(one.store), RIG);
  }
});

test('the oldest steps go first, and how many is told', () => {
  const texts = Array.from({ length: 700 }, (_, n) => JSON.stringify({ n }));
  const revisions = texts.slice(1).map((one, k) => ({
    kind: 'rig', what: `change ${k}`, before: file(texts[k]), made: file(one), fresh: false,
  }));
  const all = writeHistory({ revisions, undone: [] }, {});
  assert.equal(all.left, 199);
  const { steps, at } = readHistory(all.text);
  assert.deepEqual([steps.length, at, steps[0].what], [500, 500, 'change 199']);
  const few = writeHistory({ revisions, undone: [] }, {}, 3000);
  assert.ok(few.left > 680 && few.text.length < 6000);
  // Nothing can be undone past a step that began with nothing.
  const cut = writeHistory({ revisions: [{ ...revisions[0], before: null }, revisions[1]], undone: [revisions[2]] }, {});
  assert.deepEqual([readHistory(cut.text).steps.length, readHistory(cut.text).at], [2, 1]);
});

test('route and rig together, from the middle of undone and made', () => {
  const [r0, r1, g0, g1, g2] = ['{"r":0}', '{"r":1}', '{"g":0}', '{"g":1}', '{"g":2}'].map(one => file(one));
  const steps = [
    { kind: 'rig', what: 'a', before: g0, made: g1, fresh: false },
    { kind: 'route', what: 'b', before: r0, made: r1, fresh: false },
    { kind: 'rig', what: 'c', before: g1, made: g2, fresh: true },
  ];
  const kept = readHistory(writeHistory({ revisions: steps.slice(0, 2), undone: [steps[2]] }, {}).text);
  const { revisions, undone, ahead, lost } = stepsAround(kept, { route: r1, rig: g1 });
  assert.deepEqual(revisions.map(one => [one.what, one.before.text, one.made.text]),
    [['a', g0.text, g1.text], ['b', r0.text, r1.text]]);
  assert.deepEqual(undone.map(one => [one.what, one.before.text, one.made.text, one.fresh]),
    [['c', g1.text, g2.text, true]]);
  assert.deepEqual([ahead, lost], [0, false]);
  // Another route: the rig's own steps are still good.
  const other = stepsAround(kept, { route: file('{"r":9}'), rig: g1 });
  assert.deepEqual([other.revisions.map(({ what }) => what), other.undone.length, other.lost], [['a'], 1, true]);
});

test('what is no history is none', () => {
  for (const text_ of ['', 'null', '{}', '{"cresthaul":"cresthaul-history/1"}',
    '{"cresthaul":"cresthaul-history/1","at":3,"steps":[]}', '{"cresthaul":"cresthaul-history/1","at":0,"steps":[{}]}']) {
    assert.equal(readHistory(text_), null);
  }
});

test('500 random sequences of edit, undo, redo and reload end equal in page and store', async () => {
  let seed = 20261130;
  const random = most => { seed = (seed * 1103515245 + 12345) % 2147483648; return Math.floor(seed / 65536) % most; };
  let reloads = 0;
  let undone = 0;
  for (let sequence = 0; sequence < 500; sequence++) {
    const server = serverOf();
    const storage = storageOf();
    let now = await begun(server, storage);
    // What a person expects, kept by the plainest means: every text there was, and where in it they are.
    let texts = [text(now.store)];
    let at = 0;
    for (let step = 0; step < 8; step++) {
      const act = random(10);
      if (act < 5) {
        now.actions.setRigRow(SECOND, `${1301 + random(600)} mm`);
        await settled();
        if (text(now.store) !== texts[at]) {
          texts = [...texts.slice(0, at + 1), text(now.store)];
          at += 1;
        }
      } else if (act < 7) {
        await now.actions.undoRevision();
        undone += at > 0 ? 1 : 0;
        at = Math.max(0, at - 1);
      } else if (act < 9) {
        await now.actions.redoRevision();
        at = Math.min(texts.length - 1, at + 1);
      } else {
        await now.actions.saveNow();
        now.history.writeHistory();
        now = await reopened(server, storage);
        reloads += 1;
      }
      assert.equal(text(now.store), texts[at], `sequence ${sequence}, step ${step}`);
    }
    await now.actions.saveNow();
    assert.equal(server.files.get(server.revisions.at(-1).files[1].sha256), texts[at], `sequence ${sequence}`);
  }
  assert.ok(reloads > 100 && undone > 100, `${reloads} reloads, ${undone} undone`);
});

test('without a project: 120 changes, a reload, 120 undos and redos; where nothing was changed nothing is kept', async () => {
  const storage = storageOf();
  const first = await page(serverOf(), storage);
  await first.actions.openSamples();
  await settled();
  assert.equal(first.store.get().work, null);
  assert.equal(first.history.findLeft(), null);
  const start = text(first.store);
  for (let n = 1; n <= 120; n++) {
    first.actions.setRigRow(SECOND, `${1300 + n} mm`);
    await settled();
  }
  const { work } = first.store.get();
  first.history.writeHistory();
  const last = text(first.store);

  const again = await page(serverOf(), storage);
  assert.equal(again.history.findLeft().id, work);
  assert.equal(await again.history.takeUp(work), true);
  assert.equal(text(again.store), last);
  assert.equal(again.store.get().work, work);
  for (let n = 1; n <= 120; n++) {
    await again.actions.undoRevision();
  }
  assert.equal(text(again.store), start);
  assert.equal(again.store.get().revisions.length, 0);
  await settled();
  again.history.writeHistory();

  const third = await page(serverOf(), storage);
  await third.history.takeUp(work);
  assert.equal(text(third.store), start);
  for (let n = 1; n <= 120; n++) {
    await third.actions.redoRevision();
  }
  assert.equal(text(third.store), last);
  await settled();

  // In a project it is the project's.
  await third.actions.beginProject('p');
  await settled();
  assert.equal(third.store.get().work, null);
  assert.equal(third.history.findLeft(), null);
});

test('what another page has left is not lost by other files, and no other text is taken for it', async () => {
  const storage = storageOf();
  const first = await page(serverOf(), storage);
  await first.actions.openSamples();
  first.actions.setRigRow(SECOND, '1310 mm');
  await settled();
  const { work } = first.store.get();
  const changed = text(first.store);
  first.history.writeHistory();
  await first.actions.openSample('rig', 'g');
  await settled();
  assert.equal(first.store.get().work, null, 'another rig is another beginning');
  const again = await page(serverOf(), storage);
  assert.equal(await again.history.takeUp('page-none'), false);
  assert.equal(again.store.get().inputs, null);
  await again.history.takeUp(work);
  assert.equal(text(again.store), changed);
  storage.setItem(`cresthaul.history.${work}`, '{"cresthaul":"cresthaul-work/1","history":"","files":{}}');
  assert.equal(await (await page(serverOf(), storage)).history.takeUp(work), false);
});

test('a line that is being drawn is drawn on after a reload, in no project as well', async () => {
  const storage = storageOf();
  const first = await page(serverOf(), storage);
  await first.actions.openSamples();
  const drawn = [[-101, 41], [-101.1, 41]];
  first.store.set({ lineEdit: { ...first.store.get().lineEdit, mode: 'new', drawn } });
  await settled();
  first.history.writeHistory();
  const { work } = first.store.get();
  const again = await page(serverOf(), storage);
  await again.history.takeUp(work);
  assert.deepEqual(again.surveys.drawn, { mode: 'new', drawn, hazard: first.store.get().hazard });
  // Given up, it is kept no longer.
  first.store.set({ lineEdit: { ...first.store.get().lineEdit, mode: 'off', drawn: [] } });
  assert.equal(first.history.findLeft(), null);
});
