import assert from 'node:assert/strict';
import test from 'node:test';
import { isOnItsWay, leftOut, PRINTED } from '../../../web/page/printed.js';
import { initialState } from '../../../web/page/state.js';
import { report } from './fixtures.js';

const with_ = (status, patch = {}) => ({
  ...initialState(), report: report(),
  ...Object.fromEntries(PRINTED.map(part => [part, { status, data: null, problem: null }])), ...patch,
});

test('a print with everything on it says nothing', () => {
  assert.deepEqual(leftOut(with_('ready')), []);
  assert.equal(isOnItsWay(with_('ready')), false);
});

test('each part that is on its way, failed or was stopped is named', () => {
  for (const part of PRINTED) {
    for (const status of ['loading', 'failed', 'stopped']) {
      const state = with_('ready', { [part]: { status, data: null, problem: null } });
      assert.equal(leftOut(state).length, 1, `${part} ${status}`);
      assert.equal(isOnItsWay(state), status === 'loading', `${part} ${status}`);
    }
  }
  assert.equal(new Set(leftOut(with_('failed'))).size, PRINTED.length);
});

test('a comparison nobody looked at is named; a drawing and loads that do not exist are not', () => {
  assert.deepEqual(leftOut(with_('none')), ['the configurations side by side']);
});

test('without a report the check itself is missing, and one that runs is named', () => {
  assert.deepEqual(leftOut(with_('ready', { report: null })), ['the check']);
  assert.deepEqual(leftOut(with_('ready', { busy: true })), ['the check that is running now']);
  assert.equal(isOnItsWay(with_('ready', { busy: true })), true);
});
