import assert from 'node:assert/strict';
import test from 'node:test';
import { readFileSync } from 'node:fs';
import {
  apartM, atBearing, bearingAt, courseOf, courseOfLines, linesOf, passagesOf, placeAt,
} from '../../../web/line/course.js';
import { drawnOn, newRoute } from '../../../web/line/drawing.js';
import { rehung, withChanges } from '../../../web/line/hanging.js';
import { goesOn, insertedPoint, keptBecause, movedPoint, pointsOf, removedPoint } from '../../../web/line/positions.js';
import { bearingOf, coordinatesOf, pointOf } from '../../../web/line/typed.js';
import { createLineActions } from '../../../web/line/lineactions.js';
import { NO_EDIT } from '../../../web/page/state.js';

/** A degree at the equator: 2 pi 6378137 / 360 along it, the meridian's radius a(1 - e2) across it (WGS 84). */
const EAST_M = 111319.4908;
const NORTH_M = 110574.2758;

/** Two legs along the equator that meet in [0.01, 0], odd blanks and spellings, and a crest 1 km along. */
const TEXT = `{ "cresthaul": "route/1", "name":"R",
 "features" : [
  {"type":"Feature","properties":{"route":"One"},"geometry":{"type":"LineString","coordinates":[ [0,0.0],
     [5e-3 , 0] ,[0.01,0]]}},
  {"type":"Feature","properties":{"hazard":"crest","id":"H1","name":"Rise","survey":{"accuracy":"1 in","source":"level"},
     "profile":[{"line":"left","points":[["-9 m","0 m"],["9 m","0 m"]]}]},
   "geometry":{"type":"Point","coordinates":[0.009,0.0001]}},
  {"type":"Feature","properties":{"route":"Two"},"geometry":{"type":"MultiLineString","coordinates":[[[0.01,0],[0.02,0]],
     [[0.02,0],[0.03,0]]]}}
 ]}`;
const parsed = text => JSON.parse(text);
const points = text => pointsOf(linesOf(parsed(text)));
const positions = text => linesOf(parsed(text)).flatMap(line => line.points);
const near = (a, b, within) => assert.ok(Math.abs(a - b) <= within, `${a} is ${b} within ${within}`);

test('lengths and directions on the ellipsoid', () => {
  near(apartM([0, 0], [1, 0]), EAST_M, 0.01);
  near(apartM([0, 0], [0, 0.001]), NORTH_M / 1000, 0.001);
  near(apartM([179.999, 0], [-179.999, 0]), 0.002 * EAST_M, 0.001);
  // At 60 degrees the circle of latitude has the radius a cos / sqrt(1 - e2 sin2).
  near(apartM([0, 60], [0.001, 60]), 55.8002, 0.0005);
  const [lon, lat] = atBearing([0, 0], 90, 1000);
  near(lon, 1000 / EAST_M, 1e-7);
  assert.equal(lat, 0);
  near(atBearing([10, 0], 180, 500)[1], -500 / NORTH_M, 1e-7);
});

test('what people type of a point', () => {
  const cases = [
    ['41.9003, -101.19', [-101.19, 41.9003]], ['41.9 -101', [-101, 41.9]], ['41.9°, −101°', [-101, 41.9]],
    ['91, 0', null], ['41.9', null], ['41,9; -101', null], ['', null],
  ];
  cases.forEach(([text, expected]) => assert.deepEqual(coordinatesOf(text), expected, text));
  [['45', 45], ['NE', 45], ['nw', 315], ['360°', 360], ['0 deg', 0], ['361', null], ['north', null]]
    .forEach(([text, expected]) => assert.equal(bearingOf(text), expected, text));
  const of = (coordinates, bearing, distance, from = [0, 0]) => pointOf({ coordinates, bearing, distance }, from);
  assert.deepEqual(of('1, 2', '', '').lonLat, [2, 1]);
  near(of('', 'E', '1 km').lonLat[0], 1000 / EAST_M, 1e-7);
  assert.equal(of('here', '', '').at, 'coordinates');
  assert.equal(of('', '45', 'far').at, 'distance');
  assert.equal(of('', '', '20 m').at, 'bearing');
  assert.equal(of('', '45', '20 m', null).at, 'coordinates');
  assert.equal(of('', '', '').at, 'coordinates');
});

