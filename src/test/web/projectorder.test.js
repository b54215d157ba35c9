import assert from 'node:assert/strict';
import test from 'node:test';
import { orderedProjects } from '../../../web/project/projectorder.js';

const project = (name, author, saved, reason = 'begun') => ({ id: name, name, author, saved, reason, revision: 1 });
const ALL = [
  project('Mill road 10', 'B. Clerk', '2026-11-30T06:00:00Z'), project('mill road 2', '', '2026-11-30T08:00:00Z'),
  project('Quarry', 'A. Planner', '2026-11-30T07:00:00Z', 'H01 surveyed'),
];
const names = (find, order) => orderedProjects(ALL, { find, order }).map(({ name }) => name);

test('in the order asked for: 2 before 10, and nobody last', () => {
  assert.deepEqual(names('', 'saved'), ['mill road 2', 'Quarry', 'Mill road 10']);
  assert.deepEqual(names('', 'name'), ['mill road 2', 'Mill road 10', 'Quarry']);
  assert.deepEqual(names('', 'author'), ['Quarry', 'Mill road 10', 'mill road 2']);
});

test('found by every word, wherever it stands', () => {
  assert.deepEqual(names('ROAD', 'name'), ['mill road 2', 'Mill road 10']);
  assert.deepEqual(names(' clerk  mill ', 'saved'), ['Mill road 10']);
  assert.deepEqual(names('h01', 'saved'), ['Quarry']);
  assert.deepEqual(names('nothing', 'saved'), []);
  assert.equal(ALL[0].name, 'Mill road 10');
});
