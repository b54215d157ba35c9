import assert from 'node:assert/strict';
import test from 'node:test';
import {
  acceptable, atStop, decisions, differences, raisedPieces, robustnessWords, setUpLetters, sorted, standing,
  stretches,
} from '../../../web/report/plan.js';
import { marginPlot } from '../../../web/drawing/margins.js';
import { asSpeed, asTime, duration, room, seconds, spareLeft, speed } from '../../../web/text/format.js';
import { cell, report } from './fixtures.js';
import { along, compared, HIGH, liftOf, LOW, passageOf, plan, spare } from './planfixtures.js';

test('a configuration runs from where it is set to where the next one is', () => {
  assert.deepEqual(stretches(plan()), [
    { set: LOW, fromM: 0, toM: 3000 }, { set: HIGH, fromM: 3000, toM: 10000 }]);
});

test('set-ups are lettered as on the papers, two letters after Z and no letter twice', () => {
  const steps = Array.from({ length: 53 }, (none, index) => (
    { step: index === 0 ? 'depart' : 'change', chainageM: index, set: { configuration: `c${index}` } }))
    .map(({ set, ...step }) => (step.step === 'depart' ? { ...step, set } : { ...step, change: { to: set } }));
  const letters = [...setUpLetters({ steps, route: { lengthM: 100 } }).values()];
  assert.deepEqual([0, 25, 26, 51, 52].map(index => letters[index]), ['A', 'Z', 'AA', 'AZ', 'BA']);
  assert.equal(new Set(letters).size, 53);
});

test('a raised piece runs from where the deck goes up to where it goes down, whatever is met last', () => {
  const raise = { frontM: 0.1, rearM: 0, clearanceM: 0.08, requiredM: 0.07 };
  const steps = [
    liftOf('raise', 100, ['A', 'B']),
    passageOf('A', 'crest', 'A', 100, 200, LOW, { raise, raises: true, lowers: true }),
    passageOf('B', 'posted-bridge', 'B', 120, 140, LOW, { raise }),
    liftOf('lower', 200, ['A', 'B'], { lastLeft: 'A' }),
    liftOf('raise', 890, ['C']),
    passageOf('C', 'crest', 'C', 900, 950, LOW, { raise, raises: true, lowers: true }),
    liftOf('lower', 950, ['C']),
  ];
  assert.deepEqual(raisedPieces({ steps, route: { lengthM: 1000 } }).map(({ fromM, toM, hazards }) => [fromM, toM, hazards]),
    [[100, 200, ['A', 'B']], [890, 950, ['C']]]);
});

test('a plan that is blocked, or whose outcome nobody knows, is nothing to drive by', () => {
  for (const outcome of ['no way through', 'splendid']) {
    assert.match(standing({ ...plan(), outcome }), /NOT FOR DRIVING/);
  }
  assert.match(standing({ ...plan(), outcome: 'way through under conditions', conditions: [{}] }), /1 condition below is/);
  assert.doesNotMatch(standing({ ...plan(), outcome: 'way through' }), /NOT FOR DRIVING|condition/);
});

test('only a place that is tight somewhere can be accepted, with escorts where its corner needs them', () => {
  const sheet = report();
  assert.equal(acceptable(sheet, 'H1'), null);
  assert.equal(acceptable(sheet, 'H3'), null);
  assert.equal(acceptable(sheet, 'whole route'), null);
  sheet.hazards[1].cells[0] = cell('down/none/low', 'tight');
  assert.equal(acceptable(sheet, 'H2'), 'a spotter');
  sheet.hazards[1].cells[1] = cell('down/none/high', 'tight', { corner: { escorts: true } });
  assert.equal(acceptable(sheet, 'H2'), 'escorts');
});

test('what the planner decided is listed, and what is done at a stop is told', () => {
  assert.deepEqual(decisions(report(), { acceptTight: ['H1'], setAside: ['whole route'] }), [
    { id: 'H1', name: 'First crossing', what: 'accepted as tight' },
    { id: 'whole route', name: 'limits of the whole route', what: 'set aside, undecided' }]);
  assert.equal(atStop(plan(), { id: 'P1', name: 'Gravel pit' }).change.to, HIGH);
  assert.equal(atStop(plan(), { id: 'P1', name: 'Gravel pit' }).held, null);
  assert.match(atStop(plan(), { id: 'P2', name: 'Lay-by' }).held, /cannot be used/);
});

