import assert from 'node:assert/strict';
import test from 'node:test';
import { curvePath, gapRange } from '../../../web/drawing/curve.js';
import { isFree, labelSides } from '../../../web/drawing/labels.js';
import * as drawn from '../../../web/drawing/passage.js';
import { posts } from '../../../web/drawing/posts.js';
import { drawnBeside, legPaths, pointAt } from '../../../web/line/legs.js';
import * as scale from '../../../web/drawing/scale.js';
import { verdictClass, verdictSymbol } from '../../../web/drawing/symbols.js';
import { kindOf } from '../../../web/report/kinds.js';
import { cell, clearance, passage } from './fixtures.js';

const near = (actual, expected) => assert.ok(Math.abs(actual - expected) < 1e-9, `${actual}, not ${expected}`);

test('a nose-up pitch lifts what is ahead and moves what is high backward', () => {
  const pitch = Math.atan2(3, 4);
  const [x, z] = drawn.place([10, 2, pitch], 5, 0);
  near(x, 14);
  near(z, 5);
  const [x2, z2] = drawn.place([10, 2, pitch], 0, 5);
  near(x2, 7);
  near(z2, 6);
});

test('the SVG matrix draws a unit point where it stands', () => {
  const pose = [10, 2, 0.3];
  const [a, b, c, d, e, f] = drawn.unitMatrix(pose);
  const [x, h] = [-4, 1.5];
  const [worldX, worldZ] = drawn.place(pose, x, h);
  near(a * x + c * -h + e, worldX);
  near(b * x + d * -h + f, -worldZ);
});

test('the ground goes on beyond its ends at the slopes the passage gives', () => {
  const { ground } = passage();
  near(drawn.groundZ(ground, -15), -0.1);
  near(drawn.groundZ(ground, 10), -0.1);
  near(drawn.groundZ(ground, -0.25), 0.075);
  near(drawn.groundZ(ground, 0), 0.1);
  assert.deepEqual(drawn.groundParts(ground, -15, 3).before.map(([s]) => s), [-15, -5]);
  assert.deepEqual(drawn.groundParts(ground, -4, 3), { before: [], surveyed: ground.points, after: [] });
});

test('a window moves as little as keeps what it must show inside', () => {
  assert.equal(drawn.contain(0, 10, 2, 8), 0);
  assert.equal(drawn.contain(0, 10, 4, 13), 3);
  assert.equal(drawn.contain(0, 10, -3, 5), -3);
  assert.equal(drawn.contain(0, 10, -6, 8), -4);
});

test('the camera holds the whole truck at every position and never jumps', () => {
  const positions = Array.from({ length: 400 }, (_, i) => -30 + i * 0.2);
  const p = { ...passage({ positions }), tightest: 200 };
  const frame = drawn.frame(p);
  let before = null;
  positions.forEach((_, index) => {
    const { left, bottom } = drawn.camera(frame, index, frame.heightM);
    const box = frame.boxes[index];
    assert.ok(box.left >= left && box.right <= left + frame.widthM, `position ${index} across`);
    assert.ok(box.bottom >= bottom && box.top <= bottom + frame.heightM, `position ${index} up`);
    assert.ok(before === null || Math.abs(left - before) <= 0.2 + 1e-9, `position ${index} jumps`);
    before = left;
  });
  assert.equal(positions.length, 400);
});

test('the dimension line runs from the unit by exactly the clearance', () => {
  const p = passage();
  assert.deepEqual(drawn.dimensionLine(p.positions[2], 'ground'),
    { x: -6, from: 0.25, to: 0.26, valueM: -0.01, unit: 'trailer' });
  assert.equal(drawn.dimensionLine(p.positions[2], 'overhead'), null);
  const under = { ...p.positions[0], overheadM: 0.4, overheadAt: { unit: 'trailer', xM: -6, hM: 3.8 } };
  near(drawn.dimensionLine(under, 'overhead').to, 4.2);
});

test('a load is closed down to the deck it stands on, and straight beyond the deck', () => {
  const deck = [[-10, 1], [-8, 1], [-8, 0.5], [-2, 0.5], [-1, 1.5]];
  assert.deepEqual(drawn.loadPolygon([[-7, 1.2], [-5, 3], [-3, 1]], deck),
    [[-7, 1.2], [-5, 3], [-3, 1], [-3, 0.5], [-7, 0.5]]);
  assert.deepEqual(drawn.loadPolygon([[-9, 2], [-1.5, 2]], deck),
    [[-9, 2], [-1.5, 2], [-1.5, 1], [-2, 0.5], [-8, 0.5], [-8, 1], [-9, 1]]);
  assert.deepEqual(drawn.loadPolygon([[-12, 2], [-9, 2]], deck), [[-12, 2], [-9, 2], [-9, 1], [-10, 1], [-12, 2]]);
  assert.deepEqual(drawn.loadPolygon([[-7, 0.4], [-6, 0.4]], deck), [[-7, 0.4], [-6, 0.4], [-6, 0.4], [-7, 0.4]]);
});

