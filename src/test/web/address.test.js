import assert from 'node:assert/strict';
import test from 'node:test';
import { decode, encode, linkedFile } from '../../../web/page/address.js';
import { initialState } from '../../../web/page/state.js';
import { NO_LIMITS } from '../../../web/limits/limits.js';
import { passage } from './fixtures.js';

const SELECTION = {
  ...initialState(),
  inputs: { route: { id: 'sample' }, rig: { id: 'lowbed' }, stance: 'loaded', margins: { ground: '2 1/2 in' } },
  hazard: 'H 1&2',
  configuration: 'down/none/+3',
  view: { line: 'left', leveling: 'held', raised: true },
  passage: { status: 'ready', data: passage(), problem: null },
  position: 4,
  planAsked: {
    times: { notch: '20 min', crawl: '2 mph' }, forbid: ['up/none/1', 'a,b'], fix: 'down/none/+3', avoidRaising: true,
    acceptTight: ['H 1&2'], setAside: ['whole route', 'H03'],
    leastReserve: '10 %', fewestConditions: true,
    settled: [{ hazard: 'H 1&2', what: 'set aside', by: 'A. B.', date: '2026-11-28', agreed: 'flagged, "9 to 11"' }],
  },
  picks: ['down/none/+3', 'up/none/1'],
  stop: 'P 1',
  listing: { only: 'open', kind: 'rail-crossing', sort: 'clearance', descending: true },
};

test('a selection survives being written into an address and read back', () => {
  assert.deepEqual(decode(encode(SELECTION)), {
    project: null, route: 'sample', rig: 'lowbed', limits: null, work: null, stance: 'loaded', margins: { ground: '2 1/2 in' },
    configuration: 'down/none/+3', hazard: 'H 1&2', line: 'left', leveling: 'held', raised: true, steerM: 4,
    plan: SELECTION.planAsked, picks: SELECTION.picks, stop: 'P 1',
    listing: SELECTION.listing,
  });
});

test('every margin survives an address, the driver\'s too', () => {
  const margins = { ground: '2 in', overhead: '3 in', side: '6 in', unit: '1 1/2 in', line: '8 in', turnIn: '30 in' };
  assert.deepEqual(decode(encode({ ...SELECTION, inputs: { ...SELECTION.inputs, margins } })).margins, margins);
});

test('the tightest position needs no place in the address', () => {
  assert.ok(encode(SELECTION).includes('steer=4'));
  assert.ok(!encode({ ...SELECTION, position: 2 }).includes('steer'));
});

test('a file from disk is named, never passed off as a sample', () => {
  const own = { ...SELECTION, inputs: { ...SELECTION.inputs, route: { id: null, name: 'mine.geojson' } } };
  assert.equal(linkedFile(decode(encode(own)).route), 'mine.geojson');
  const permit = { id: null, name: 'permit.limits.json', json: {} };
  const limited = { ...SELECTION, inputs: { ...SELECTION.inputs, limits: permit } };
  assert.equal(linkedFile(decode(encode(limited)).limits), 'permit.limits.json');
  assert.equal(decode(encode({ ...limited, inputs: { ...SELECTION.inputs, limits: NO_LIMITS } })).limits, null);
  assert.equal(linkedFile('sample'), null);
  assert.equal(linkedFile(null), null);
});

test('an address that says nothing, or nonsense, asks for nothing', () => {
  const nothing = {
    project: null, route: null, rig: null, limits: null, work: null, stance: null, margins: null, configuration: null, hazard: null, line: null, leveling: null,
    raised: false, steerM: null, picks: [], stop: null,
    listing: { only: 'all', kind: null, sort: 'chainage', descending: false },
    plan: {
      times: {}, forbid: [], fix: null, avoidRaising: false, acceptTight: [], setAside: [],
      leastReserve: null, fewestConditions: false, settled: [],
    },
  };
  for (const fragment of ['', '#', '#hazards', '#steer=fast&raised=yes', '#%E0%A4%A', '#hazard=', '#only=some&sort=color&down=yes', '#time=notch&forbid=&raising=yes&compare=',
    '#reserve=&conditions=few&settled=nonsense&settled=[1,2]&settled=["","a","b","c","d"]']) {
    assert.deepEqual(decode(fragment), nothing, fragment);
  }
  assert.equal(encode(initialState()), '');
});
