import assert from 'node:assert/strict';
import test from 'node:test';
import { problemsOf, SHAPES, shapesOf, withoutShape, withShape } from '../../../web/corneroutline.js';

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
