import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';
import { compareRigs } from '../../../web/merge/rig.js';
import { compareRoutes } from '../../../web/merge/route.js';
import { compareVersions, openOf } from '../../../web/merge/versions.js';
import { rowsOf, tapeOf } from '../../../web/rig/tape.js';
import { withRow } from '../../../web/rig/tapechange.js';
import { withPieceMoved } from '../../../web/rig/piece.js';

const read = name => readFileSync(new URL(`../../../sample-routes/${name}`, import.meta.url), 'utf8');
const RIG = read('lowbed-loaded.rig.json');
const ROUTE = read('alder-county.route.geojson');
const feature = id => JSON.parse(ROUTE).features.findIndex(one => one.properties?.id === id);
const all = ({ differences }) => new Set(differences.map(({ id }) => id));
const says = ({ differences }) => differences.map(({ where, what, by }) => [where, what, by]);

/** The rig with a row of the list at another figure, as a person types it. */
function taped(text, id, typed) {
  const json = JSON.parse(text);
  const row = rowsOf(tapeOf(json, 0)).find(one => one.id === id);
  assert.ok(row, id);
  return withRow(text, json, row, typed);
}

test('two rows of the rig, one changed by each: both are there, to the byte', () => {
  const mine = taped(RIG, 'tractor/drive-1/along', '4 ft 6 in');
  const theirs = taped(RIG, 'trailer/deckRear/along', '25 ft 2 in');
  const both = taped(theirs, 'tractor/drive-1/along', '4 ft 6 in');
  const found = compareRigs([RIG, mine, theirs], 'us');
  assert.deepEqual(says(found), [['Rig', 'drive axle 1 to drive axle 2', 'mine'],
    ['Rig', 'deck front to deck rear', 'theirs']]);
  assert.deepEqual(found.differences.map(one => [one.before, one.mine, one.theirs]),
    [['4 ft 4 in', '4 ft 6 in', '4 ft 4 in'], ['25 ft', '25 ft', '25 ft 2 in']]);
  assert.equal(found.put(new Set(['0:tractor/drive-1/along'])), both);
  assert.equal(found.put(new Set()), theirs);
  assert.equal(found.put(all(found)), mine);
});

test('distances along one unit by both: each moves what lies behind it, and neither is lost', () => {
  const mine = taped(RIG, 'trailer/deckFront/along', '10 ft 8 in');
  const theirs = taped(RIG, 'trailer/trailer-1/along', '4 ft 7 in');
  const found = compareRigs([RIG, mine, theirs], 'us');
  assert.deepEqual(found.differences.map(({ by }) => by), ['mine', 'theirs']);
  const json = JSON.parse(found.put(new Set(found.differences.filter(({ by }) => by === 'mine').map(({ id }) => id))));
  // Kingpin to deck 2 in more, and the second axle 1/2 in farther behind the first.
  const { axles, deckFront } = json.stances[0].trailer;
  assert.equal(deckFront.x, '-10 ft 8 in');
  assert.deepEqual(axles.map(({ x }) => x), ['-40 ft 2 in', '-44 ft 9 in', '-49 ft 3 1/2 in']);
});

test('the same row by both is asked for; the same figure is no difference', () => {
  const [mine, theirs] = ['4 ft 6 in', '4 ft 8 in'].map(one => taped(RIG, 'tractor/drive-1/along', one));
  assert.deepEqual(says(compareRigs([RIG, mine, theirs], 'us')), [['Rig', 'drive axle 1 to drive axle 2', 'both']]);
  assert.deepEqual(compareRigs([RIG, mine, mine], 'us').differences, []);
});

test('a piece of load that was moved is one row, and its points go along', () => {
  const mine = withPieceMoved(RIG, 0, 0, -6 * 25.4e9);
  const theirs = RIG.replace('"70,000 lb"', '"71,000 lb"').replace('"120,200 lb"', '"121,200 lb"');
  const found = compareRigs([RIG, mine, theirs], 'us');
  assert.deepEqual(says(found), [['Rig', 'deck front to front of wheel loader', 'mine'],
    ['Rig', 'weight of wheel loader', 'theirs'], ['Rig', 'stances, loaded, weights, gross', 'theirs']]);
  const put = JSON.parse(found.put(new Set([found.differences[0].id])));
  assert.deepEqual(put.stances[0].weights.pieces[0],
    { name: 'wheel loader', weight: '71,000 lb', cg: { x: '-26 ft 6 in', h: '6 ft 2 in', offset: '1 in' } });
  assert.equal(put.stances[0].trailer.load[0].outline[0].x, '-34 ft 3 in');
});

