import assert from 'node:assert/strict';
import test from 'node:test';
import {
  problemsOf, SHAPES, shapesOf, vertexProblems, verticesOf, withoutShape, withShape, withVertexAt,
} from '../../../web/corner/corneroutline.js';
import { createOutlineActions } from '../../../web/corner/outlineactions.js';
import { createStore } from '../../../web/page/state.js';

const BARE = { hazard: 'corner', id: 'C1', name: 'Turn' };
const RING = [[0, 0], [0.001, 0], [0.001, 0.001]];
const closed = [...RING, RING[0]];
const textOf = properties => JSON.stringify({ features: [{ type: 'Feature', properties }] });
const propertiesOf = text => JSON.parse(text).features[0].properties;
const given = (kind, more = {}) => ({
  kind, lonLats: RING, name: '', size: '', accuracy: '1 m', source: 'base map', ...more,
});
const PAVED = propertiesOf(withShape(textOf(BARE), 0, BARE, given('pavement'), 'm'));

test('the pavement is a ring that closes, with how far it may be off', () => {
  assert.deepEqual(PAVED, {
    ...BARE, survey: { accuracy: '1 m', source: 'base map' }, pavement: { type: 'Polygon', coordinates: [closed] },
  });
  assert.deepEqual(problemsOf(BARE, given('pavement'), 'm'), []);
  const wrong = problemsOf(BARE, given('pavement', { lonLats: RING.slice(1), accuracy: '', source: '' }), 'm');
  assert.deepEqual(wrong.map(({ at }) => at), ['shape', 'accuracy', 'source']);
});

test('what lies in it comes after it, and each kind says what it must', () => {
  assert.match(problemsOf(BARE, given('obstacle'), 'm')[0].text, /pavement first/);
  assert.deepEqual(problemsOf(PAVED, given('pole', { lonLats: [] }), 'm').map(({ at }) => at), ['shape', 'size']);
  const made = ['opposing', 'obstacle', 'pole', 'island'].reduce((text, kind) => {
    const shape = given(kind, { name: kind, size: kind === 'pole' ? '6 in' : '' });
    assert.deepEqual(problemsOf(propertiesOf(text), shape, 'm'), [], kind);
    return withShape(text, 0, propertiesOf(text), shape, 'm');
  }, textOf(PAVED));
  const { opposing, obstacles, islands, survey } = propertiesOf(made);
  assert.deepEqual(survey, PAVED.survey);
  assert.deepEqual(opposing, [{ type: 'Polygon', coordinates: [closed] }]);
  assert.deepEqual(obstacles, [
    { name: 'obstacle', outline: { type: 'Polygon', coordinates: [closed] } }, { name: 'pole', at: [0, 0], radius: '6 in' },
  ]);
  assert.deepEqual(islands, [{ outline: { type: 'Polygon', coordinates: [closed] } }]);
  assert.deepEqual(shapesOf(propertiesOf(made)).map(({ kind }) => kind),
    ['pavement', 'opposing', 'obstacle', 'pole', 'island']);
  // Taken out one by one, the bytes before are there again; without its pavement nobody has surveyed it.
  let text = made;
  shapesOf(propertiesOf(made)).slice(1).reverse().forEach(shape => {
    text = withoutShape(text, 0, propertiesOf(text), shape);
  });
  assert.equal(text, textOf(PAVED));
  assert.equal(withoutShape(text, 0, PAVED, shapesOf(PAVED)[0]), textOf(BARE));
  assert.equal(SHAPES.length, 5);
});

test('a candidate that is drawn is surveyed, and open again without its outlines', () => {
  const open = { ...BARE, candidate: { source: 'map', object: 'way 1', state: 'open' } };
  const text = withShape(textOf(open), 0, open, given('pavement'), 'm');
  assert.equal(propertiesOf(text).candidate.state, 'surveyed');
  assert.equal(withoutShape(text, 0, propertiesOf(text), shapesOf(propertiesOf(text))[0]), textOf(open));
});

test('the least exact of all that is drawn counts', () => {
  const surveyed = { ...PAVED, survey: { accuracy: '3 in', source: 'total station', date: '2026-10-05' } };
  const added = (accuracy, source) => propertiesOf(withShape(textOf(surveyed), 0, surveyed,
    given('obstacle', { accuracy, source }), 'm')).survey;
  assert.deepEqual(added('1 m', 'base map'),
    { accuracy: '1 m', source: 'total station; base map', date: '2026-10-05' });
  assert.deepEqual(added('2 in', 'total station'), surveyed.survey);
  assert.deepEqual(problemsOf(surveyed, given('obstacle', { accuracy: '' }), 'm').map(({ at }) => at), ['accuracy']);
});

