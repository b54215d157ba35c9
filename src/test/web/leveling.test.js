import assert from 'node:assert/strict';
import test from 'node:test';
import { allowableM, hasReadings, notesOf, notesText, reduced, rowsFrom } from '../../../web/survey/leveling.js';
import { draftOf, readDraft, withField, withNotes, withNotesTaken, withReading, withSurvey } from '../../../web/survey/survey.js';

/**
 * By hand. Height of instrument 101.500: -10 m at 100.300, 0 m at 100.600, turning point at 100.800. Then 101.900:
 * 10 m at 100.500, benchmark at 100.004. Backsights 2.600, foresights 2.596. Rises 0.3 + 0.3 + 0.2, falls 0.3 + 0.496.
 */
const NOTES = {
  unit: 'm', start: '100', closing: 'start', end: '', loop: '250 m', spread: true,
  rows: [
    ['', '', '1.500', '', '', 'nail in pole'],
    ['-10', 'left', '', '1.200', '', ''],
    ['0', 'L', '', '0.900', '', 'rail'],
    ['', '', '1.100', '', '0.700', 'stone'],
    ['10', 'left', '', '1.400', '', ''],
    ['', '', '', '', '1.896', 'nail in pole'],
  ],
};
const near = (found, expected) => {
  assert.equal(found.length, expected.length);
  found.forEach((one, k) => assert.ok(Math.abs(one - expected[k]) < 1e-9, `${k}: ${one}`));
};
const at = (notes, unit = 'm') => reduced(notes, unit).problems.map(problem => problem.at);

test('notes are reduced by height of instrument, and rises and falls agree', () => {
  const read = reduced({ ...NOTES, spread: false }, 'm');
  assert.deepEqual(read.problems, []);
  near(read.levels, [100, 100.3, 100.6, 100.8, 100.5, 100.004]);
  const { back, fore, rises, falls, first, last } = read.sums;
  near([back, fore, rises, falls, last - first, read.misclosureM], [2.6, 2.596, 0.8, 0.796, 0.004, 0.004]);
  assert.equal(read.agrees, true);
  assert.equal(read.setUps, 2);
});

test('the misclosure is spread by set-ups: 2 mm off the first, 4 mm off the second', () => {
  const read = reduced(NOTES, 'm');
  near(read.levels, [100, 100.298, 100.598, 100.798, 100.496, 100]);
  assert.deepEqual(rowsFrom(read.points, ['left', 'center'], { distance: 'm', height: 'm' }),
    [['-10', '100.2980', ''], ['0', '100.5980', ''], ['10', '100.4960', '']]);
});

test('what is allowed: 12 mm a kilometer, by its root', () => {
  assert.ok(Math.abs(allowableM(1000) - 0.012) < 1e-12);
  assert.ok(Math.abs(reduced(NOTES, 'm').allowedM - 0.006) < 1e-12);
  assert.equal(reduced({ ...NOTES, loop: '' }, 'm').allowedM, null);
});

test('closed on another level, or on nothing', () => {
  assert.ok(Math.abs(reduced({ ...NOTES, closing: 'other', end: '100.010' }, 'm').misclosureM + 0.006) < 1e-9);
  assert.deepEqual(at({ ...NOTES, closing: 'other' }), ['end']);
  const open = reduced({ ...NOTES, closing: 'none' }, 'm');
  assert.equal(open.misclosureM, null);
  near(open.levels, [100, 100.3, 100.6, 100.8, 100.5, 100.004]);
});

test('in feet and inches a rod reads the same', () => {
  const read = reduced({
    unit: 'ft', start: '100', closing: 'start', end: '', loop: '', spread: false,
    rows: [['', '', '5.25', '', '', ''], ['0', 'right', '', '4 ft 3 in', '', ''], ['', '', '', '', '5.25', '']],
  }, 'ft');
  // 105.25 less 4.25 is 101 ft, 30.7848 m.
  near([read.points[0].heightM, read.misclosureM], [30.7848, 0]);
});

