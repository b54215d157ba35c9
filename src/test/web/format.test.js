import assert from 'node:assert/strict';
import test from 'node:test';
import * as format from '../../../web/text/format.js';

const INCH_M = 0.0254;

test('a clearance is rounded down, in eighths of an inch and in millimeters', () => {
  const cases = [
    // inches, US, metric
    [1.99, '1 7/8 in', '50 mm'],
    [2, '2 in', '50 mm'],
    [2.124, '2 in', '53 mm'],
    [2.125, '2 1/8 in', '53 mm'],
    [0, '0 in', '0 mm'],
    [-0, '0 in', '0 mm'],
    [0.12, '0 in', '3 mm'],
    [-0.01, '−1/8 in', '−1 mm'],
    [-1.01, '−1 1/8 in', '−26 mm'],
    [11.99, '11 7/8 in', '304 mm'],
    [12, '1 ft 0 in', '304 mm'],
    [14.5, '1 ft 2 1/2 in', '368 mm'],
    [12.25, '1 ft 0 1/4 in', '311 mm'],
    [162, '13 ft 6 in', '4.114 m'],
    [-13, '−1 ft 1 in', '−331 mm'],
  ];
  for (const [inches, us, metric] of cases) {
    assert.equal(format.clearance(inches * INCH_M, 'us'), us, `${inches} in`);
    assert.equal(format.clearance(inches * INCH_M, 'metric'), metric, `${inches} in`);
  }
});

test('a raise and what is required are rounded up', () => {
  const cases = [
    [1.99, '2 in', '51 mm'],
    [2, '2 in', '51 mm'],
    [2.001, '2 1/8 in', '51 mm'],
    [11.9, '1 ft 0 in', '303 mm'],
    [0, '0 in', '0 mm'],
  ];
  for (const [inches, us, metric] of cases) {
    assert.equal(format.raise(inches * INCH_M, 'us'), us);
    assert.equal(format.raise(inches * INCH_M, 'metric'), metric);
    assert.equal(format.required(inches * INCH_M, 'us'), us);
  }
});

test('a raise is never told farther than it goes', () => {
  // 9 1/4 in is 234.95 mm, 9 17/64 in is 235.347 mm; 235 mm is 9.25197 in.
  for (const [meters, end, us, metric] of [
    [0.2340, 0.23495, '9 1/4 in', '234 mm'],
    [0.23495, 0.23495, '9 1/4 in', '234.9 mm, as far as it goes'],
    [0.2350, 0.2354, '9 17/64 in', '235 mm'],
    [0.2350, 0.2350, '9 1/4 in, as far as it goes', '235 mm'],
    [0.2350, null, '9 3/8 in', '235 mm'],
  ]) {
    assert.equal(format.raise(meters, 'us', end), us);
    assert.equal(format.raise(meters, 'metric', end), metric);
  }
});

test('no clearance ever reads more than it is, no raise less, for 20 000 lengths', () => {
  let state = 20261125;
  const random = () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
  for (let i = 0; i < 20000; i++) {
    const valueM = (random() - 0.3) * (i % 2 === 0 ? 0.4 : 6);
    for (const system of format.SYSTEMS) {
      const down = read(format.clearance(valueM, system));
      const up = read(format.raise(valueM, system));
      const step = system === 'us' ? INCH_M / 8 : 0.001;
      assert.ok(down <= valueM + 1e-11 && valueM - down < step + 1e-11, `${valueM} read ${down} ${system}`);
      assert.ok(up >= valueM - 1e-11 && up - valueM < step + 1e-11, `${valueM} read ${up} ${system}`);
      assert.ok(read(format.fine(valueM, system, 'down')) <= valueM + 1e-11);
    }
  }
});

