import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';
import { createFrame, pointerOf } from '../../../web/rig/frame.js';
import { lengthOf } from '../../../web/text/length.js';
import { rowsOf, tapeOf } from '../../../web/rig/tape.js';
import { refusalOf, rowOf, withRow } from '../../../web/rig/tapechange.js';

const SAMPLES = ['lowbed-empty', 'lowbed-loaded', 'lowbed-with-jeep', 'lowbed-with-two-boosters'];
const textOf = name => readFileSync(new URL(`../../../sample-routes/${name}.rig.json`, import.meta.url), 'utf8');
const rows = (text, stance = 0) => rowsOf(tapeOf(JSON.parse(text), stance));
const row = (text, id) => rows(text).find(one => one.id === id) ?? assert.fail(`no row ${id}`);
const set = (text, id, typed) => withRow(text, JSON.parse(text), row(text, id), typed);
const meters = value => `${(value / 1e12).toFixed(12)} m`;

/** Feet and inches of the samples in inches, read by this test on its own. */
function inches(text) {
  const [, minus, feet, whole, over, under] =
    text.match(/^(-)?(?:(\d+) ft)?(?: ?(?:(\d+)(?= |$))?(?: ?(\d+)\/(\d+))? in)?$/);
  return (minus ? -1 : 1) * (12 * Number(feet ?? 0) + Number(whole ?? 0) + (over ? Number(over) / Number(under) : 0));
}

/** Every x below a value with its pointer, inches. */
function xs(value, path = []) {
  return value !== null && typeof value === 'object'
    ? Object.entries(value).flatMap(([key, one]) =>
      (key === 'x' ? [[pointerOf([...path, key]), inches(one)]] : xs(one, [...path, key])))
    : [];
}

test('taking every distance and writing it back changes no byte', () => {
  for (const name of SAMPLES) {
    const text = textOf(name);
    const json = JSON.parse(text);
    const all = rows(text);
    assert.ok(all.length > 80, `${name} has ${all.length} rows`);
    assert.equal(new Set(all.map(({ id }) => id)).size, all.length, 'every row has its own name');
    all.forEach(one => assert.equal(
      withRow(text, json, one, one.kind === 'written' ? String(one.text) : meters(one.value)), text, one.id));
  }
});

test('the distances add up to where things stand', () => {
  for (const name of SAMPLES) {
    const text = textOf(name);
    const json = JSON.parse(text);
    const found = new Map(xs(json));
    for (const { path, groups: [{ places }] } of tapeOf(json, 0).filter(part => part.path)) {
      const marks = places.filter(({ along }) => along === null || along.kind === 'span');
      let at = null;
      for (const { along, x } of marks) {
        at = at === null ? x : at - along.value;
        if (along?.pointer) {
          assert.equal(at / 25.4e9, found.get(along.pointer), along.pointer);
        }
      }
      assert.ok(marks.length >= 3, pointerOf(path));
    }
  }
});

/** By hand: axles at 16 ft 10 in and 21 ft 2 in behind the steer axle are 4 ft 4 in apart; the deck is 25 ft long. */
test('neighbors are as far apart as a tape says', () => {
  const text = textOf('lowbed-loaded');
  const cases = [
    ['tractor/steer/along', 45], ['tractor/drive-0/along', 202], ['tractor/drive-1/along', 52],
    ['tractor/fifthWheel/along', 14], ['tractor/rear/along', 37], ['trailer/kingpin/along', 21],
    ['trailer/deckFront/along', 126], ['trailer/deckRear/along', 300], ['trailer/trailer-0/along', 54],
    ['trailer/trailer-1/along', 54.5], ['trailer/trailer-2/along', 54.5], ['trailer/boosterHinge/along', 29],
    ['trailer/rear/along', 0], ['trailer/closeCoupledAxle/along', 59], ['booster/axle/along', 96],
    ['booster/rear/along', 24], ['trailer/load-0/along', 12], ['trailer/load-1/along', 93],
  ];
  cases.forEach(([id, expected]) => assert.equal(row(text, id).value / 25.4e9, expected, id));
});