test('a sort keeps equal rows as they are and what is not known last, whichever way', () => {
  const row = (key, value) => ({ verdict: { key }, compared: value === undefined ? null : { seconds: value } });
  const rows = [row('a', 60), row('b'), row('c', 30), row('d', 60)];
  const keys = list => list.map(({ verdict }) => verdict.key).join('');
  assert.equal(keys(sorted(rows, 'seconds', false)), 'cadb');
  assert.equal(keys(sorted(rows, 'seconds', true)), 'adcb');
  assert.equal(keys(sorted(rows, null, false)), 'abcd');
});

test('two configurations differ where verdict, raise or spare do, and where only one comes by', () => {
  const same = along('S', 10, spare('ground', 0.1));
  const first = compared('a', [same, along('V', 20, null, { verdict: 'tight' }), along('O', 40, null)]);
  const second = compared('b', [same, along('V', 20, null), along('X', 30, spare('load', 5))]);
  assert.deepEqual(differences(first, second).map(({ id, first: a, second: b }) => [id, a !== null, b !== null]),
    [['V', true, true], ['X', false, true], ['O', true, false]]);
  assert.deepEqual(differences(first, first), []);
});

test('what is not known stands in a band of its own, never on the zero line', () => {
  const plot = marginPlot([compared('a', [along('K', 0, spare('ground', 0)), along('U', 100, null)])], 100, 300, 0);
  const known = plot.marks.find(({ place }) => place.hazard === 'K');
  const unknown = plot.marks.find(({ place }) => place.hazard === 'U');
  assert.equal(known.y, plot.bands[0].zero);
  assert.equal(unknown.kind, null);
  assert.ok(unknown.y > plot.bands[0].bottom, 'below every band');
  assert.equal(marginPlot([compared('a', [along('K', 0, spare('load', -3))])], 100, 300, 0).unknown, null);
});

test('a spare short of nought stands below the line, one beyond the band is cut and marked so', () => {
  const plot = marginPlot([compared('a', [along('S', 0, spare('ground', -0.1)), along('F', 50, spare('ground', 5))])],
    100, 300, 0);
  const [short, far] = plot.marks;
  assert.ok(short.y > plot.bands[0].zero && !short.cut);
  assert.ok(far.cut);
  assert.equal(far.y, plot.bands[0].top);
});

test('configurations picked stand beside one another, in the order they were picked', () => {
  const one = key => compared(key, [along('K', 50, spare('ground', 0.1))]);
  const xs = marginPlot([one('a'), one('b'), one('c')], 100, 300, 0).marks.map(({ x }) => x);
  assert.ok(xs[0] < xs[1] && xs[1] < xs[2]);
});

test('times are rounded up, room and what is left down', () => {
  assert.deepEqual([duration(0), duration(61), duration(3600), duration(5401), duration(null)],
    ['0 min', '2 min', '1 h', '1 h 31 min', 'unknown']);
  assert.deepEqual([seconds(28.1, 'up'), seconds(45.9, 'down'), seconds(null, 'up')], ['29 s', '45 s', 'unknown']);
  assert.deepEqual([asTime(90), asTime(900), asTime(5400), asTime(3600), asTime(0)],
    ['90 s', '15 min', '1 h 30 min', '1 h', '0 min']);
  // 1 mph is 0.44704 m/s exactly.
  assert.deepEqual([speed(1.34112, 'us'), speed(1.34112, 'metric'), speed(1.33, 'us'), asSpeed(1.34112, 'us')],
    ['3 mph', '4.8 km/h', '2.9 mph', '3 mph']);
  assert.deepEqual([room(30.4799, 'us', 'down'), room(30.4801, 'us', 'up'), room(30.48, 'metric', 'up'), room(null, 'us', 'up')],
    ['99 ft', '101 ft', '30.5 m', 'unknown']);
  assert.deepEqual([spareLeft('load', -0.4, 'metric'), spareLeft('ground', 0.0031, 'us')], ['−10 kg', '0 in']);
});

test('the weakest point and the re-survey are told with their places', () => {
  assert.deepEqual(robustnessWords({
    weakest: { hazard: 'H1', text: 'is weakest.' }, resurvey: { hazard: 'H2', text: 'would free most.' },
    notKnown: [{ hazard: 'H3', kind: 'corner', text: 'is not known.' }],
  }), ['Weakest point: H1 is weakest.', 'Re-survey that would help most: H2 would free most.', 'H3 is not known.']);
  assert.deepEqual(robustnessWords({ weakest: null, resurvey: null, notKnown: [] }), []);
  assert.deepEqual(robustnessWords(null), []);
});
