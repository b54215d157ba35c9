import assert from 'node:assert/strict';
import { test } from 'node:test';
import { angle, pressure, weight, weightLeft } from '../../../web/text/format.js';
import { extent, fullness, groupPlaces, plotScales, toScale } from '../../../web/drawing/loads.js';
import { verdictClass, verdictSymbol } from '../../../web/drawing/symbols.js';
import { notChecked, severity } from '../../../web/report/report.js';
import { checkRequest } from '../../../web/exchange/api.js';

const LB = 0.45359237;

test('weights read in pounds and kilograms, nearest; what is left down', () => {
  assert.equal(weight(18_400 * LB, 'us'), '18,400 lb');
  assert.equal(weight(8_618, 'metric'), '8 620 kg');
  assert.equal(weightLeft(10.9 * LB, 'us'), '10 lb');
  assert.equal(weightLeft(-0.1 * LB, 'us'), '−1 lb');
  assert.equal(weightLeft(-1, 'metric'), '−10 kg');
  assert.equal(weight(null, 'us'), 'unknown');
});

test('pressures and angles', () => {
  assert.equal(pressure(427_475, 'us'), '62 psi');
  assert.equal(pressure(2_350 * 6894.757, 'us'), '2,350 psi');
  assert.equal(pressure(413_685.4, 'metric'), '4.1 bar');
  assert.equal(angle(-Math.PI / 180), '−1.0°');
});

test('load verdicts have their own symbols and are worse than what is not surveyed', () => {
  for (const verdict of ['outside limits', 'loads not known']) {
    assert.equal(verdictSymbol(verdict).word, verdict);
    assert.ok(severity(verdict) < severity('not surveyed'));
  }
  assert.equal(verdictClass('loads not known'), 'loads-not-known');
});

test('hazards whose loads are not known are told as not checked', () => {
  const hazard = verdict => ({ id: verdict, notes: [], cells: [{ configuration: 'c', verdict, reasons: [] }] });
  const report = { hazards: [hazard('clear'), hazard('loads not known'), hazard('outside limits'), hazard('not surveyed')] };
  assert.deepEqual(notChecked(report, 'c').map(({ hazard: { id } }) => id), ['loads not known', 'not surveyed']);
});

test('the drawing has one scale both ways and holds everything', () => {
  const drawn = {
    units: [{ underside: [[-10, 0.3], [2, 0.4]], topside: [[-10, 1], [2, 3]], load: [[[-8, 2], [-4, 4]]] }],
    wheels: [{ xM: 2.5, hM: 0.5, radiusM: 0.5 }],
  };
  const all = extent(drawn);
  assert.deepEqual([all.left, all.right, all.top], [-10.2, 3.2, 4.2]);
  const { toX, toY, scale, groundY } = toScale(all, 670);
  assert.ok(Math.abs(scale - 50) < 1e-9);
  assert.ok(Math.abs(toX(-10.2)) < 1e-9 && Math.abs(toX(3.2) - 670) < 1e-9);
  assert.ok(Math.abs(toY(0) - groundY) < 1e-9);
});

test('group figures keep their order and never lie on each other', () => {
  const axle = (group, xM) => ({ group, xM });
  const sheet = {
    axles: [axle('steer', 10), axle('drive', 5), axle('drive', 4), axle('trailer', 3)],
    groups: [{ group: 'steer' }, { group: 'drive' }, { group: 'trailer' }],
  };
  const places = groupPlaces(sheet, x => x * 30, 320, 76);
  assert.deepEqual(places.map(({ group }) => group.group), ['trailer', 'drive', 'steer']);
  for (let i = 1; i < places.length; i++) {
    assert.ok(places[i].at - places[i - 1].at >= 76 - 1e-9);
  }
});

test('a bar is full to its rule, and has none for a least load', () => {
  assert.equal(fullness({ finding: { least: false, loadKg: 5, limitKg: 4 } }), 1.25);
  assert.equal(fullness({ finding: { least: true, loadKg: 5, limitKg: 4 } }), null);
  assert.equal(fullness({ finding: null }), null);
});

test('a plot holds its loads and limits, and one place alone', () => {
  const plot = { from: 2, to: 2, lines: [{ points: [[2, -100], [2, 900]], mostKg: 1000 }] };
  const { toX, toY, most, least } = plotScales(plot, { left: 0, right: 100, top: 0, bottom: 100 });
  assert.equal(toX(2), 50);
  assert.ok(most > 1000 && least === -100 && toY(least) === 100);
});

test('a question about loads goes out with the files as they stand', () => {
  const body = checkRequest({ route: { text: '{"a":1 }' }, rig: { text: '{}' }, stance: 'loaded', margins: null },
    { configuration: 'down/none/3', pieceAt: '3.000 m', hazard: null });
  assert.equal(body, '{"route":{"a":1 },"rig":{},"configuration":"down/none/3","pieceAt":"3.000 m","stance":"loaded"}');
});
