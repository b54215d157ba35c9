import assert from 'node:assert/strict';
import test from 'node:test';
import { createActions } from '../../../web/page/actions.js';
import { Problem } from '../../../web/exchange/api.js';
import { rigFileName, routeFileName } from '../../../web/exchange/filenames.js';
import {
  counts, countsInWords, noteAt, notesByDone, progressWords, rasterWords, where,
} from '../../../web/import/imported.js';
import { createImportActions } from '../../../web/import/importing.js';
import { createUndoing } from '../../../web/project/undoing.js';
import { createStore } from '../../../web/page/state.js';
import { passage, report } from './fixtures.js';

const LINE = { name: 'Invented', lengthM: 10000, line: [], hazards: [] };
const MADE = '{"cresthaul":"route/1","name":"Made"}';
const ANSWER = { preview: { name: 'Made', candidates: [], missing: [] }, line: LINE, route: MADE };

/** A page without a browser that has a sample open, and the forms it sent. */
async function page(overrides = {}) {
  const store = createStore();
  const sent = [];
  const stopped = [];
  const api = {
    samples: async () => ({ routes: [{ id: 'r', name: 'Route' }], rigs: [{ id: 'a', name: 'Rig A' }] }),
    sample: async kind => (kind === 'routes' ? '{"cresthaul":"route/1"}' : '{"cresthaul":"rig/1","stances":[]}'),
    route: async () => LINE,
    check: async () => report(),
    passage: async () => passage(),
    importRoute: async form => {
      sent.push(form);
      return ANSWER;
    },
    importProgress: async () => ({ state: 'tracks', file: null, time: 0, share: 0 }),
    stopImport: async id => { stopped.push(id); },
    ...overrides,
  };
  const checking = createActions(store, api);
  const undoing = createUndoing(store, checking.openRead);
  const actions = {
    ...checking, ...createImportActions(store, api, checking.openRead, undoing), ...undoing.actions,
  };
  await actions.openSamples();
  return { store, actions, sent, stopped };
}

const gpx = new File(['<gpx/>'], 'drive.gpx');

test('files that are dropped are previewed, and the route in force stays', async () => {
  const { store, actions, sent } = await page();
  const before = store.get().inputs;
  await actions.takeFiles([gpx, new File(['x'], 'county.osm.pbf')]);
  assert.equal(store.get().importing.status, 'ready');
  assert.equal(store.get().importing.data, ANSWER);
  assert.equal(store.get().inputs, before);
  assert.deepEqual(sent[0].getAll('file').map(file => file.name), ['drive.gpx', 'county.osm.pbf']);
  assert.equal(sent[0].get('update'), null);
  assert.equal(sent[0].get('order'), 'time');
});

test('what is kept comes into force in one step, and one step back brings the route that was there', async () => {
  const { store, actions } = await page();
  const before = store.get().inputs.route;
  await actions.takeFiles([gpx]);
  await actions.keepImport();
  assert.equal(store.get().inputs.route.text, MADE);
  assert.equal(store.get().importing.status, 'none');
  assert.equal(store.get().revisions.length, 1);
  await actions.undoRevision();
  assert.equal(store.get().inputs.route, before);
  assert.deepEqual(store.get().revisions, []);
});

const BASE = { cresthaul: 'basemap/1', attribution: 'invented', whole: true, features: [] };

test('a base map comes with the route, stays when a candidate is dismissed, and goes with it', async () => {
  const candidate = '{"source":"map","object":"way 1","raw":"x","state":"open"}';
  const route = `{"cresthaul":"route/1","features":[{"properties":{"id":"C1","name":"C","candidate":${candidate}}}]}`;
  const { store, actions } = await page({
    importRoute: async () => ({ ...ANSWER, route, baseMap: JSON.stringify(BASE) }),
  });
  assert.equal(store.get().baseMap, null);
  await actions.takeFiles([gpx]);
  assert.equal(store.get().baseMap, null);
  await actions.keepImport();
  assert.deepEqual(store.get().baseMap, BASE);
  await actions.decideCandidate({ index: 0, id: 'C1', name: 'C' }, { by: 'J. Doe', why: 'gone' });
  assert.deepEqual(store.get().baseMap, BASE);
  await actions.undoRevision();
  assert.deepEqual(store.get().baseMap, BASE);
  await actions.undoRevision();
  assert.equal(store.get().baseMap, null);
});