test('other axles or names are no rows: the rig is then taken as a whole', () => {
  const json = JSON.parse(RIG);
  json.stances[0].trailer.axles.pop();
  assert.equal(compareRigs([RIG, JSON.stringify(json), RIG], 'us'), null);
});

/** The route with something else at a place. */
function changed(id, change) {
  const json = JSON.parse(ROUTE);
  change(json.features[feature(id)], json);
  return JSON.stringify(json);
}

test('places changed by one each are put together; a place by both is asked for by what it is', () => {
  const [H01, H02] = JSON.parse(ROUTE).features.filter(one => one.properties?.hazard).map(one => one.properties.id);
  const mine = changed(H01, one => { one.properties.name = 'Renamed'; });
  const theirs = changed(H02, one => { one.geometry.coordinates = [-101.2, 41.9]; });
  const found = compareRoutes([ROUTE, mine, theirs]);
  assert.deepEqual(found.differences.map(({ what, by }) => [what, by]),
    [['name and landmark', 'mine'], ['where it is', 'theirs']]);
  const put = JSON.parse(found.put(new Set([found.differences[0].id])));
  assert.equal(put.features[feature(H01)].properties.name, 'Renamed');
  assert.deepEqual(put.features[feature(H02)].geometry.coordinates, [-101.2, 41.9]);

  const surveyed = changed(H01, one => { one.properties.survey = { accuracy: '1 in', source: 'level' }; });
  assert.deepEqual(compareRoutes([ROUTE, mine, surveyed]).differences.map(({ what, by }) => [what, by]),
    [['name and landmark', 'mine'], ['what was found there', 'theirs']]);
  const other = changed(H01, one => { one.properties.name = 'Otherwise'; });
  assert.deepEqual(compareRoutes([ROUTE, mine, other]).differences.map(({ by }) => by), ['both']);
});

test('places added by both stay both; one taken out that the other changed is asked for', () => {
  const place = (id, name) => ({ type: 'Feature', geometry: { type: 'Point', coordinates: [-101.1, 41.9] },
    properties: { hazard: 'dip', id, name } });
  const [first] = JSON.parse(ROUTE).features.filter(one => one.properties?.hazard).map(one => one.properties.id);
  const mine = changed(first, (one, json) => json.features.push(place('X1', 'Mine')));
  const theirs = changed(first, (one, json) => json.features.push(place('X2', 'Theirs')));
  const found = compareRoutes([ROUTE, mine, theirs]);
  assert.deepEqual(says(found), [['X1 Mine', 'the place', 'mine'], ['X2 Theirs', 'the place', 'theirs']]);
  const ids = JSON.parse(found.put(new Set(['place/X1']))).features.map(one => one.properties?.id);
  assert.ok(ids.includes('X1') && ids.includes('X2'));

  const gone = changed(first, (one, json) => json.features.splice(feature(first), 1));
  const renamed = changed(first, one => { one.properties.name = 'Renamed'; });
  const asked = compareRoutes([ROUTE, gone, renamed]);
  assert.deepEqual(asked.differences.map(one => [one.by, one.mine]), [['both', 'not there']]);
  assert.ok(!JSON.parse(asked.put(all(asked))).features.some(one => one.properties?.id === first));
});

test('another line of the route, and its name', () => {
  const json = JSON.parse(ROUTE);
  const line = json.features.findIndex(one => one.geometry.type === 'LineString');
  json.features[line].geometry.coordinates.splice(1, 1);
  json.name = 'Other name';
  const mine = JSON.stringify(json);
  const found = compareRoutes([ROUTE, mine, ROUTE]);
  assert.deepEqual(found.differences.map(({ by }) => by), ['mine', 'mine']);
  const legs = JSON.parse(ROUTE);
  legs.features.splice(line, 1);
  const fewer = compareRoutes([ROUTE, JSON.stringify(legs), mine]);
  assert.deepEqual(fewer.differences.map(({ id, by }) => [id, by]), [['key/name', 'theirs'], ['legs', 'both']]);
  assert.equal(JSON.parse(fewer.put(new Set(['legs']))).features.length, legs.features.length);
});