test('a point that is moved takes its ring along, and every other byte stays', () => {
  const surveyed = { ...PAVED, survey: { accuracy: '1 m', source: 'base map' } };
  const text = ['obstacle', 'pole'].reduce((now, kind) =>
    withShape(now, 0, propertiesOf(now), given(kind, { name: kind, size: kind === 'pole' ? '6 in' : '' }), 'm'), textOf(surveyed));
  const points = verticesOf(propertiesOf(text));
  // Every ring once around, and the pole.
  assert.equal(points.length, 2 * (closed.length - 1) + 1);
  for (const point of points) {
    const said = { accuracy: '1 m', source: 'base map' };
    assert.deepEqual(vertexProblems(propertiesOf(text), point, said, 'm'), []);
    const moved = withVertexAt(text, 0, propertiesOf(text), point, [7, 8], said, 'm');
    const after = verticesOf(propertiesOf(moved)).map(({ lonLat }) => lonLat);
    assert.deepEqual(after, points.map(one => (one === point ? [7, 8] : one.lonLat)));
    shapesOf(propertiesOf(moved)).filter(({ kind }) => kind !== 'pole')
      .forEach(({ lonLats }) => assert.deepEqual(lonLats[0], lonLats.at(-1)));
    // As it is written by this page the point of a pole has a blank.
    const back = withVertexAt(moved, 0, propertiesOf(moved), point, point.lonLat, said, 'm');
    assert.equal(back.replace('"at": [0,0]', '"at": [0, 0]'), text);
  }
});

test('a surveyed edge that is moved by hand is no longer as exact as it was surveyed', () => {
  const surveyed = { ...PAVED, survey: { accuracy: '1 in', source: 'total station' } };
  const [point] = verticesOf(surveyed);
  const moved = withVertexAt(textOf(surveyed), 0, surveyed, point, [7, 8], { accuracy: '3 m', source: 'aerial' }, 'm');
  assert.deepEqual(propertiesOf(moved).survey, { accuracy: '3 m', source: 'total station; aerial' });
  assert.deepEqual(vertexProblems(surveyed, point, { accuracy: '', source: '' }, 'm').map(({ at }) => at),
    ['accuracy', 'source']);
  assert.deepEqual(vertexProblems(surveyed, point, { accuracy: '1 m', source: 'a', leastM: 2 }, 'm').map(({ at }) => at),
    ['accuracy']);
});

test('by arrow keys: nothing goes into the route before it is said how exact it is, then all steps as one', async () => {
  const text = textOf({ ...PAVED, id: 'C1' });
  const store = createStore();
  const asked = [];
  let due = null;
  const actions = createOutlineActions(store, async (what, made) => { asked.push([what, made]); return true; },
    { editLine: async () => {} }, { set: call => { due = call; return 1; }, clear: () => { due = null; } });
  store.set({ inputs: { route: { text, json: JSON.parse(text) } }, hazard: 'C1' });
  await actions.selectVertex(1);
  actions.stepVertex('north', false);
  await due();
  assert.equal(asked.length, 0);
  assert.equal(store.get().lineEdit.wrong.at, 'accuracy');
  actions.sayExact({ accuracy: '1 m', source: 'base map' });
  actions.stepVertex('north', true);
  actions.stepVertex('north', false);
  await due();
  assert.equal(asked.length, 1);
  assert.equal(asked[0][0], 'moving a point of the pavement at C1');
  const before = verticesOf(PAVED)[1].lonLat;
  const after = verticesOf(propertiesOf(asked[0][1]))[1].lonLat;
  assert.equal(after[0], before[0]);
  // 3.3 m of a meridian, on the earth's ellipsoid at the equator 110574 m to the degree (WGS 84), to a centimeter.
  assert.ok(Math.abs((after[1] - before[1]) * 110574 - 3.3) < 0.02, `${after[1] - before[1]}`);
  // Another corner is on show: what was on its way there is given up.
  actions.stepVertex('east', true);
  store.set({ hazard: 'C2' });
  await due();
  assert.equal(asked.length, 1);
  assert.equal(store.get().lineEdit.vertex, null);
});