test('the enlarged circle reaches a few gaps, between 0.2 m and 0.9 m', () => {
  const p = passage();
  near(drawn.detailReach(p, null), 0.2);
  p.positions[2].groundM = 0.1;
  near(drawn.detailReach(p, null), 0.32);
  p.positions[2].groundM = 2;
  near(drawn.detailReach(p, null), 0.9);
});

test('a road is known when its clearance is, anywhere', () => {
  const p = passage();
  assert.ok(drawn.roadKnown(p));
  p.positions.forEach(position => { position.groundM = null; });
  assert.ok(!drawn.roadKnown(p));
});

test('the tighter side is the one with the smaller share left of what it needs', () => {
  const needs = cell('k', 'tight', { ground: clearance(0.1, 0.07, 'clear'), overhead: clearance(0.1, 0.09, 'clear') });
  assert.equal(drawn.tighterSide({ groundM: 0.1, overheadM: 0.11 }, needs), 'overhead');
  assert.equal(drawn.tighterSide({ groundM: 0.1, overheadM: 0.13 }, needs), 'ground');
  // 30 of 70 mm is 43 %, 35 of 90 mm is 39 %.
  assert.equal(drawn.tighterSide({ groundM: 0.1, overheadM: 0.125 }, needs), 'overhead');
  assert.equal(drawn.tighterSide({ groundM: 0.1, overheadM: null }, needs), 'ground');
  assert.equal(drawn.tighterSide({ groundM: null, overheadM: 3 }, needs), 'overhead');
});

test('wheels that do not simply ride are told, counted front to rear in their group', () => {
  assert.deepEqual(drawn.wheelWords(passage().positions[0]), ['trailer axle 1 solid', 'trailer axle 2 hanging']);
});

test('the nearest position is found for uneven steps', () => {
  const positions = [0, 0.1, 0.15, 5].map(steerM => ({ steerM }));
  assert.equal(drawn.nearestIndex(positions, 0.13), 2);
  assert.equal(drawn.nearestIndex(positions, 99), 3);
  assert.equal(drawn.nearestIndex(positions, -99), 0);
});

test('the curve is broken where the clearance is not known', () => {
  const positions = [1, 2, null, 4].map((overheadM, steerM) => ({ steerM, overheadM }));
  assert.equal(curvePath(positions, 'overheadM', x => x, y => y), 'M0.0 1.0L1.0 2.0M3.0 4.0');
});

test('the curve\'s axis always shows zero, the least clearance and what is needed', () => {
  const needs = cell('k', 'clear', { ground: clearance(0.5, 0.07, 'clear'), overhead: clearance(0.6, 0.6, 'clear') });
  for (const [lowest, highest] of [[-0.2, 0.3], [0.1, 2], [1.5, 3], [0, 0]]) {
    const [from, to] = gapRange([{ groundM: lowest, overheadM: null }, { groundM: highest, overheadM: null }], needs);
    assert.ok(from <= 0 && from <= lowest && to > lowest && to >= 0.6, `${lowest} ${highest}: ${from} ${to}`);
  }
});

test('ticks are multiples of a round step, both ends included', () => {
  assert.deepEqual(scale.ticks(0, 10, 5), [0, 2, 4, 6, 8, 10]);
  assert.deepEqual(scale.ticks(-0.3, 0.3, 3), [-0.2, 0, 0.2]);
  assert.equal(scale.niceStep(0.3), 0.5);
  assert.equal(scale.niceStep(20), 20);
  assert.equal(scale.niceStep(51), 100);
});

test('labels are moved apart, keep their order and stay inside', () => {
  assert.deepEqual(scale.spread([10, 50], 20, 0, 100), [10, 50]);
  assert.deepEqual(scale.spread([50, 50], 20, 0, 100), [40, 60]);
  assert.deepEqual(scale.spread([0, 0, 0], 20, 0, 100), [10, 30, 50]);
  assert.deepEqual(scale.spread([], 20, 0, 100), []);
  const crowded = scale.spread(Array(9).fill(50), 20, 0, 100);
  assert.ok(crowded.every((x, i) => x >= 10 && x <= 90 && (i === 0 || x > crowded[i - 1])));
});

