import assert from 'node:assert/strict';
import test from 'node:test';
import { ALL, alongRoute, around, listed, shownWords } from '../../../web/report/listing.js';
import { initialState } from '../../../web/page/state.js';
import { report } from './fixtures.js';

/** With the two-axle low setting H1 and H2 are clear, H3 is not surveyed; with three axles H1 is contact. */
const state = (listing = {}, more = {}) => ({
  ...initialState(), report: report(), configuration: 'up/none/low', listing: { ...ALL, ...listing }, ...more,
});
const ids = hazards => hazards.map(({ id }) => id);
const planned = (...blocking) => ({
  plan: { status: 'ready', data: { blocking: blocking.map(hazard => ({ hazard })) } },
});

test('every hazard is shown in order of travel until somebody asks for less', () => {
  assert.deepEqual(ids(listed(state())), ['H1', 'H2', 'H3']);
  assert.equal(shownWords(state()), '');
});

test('what is not clear is what the chosen configuration leaves so, the unsurveyed with it', () => {
  assert.deepEqual(ids(listed(state({ only: 'open' }))), ['H3']);
  assert.deepEqual(ids(listed(state({ only: 'open' }, { configuration: 'down/none/low' }))), ['H1', 'H3']);
  assert.equal(shownWords(state({ only: 'open' })), '1 of 3 hazards shown; the others were judged too.');
});

test('a hazard without a verdict is not clear', () => {
  assert.deepEqual(ids(listed(state({ only: 'open' }, { configuration: 'up/carried/low' }))), ['H1', 'H2', 'H3']);
});

test('what blocks is the plan\'s, and everything while there is no plan', () => {
  assert.deepEqual(ids(listed(state({ only: 'blocks' }, planned('H2')))), ['H2']);
  assert.deepEqual(ids(listed(state({ only: 'blocks' }, planned()))), []);
  assert.deepEqual(ids(listed(state({ only: 'blocks' }))), ['H1', 'H2', 'H3']);
});

test('a kind shows its own alone', () => {
  assert.deepEqual(ids(listed(state({ kind: 'dip' }))), ['H3']);
  assert.deepEqual(ids(listed(state({ kind: 'dip', only: 'blocks' }, planned('H2')))), []);
});

test('sorted by verdict or by what is left, the worst stands first and the unknown with it', () => {
  assert.deepEqual(ids(listed(state({ sort: 'verdict' }))), ['H3', 'H1', 'H2']);
  // 0.12 m of 0.07 m leave 71 %, 0.10 m of 0.09 m leave 11 %, nothing known leaves nothing.
  assert.deepEqual(ids(listed(state({ sort: 'clearance' }))), ['H3', 'H2', 'H1']);
  assert.deepEqual(ids(listed(state({ sort: 'clearance', descending: true }))), ['H1', 'H2', 'H3']);
  assert.deepEqual(ids(listed(state({ descending: true }))), ['H3', 'H2', 'H1']);
});

test('along the route the order is that of travel, whatever the table is sorted by', () => {
  assert.deepEqual(ids(alongRoute(state({ sort: 'clearance' }))), ['H1', 'H2', 'H3']);
  assert.deepEqual(ids(alongRoute(state({ only: 'open', sort: 'verdict' }))), ['H3']);
});

test('the steps from hazard to hazard follow the order shown and end at its ends', () => {
  const step = (listing, id) => {
    const { before, after } = around(state(listing), id);
    return [before?.id ?? null, after?.id ?? null];
  };
  assert.deepEqual(step({}, 'H1'), [null, 'H2']);
  assert.deepEqual(step({}, 'H3'), ['H2', null]);
  assert.deepEqual(step({ sort: 'clearance' }, 'H2'), ['H3', 'H1']);
  // H1 is clear and not shown: from it on, the route itself leads on.
  assert.deepEqual(step({ only: 'open' }, 'H1'), [null, 'H2']);
});