test('where legs meet there is one point', () => {
  assert.deepEqual(points(TEXT).map(({ lonLat, at }) => [lonLat[0], at.length]),
    [[0, 1], [0.005, 1], [0.01, 2], [0.02, 2], [0.03, 1]]);
});

test('a point moved, put in and taken out: all other bytes stay', () => {
  const json = parsed(TEXT);
  const all = points(TEXT);
  const first = movedPoint(TEXT, json, all[0], [0.001, 0.0002]);
  assert.equal(first.text.replace('[0.001, 0.0002]', '[0,0.0]'), TEXT);
  const last = movedPoint(TEXT, json, all[4], [0.031, 0]);
  assert.equal(last.text.replace('[0.031, 0]', '[0.03,0]'), TEXT);
  const joint = movedPoint(TEXT, json, all[2], [0.0101, 0]);
  assert.equal(joint.text.replaceAll('[0.0101, 0]', '[0.01,0]'), TEXT);
  const put = insertedPoint(TEXT, json, all[0], [0.002, 0]);
  assert.equal(put.text.replace(', [0.002, 0]', ''), TEXT);
  assert.deepEqual(positions(put.text).slice(0, 3), [[0, 0], [0.002, 0], [0.005, 0]]);
  assert.deepEqual(positions(removedPoint(TEXT, json, all[1]).text).slice(0, 2), [[0, 0], [0.01, 0]]);
  assert.equal(removedPoint(put.text, parsed(put.text), points(put.text)[1]).text, TEXT);
  // What the text gives is what was reckoned with.
  [first, last, joint, put].forEach(({ text, positions: told }) => assert.deepEqual(positions(text), told));
});

test('ends and meeting points stay', () => {
  const lines = linesOf(parsed(TEXT));
  const all = points(TEXT);
  assert.equal(keptBecause(lines, all[1]), null);
  assert.match(keptBecause(lines, all[2]), /legs meet/);
  assert.match(keptBecause(lines, all[4]), /two points/);
  assert.deepEqual(all.map(point => goesOn(lines, point)), [true, true, true, true, false]);
});

test('passages are told as the program tells them', () => {
  const there = courseOf([[0, 0], [0.01, 0], [0, 0]]);
  // 1.1 km out and back: 556.6 m and 1669.8 m; at the turn both ways are one.
  const [out, back] = passagesOf(there, [0.005, 0.0001]);
  near(out.alongM, 0.005 * EAST_M, 0.01);
  near(back.alongM, 0.015 * EAST_M, 0.01);
  near(out.awayM, 0.0001 * NORTH_M, 0.01);
  assert.equal(passagesOf(there, [0.0099, 0]).length, 1);
  assert.equal(passagesOf(there, [0.005, 0.0003]).length, 0, '33 m beside it');
  assert.equal(passagesOf(there, [0.005, 0.00027]).length, 2, '29.9 m beside it');
  near(placeAt(there, EAST_M * 0.012).lonLat[0], 0.008, 1e-7);
  near(bearingAt(there, 500), 90, 1e-6);
  near(bearingAt(there, 1500), -90, 1e-6);
});

const on = (text, made, options) => rehung(parsed(text), made, options);

test('a place that the line would leave, or pass in another direction, is refused by its name', () => {
  const json = parsed(TEXT);
  const all = points(TEXT);
  // At [0.009, 0] the line from [0.005, 0] to [0.01, y] lies 0.8 y to the side: 88.5 m, and 22.1 m less 11.1 m.
  const away = on(TEXT, movedPoint(TEXT, json, all[2], [0.01, 0.001]));
  assert.equal(away.refused.length, 1);
  assert.match(away.refused[0], /^H1 Rise: .*more than 30 m/);
  assert.deepEqual(on(TEXT, movedPoint(TEXT, json, all[2], [0.01, 0.00025])).refused, []);
  // A point 22 m beside the crest and 30 m on: there the line climbs to it steeply.
  const askew = insertedPoint(TEXT, json, all[1], [0.009, 0.0002]);
  const turned = movedPoint(askew.text, parsed(askew.text), points(askew.text)[2], [0.0088, -0.0001]);
  const bent = insertedPoint(turned.text, parsed(turned.text), points(turned.text)[2], [0.0092, 0.0003]);
  assert.match(rehung(parsed(turned.text), bent).refused[0] ?? '', /^H1 Rise: .*° off the direction/);
});