test('the same route made anew without a map is drawn on the base map there was, another route on none', async () => {
  const other = { ...BASE, attribution: 'of the open route' };
  const { store, actions } = await page({ importRoute: async () => ({ ...ANSWER, baseMap: null }) });
  store.set({ baseMap: other });
  await actions.takeFiles([gpx]);
  await actions.setImportUpdate(true);
  await actions.keepImport();
  assert.deepEqual(store.get().baseMap, other);
  await actions.undoRevision();
  await actions.takeFiles([gpx]);
  await actions.keepImport();
  assert.equal(store.get().baseMap, null);
  await actions.undoRevision();
  assert.deepEqual(store.get().baseMap, other);
});

test('a route and its base map are opened together', async () => {
  const { store, actions, sent } = await page();
  await actions.takeFiles([new File([JSON.stringify(BASE)], 'own.basemap.geojson'),
    new File(['{"cresthaul":"route/1","name":"Own"}'], 'own.route.geojson')]);
  assert.equal(store.get().inputs.route.name, 'own.route.geojson');
  assert.deepEqual(store.get().baseMap, BASE);
  assert.equal(sent.length, 0);
});

test('a route that the check refuses is not kept, and its preview stays', async () => {
  let refuses = false;
  const { store, actions } = await page({
    check: async () => {
      if (refuses) {
        throw new Problem({ title: 'The input has mistakes', status: 422 });
      }
      return report();
    },
  });
  const before = store.get().inputs;
  await actions.takeFiles([gpx]);
  refuses = true;
  await actions.keepImport();
  assert.equal(store.get().inputs, before);
  assert.equal(store.get().importing.data, ANSWER);
  assert.deepEqual(store.get().revisions, []);
  assert.equal(store.get().problem.status, 422);
});

test('opening another route ends what could be undone', async () => {
  const { store, actions } = await page();
  await actions.takeFiles([gpx]);
  await actions.keepImport();
  await actions.openSample('route', 'r');
  assert.deepEqual(store.get().revisions, []);
});

test('the open route goes along to be brought up to date, word for word', async () => {
  const { store, actions, sent } = await page();
  await actions.takeFiles([gpx]);
  await actions.setImportUpdate(true);
  assert.equal(sent.length, 2);
  assert.equal(await sent[1].get('update').text(), store.get().inputs.route.text);
});

test('routes and rigs of the program are opened, not imported', async () => {
  const { store, actions, sent } = await page();
  await actions.takeFiles([new File([' {"cresthaul": "route/1", "name": "Own"}'], 'own.geojson')]);
  assert.equal(store.get().inputs.route.name, 'own.geojson');
  await actions.takeFiles([new File(['{"cresthaul":"rig/1","stances":[]}'], 'own.json'), gpx]);
  assert.equal(store.get().inputs.rig.name, 'own.json');
  assert.deepEqual(sent.map(form => form.getAll('file').map(file => file.name)), [['drive.gpx']]);
});

test('stopping ends it here and on the server, and a late answer is shown to nobody', async () => {
  let settle;
  const { store, actions, stopped } = await page({
    importRoute: (form, id, signal) => new Promise((resolve, reject) => {
      settle = () => resolve(ANSWER);
      signal.addEventListener('abort', () => reject(Object.assign(new Error('aborted'), { name: 'AbortError' })));
    }),
  });
  const run = actions.takeFiles([gpx]);
  await new Promise(resolve => { setTimeout(resolve, 10); });
  assert.equal(store.get().importing.status, 'reading');
  actions.stopImport();
  settle();
  await run;
  assert.equal(store.get().importing.status, 'stopped');
  assert.equal(store.get().importing.data, null);
  assert.equal(stopped.length, 1);
});

test('a refusal is shown, and a file can be left out for another try', async () => {
  let times = 0;
  const { store, actions } = await page({
    importRoute: async () => {
      times += 1;
      if (times === 1) {
        throw new Problem({ title: 'The input has mistakes', status: 422 });
      }
      return ANSWER;
    },
  });
  await actions.takeFiles([new File(['%PDF'], 'a.pdf'), gpx]);
  assert.equal(store.get().importing.status, 'failed');
  await actions.removeImportFile(0);
  assert.equal(store.get().importing.status, 'ready');
  assert.equal(store.get().importing.problem, null);
  await actions.removeImportFile(0);
  assert.equal(store.get().importing.status, 'none');
});

