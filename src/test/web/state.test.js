import assert from 'node:assert/strict';
import test from 'node:test';
import { createStore, initialState, lastOnly } from '../../../web/page/state.js';

test('a watcher is called at once, then only when one of its keys changes, once for each change', () => {
  const store = createStore();
  const seen = [];
  store.watch(['hazard', 'configuration'], state => seen.push([state.hazard, state.configuration]));
  store.set({ hazard: 'H1', configuration: 'a' });
  store.set({ hazard: 'H1' });
  store.set({ units: 'metric' });
  store.set({ configuration: 'b', position: 3 });
  assert.deepEqual(seen, [[null, null], ['H1', 'a'], ['H1', 'b']]);
});

test('a stopped watcher stays silent, even when it is stopped by one before it', () => {
  const store = createStore();
  let calls = 0;
  let stopSecond = () => {};
  store.watch(['hazard'], () => stopSecond());
  stopSecond = store.watch(['hazard'], () => calls++);
  assert.equal(calls, 1);
  store.set({ hazard: 'H1' });
  assert.equal(calls, 1);
});

test('a key the state does not have is refused, and the state cannot be changed from outside', () => {
  const store = createStore();
  assert.throws(() => store.set({ hazzard: 'H1' }), /hazzard/);
  assert.throws(() => { store.get().hazard = 'H1'; }, TypeError);
  assert.equal(store.get().hazard, initialState().hazard);
});

test('only the last of overlapping requests is current, and the ones before are aborted', () => {
  const requests = lastOnly();
  const first = requests.begin();
  assert.ok(first.isCurrent());
  const second = requests.begin();
  assert.ok(!first.isCurrent());
  assert.ok(first.signal.aborted);
  assert.ok(second.isCurrent());
  requests.cancel();
  assert.ok(!second.isCurrent());
  assert.ok(second.signal.aborted);
});