const version = (files, view = '', name = 'p') => ({ name, view, files: { route: ROUTE, rig: RIG, ...files } });

test('versions: what one left alone is the other\'s to the byte; settings one by one', () => {
  const mine = taped(RIG, 'tractor/drive-1/along', '4 ft 6 in');
  const [first] = JSON.parse(ROUTE).features.filter(one => one.properties?.hazard).map(one => one.properties.id);
  const route = ROUTE.replace(`"${first}"`, `"${first}" `);
  const { differences, put } = compareVersions(
    [version({}), version({ rig: mine }, '#ground=3 in&side=2 ft'), version({ route }, '#ground=4 in', 'q')], 'us');
  assert.deepEqual(differences.map(({ where, what, by }) => [where, what, by]), [
    ['Route', 'the way it is written', 'theirs'], ['Rig', 'drive axle 1 to drive axle 2', 'mine'],
    ['Project', 'its name', 'theirs'], ['Project', 'margin over the ground', 'both'],
    ['Project', 'margin beside', 'mine']]);
  assert.deepEqual(openOf(differences, {}).map(({ id }) => id), ['settings:margins/ground']);
  assert.deepEqual(openOf(differences, { 'settings:margins/ground': 'mine' }), []);
  const made = put({ 'settings:margins/ground': 'theirs' });
  assert.equal(made.route, route);
  assert.equal(made.rig, mine);
  assert.equal(made.name, 'q');
  assert.deepEqual(made.settings.margins, { ground: '4 in', side: '2 ft' });
});

test('a rig that can only be taken as a whole is asked for as one', () => {
  const json = JSON.parse(RIG);
  json.stances[0].trailer.axles.pop();
  const mine = JSON.stringify(json);
  const theirs = taped(RIG, 'tractor/drive-1/along', '4 ft 6 in');
  const { differences, put } = compareVersions([version({}), version({ rig: mine }), version({ rig: theirs })], 'us');
  assert.deepEqual(differences.map(({ id, what, by }) => [id, what, by]), [['rig:', 'all of it', 'both']]);
  assert.equal(put({ 'rig:': 'mine' }).rig, mine);
  assert.equal(put({ 'rig:': 'theirs' }).rig, theirs);
});

test('200 random pairs of changes: all of mine is mine, none of it is theirs, what is apart is both', () => {
  let seed = 7;
  const random = most => { seed = (seed * 1103515245 + 12345) % 2147483648; return seed % most; };
  const rows = rowsOf(tapeOf(JSON.parse(RIG), 0)).filter(row => row.kind === 'span' && row.value > 25.4e9);
  let apart = 0;
  for (let k = 0; k < 200; k++) {
    const [a, b] = [rows[random(rows.length)], rows[random(rows.length)]];
    const typed = row => `${Math.round(row.value / 25.4e9) + 1 + random(3)} in`;
    const [mine, theirs] = [[a, typed(a)], [b, typed(b)]].map(([row, to]) => taped(RIG, row.id, to));
    const found = compareRigs([RIG, mine, theirs], 'us');
    if (found === null) {
      continue;
    }
    assert.deepEqual(JSON.parse(found.put(all(found))).stances[0].tractor, JSON.parse(mine).stances[0].tractor);
    assert.equal(found.put(new Set()), theirs);
    if (a.id !== b.id) {
      apart += 1;
      // What is measured past the mark that moved is a row of its own.
      assert.deepEqual([...new Set(found.differences.map(({ by }) => by))].sort(), ['mine', 'theirs']);
      const own = found.differences.filter(({ by }) => by === 'mine').map(({ id }) => id);
      const both = JSON.parse(found.put(new Set(own)));
      const now = rowsOf(tapeOf(both, 0));
      const value = (json, id) => rowsOf(tapeOf(JSON.parse(json), 0)).find(row => row.id === id).value;
      assert.equal(now.find(({ id }) => id === a.id).value, value(mine, a.id));
      assert.equal(now.find(({ id }) => id === b.id).value, value(theirs, b.id));
    }
  }
  assert.ok(apart > 100, `${apart}`);
});