test('a distance moves all that lies behind it, and nothing else', () => {
  const text = textOf('lowbed-loaded');
  const before = new Map(xs(JSON.parse(text)));
  const front = -126;
  const trailer = /^\/stances\/0\/(trailer\/|booster\/closeCoupled|weights\/(trailer|gooseneck|pieces))/;
  const ahead = pointer => /load\/1|pieces\/1/.test(pointer);
  // Kingpin to deck front 10 ft 6 in becomes 11 ft: all of the trailer at the deck front or behind is 6 in farther back.
  const after = new Map(xs(JSON.parse(set(text, 'trailer/deckFront/along', '11 ft'))));
  assert.equal(after.size, before.size);
  let moved = 0;
  for (const [pointer, x] of before) {
    const moves = trailer.test(pointer) && x <= front && !ahead(pointer);
    moved += moves ? 1 : 0;
    assert.equal(after.get(pointer), moves ? x - 6 : x, pointer);
  }
  assert.ok(moved > 30);
  assert.deepEqual({ ...JSON.parse(set(text, 'trailer/deckFront/along', '11 ft')), stances: 0 },
    { ...JSON.parse(text), stances: 0 });
});

test('the first and the last distance of a unit', () => {
  const text = textOf('lowbed-loaded');
  // Both bumper points and the guard behind them go forward with the front; the steer axle stays the origin.
  const front = JSON.parse(set(text, 'tractor/steer/along', '4 ft')).stances[0].tractor;
  assert.deepEqual(front.underside.slice(-2).map(({ x }) => x), ['1 ft 9 in', '4 ft']);
  assert.deepEqual(front.topside.slice(-2).map(({ x }) => x), ['-3 ft', '4 ft']);
  assert.deepEqual(front.steer, JSON.parse(text).stances[0].tractor.steer);
  const rear = JSON.parse(set(text, 'booster/rear/along', '30 in')).stances[0].booster;
  assert.deepEqual([rear.underside[0].x, rear.topside[0].x, rear.underside[1].x], ['-10 ft 6 in', '-10 ft 6 in', '-9 ft']);
  // The hinge is at the very end of the frame: the end moves from it, and the hinge stays.
  const end = JSON.parse(set(text, 'trailer/rear/along', '2 in')).stances[0].trailer;
  assert.deepEqual([end.boosterHinge.x, end.underside[0].x, end.topside[0].x],
    ['-51 ft 6 in', '-51 ft 8 in', '-51 ft 8 in']);
});

test('what is taped from a mark ahead moves alone; a load moves whole, with its weight', () => {
  const text = textOf('lowbed-loaded');
  const wheel = JSON.parse(set(text, 'tractor/fifthWheel/along', '16 in')).stances[0].tractor;
  assert.equal(wheel.fifthWheel.x, '-18 ft 2 in');
  assert.deepEqual(wheel.drive, JSON.parse(text).stances[0].tractor.drive);
  const ahead = JSON.parse(set(text, 'tractor/fifthWheel/along', '-2 in')).stances[0].tractor;
  assert.equal(ahead.fifthWheel.x, '-16 ft 8 in');
  const stance = JSON.parse(set(text, 'trailer/load-0/along', '24 in')).stances[0];
  const old = JSON.parse(text).stances[0];
  stance.trailer.load[0].outline.forEach(({ x }, k) =>
    assert.equal(inches(x), inches(old.trailer.load[0].outline[k].x) - 12));
  assert.equal(stance.weights.pieces[0].cg.x, '-28 ft');
  assert.deepEqual(stance.weights.pieces[1], old.weights.pieces[1]);
  assert.deepEqual(stance.trailer.axles, old.trailer.axles);
});

test('there and back says the same, whatever the distance', () => {
  for (const name of SAMPLES) {
    const text = textOf(name);
    const before = JSON.stringify(xs(JSON.parse(text)));
    let seen = 0;
    for (const one of rows(text).filter(({ kind }) => kind !== 'written')) {
      const there = withRow(text, JSON.parse(text), one, meters(one.value + 25.4e9 * 7 / 8));
      const back = rows(there).find(({ moves }) => moves && String(moves) === String(one.moves) && moves.length > 0);
      // A point that has come behind another mark is taped from that one.
      if (back && back.value === one.value + 25.4e9 * 7 / 8) {
        assert.equal(JSON.stringify(xs(JSON.parse(withRow(there, JSON.parse(there), back, meters(one.value))))), before);
        seen += 1;
      }
    }
    assert.ok(seen > 30, `${name}: ${seen}`);
  }
});

