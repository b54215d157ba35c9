import assert from 'node:assert/strict';
import test from 'node:test';
import {
  freeId, isMovedTooFar, lonLatOf, NEW_PLACES, nearestChainage, placesOf, propertiesOf, withoutPlace, withPlace, withPlaceAt, withWords,
} from '../../../web/line/places.js';
import { createPlaceActions } from '../../../web/line/placeactions.js';

const TEXT = `{ "cresthaul": "route/1",
 "features" : [
  {"type":"Feature","properties":{"id":"H1","name":"Mill","hazard":"crest","profile":[["0 ft","1 ft"]] },
    "geometry":{"type":"Point","coordinates":[1.50,2e0]}} ,
  {"type":"Feature","properties":{"route":"leg 1"},"geometry":{"type":"LineString","coordinates":[[0,0],[0,1]]}},
  {"type":"Feature","properties":{"id":"P1","name":"Lot","stop":"stopping-place","room":"80 m","landmark":"shed"},
    "geometry":{"type":"Point","coordinates":[0,0.5]}}
 ]}`;
const route = text => ({ text, json: JSON.parse(text) });
const features = text => JSON.parse(text).features;

/** A mile north along a meridian, then a kilometer on: chainages by hand. */
const LINE = [[[0, 0, 0], [0, 0.01, 1609.344]], [[0, 0.01, 1609.344], [0, 0.02, 2609.344]]];

test('hazards and stopping places that are points are places', () => {
  assert.deepEqual(placesOf(route(TEXT)).map(({ index, id, kind, stop }) => [index, id, kind, stop]),
    [[0, 'H1', 'crest', false], [2, 'P1', 'stopping-place', true]]);
  assert.deepEqual(placesOf(null), []);
  assert.deepEqual(placesOf(route('{"features":[{},{"properties":{"hazard":"dip"}}]}')), []);
});

test('an identifier that nothing has', () => {
  assert.equal(freeId(route('{"features":[]}'), 'H'), 'H01');
  assert.equal(freeId(route('{"features":[{"properties":{"id":"H01"}},{"properties":{"id":"H02"}},{}]}'), 'H'), 'H03');
});

test('where somebody says a place is', () => {
  const cases = [
    ['0.5 mi', [0, 0.005]],
    ['1 mi', [0, 0.01]],
    ['2640 ft', [0, 0.005]],
    ['2.109344 km', [0, 0.015]],
    ['804.672m', [0, 0.005]],
    ['41.9003, -101.19', [-101.19, 41.9003]],
    ['3 mi', null],
    ['-1 mi', null],
    ['91, 0', null],
    ['1 furlong', null],
    ['', null],
    ['<b>', null],
  ];
  cases.forEach(([text, expected]) => assert.deepEqual(lonLatOf(text, LINE), expected, text));
});

test('a point on the map is the nearest place of the route', () => {
  // 0.0101 degrees of latitude are a hundredth of a leg past its end.
  assert.ok(Math.abs(nearestChainage(LINE, [0.003, 0.0101]) - (1609.344 + 10)) < 1e-6);
  assert.equal(nearestChainage(LINE, [0.01, -0.5]), 0);
  assert.ok(Math.abs(nearestChainage(LINE, [-0.2, 0.5]) - 2609.344) < 1e-9);
});

test('a place more, and every other byte as it was', () => {
  const made = withPlace(TEXT, { hazard: 'dip', id: 'H2', name: 'a "b" \\ c' }, [1, 2]);
  assert.deepEqual(features(made)[3], {
    type: 'Feature',
    properties: { hazard: 'dip', id: 'H2', name: 'a "b" \\ c' },
    geometry: { type: 'Point', coordinates: [1, 2] },
  });
  assert.deepEqual(features(made).slice(0, 3), features(TEXT));
  const at = made.indexOf(',\n    {"type":"Feature","properties":{"hazard":"dip"');
  const length = made.length - TEXT.length;
  assert.equal(made.slice(0, at) + made.slice(at + length), TEXT);
  assert.deepEqual(features(withPlace('{"features": [ ] }', { id: 'P1' }, [0, 0])).length, 1);
});

test('a place less, wherever it stands', () => {
  for (let index = 0; index < 3; index++) {
    const rest = features(TEXT).filter((feature, k) => k !== index);
    assert.deepEqual(features(withoutPlace(TEXT, index)), rest);
  }
  assert.deepEqual(features(withoutPlace('{"features":[ {"a":1} ]}', 0)), []);
  // What was added and taken out again leaves the bytes that were there.
  assert.equal(withoutPlace(withPlace(TEXT, { id: 'x' }, [0, 0]), 3), TEXT);
});