test('what is wrong with notes is told at its place', () => {
  const changed = (row, column, text) => ({ ...NOTES, rows: NOTES.rows.map((cells, k) =>
    (k === row ? cells.with(column, text) : cells)) });
  assert.deepEqual(at(changed(2, 3, 'high')), ['2,3']);
  assert.deepEqual(at(changed(1, 1, '')), ['1,1']);
  assert.deepEqual(at(changed(1, 0, '')), ['1,0']);
  assert.deepEqual(at(changed(0, 3, '1')), ['0,2']);
  assert.deepEqual(at(changed(4, 2, '1')), ['4,3']);
  assert.deepEqual(at(changed(3, 4, '')), ['3,4']);
  assert.deepEqual(at(changed(1, 3, '')), ['1,3']);
  assert.deepEqual(at({ ...NOTES, start: '' }), ['start']);
  assert.deepEqual(at({ ...NOTES, rows: NOTES.rows.slice(0, 5) }), ['closing']);
  assert.deepEqual(at({ ...NOTES, rows: [] }), []);
  assert.equal(hasReadings({ rows: [['', '', ' ', '', '', '']] }), false);
});

test('notes are lines of text in the file and come back', () => {
  const lines = notesText(NOTES, 'm');
  assert.equal(lines[2], '-10 m | left |  | 1.200 |  | ');
  assert.equal(lines.at(-1), 'result: misclosure 0.0040 m, within the allowable 0.0060 m, spread over 2 set-ups');
  assert.deepEqual(notesOf(lines, 'ft', 'm'), { ...NOTES, loop: '250' });
  // In another unit on the page they say the same.
  assert.equal(notesOf(lines, 'ft', 'ft').rows[1][0], '-10 m');
  assert.equal(notesText({ ...NOTES, rows: [] }, 'm'), undefined);
  assert.deepEqual(notesOf(['as told by phone'], 'ft', 'm').rows, []);
});

test('from notes to the table, and both into the route', () => {
  const bare = { hazard: 'dip', id: 'H1', name: 'Ford' };
  const text = `{"features": [{"properties": ${JSON.stringify(bare)}}]}`;
  const noted = withNotes(draftOf(bare, 'm'), NOTES);
  assert.deepEqual(readDraft(noted).problems.map(problem => problem.at), ['accuracy', 'source']);
  const taken = withNotesTaken(withField(withField(noted, 'accuracy', '3 mm'), 'source', 'level'));
  const made = JSON.parse(withSurvey(text, 0, bare, readDraft(taken))).features[0].properties;
  assert.deepEqual(made.profile, [
    { line: 'left', points: [['-10 m', '100.2980 m'], ['0 m', '100.5980 m'], ['10 m', '100.4960 m']] },
  ]);
  assert.deepEqual(made.survey.notes, notesText(NOTES, 'm'));
  assert.deepEqual(draftOf(made, 'ft').notes, { ...NOTES, loop: '250' });
  // With something to mend nothing is taken.
  assert.equal(withNotesTaken(withReading(noted, 2, 3, 'x')).rows[0][1], '');
});

test('a line of the notes that the table lacks becomes one', () => {
  const properties = {
    hazard: 'dip', id: 'H1', name: 'Ford', survey: { accuracy: '3 mm', source: 'rod' },
    profile: [{ line: 'right', points: [['0 m', '1 m'], ['5 m', '1 m']] }],
  };
  const taken = withNotesTaken(withNotes(draftOf(properties, 'm'), NOTES));
  assert.deepEqual(taken.lines.map(({ name }) => name), ['right', 'left']);
  assert.deepEqual(taken.rows[0], ['-10', '', '100.2980']);
});

test("notes of somebody else stay as they are", () => {
  const properties = {
    hazard: 'dip', id: 'H1', name: 'Ford', survey: { accuracy: '3 mm', source: 'rod', notes: ['wet ground'] },
    profile: [{ line: 'left', points: [['0 m', '1 m'], ['5 m', '1 m']] }],
  };
  const text = `{"features": [{"properties": ${JSON.stringify(properties)}}]}`;
  const made = withSurvey(text, 0, properties, readDraft(withField(draftOf(properties, 'm'), 'accuracy', '5 mm')));
  assert.deepEqual(JSON.parse(made).features[0].properties.survey,
    { accuracy: '5 mm', source: 'rod', notes: ['wet ground'] });
});
