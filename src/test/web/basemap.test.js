import test from 'node:test';
import assert from 'node:assert/strict';
import { baseMapCredit, baseMapPlaces, baseMapShapes, freeNames, isBaseMap } from '../../../web/drawing/basemap.js';

const feature = (layer, type, coordinates, name) =>
  ({ type: 'Feature', properties: { layer, name }, geometry: { type, coordinates } });

test('draws woods first and railways last, latitude before longitude', () => {
  const shapes = baseMapShapes({ features: [
    feature('railway', 'MultiLineString', [[[1, 2], [3, 4]]]),
    feature('water', 'MultiLineString', [[[1, 2], [3, 4]]]),
    feature('water', 'MultiPolygon', [[[[0, 0], [1, 0], [1, 5], [0, 0]]]]),
    feature('woods', 'MultiPolygon', [[[[0, 0], [1, 0], [1, 5], [0, 0]]]]),
    feature('airport', 'MultiLineString', [[[1, 2], [3, 4]]]),
    feature('place', 'Point', [8, 9], 'Quillan'),
  ] });

  assert.deepEqual(shapes.map(({ layer, area }) => [layer, area]),
    [['woods', true], ['water', true], ['water', false], ['railway', false]]);
  assert.deepEqual(shapes[3].parts, [[[2, 1], [4, 3]]]);
  assert.deepEqual(shapes[0].parts, [[[[0, 0], [0, 1], [5, 1], [0, 0]]]]);
});

test('names places and whom to thank, and says what is missing', () => {
  assert.deepEqual(baseMapPlaces({ features: [feature('place', 'Point', [8, 9], 'Quillan')] }),
    [{ name: 'Quillan', at: [9, 8] }]);
  assert.equal(baseMapCredit({ attribution: 'invented', whole: true }), 'Base map: invented');
  assert.match(baseMapCredit({ attribution: 'invented', whole: false }), /left out/);
});

test('a name that another covers is not written, the first of them is', () => {
  const at = (x, y) => ({ name: 'Ten letters'.slice(0, 10), x, y });
  // Ten letters are some 65 pixels wide, a line some 14 high.
  assert.deepEqual(freeNames([at(0, 0), at(40, 5), at(70, 0), at(40, 20)]), [true, false, true, true]);
  assert.deepEqual(freeNames([]), []);
});

test('tells a base map that can be drawn from anything else', () => {
  const whole = {
    cresthaul: 'basemap/1', attribution: 'invented', whole: true,
    features: [feature('place', 'Point', [8, 9], 'Quillan'), feature('railway', 'MultiLineString', [[[1, 2], [3, 4]]])],
  };
  assert.ok(isBaseMap(whole));
  for (const wrong of [
    null, [], {}, { ...whole, cresthaul: 'route/1' }, { ...whole, features: {} }, { ...whole, features: [null] },
    { ...whole, features: [feature('railway', 'MultiLineString', [[1, null]])] },
    { ...whole, features: [{ properties: { layer: 'water' } }] },
  ]) {
    assert.equal(isBaseMap(wrong), false, JSON.stringify(wrong));
  }
});
