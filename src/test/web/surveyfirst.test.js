import test from 'node:test';
import assert from 'node:assert/strict';
import { humpColumns, knownFrom, sketchWords, trackWords, waitingTogether } from '../../../web/report/surveyfirst.js';
import { report } from './fixtures.js';

const place = more => ({ origin: null, reported: false, known: null, landmark: null, ...more });

test('says who knows of a place, and never that it is measured', () => {
  assert.equal(knownFrom(place()), 'the route file');
  assert.equal(knownFrom(place({ origin: 'a map, node 5', reported: true, landmark: 'mill gate' })),
    'a map, node 5; figure reported, not measured; landmark: mill gate');
  assert.equal(knownFrom(place({ known: 'bends at about 9 m (30 ft)' })), 'the route file; bends at about 9 m (30 ft)');
  assert.equal(trackWords(1), '1 track');
  assert.equal(trackWords(3), '3 tracks');
});

test('booster states with the same rungs share a column, axle states never', () => {
  const checked = report();
  const rungs = checked.configurations.map(({ key, notch, booster, lift }) => ({
    configuration: key, clearM: notch === 'low' ? 0.1 : 0.2,
    contactM: booster === 'trailing' && lift === 'up' ? null : 0.3,
  }));
  const columns = humpColumns(checked, { tracks: 1, rungs });

  assert.deepEqual(columns.map(({ axles, boosters }) => [axles, boosters]),
    [[3, ['none', 'trailing']], [2, ['none']], [2, ['trailing']]]);
  assert.deepEqual(columns[0].rungs,
    [{ notch: 'low', clearM: 0.1, contactM: 0.3 }, { notch: 'high', clearM: 0.2, contactM: 0.3 }]);
  assert.equal(columns[2].rungs[0].contactM, null);
});

test('a ladder in another order is refused', () => {
  const checked = report();
  const rungs = checked.configurations.map(({ key }) => ({ configuration: key, clearM: 0.1, contactM: 0.2 })).reverse();

  assert.throws(() => humpColumns(checked, { tracks: 1, rungs }), /ladder/);
});

test('a sketch is told with its cells, and none, a coarse one and an unknown one as what they are', () => {
  const words = sketch => sketchWords(sketch, gap => `${gap} in`, apart => `${apart} ft`);

  assert.equal(words(null), 'no sketch');
  assert.equal(words({ spacingM: 10, tooCoarse: false, gapM: -2 }), '-2 in, 10 ft cells');
  assert.equal(words({ spacingM: 93, tooCoarse: true, gapM: null }), 'too coarse, 93 ft cells');
  assert.equal(words({ spacingM: 10, tooCoarse: false, gapM: null }), 'unknown, 10 ft cells');
  assert.equal(knownFrom(place({ sketch: { source: 'land.tif', date: '2021-06-30' } })),
    'the route file; sketch from land.tif, 2021-06-30');
});

test('many places of which nothing is known are told together, few and reported ones each by itself', () => {
  const places = count => Array.from({ length: count }, (_, i) => ({ id: `n${i}`, reported: i === 0 }));
  const of = count => waitingTogether({ surveyFirst: { places: places(count) } });
  assert.equal(of(13).size, 0);
  assert.equal(of(14).size, 13);
  assert.equal(of(14).has('n0'), false);
});