test('moved and named, it keeps its survey', () => {
  const moved = withPlaceAt(TEXT, 0, [3, 4]);
  assert.deepEqual(features(moved)[0].geometry.coordinates, [3, 4]);
  assert.equal(moved.replace('[3,4]', '[1.50,2e0]'), TEXT);
  const cases = [
    [0, { name: 'Mill hill', landmark: '' }, { name: 'Mill hill' }],
    [0, { name: 'Mill', landmark: 'a "mill"' }, { name: 'Mill', landmark: 'a "mill"' }],
    [2, { name: 'Lot', landmark: 'silo' }, { name: 'Lot', landmark: 'silo' }],
    [2, { name: 'Yard', landmark: '' }, { name: 'Yard' }],
  ];
  cases.forEach(([index, words, expected]) => {
    const { name, landmark, ...rest } = features(withWords(TEXT, index, words))[index].properties;
    assert.deepEqual({ name, ...(landmark !== undefined && { landmark }) }, expected);
    const { name: was, landmark: before, ...kept } = features(TEXT)[index].properties;
    assert.deepEqual(rest, kept);
  });
  assert.equal(withWords(TEXT, 2, { name: 'Lot', landmark: 'shed' }), TEXT);
});

test('of a new place the file says what somebody knows, and nothing more', () => {
  const of = kind => NEW_PLACES.find(one => one.kind === kind);
  const cases = [
    ['stopping-place', '200 ft', { stop: 'stopping-place', id: 'X', name: 'N', room: '200 ft' }],
    ['rail-crossing', '', { hazard: 'rail-crossing', id: 'X', name: 'N' }],
    ['rail-crossing', '123456A', { hazard: 'rail-crossing', id: 'X', name: 'N', crossingNumber: '123456A' }],
    ['low-structure', '', { hazard: 'low-structure', id: 'X', name: 'N', measured: 'surveyed' }],
    ['overhead-wire', '', { hazard: 'overhead-wire', id: 'X', name: 'N', carries: 'power', measured: 'surveyed' }],
    ['corner', '', { hazard: 'corner', id: 'X', name: 'N' }],
  ];
  cases.forEach(([kind, more, expected]) =>
    assert.deepEqual(propertiesOf(of(kind), { id: 'X', name: 'N', landmark: '', more }), expected, kind));
});

function world(accepts = true) {
  const said = [];
  const state = { inputs: { route: route(TEXT) }, line: { line: LINE }, problem: null };
  const store = { get: () => state, set: patch => Object.assign(state, patch) };
  const actions = createPlaceActions(store, async (...change) => { said.push(change); return accepts; });
  return { actions, said, state };
}

test('a place is added, changed and taken out as one change each', async () => {
  const { actions, said } = world();
  assert.ok(await actions.addPlace({ kind: 'dip', name: 'Ford', at: '0.5 mi', landmark: '', more: '' }));
  assert.ok(await actions.changePlace({ index: 2, id: 'P1' }, { name: 'Yard', landmark: 'shed', at: '1 mi' }));
  assert.ok(await actions.removePlace({ index: 0, id: 'H1', name: 'Mill' }));
  assert.deepEqual(said.map(([what]) => what), ['adding H01 Ford', 'moving P1 Yard', 'taking out H1 Mill']);
  assert.deepEqual(features(said[0][1])[3].geometry.coordinates, [0, 0.005]);
  assert.deepEqual(features(said[1][1])[2].geometry.coordinates, [0, 0.01]);
  assert.equal(said[2][2], 'H1');
});

test('what was measured at a place does not go to another', async () => {
  // 0.0004 degrees of latitude are 44.5 m, 0.0005 are 55.6 m.
  const at = (index, lonLat) => isMovedTooFar(features(TEXT)[index], lonLat);
  assert.equal(at(0, [1.5, 2.0004]), false);
  assert.equal(at(0, [1.5, 2.0005]), true);
  assert.equal(at(2, [3, 3]), false, 'a stopping place was not measured');
  const bare = { properties: { hazard: 'dip', id: 'X', name: 'N' }, geometry: { coordinates: [0, 0] } };
  assert.equal(isMovedTooFar(bare, [1, 1]), false);

  const { actions, said, state } = world();
  assert.equal(await actions.changePlace({ index: 0, id: 'H1' }, { name: 'Mill', landmark: '', at: '1 mi' }), false);
  assert.match(state.problem.title, /H1 was measured/);
  assert.deepEqual(said, []);
});

test('no place on the route is told, and nothing is changed', async () => {
  const { actions, said, state } = world();
  assert.equal(await actions.addPlace({ kind: 'dip', name: 'Ford', at: '99 mi', landmark: '', more: '' }), false);
  assert.match(state.problem.title, /99 mi/);
  assert.equal(await actions.changePlace({ index: 2, id: 'P1' }, { name: 'Lot', landmark: 'shed', at: 'there' }), false);
  // Nothing was changed in the form.
  assert.equal(await actions.changePlace({ index: 2, id: 'P1' }, { name: 'Lot', landmark: 'shed', at: '' }), false);
  assert.deepEqual(said, []);
});
