import assert from 'node:assert/strict';
import test from 'node:test';
import { matrixOf, qualityOf } from '../../../web/drawing/aerial.js';
import { problemsOf } from '../../../web/corner/corneroutline.js';

/** A degree of longitude at the equator, meters: 2 pi 6378137 / 360. */
const EAST_M = 111319.4908;
const near = (a, b, within = 1e-9) => assert.ok(Math.abs(a - b) <= within, `${a} is ${b} within ${within}`);
const pair = (pixel, lonLat) => ({ pixel, lonLat });

test('a picture lies where its two spots are, turned and scaled', () => {
  const project = ([x, y]) => [x * 10, -y * 10];
  // 100 pixels across lie 200 down the map: a quarter turn, two to one.
  const pairs = [pair([10, 20], [3, 4]), pair([110, 20], [3, -16])];
  const [a, b, c, d, e, f] = matrixOf(pairs, project);
  [[0, 1], [1, -1]].forEach(([k]) => {
    const [x, y] = pairs[k].pixel;
    near(a * x + c * y + e, project(pairs[k].lonLat)[0]);
    near(b * x + d * y + f, project(pairs[k].lonLat)[1]);
  });
  near(a, 0);
  near(b, 2);
  // What lies 50 pixels below the first spot in the picture lies 100 to the left of it on the map.
  near(a * 10 + c * 70 + e, 30 - 100);
});

test('how good it is: a pixel, and what the spots are off', () => {
  const pairs = [pair([0, 0], [0, 0]), pair([300, 400], [0.001, 0])];
  const { pixelM, apartM, leastM } = qualityOf(pairs, null);
  near(apartM, EAST_M / 1000, 1e-4);
  near(pixelM, EAST_M / 1000 / 500, 1e-6);
  near(leastM, 2 * pixelM);
  near(qualityOf(pairs, 110).leastM, 2 * pixelM + EAST_M / 1000 - 110, 1e-4);
  assert.equal(qualityOf([pairs[0], pair([0, 0], null)], null), null);
  assert.equal(qualityOf([pairs[0], pairs[0]], null), null);
});

test('nobody draws more exactly than the picture is', () => {
  const given = {
    kind: 'pavement', lonLats: [[0, 0], [1, 0], [1, 1]], size: '', accuracy: '1 ft', source: 'picture', leastM: 0.4,
  };
  assert.deepEqual(problemsOf({}, given, 'm').map(({ at }) => at), ['accuracy']);
  assert.deepEqual(problemsOf({}, { ...given, accuracy: '0.4 m' }, 'm'), []);
});