test('files together too large are not sent', async () => {
  const { store, actions, sent } = await page();
  await actions.importFiles([{ name: 'planet.osm.pbf', size: 2 * 1024 ** 3 }]);
  assert.match(store.get().importing.problem.title, /larger than 1 GB/);
  assert.equal(sent.length, 0);
});

test('candidates are counted by status, and the doubtful beside', () => {
  const candidates = [['new', false], ['new', true], ['dismissed', false]]
    .map(([status, doubtful]) => ({ status, doubtful }));
  assert.deepEqual(counts(candidates),
    [{ word: 'new', count: 2 }, { word: 'dismissed', count: 1 }, { word: 'doubtful', count: 1 }]);
  assert.equal(countsInWords(candidates), '3 candidates: 2 new, 1 dismissed; 1 of them doubtful');
  assert.equal(countsInWords([candidates[0]]), '1 candidate: 1 new');
  assert.equal(countsInWords([]), 'No candidates');
});

test('notes say their file and line, the doubtful first', () => {
  const notes = [{ done: 'corrected', file: 'a', line: 3, point: 2 }, { done: 'doubtful', file: 'a', line: 0, point: 7 }];
  assert.deepEqual(notesByDone(notes).map(({ done }) => done), ['doubtful', 'corrected']);
  assert.deepEqual(notes.map(noteAt), ['a, line 3', 'a, point 7']);
  assert.equal(noteAt({ file: 'a', line: 0, point: 0 }), 'a');
});

test('progress never says more than there is', () => {
  const files = [{ name: 'x.gpx' }];
  assert.equal(progressWords(null, files), 'Reading x.gpx');
  assert.equal(progressWords({ state: 'map', file: 'm.pbf', time: 2, share: 0.999 }, files), 'Reading m.pbf, pass 2, 99 %');
  assert.equal(progressWords({ state: 'receiving', share: 0.5 }, [...files, ...files]), 'Sending 2 files, 50 %');
});

test('a route is saved under its own name', () => {
  assert.equal(routeFileName('Mill Road, north'), 'mill-road-north.route.geojson');
  assert.equal(routeFileName('alder.route.geojson'), 'alder.route.geojson');
  assert.equal(routeFileName('../..'), 'route.route.geojson');
  assert.equal(rigFileName('Three-axle lowbed'), 'three-axle-lowbed.rig.json');
  assert.equal(rigFileName('lowbed.rig.json'), 'lowbed.rig.json');
  assert.equal(rigFileName('..'), 'rig.rig.json');
});

test('a dismissal keeps what is shown and asked, but for the place that is gone, and can be undone', async () => {
  const text = '{"cresthaul":"route/1","features":[{"properties":{"id":"H1","candidate":{"state":"open"}}}]}';
  const { store, actions } = await page({ importRoute: async () => ({ ...ANSWER, route: text }) });
  await actions.takeFiles([gpx]);
  await actions.keepImport();
  await actions.selectHazard('H1');
  store.set({ configuration: 'down/none/low', planAsked: { ...store.get().planAsked, setAside: ['H1', 'H2'], forbid: ['x'] } });
  await actions.decideCandidate({ index: 0, id: 'H1', name: 'Mill' }, { by: 'J. Doe', why: 'lifted' });
  const { inputs, hazard, configuration, planAsked, revisions } = store.get();
  assert.deepEqual(inputs.route.json.features[0].properties.candidate,
    { state: 'dismissed', by: 'J. Doe', why: 'lifted' });
  assert.deepEqual([hazard, configuration, planAsked.setAside, planAsked.forbid], [null, 'down/none/low', ['H2'], ['x']]);
  assert.equal(revisions.length, 2);
  await actions.undoRevision();
  assert.equal(store.get().inputs.route.text, text);
  assert.equal(store.get().revisions.length, 1);
});

