import assert from 'node:assert/strict';
import test from 'node:test';
import { readFileSync } from 'node:fs';
import { courseOfLines, linesOf } from '../../../web/line/course.js';
import { alongOf, cutLine } from '../../../web/line/cutting.js';
import { joinedRoute } from '../../../web/line/joining.js';
import { createLinePartActions } from '../../../web/line/linepartactions.js';
import { NO_EDIT } from '../../../web/page/state.js';
import { pointsOf } from '../../../web/line/positions.js';
import { negated, reversedRoute } from '../../../web/line/reversing.js';

/** A degree of longitude at the equator, meters: 2 pi 6378137 / 360. */
const EAST_M = 111319.4908;
const parsed = text => JSON.parse(text);
const features = text => parsed(text).features;
const positions = text => linesOf(parsed(text)).flatMap(line => line.points);
const byId = (text, id) => features(text).find(({ properties }) => properties.id === id);
const near = (a, b, within) => assert.ok(Math.abs(a - b) <= within, `${a} is ${b} within ${within}`);

const at = (lon, properties) => ({ type: 'Feature', properties, geometry: { type: 'Point', coordinates: [lon, 0] } });
const leg = (route, ...lons) => ({
  type: 'Feature', properties: { route }, geometry: { type: 'LineString', coordinates: lons.map(lon => [lon, 0]) },
});
const SURVEY = { accuracy: '10 mm', source: 'level' };

/** Three kilometers along the equator in two legs: a crossing at 0.005, a stretch over the middle, a stop, a dip. */
const ROUTE = {
  type: 'FeatureCollection', cresthaul: 'route/1', name: 'R', features: [
    leg('One', 0, 0.005, 0.01), leg('Two', 0.01, 0.02, 0.03),
    at(0.005, {
      hazard: 'rail-crossing', id: 'H1', name: 'Spur', landmark: 'silo on the left', survey: SURVEY,
      approachBefore: { grade: '1.5 %', accuracy: '0.2 %' },
      profile: [
        { line: 'left', offset: '-3 ft', points: [['-12 m', '0 m'], ['-1 m', '0.3 m'], ['14 m', '0.1 m']] },
        { line: 'right', offset: '3 ft', points: [['-12 m', '0 m'], ['0 m', '0.2 m'], ['14 m', '0 m']] },
      ],
      tracks: ['0 m', '4.3 m'], storage: '80 ft', signs: ['W10-5'],
    }),
    at(0.012, { hazard: 'stretch', id: 'S1', name: 'Soft road', extent: ['-0.5 km', '1 km'], limits: { axle: '20,000 lb' } }),
    at(0.02, { stop: 'stopping-place', id: 'P1', name: 'Lot', room: '50 m' }),
    at(0.025, { hazard: 'dip', id: 'H2', name: 'Ford' }),
  ],
};
const TEXT = JSON.stringify(ROUTE, null, 1);
const cut = (lon, keep) => cutLine(TEXT, ROUTE, lon * EAST_M, keep);

test('cut in the middle of a leg: what is left, what goes, and by which names', () => {
  const before = cut(0.015, 'before');
  assert.deepEqual(before.refused, []);
  assert.deepEqual(positions(before.text).map(([lon]) => lon), [0, 0.005, 0.01, 0.01, 0.015]);
  assert.deepEqual(before.gone.map(({ said }) => said), ['P1 Lot', 'H2 Ford']);
  // The stretch went from 835.8 m to 2335.8 m: it ends with the line, 0.003 degrees behind its point.
  near(parseFloat(byId(before.text, 'S1').properties.extent[1]), 0.003 * EAST_M, 0.01);
  const after = cut(0.015, 'after');
  assert.deepEqual(positions(after.text).map(([lon]) => lon), [0.015, 0.02, 0.03]);
  assert.deepEqual(after.gone.map(({ said }) => said), ['H1 Spur']);
  // Its point was cut away and its limits hold on: from the cut to where they ended.
  const stretch = byId(after.text, 'S1');
  assert.deepEqual(stretch.geometry.coordinates, [0.015, 0]);
  assert.equal(stretch.properties.extent[0], '0 m');
  near(parseFloat(stretch.properties.extent[1]), 0.012 * EAST_M + 1000 - 0.015 * EAST_M, 0.01);
  assert.match(after.told.join(' '), /S1 Soft road/);
});

test('cut exactly at a place it stays on either part', () => {
  for (const keep of ['before', 'after']) {
    assert.ok(byId(cut(0.025, keep).text, 'H2'), keep);
    assert.ok(byId(cut(0.005, keep).text, 'H1'), keep);
  }
  assert.deepEqual(positions(cut(0.005, 'after').text)[0], [0.005, 0]);
});

