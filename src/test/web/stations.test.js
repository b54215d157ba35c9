import assert from 'node:assert/strict';
import test from 'node:test';
import {
  across, heightsShown, labelPlaces, placesIn, planPieces, rows, span, stationTicks, thinned, windowAround, windowWith,
} from '../../../web/drawing/stations.js';
import { report } from './fixtures.js';
import { plan } from './planfixtures.js';

const near = (actual, expected) => assert.ok(Math.abs(actual - expected) < 1e-9, `${actual}, not ${expected}`);
/** 10 km over 1,000 px, which begin 40 px from the left edge: a tenth of a pixel is a meter. */
const WHOLE = { fromM: 0, toM: 10000 };
const WIDTH = 1058;
const SPOTS = [
  { id: 'H1', heights: { ground: [[-20, -0.5], [0, 0], [20, -0.25]], over: null } },
  { id: 'H2', heights: { ground: null, over: [[-3, 4.5], [5, 4.25]] } },
  { id: 'H3', heights: null },
];

test('strip map and profile stand every place at its station, and heights only where they are known', () => {
  const places = placesIn(report(), 'down/none/high', SPOTS, WHOLE, WIDTH);
  assert.deepEqual(places.map(({ x }) => x), [140, 640, 650]);
  assert.deepEqual(places.map(({ verdict }) => verdict), ['contact', 'contact', 'not surveyed']);
  // -1 m to 6 m over 116 px, the highest at the top.
  const y = z => (116 * (6 - z)) / 7;
  assert.deepEqual(places[0].ground.map(([x]) => x), [138, 140, 142]);
  places[0].ground.forEach(([, drawn], k) => near(drawn, y([-0.5, 0, -0.25][k])));
  places[1].over.forEach(([x, drawn], k) => {
    near(x, [639.7, 640.5][k]);
    near(drawn, y([4.5, 4.25][k]));
  });
  assert.deepEqual([places[0].over, places[1].ground, places[2].ground, places[2].over], [null, null, null, null]);
});

test('a place without a cell is not surveyed, one outside of the window is not drawn, one that is not listed neither', () => {
  const r = report();
  r.hazards[1].cells = [];
  const places = placesIn(r, 'down/none/low', SPOTS, { fromM: 5950, toM: 6050 }, WIDTH);
  assert.deepEqual(places.map(({ hazard, verdict, x }) => [hazard.id, verdict, x]), [['H2', 'not surveyed', 540]]);
  assert.deepEqual(placesIn(r, 'down/none/low', SPOTS, WHOLE, WIDTH, [r.hazards[2]]).map(({ hazard }) => hazard.id), ['H3']);
});

test('heights reach as far as what is known does, and a structure of the usual height always has room', () => {
  assert.deepEqual(heightsShown(SPOTS), [-1, 6]);
  assert.deepEqual(heightsShown([{ heights: { ground: [[0, -2]], over: [[0, 9.5]] } }]), [-2, 9.5]);
});

test('a window holds what it is put around, keeps its length, and stays on the route', () => {
  assert.deepEqual(windowAround(10000, 5000, 2000), { fromM: 4000, toM: 6000 });
  assert.deepEqual(windowAround(10000, 100, 2000), { fromM: 0, toM: 2000 });
  assert.deepEqual(windowAround(10000, 9990, 2000), { fromM: 8000, toM: 10000 });
  assert.deepEqual(windowAround(10000, 5000, 30000), WHOLE);
  assert.deepEqual(windowAround(10000, 5000, 1), { fromM: 4970, toM: 5030 });
  assert.deepEqual(windowWith({ fromM: 0, toM: 1200 }, 10000, 600), { fromM: 0, toM: 1200 });
  assert.deepEqual(windowWith({ fromM: 0, toM: 1200 }, 10000, 5000), { fromM: 3900, toM: 5100 });
  assert.deepEqual(windowWith({ fromM: 6000, toM: 7200 }, 10000, 5000), { fromM: 4900, toM: 6100 });
});

test('stations are ticked at round figures of the unit in force, in any window', () => {
  assert.deepEqual(stationTicks(WHOLE, WIDTH, 1000).map(({ value, x }) => [value, x]),
    [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map(km => [km, 40 + 100 * km]));
  assert.deepEqual(stationTicks({ fromM: 1950, toM: 2050 }, WIDTH, 1000).map(({ value }) => value),
    [1.95, 1.96, 1.97, 1.98, 1.99, 2, 2.01, 2.02, 2.03, 2.04, 2.05]);
});

test('the strip has a bar for each stretch, the raise at its place, and what blocks', () => {
  const toX = across(WHOLE, WIDTH);
  const { bars, raised, blocked } = planPieces(plan(), WHOLE, toX);
  assert.deepEqual(bars.map(({ from, to, letter, index }) => [from, to, letter, index]),
    [[40, 340, 'A', 0], [340, 1040, 'B', 1]]);
  assert.deepEqual(raised.map(({ from, to }) => [from, to]), [[139, 143]]);
  assert.deepEqual([...blocked], ['H3']);
  // Less than three pixels are drawn as three; outside of the window nothing is.
  const narrow = planPieces(plan(), WHOLE, across(WHOLE, 358));
  near(narrow.raised[0].to - narrow.raised[0].from, 3);
  assert.equal(span({ fromM: 5000, toM: 6000 }, toX, 990, 1030), null);
});

test('labels stand apart from one another and from the lines to them; the worst verdict has its name first', () => {
  const measure = () => 26;
  const crowd = Array.from({ length: 40 }, (none, k) =>
    ({ x: 100 + 3 * k, text: `H${k}`, verdict: k === 25 ? 'contact' : 'clear' }));
  const labels = labelPlaces(crowd, 400, measure);
  assert.ok(labels[25] !== null, 'what is in contact is named');
  const named = labels.flatMap((label, k) => (label ? [{ ...label, right: label.left + 30, line: crowd[k].x }] : []));
  assert.ok(named.length >= 4 && named.length < 40, `${named.length} named`);
  for (const one of named) {
    assert.ok(one.left >= 0 && one.right <= 400);
    for (const other of named.filter(label => label !== one)) {
      assert.ok(one.row !== other.row || one.right < other.left || one.left > other.right, 'label on label');
      assert.ok(one.row <= other.row || other.line < one.left || other.line > one.right, 'line through label');
    }
  }
  assert.ok(labelPlaces(crowd.slice(0, 1), 400, measure)[0].anchor === 'middle');
});

test('of texts along a row those stay that do not touch', () => {
  assert.deepEqual(thinned([{ x: 0, text: '' }, { x: 20, text: '' }, { x: 30, text: '' }], () => 14), [true, true, false]);
});

test('without a plan there is no row of set-ups', () => {
  assert.ok(rows(false).height < rows(true).height);
  // A row of labels is 14 px high: those that none is in are no room at all.
  const labels = [{ row: 2 }, null];
  assert.equal(rows(true, [{ row: 0 }]).height - rows(true, labels).height, 28);
  assert.equal(rows(true, labels).labels + 2 * 14, rows(true, labels).line - 23);
});