test('changes are taken back one by one and made again, and a new one ends what could be made again', async () => {
  const { store, actions } = await page();
  const opened = store.get().inputs.route.text;
  const texts = Array.from({ length: 120 }, (none, n) => `{"cresthaul":"route/1","n":${n}}`);
  for (const text of texts) {
    await actions.changeRoute('changing', text);
  }
  for (const text of [...texts.slice(0, -1).reverse(), opened]) {
    await actions.undoRevision();
    assert.equal(store.get().inputs.route.text, text);
  }
  await actions.undoRevision();
  assert.equal(store.get().inputs.route.text, opened);
  for (const text of texts) {
    await actions.redoRevision();
    assert.equal(store.get().inputs.route.text, text);
  }
  await actions.undoRevision();
  await actions.changeRoute('otherwise', '{"cresthaul":"route/1","n":"x"}');
  assert.deepEqual(store.get().undone, []);
  await actions.redoRevision();
  assert.equal(store.get().inputs.route.text, '{"cresthaul":"route/1","n":"x"}');
  assert.equal(store.get().revisions.length, 120);
});

test('a change that the server refuses changes nothing', async () => {
  let refuse = false;
  const { store, actions } = await page({
    check: async () => {
      if (refuse) {
        throw new Problem({ title: 'refused' });
      }
      return report();
    },
  });
  const before = store.get().inputs;
  refuse = true;
  assert.equal(await actions.changeRoute('breaking', '{"cresthaul":"route/1","n":0}'), false);
  assert.equal(store.get().inputs, before);
  assert.deepEqual(store.get().revisions, []);
});

test('the code of the coordinates goes along, and nothing where none is given', async () => {
  const { actions, sent } = await page();
  await actions.takeFiles([gpx]);
  await actions.sayOfImport({ crs: '2263' });
  await actions.sayOfImport({ crs: 'EPSG:25832' });
  assert.deepEqual(sent.map(form => form.get('crs')), [null, 'EPSG:2263', 'EPSG:25832']);
});

test('what rasters do not say goes along once somebody has said it', async () => {
  const { actions, sent } = await page();
  await actions.takeFiles([gpx]);
  await actions.sayOfImport({ rasterUnit: 'ftUS' });
  await actions.sayOfImport({ rasterCrs: '2230' });
  assert.deepEqual(sent.map(form => [form.get('rasterUnit'), form.get('rasterCrs')]),
    [[null, null], ['ftUS', null], ['ftUS', 'EPSG:2230']]);
});

test('says what a raster was good for', () => {
  const raster = more => ({ sketches: 0, tooCoarse: false, without: 0, ...more });
  assert.equal(rasterWords(raster({ without: 2 }), '0 ft'),
    'no open candidate is sketched from it; no usable heights at 2 places.');
  assert.equal(rasterWords(raster({ sketches: 1 }), '34 ft'), '1 place sketched, cells up to 34 ft apart.');
  assert.equal(rasterWords(raster({ sketches: 3, tooCoarse: true, without: 1 }), '304 ft'), '3 places sketched, cells up '
    + 'to 304 ft apart: too coarse to show the hump of a crossing, so it orders nothing; no usable heights at 1 place.');
});

test('tells from where to where the map says nothing, and of all else its place', () => {
  const at = { chainageM: 804.672, fromM: 0, toM: 1609.344 };
  assert.equal(where({ kind: 'off-map', ...at }, 'us'), '0.00 mi to 1.00 mi');
  assert.equal(where({ kind: 'limit', ...at }, 'us'), '0.50 mi');
  assert.equal(where({ kind: 'off-map', ...at }, 'metric'), '0.00 km to 1.61 km');
});

test('files are put in order by hand, with the gap that may lie between', async () => {
  const { store, actions, sent } = await page();
  await actions.takeFiles([new File(['<gpx/>'], 'a.gpx'), new File(['<gpx/>'], 'b.gpx'), new File(['<gpx/>'], 'c.gpx')]);
  const names = () => sent.at(-1).getAll('file').map(file => file.name).join(' ');
  await actions.moveImportFile(2, -1);
  assert.equal(names(), 'a.gpx c.gpx b.gpx');
  assert.equal(sent.at(-1).get('order'), 'given');
  await actions.moveImportFile(0, 1);
  assert.equal(names(), 'c.gpx a.gpx b.gpx');
  assert.equal(sent.at(-1).get('longestGap'), null);
  await actions.sayOfImport({ longestGap: '1 mi' });
  assert.equal(sent.at(-1).get('longestGap'), '1 mi');
  await actions.sayOfImport({ order: 'time' });
  assert.equal(sent.at(-1).get('order'), 'time');
  assert.equal(store.get().importing.status, 'ready');
});