test('cut at an end nothing is left, or all of it', () => {
  assert.match(cut(0, 'before').refused[0], /Nothing would be left/);
  assert.match(cut(0.03, 'after').refused[0], /Nothing would be left/);
  assert.equal(cut(0, 'after').text, TEXT);
  assert.equal(cut(0.03, 'before').text, TEXT);
});

test('cut where legs meet, whole legs go and the rest stays as it is written', () => {
  const { points, lines } = { lines: linesOf(ROUTE), points: pointsOf(linesOf(ROUTE)) };
  const along = alongOf(courseOfLines(lines), lines, points[2]);
  near(along, 0.01 * EAST_M, 0.01);
  assert.deepEqual(features(cutLine(TEXT, ROUTE, along, 'before').text)[0], ROUTE.features[0]);
  assert.equal(features(cutLine(TEXT, ROUTE, along, 'before').text)[1].properties.id, 'H1');
  assert.deepEqual(features(cutLine(TEXT, ROUTE, along, 'after').text)[0], ROUTE.features[1]);
});

test('a survey that reaches over the cut from the part that goes is refused', () => {
  // 31 m before the cut with 14 m of survey behind it goes; with 40 m it cannot.
  const long = structuredClone(ROUTE);
  long.features[2].properties.profile[0].points[2][0] = '40 m';
  const along = 0.005 * EAST_M + 31;
  assert.deepEqual(cutLine(TEXT, ROUTE, along, 'after').gone.map(({ own }) => own.id), ['H1']);
  assert.match(cutLine(JSON.stringify(long), long, along, 'after').refused[0], /^H1 Spur reaches over the cut/);
});

test('of a place passed twice the time that is left is counted anew', () => {
  const twice = {
    ...ROUTE, features: [
      leg('Out', 0, 0.01, 0.02), leg('Back', 0.02, 0.01, 0),
      at(0.01, { hazard: 'dip', id: 'A', name: 'Out', passage: 1 }), at(0.01, { hazard: 'dip', id: 'B', name: 'Back', passage: 2 }),
    ],
  };
  const text = JSON.stringify(twice);
  const after = cutLine(text, twice, 0.005 * EAST_M, 'after');
  assert.deepEqual(after.gone, []);
  assert.deepEqual(['A', 'B'].map(id => byId(after.text, id).properties.passage), [1, 2]);
  const home = cutLine(text, twice, 0.025 * EAST_M, 'after');
  assert.deepEqual(home.gone.map(({ own }) => own.id), ['A']);
  assert.equal(byId(home.text, 'B').properties.passage, 1);
  // Turned, the first time is the last.
  const back = reversedRoute(text, twice, { paths: 'same' });
  assert.deepEqual(['A', 'B'].map(id => byId(back.text, id).properties.passage), [2, 1]);
});

test('signs of lengths turn and turn back', () => {
  [['12 m', '-12 m'], ['-12 m', '12 m'], ['0 m', '0 m'], ['0.0 ft', '0.0 ft'], ['3 ft 2 1/2 in', '-3 ft 2 1/2 in'],
    ['½ in', '-½ in'], ['−4 m', '4 m'], ['+4 m', '-4 m']].forEach(([text, other]) => assert.equal(negated(text), other));
});

test('a survey turned end for end: every number by hand', () => {
  const { text, said, refused } = reversedRoute(TEXT, ROUTE, { paths: 'same', stops: true, limits: true });
  assert.deepEqual(refused, []);
  assert.deepEqual(positions(text).map(([lon]) => lon), [0.03, 0.02, 0.01, 0.01, 0.005, 0]);
  assert.deepEqual(linesOf(parsed(text)).map(({ name }) => name), ['Two', 'One']);
  const { profile, approachBefore, approachAfter, tracks, ...rest } = byId(text, 'H1').properties;
  assert.deepEqual(profile, [
    { line: 'right', offset: '3 ft', points: [['-14 m', '0.1 m'], ['1 m', '0.3 m'], ['12 m', '0 m']] },
    { line: 'left', offset: '-3 ft', points: [['-14 m', '0 m'], ['0 m', '0.2 m'], ['12 m', '0 m']] },
  ]);
  assert.deepEqual([approachBefore, approachAfter], [undefined, { grade: '-1.5 %', accuracy: '0.2 %' }]);
  assert.deepEqual(tracks, ['-4.3 m', '0 m']);
  // What is told of the side one came from is nobody's knowledge of the other.
  assert.deepEqual(Object.keys(rest), ['hazard', 'id', 'name', 'survey']);
  assert.deepEqual(said, ['H1 Spur: landmark; signs; room beyond the tracks.']);
  assert.deepEqual(byId(text, 'S1').properties.extent.map(parseFloat), [-1000, 500]);
  // The truck stands on the same ground: its front is where its rear was, 50 m back.
  near(byId(text, 'P1').geometry.coordinates[0], 0.02 - 50 / EAST_M, 2e-7);
});