test('a stretch keeps its ends on the ground when the line before its end becomes longer', () => {
  const stretch = more => ({
    type: 'Feature', geometry: { type: 'Point', coordinates: [0.001, 0] },
    properties: { hazard: 'stretch', id: 'S1', name: 'Old road', extent: ['0 m', '2000 m'], ...more },
  });
  const json = { features: [...parsed(TEXT).features.filter(({ properties }) => properties.route), stretch({})] };
  const text = JSON.stringify(json);
  const all = points(text);
  // From 111.3 m to 2111.3 m, which is 0.0189664 degrees. The point at 0.005 moves 0.001 degrees north: two sides of
  // 0.005 by 0.001 in the place of 0.01.
  const longer = on(text, movedPoint(text, json, all[1], [0.005, 0.001]));
  // The start lies on a piece that is another: it goes back to where that piece begins, which is not there before 0.
  const { extent } = longer.changes[0];
  const side = Math.hypot(0.005 * EAST_M, 0.001 * NORTH_M);
  near(parseFloat(extent[1]) - parseFloat(extent[0]), 2 * side + (0.0189664 - 0.01) * EAST_M, 0.1);
  // A change beyond its end leaves it as it is written.
  assert.deepEqual(on(text, movedPoint(text, json, all[4], [0.03, 0.001])).changes, []);
  const changed = parsed(withChanges(text, longer.changes)).features.at(-1).properties;
  assert.deepEqual(changed.extent, extent);
});

test('what a leg that is drawn on comes by again is a place of its own that nobody has surveyed', () => {
  const json = parsed(TEXT);
  const made = drawnOn(TEXT, json, 'Back', [[0.03, 0], [0.005, 0.0002]]);
  const { twins, changes, refused } = on(TEXT, made);
  assert.deepEqual(refused, []);
  assert.deepEqual(changes, [{ index: 1, passage: 1 }]);
  assert.deepEqual(twins.map(({ feature }) => feature.properties),
    [{ hazard: 'crest', id: 'H01', name: 'Rise, passed again', passage: 2 }]);
  assert.match(twins[0].said, /nobody has surveyed/);
});

test('a line of two points is a route', () => {
  const text = newRoute('A "new" one', [[1, 2], [1.5, 2]]);
  const { name, cresthaul, features } = parsed(text);
  assert.deepEqual([name, cresthaul, features.length], ['A "new" one', 'route/1', 1]);
  assert.deepEqual(features[0].geometry, { type: 'LineString', coordinates: [[1, 2], [1.5, 2]] });
});

function world(accepts = true) {
  const sent = [];
  let later = null;
  const file = text => ({ id: null, name: 'r', text, json: parsed(text) });
  let state = {
    inputs: { route: file(TEXT) }, lineEdit: NO_EDIT, problem: null, candidate: null, baseMap: null, line: null,
  };
  const watchers = [];
  const store = {
    get: () => state,
    set: part => { state = { ...state, ...part }; watchers.filter(w => w.keys.some(k => k in part)).forEach(w => w.call(state)); },
    watch: (keys, call) => { watchers.push({ keys, call }); call(state); },
  };
  const change = async (what, text) => {
    sent.push({ what, text });
    if (accepts === true) {
      store.set({ inputs: { route: file(text) } });
      return true;
    }
    store.set({ problem: { problems: accepts } });
    return false;
  };
  const undoing = { revise: async ({ what, made, before }) => { sent.push({ what, text: made.text, before }); return true; } };
  const timers = { set: call => { later = call; return 1; }, clear: () => { later = null; } };
  return { actions: createLineActions(store, change, undoing, timers), sent, store, edit: () => state.lineEdit, tick: () => later?.() };
}