test('a scale bar is the longest round length that fits', () => {
  assert.deepEqual(scale.scaleBar(10, 150, 1000), { length: 1, pixels: 100 });
  assert.equal(scale.scaleBar(0.1, 120, 0.3048).length, 20);
});

test('the graticule stands on whole minutes of arc', () => {
  assert.deepEqual(scale.graticule(41.05, 41.42, 3), [41 + 10 / 60, 41 + 20 / 60]);
  assert.ok(scale.graticule(-97.7, -97, 4).every(degrees => Math.abs(degrees * 60 - Math.round(degrees * 60)) < 1e-9));
});

test('a place on the line is found by chainage, and none is made up beyond it', () => {
  const line = [[[-97, 41, 0], [-97, 42, 1000]], [[-97, 42, 1000], [-96, 42, 2000]]];
  assert.deepEqual(pointAt(line, 500), [41.5, -97]);
  assert.deepEqual(pointAt(line, 1500), [42, -96.5]);
  assert.equal(pointAt(line, 2500), null);
  assert.deepEqual(posts(line, 2000, 1000, 4).map(({ value }) => value), [0.5, 1, 1.5]);
});

test('labels on the plan avoid symbols and one another where there is room', () => {
  const points = [{ x: 0, y: 0, width: 30 }, { x: 25, y: 0, width: 30 }, { x: 300, y: 0, width: 30 }];
  assert.deepEqual(labelSides(points, 10, 14), ['left', 'right', 'right']);
  // Five places on one spot: four sides, so the worst four have their labels, and no two of those touch.
  const verdicts = ['clear', 'contact', 'tight', 'contact', 'not surveyed'];
  const crowd = verdicts.map(verdict => ({ x: 0, y: 0, width: 30, verdict }));
  assert.deepEqual(labelSides(crowd, 10, 14), ['none', 'right', 'below', 'left', 'above']);
  // Symbols on all four sides leave no room to be read: the middle one is not named, each of the others is.
  const around = [[0, 0], [22, 0], [-22, 0], [0, 22], [0, -22]].map(([x, y]) => ({ x, y, width: 30, verdict: 'clear' }));
  assert.equal(labelSides(around, 10, 14)[0], 'none');
  assert.ok(labelSides(around, 10, 14).slice(1).every(side => side !== 'none'));
  assert.ok(isFree({ left: 150, right: 200, top: -5, bottom: 5 }, crowd, crowd.map(() => 'none'), 10, 14));
  assert.ok(!isFree({ left: -5, right: 5, top: -5, bottom: 5 }, points, ['left', 'right', 'right'], 10, 14));
  assert.ok(isFree({ left: 150, right: 200, top: -5, bottom: 5 }, points, ['left', 'right', 'right'], 10, 14));
});

test('every verdict has its own outline; an unknown word is drawn as not surveyed and still said', () => {
  const outlines = ['clear', 'tight', 'contact', 'not surveyed'].map(v => verdictSymbol(v).parts[0][1]);
  assert.equal(new Set(outlines).size, 4);
  assert.equal(verdictSymbol('probably').word, 'probably');
  assert.equal(verdictClass('probably'), 'not-surveyed');
  assert.equal(kindOf('ford').word, 'ford');
});

test('across the 180th meridian everything is drawn beside the line, not round the world', () => {
  const line = [[[179.9, -17, 0], [-179.9, -17, 1000]], [[-179.9, -17, 1000], [-179.8, -17, 2000]]];

  const near = ([lat, lon], [otherLat, otherLon]) => Math.abs(lat - otherLat) < 1e-9 && Math.abs(lon - otherLon) < 1e-9;
  assert.ok(near(legPaths(line)[0][1], [-17, 180.1]));
  assert.ok(near(legPaths(line)[1][1], [-17, 180.2]));
  assert.ok(near(pointAt(line, 500), [-17, 180]));
  assert.ok(near(pointAt(line, 1500), [-17, 180.15]));
  assert.ok(near(drawnBeside(line)([-179.85, -17]), [-17, 180.15]));
  // The other way, and where nothing is crossed.
  assert.ok(near(drawnBeside([[[-179.9, 10, 0]]])([179.9, 10]), [10, -180.1]));
  assert.deepEqual(drawnBeside([[[-93.1, 44.6, 0]]])([-93.2, 44.7]), [44.7, -93.2]);
  assert.deepEqual(drawnBeside(null)([-93.2, 44.7]), [44.7, -93.2]);
});