test('turned twice the bytes are the same, but for what was taken off', () => {
  const sample = readFileSync(new URL('../../../sample-routes/tern-flats.route.geojson', import.meta.url), 'utf8');
  const all = { paths: 'same', stops: true, limits: true };
  const once = reversedRoute(sample, parsed(sample), all);
  assert.deepEqual(once.refused, []);
  // The pad reaches back beyond the start of the route: nobody can stand on it from the other side.
  assert.deepEqual(once.gone.map(({ own }) => own.id), ['P01']);
  const plain = text => JSON.stringify(features(text).filter(({ properties }) => properties.id !== 'P01').map(({ properties, geometry, ...rest }) => {
    const { landmark, signs, storage, sight, template, survey, ...kept } = properties;
    return { ...rest, properties: { ...kept, ...(properties.hazard !== 'corner' && { survey }) },
      geometry: properties.stop ? null : geometry };
  }));
  const twice = reversedRoute(once.text, parsed(once.text), all);
  assert.equal(plain(twice.text), plain(sample));
  assert.notEqual(plain(once.text), plain(sample));
  const bare = JSON.stringify({ ...ROUTE, features: ROUTE.features
    .filter(({ properties: { stop, landmark, hazard } }) => !stop && !landmark && hazard !== 'stretch') }, null, 2);
  const there = reversedRoute(bare, parsed(bare), all).text;
  assert.notEqual(there, bare);
  assert.equal(reversedRoute(there, parsed(there), all).text, bare);
});

test('what cannot be turned for certain is taken off by its name, or asked for', () => {
  const route = structuredClone(ROUTE);
  route.limits = { name: 'permit 7', axle: '20,000 lb' };
  route.features.push(
    at(0.01, { hazard: 'corner', id: 'C1', name: 'Turn', survey: SURVEY, template: { turn: 'left' } }),
    at(0.011, { hazard: 'low-structure', id: 'H3', name: 'Bridge', measured: 'reported', reportedBy: 'a map',
      clearance: '4 m', extent: ['0 m', '9 m'],
      candidate: { source: 'map', object: 'way 1', state: 'open', raw: 'maxheight:forward=4' } }),
    at(0.013, { hazard: 'low-structure', id: 'H4', name: 'Arch', measured: 'surveyed', survey: SURVEY, clearance: '5 m',
      extent: ['-1 m', '4 m'] }));
  const text = JSON.stringify(route);
  const asked = reversedRoute(text, route, { stops: false, limits: false });
  assert.equal(asked.refused.length, 2);
  assert.match(asked.refused.join(' '), /same paths.*permit 7/);
  const same = reversedRoute(text, route, { paths: 'same', stops: false, limits: true });
  assert.deepEqual(byId(same.text, 'C1').properties, { hazard: 'corner', id: 'C1', name: 'Turn' });
  const { measured, clearance, reportedBy } = byId(same.text, 'H3').properties;
  assert.deepEqual([measured, clearance, reportedBy], ['unknown', undefined, undefined]);
  assert.deepEqual(byId(same.text, 'H4').properties.extent, ['-4 m', '1 m']);
  assert.deepEqual(same.gone.map(({ said }) => said), ['P1 Lot']);
  assert.equal(byId(same.text, 'P1'), undefined);
  assert.match(same.said.join(' '), /C1 Turn: its template.*H3 Bridge: what the map says of one direction/);
  assert.match(same.told.join(' '), /read it again/);
  // In a lane of its own nothing that was measured holds.
  const other = reversedRoute(text, route, { paths: 'other', stops: false, limits: true });
  assert.deepEqual(Object.keys(byId(other.text, 'H1').properties), ['hazard', 'id', 'name']);
  assert.deepEqual(byId(other.text, 'H4').properties, { hazard: 'low-structure', id: 'H4', name: 'Arch', measured: 'unknown' });
  assert.deepEqual(byId(other.text, 'S1').properties.limits, { axle: '20,000 lb' });
});

const other = (lons, more = {}) => ({
  type: 'FeatureCollection', cresthaul: 'route/1', name: 'Other', ...more,
  features: [leg('Three', ...lons), at(lons[1], { hazard: 'dip', id: 'H2', name: 'Brook' }), ...more.features ?? []],
});
const join = (json, own = ROUTE) => joinedRoute(JSON.stringify(own, null, 1), own, JSON.stringify(json), json);

