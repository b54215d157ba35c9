import assert from 'node:assert/strict';
import test from 'node:test';
import { lengthOf, lengthText, meters, shownLength, tapeText } from '../../../web/text/length.js';

/** Inches and millimeters by hand: an inch is 25.4 mm. */
test('a length is what its units say, exactly', () => {
  const mm = value => Math.round(value * 1e9);
  const cases = [
    ['13 ft 6 in', mm(4114.8)], ["13'6\"", mm(4114.8)], ["13' 6 1/2\"", mm(4127.5)], ['13′ 6½″', mm(4127.5)],
    ['3/4 in', mm(19.05)], ['-1 1/2 in', -mm(38.1)], ['−1 1/2 in', -mm(38.1)], ['6.25 in', mm(158.75)],
    ['4.11 m', mm(4110)], ['180 mm', mm(180)], ['12 cm', mm(120)], ['0 in', 0], ['13.5 ft', mm(4114.8)],
    ['1/64 in', 396_875_000], ['-16 ft 10 in', -mm(5130.8)], ['19 3/4 in', mm(501.65)], [' 44  in ', mm(1117.6)],
  ];
  cases.forEach(([text, expected]) => assert.equal(lengthOf(text), expected, text));
});

test('anything else is no length', () => {
  ['', '44', '13 ft 14 in', '13.5 ft 6 in', '4,11 m', '1e2 m', '3/4 ft', 'm', '1 furlong', '10 deg', '1 in 2 in',
    '2 in 1 ft', '--1 in', '3/2 in', '1 4/4 in', null, undefined, 4].forEach(text => assert.equal(lengthOf(text), null, String(text)));
});

test('what is written is read back as the very same', () => {
  const cases = [
    ['-16 ft 8 in', '-16 ft 10 in', '-16 ft 8 in'],
    ['-17 ft', '-16 ft 10 in', '-17 ft'],
    ['4 1/4 in', '22 in', '4 1/4 in'],
    ['0 in', '-3 in', '0 in'],
    ['1/2 in', '3 ft', '1/2 in'],
    ['10 ft', '22 in', '10 ft'],
    ['1.37 m', '-4.4 m', '1.37 m'],
    ['54 in', '-4.4 m', '1.3716 m'],
    ['1/64 in', '-4.4 m', '0.000396875 m'],
    ['54 in', '420 mm', '1371.6 mm'],
    ['1.37 m', '22 in', '1.37 m'],
    ['-0.5 m', '1 m', '-0.5 m'],
  ];
  cases.forEach(([text, like, expected]) => {
    assert.equal(lengthText(lengthOf(text), like), expected);
    assert.equal(lengthOf(expected), lengthOf(text));
  });
});

test('every 64th of an inch and every tenth of a millimeter up to 60 m comes back', () => {
  let seen = 0;
  for (let n = -151_000; n <= 151_000; n += 7) {
    for (const [value, likes] of [[n * 396_875_000, ['1 ft', '1 in', '1 m', '1 mm']], [n * 100_000_000, ['1 m', '1 in']]]) {
      for (const like of likes) {
        assert.equal(lengthOf(lengthText(value, like)), value, `${n} like ${like}`);
        seen += 1;
      }
    }
  }
  assert.ok(seen > 200_000);
});

test('in the units of the page', () => {
  const cases = [
    ['44 in', 'us', '3 ft 8 in'], ['22 in', 'us', '22 in'], ['1.2 m', 'us', '3 ft 11.24 in'], ['-5 mm', 'us', '-0.2 in'],
    ['16 ft 10 in', 'metric', '5.1308 m'], ['22 in', 'metric', '558.8 mm'], ['-3/8 in', 'metric', '-9.5 mm'],
    ['1.15 m', 'metric', '1.15 m'], ['0 in', 'us', '0 in'],
  ];
  cases.forEach(([text, system, expected]) => assert.equal(tapeText(lengthOf(text), system), expected, text));
  assert.equal(shownLength('44 in', 'us'), '44 in');
  assert.equal(shownLength('44 in', 'metric'), '1.1176 m');
  assert.equal(shownLength('22 in', 'metric'), '558.8 mm');
  assert.equal(shownLength('10 deg', 'metric'), '10 deg');
  assert.equal(shownLength(undefined, 'us'), '');
  assert.equal(meters(lengthOf('1 ft')), 0.3048);
});