test('every byte but those of the figures stays', () => {
  const text = '{ "stances":[ {"tractor" : {"steer":{"x":"0 m" ,"radius":"0.5 m"},\n "drive":{"axles":[{"x":"-4 m","radius":"0.5 m"}, '
    + '{"x":"-5.3 m","radius":"0.5 m"}]}}, "trailer":{}}]}';
  assert.equal(set(text, 'tractor/drive-1/along', '1.4 m'), text.replace('-5.3 m', '-5.4 m'));
  assert.equal(set(text, 'tractor/drive-1/along', '4 ft'), text.replace('-5.3 m', '-5.2192 m'));
  assert.equal(set(text, 'tractor/drive-1/height', '19 1/2 in'),
    text.replace('"x":"-5.3 m","radius":"0.5 m"', '"x":"-5.3 m","radius":"19 1/2 in"'));
});

test('a number that stands bare stays bare', () => {
  const text = textOf('lowbed-loaded');
  assert.equal(JSON.parse(set(text, 'trailer/valveAxle/value', '2')).stances[0].trailer.valveAxle, 2);
  assert.equal(JSON.parse(set(text, 'rig/notch-0/value', '-2 in')).notches[0].offset, '-2 in');
});

test('units that are there have rows, and others have none', () => {
  const titles = name => tapeOf(JSON.parse(textOf(name)), 0).map(({ title }) => title);
  assert.deepEqual(titles('lowbed-loaded'), ['Tractor', 'Trailer', 'Booster', 'Whole rig']);
  assert.deepEqual(titles('lowbed-with-jeep'), ['Tractor', 'Jeep', 'Trailer', 'Booster', 'Whole rig']);
  assert.deepEqual(titles('lowbed-with-two-boosters'),
    ['Tractor', 'Jeep', 'Trailer', 'Booster 1', 'Booster 2', 'Whole rig']);
  const json = JSON.parse(textOf('lowbed-loaded'));
  delete json.stances[0].booster;
  assert.deepEqual(tapeOf(json, 0).map(({ title }) => title), ['Tractor', 'Trailer', 'Whole rig']);
  assert.deepEqual(tapeOf(json, 7), []);
  assert.deepEqual(tapeOf({}, 0), []);
});

test('a figure that is none is refused in a sentence', () => {
  const text = textOf('lowbed-loaded');
  const cases = [
    ['tractor/drive-1/along', '44', /"44" is not a length/], ['tractor/drive-1/along', '-1 in', /below zero/],
    ['tractor/drive-1/along', '44 in', null], ['tractor/fifthWheel/along', '-1 in', null],
    ['trailer/deckFront/height', '22', /not a length/], ['trailer/deckFront/height', '23 in', null],
    ['tractor/plan/steerLimit/value', '', /Nothing/], ['tractor/plan/steerLimit/value', '41 deg', null],
  ];
  cases.forEach(([id, typed, expected]) => {
    const said = refusalOf(row(text, id), typed);
    assert.ok(expected === null ? said === null : expected.test(said), `${id}: ${said}`);
  });
});

test('a problem is shown at the row of its place', () => {
  const all = rows(textOf('lowbed-loaded'));
  const cases = [
    ['/stances/0/trailer/deckFront/h', 'trailer/deckFront/height'],
    ['/stances/0/trailer/deckFront/x', 'trailer/deckFront/along'],
    ['/stances/0/tractor/drive/axles/1/radius', 'tractor/drive-1/height'],
    ['/stances/0/trailer/kingpin', 'trailer/kingpin/along'],
    ['/notches/2/offset', 'rig/notch-2/value'],
    ['/stances/0/weights/pieces/0/cg', 'trailer/weights-pieces-0-cg/along'],
    ['/name', undefined], ['', undefined],
  ];
  cases.forEach(([pointer, id]) => assert.equal(rowOf(all, pointer)?.id, id, pointer));
});

test('a frame of marks by hand', () => {
  const mark = (name, x, more = {}) => ({ key: name, name, x, path: [name], ...more });
  const frame = createFrame([mark('nose', 10, { path: null }), mark('pin', 0), mark('axle', -30),
    mark('end', -40, { path: null, rear: true })],
  [{ x: 10, paths: [['tip']] }, { x: 0, paths: [['at pin']] }, { x: -29, paths: [['before axle']] },
    { x: -39, paths: [['near the end']], end: true }, { x: -44, paths: [['overhang']] }]);
  const moved = index => frame.span(index).moves.map(path => path[0]).sort();
  assert.equal(frame.span(0), null);
  assert.deepEqual([frame.span(1).value, frame.span(1).sign, moved(1)], [10, 1, ['tip']]);
  assert.deepEqual([frame.span(2).value, moved(2)], [30, ['axle', 'near the end', 'overhang']]);
  assert.deepEqual([frame.span(3).value, moved(3)], [10, ['near the end', 'overhang']]);
  assert.equal(lengthOf('1 mm'), 1e9);
});