test('steps of an arrow become one change, and another point waits for it', async () => {
  const { actions, sent, edit, tick } = world();
  await actions.editLine('points');
  await actions.selectLinePoint(4);
  actions.setLineStep(10);
  actions.stepLinePoint('north');
  actions.stepLinePoint('north');
  actions.stepLinePoint('east');
  assert.equal(sent.length, 0);
  near(edit().moved[1], 20 / NORTH_M, 1e-7);
  await tick();
  assert.deepEqual(sent.map(({ what }) => what), ['moving point 5 of the line']);
  near(points(sent[0].text)[4].lonLat[0], 0.03 + 10 / EAST_M, 1e-7);
  assert.equal(edit().moved, null);
  actions.stepLinePoint('west');
  await actions.selectLinePoint(0);
  assert.equal(sent.length, 2);
});

test('what is refused is told at the line by the name of the place', async () => {
  const pointer = '/route/features/1/properties/template';
  const { actions, edit, store } = world([{ pointer, message: 'It misses the line.', remedy: 'Check the turn.' }]);
  await actions.editLine('points');
  assert.equal(await actions.moveLinePoint(4, [0.031, 0]), false);
  assert.deepEqual(edit().refused, ['H1 Rise: It misses the line. Check the turn.']);
  assert.equal(store.get().problem, null);
});

test('a line is drawn on and becomes a leg; another becomes a route', async () => {
  const { actions, sent, edit } = world();
  await actions.editLine('on');
  assert.deepEqual(edit().drawn, [[0.03, 0]]);
  assert.equal(await actions.finishLine('Leg 3'), false, 'one point is no line');
  actions.drawLinePoint([0.04, 0]);
  actions.undrawLinePoint();
  actions.undrawLinePoint();
  assert.deepEqual(edit().drawn, [[0.03, 0]], 'it begins at the end of the line');
  assert.ok(actions.typeLinePoint({ coordinates: '', bearing: 'E', distance: '1 km' }));
  assert.equal(actions.typeLinePoint({ coordinates: 'x', bearing: '', distance: '' }), false);
  assert.equal(edit().wrong.at, 'coordinates');
  assert.ok(await actions.finishLine('Leg 3'));
  assert.equal(points(sent[0].text).length, 6);
  await actions.editLine('new');
  actions.drawLinePoint([5, 5]);
  actions.drawLinePoint([5.1, 5]);
  assert.ok(await actions.finishLine('Mine'));
  assert.equal(parsed(sent[1].text).name, 'Mine');
});

test('a long line is as quick as a short one', () => {
  const many = Array.from({ length: 20_000 }, (none, k) => [-100 + k * 1e-4, 40 + Math.sin(k / 50) * 1e-3]);
  const sample = readFileSync(new URL('../../../sample-routes/alder-county.route.geojson', import.meta.url), 'utf8');
  const places = parsed(sample).features.filter(({ properties }) => properties.hazard === 'rail-crossing');
  const text = JSON.stringify({
    features: [{ properties: { route: 'x' }, geometry: { type: 'LineString', coordinates: many } },
      ...Array.from({ length: 200 }, (none, k) => ({
        ...places[k % places.length], geometry: { type: 'Point', coordinates: many[100 * k] },
      }))],
  });
  // Of the processor, so that what else the machine does counts for nothing.
  const before = process.cpuUsage();
  const made = movedPoint(text, parsed(text), points(text)[9050], [many[9050][0], many[9050][1] + 1e-5]);
  const hung = on(text, made);
  assert.deepEqual(hung.refused, []);
  const { user } = process.cpuUsage(before);
  assert.ok(user < 2e6, `${user / 1000} ms`);
  near(courseOfLines(linesOf(parsed(text))).lengthM, courseOf(made.positions).lengthM, 1);
});