test('another route is joined behind the end or before the start, over a gap of 30 m at most', () => {
  // 29.9 m and 30.1 m.
  const gap = m => 0.03 + m / EAST_M;
  const joined = join(other([gap(29.9), 0.035, 0.04]));
  assert.deepEqual(joined.refused, []);
  assert.deepEqual(linesOf(parsed(joined.text)).map(({ name }) => name), ['One', 'Two', 'Three']);
  assert.match(joined.told.join(' '), /gap of 30 m.*H2 Brook of the other route is H01 here/);
  assert.equal(byId(joined.text, 'H01').properties.name, 'Brook');
  const own = TEXT.slice(0, TEXT.lastIndexOf('}', TEXT.lastIndexOf(']')) + 1);
  assert.ok(joined.text.startsWith(own), 'its own bytes stay');
  assert.match(join(other([gap(30.1), 0.035, 0.04])).refused[0], /30 m from the end/);
  const before = join(other([-0.02, -0.01, 0]));
  assert.deepEqual(linesOf(parsed(before.text)).map(({ name }) => name), ['Three', 'One', 'Two']);
  assert.match(join(other([0.04, 0.035, 0.03])).refused[0], /in the other direction/);
});

test('what would change what is allowed is refused, and what is passed again is told', () => {
  assert.match(join(other([0.03, 0.035, 0.04], { limits: { name: 'county', axle: '1 t' } })).refused[0], /county/);
  assert.match(join(other([0.03, 0.035, 0.04], { permit: '9' })).refused[0], /permit \(9\)/);
  // Back over the same road: the crossing, the dip and the stretch are met again, the brook twice as well.
  const back = join(other([0.03, 0.022, 0]));
  assert.deepEqual(back.refused, []);
  const again = features(back.text).filter(({ properties }) => properties.passage === 2);
  assert.deepEqual(again.map(({ properties }) => properties.hazard).sort(),
    ['dip', 'dip', 'rail-crossing', 'stretch']);
  assert.ok(again.every(({ properties }) => properties.profile === undefined && properties.limits === undefined));
});

function world() {
  const lines = linesOf(ROUTE);
  let state = {
    inputs: { route: { text: TEXT, json: ROUTE } }, lineEdit: { ...NO_EDIT, at: 3 }, line: { lengthM: 0.03 * EAST_M },
  };
  const store = { get: () => state, set: part => { state = { ...state, ...part }; } };
  const sent = [];
  const actions = createLinePartActions(store, {
    lineParts: () => ({ lines, points: pointsOf(lines), course: courseOfLines(lines) }),
    settleLine: () => undefined,
    sendLine: async (...given) => { sent.push(given); return true; },
  });
  return { actions, sent, store, edit: () => state.lineEdit };
}

test('what a cut comes to is told first, and done as it was told', async () => {
  const { actions, sent, edit } = world();
  // The point on show is that at 0.02 degrees.
  assert.ok(await actions.askCut({ at: '', keep: 'before' }));
  assert.deepEqual(edit().asked.goes, ['H2 Ford']);
  assert.equal(sent.length, 0);
  assert.ok(await actions.doAsked());
  const [[what, text, , , gone]] = sent;
  assert.match(what, /first part stays/);
  assert.deepEqual(positions(text).at(-1), [0.02, 0]);
  assert.deepEqual(gone, ['H2']);
  assert.equal(edit().asked, null);
});

test('where to cut is read, and what was told of another route is not done', async () => {
  const { actions, sent, store, edit } = world();
  for (const at of ['90 mi', 'here', '1, 1']) {
    assert.equal(await actions.askCut({ at, keep: 'after' }), false, at);
    assert.equal(edit().wrong.at, 'cut');
  }
  assert.ok(await actions.askCut({ at: '0, 0.0255', keep: 'after' }));
  store.set({ inputs: { route: { text: TEXT, json: structuredClone(ROUTE) } } });
  assert.equal(await actions.doAsked(), false);
  assert.match(edit().refused[0], /Ask again/);
  assert.equal(sent.length, 0);
});

test('a route is turned with all its places judged anew, and a file is joined by its name', async () => {
  const { actions, sent, edit } = world();
  assert.equal(await actions.askReverse({}), false);
  assert.match(edit().refused[0], /same paths/);
  assert.ok(await actions.askReverse({ paths: 'same', stops: true, limits: true }));
  assert.ok(await actions.doAsked());
  assert.deepEqual(sent[0][4], ['H1', 'S1', 'P1', 'H2']);
  const file = text => new File([text], 'more.geojson');
  assert.equal(await actions.askJoin(file('{}')), false);
  assert.match(edit().wrong.text, /no route file/);
  assert.equal(await actions.askJoin(file('<gpx/>')), false);
  assert.ok(await actions.askJoin(file(JSON.stringify(other([0.03, 0.035, 0.04])))));
  assert.ok(await actions.doAsked());
  assert.equal(sent[1][0], 'joining Other');
});