test('a gap that meets its need reads so, and never safer than it is', () => {
  // By hand: 65.6 mm is 2.5827 in, 66.6 mm is 2.6220 in; 2 19/32 in is 2.59375 in.
  for (const [gapM, needM, us, metric] of [
    [0.0666, 0.0656, ['2 19/32 in', '2 19/32 in'], ['66 mm', '66 mm']],
    [0.0678, 0.0672, ['2 21/32 in', '2 21/32 in'], ['67.8 mm', '67.2 mm']],
    [0.0656, 0.0656, ['65.6 mm', '65.6 mm'], ['65.6 mm', '65.6 mm']],
    [0.0974, 0.0656, ['3 3/4 in', '2 5/8 in'], ['97 mm', '66 mm']],
    [0.0655, 0.0656, ['2 1/2 in', '2 5/8 in'], ['65 mm', '66 mm']],
    [-0.01, 0.0656, ['−1/2 in', '2 5/8 in'], ['−10 mm', '66 mm']],
  ]) {
    assert.deepEqual(Object.values(format.against(gapM, needM, 'us')), us);
    assert.deepEqual(Object.values(format.against(gapM, needM, 'metric')), metric);
  }
  assert.deepEqual(format.against(null, 0.0508, 'us'), { gap: 'unknown', need: '2 in' });
});

test('lengths exact in the unit read as that length: 2000 eighths and 2000 millimeters', () => {
  for (let n = -1000; n <= 1000; n++) {
    assert.ok(Math.abs(read(format.clearance((n / 8) * INCH_M, 'us')) - (n / 8) * INCH_M) < 1e-9, `${n}/8 in`);
    assert.ok(Math.abs(read(format.clearance(n / 1000, 'metric')) - n / 1000) < 1e-9, `${n} mm`);
    assert.equal(format.clearance((n / 8) * INCH_M, 'us'), format.raise((n / 8) * INCH_M, 'us'));
  }
});

test('what is not known never reads as a number', () => {
  const { clearance, raise, required, dimension, alongRoad, chainage } = format;
  for (const value of [null, undefined, NaN, Infinity, -Infinity, '1']) {
    for (const write of [clearance, raise, required, dimension, alongRoad, chainage]) {
      assert.equal(write(value, 'us'), 'unknown');
    }
    assert.equal(format.fine(value, 'metric', 'down'), 'unknown');
    assert.equal(format.grade(value), 'unknown');
  }
});

test('a place on the road is told from the point it is measured from', () => {
  assert.equal(format.alongRoad(-3.7338, 'us'), '12 ft 3 in before');
  assert.equal(format.alongRoad(0.3048, 'us'), '1 ft 0 in past');
  assert.equal(format.alongRoad(0.004, 'us'), 'at the point');
  assert.equal(`from ${format.alongRoad(0, 'us', 'the point')}`, 'from the point');
  assert.equal(format.alongRoad(-2.5, 'metric'), '2.50 m before');
});

test('chainage, grade, coordinates, axes', () => {
  assert.equal(format.chainage(1609.344 * 12.671, 'us'), '12.67 mi');
  assert.equal(format.chainage(20391, 'metric'), '20.39 km');
  assert.equal(format.chainageFigure(0, 'metric'), '0.00');
  assert.equal(format.grade(-0.015), '−1.5 %');
  assert.equal(format.grade(-0.0001), '0.0 %');
  assert.equal(format.coordinate(41.2, 'lat'), '41°12′N');
  assert.equal(format.coordinate(-97.9999, 'lon'), '98°00′W');
  assert.equal(format.axisFigure(-15.24, 'us'), '−50');
  assert.equal(format.round(0.5, 'mi'), '0.5 mi');
});

test('lengths go to the server with a unit, and without losing 1 mm', () => {
  assert.equal(format.asQuantity(0.0508), '0.050800000 m');
  assert.ok(Math.abs(parseFloat(format.asQuantity(1 / 3)) - 1 / 3) < 1e-9);
});

test('an unknown rounding is a mistake, not a silent choice', () => {
  assert.throws(() => format.stepsIn(1, 1, 'sideways'), /down, up or nearest/);
});

/** Reads a printed length back, meters. */
function read(text) {
  const sign = text.startsWith('−') ? -1 : 1;
  const plain = text.replace('−', '');
  const metric = /^([\d.]+) (mm|m)$/.exec(plain);
  if (metric) {
    return sign * Number(metric[1]) * (metric[2] === 'mm' ? 0.001 : 1);
  }
  const us = /^(?:(\d+) ft )?(?:([\d.]+) ?)?(?:(\d)\/(\d) )?in$/.exec(plain);
  assert.ok(us, `cannot read ${text}`);
  return sign * INCH_M * (12 * Number(us[1] ?? 0) + Number(us[2] ?? 0) + (us[3] ? Number(us[3]) / Number(us[4]) : 0));
}
