import assert from 'node:assert/strict';
import test from 'node:test';
import * as reports from '../../../web/report/report.js';
import { cell, clearance, report } from './fixtures.js';

test('the clearance that governs is the one with the least share left of what it needs', () => {
  const both = (groundM, overheadM) => cell('k', 'tight', {
    ground: clearance(groundM, 0.07, 'clear'), overhead: clearance(overheadM, 0.09, 'clear'),
  });
  assert.equal(reports.governing(both(0.1, 0.2)).side, 'ground');
  assert.equal(reports.governing(both(0.2, 0.1)).side, 'overhead');
  // 10 mm are left of both: 14 % of 70 mm, 11 % of 90 mm.
  assert.equal(reports.governing(both(0.08, 0.1)).side, 'overhead');
  // 30 of 70 mm is 43 %, 35 of 90 mm is 39 %.
  assert.equal(reports.governing(both(0.1, 0.125)).side, 'overhead');
  assert.equal(reports.governing(cell('k', 'clear', { overhead: clearance(0.1, 0.09, 'clear') })).side, 'overhead');
  assert.equal(reports.governing(cell('k', 'tight', {
    ground: clearance(0.3, 0.07, 'clear'), units: clearance(0.03, 0.04, 'tight'),
  })).side, 'units');
  assert.equal(reports.governing(cell('k', 'not surveyed')), null);
  assert.equal(reports.governing(null), null);
});

test('how far a configuration goes back is told by its axles and booster, whatever its notch', () => {
  const r = report();
  for (const c of r.configurations) {
    const state = reports.reversingOf(r, c);
    assert.deepEqual([state.lift, state.booster, state.free.limitMetM], [c.lift, c.booster, c.axles]);
  }
  assert.equal(reports.reversingOf(r, { lift: 'down', booster: 'carried' }), null);
  assert.equal(reports.reversingOf(r, null), null);
  assert.equal(reports.reversingOf(null, r.configurations[0]), null);
  assert.equal(reports.reversingOf({ ...r, reversing: undefined }, r.configurations[0]), null);
});

test('a verdict this page does not know is as bad as contact', () => {
  assert.equal(reports.severity('probably fine'), reports.severity('contact'));
  assert.equal(reports.severity(undefined), 0);
  assert.ok(reports.severity('not surveyed') < reports.severity('tight'));
});

test('configurations are ranked by what no raise clears, then contacts, not surveyed, tight', () => {
  assert.deepEqual(reports.ranked(report()).map(c => c.key), [
    'up/none/low', 'up/trailing/low', // the structure and the crossing clear
    'down/none/low', 'down/trailing/low', // the crossing only raised
    'up/none/high', 'up/trailing/high', // the structure is struck, and no raise helps
    'down/none/high', 'down/trailing/high',
  ]);
});

test('booster states with equal results at every notch share a column', () => {
  const r = report();
  assert.deepEqual(reports.matrixColumns(r, r.hazards[0]).map(c => [c.lift, c.boosters]), [
    ['down', ['none', 'trailing']], ['up', ['none', 'trailing']],
  ]);
});

test('one differing notch, by value, verdict, raise or reason, keeps the booster states apart', () => {
  const changes = [
    c => { c.ground.valueM += 0.001; },
    c => { c.verdict = 'tight'; },
    c => { c.raise = null; },
    c => { c.raise.frontM += 0.001; },
    c => { c.reasons = ['Another.']; },
    c => { c.ground = null; },
    c => { c.overhead = clearance(1, 0.09, 'clear'); },
  ];
  for (const change of changes) {
    const r = report();
    change(reports.findCell(r.hazards[0], 'down/trailing/high'));
    assert.equal(reports.matrixColumns(r, r.hazards[0]).length, 3, String(change));
  }
});

test('states nearer than half a millimeter share a column only while they read alike', () => {
  const columns = (none, trailing) => {
    const r = report();
    reports.findCell(r.hazards[0], 'down/none/high').ground.valueM = none;
    reports.findCell(r.hazards[0], 'down/trailing/high').ground.valueM = trailing;
    return reports.matrixColumns(r, r.hazards[0]).length;
  };
  assert.equal(columns(0.1311, 0.131), 2);
  assert.equal(columns(0.131, 0.1309), 3, '131 mm and 130 mm');
  assert.equal(columns(0.0509, 0.0507), 3, '2 in and 1 7/8 in');
  assert.equal(columns(0.1316, 0.131), 3, 'more than half a millimeter');
});

test('a missing cell never merges with one that is there', () => {
  const r = report();
  r.hazards[0].cells = r.hazards[0].cells.filter(c => c.configuration !== 'down/trailing/low');
  assert.equal(reports.matrixColumns(r, r.hazards[0]).length, 3);
});

test('a rig without some combination has no column for it, and a chooser takes the nearest there is', () => {
  const r = report();
  r.configurations = r.configurations.filter(c => !(c.lift === 'up' && c.booster === 'trailing'));
  assert.deepEqual(reports.matrixColumns(r, r.hazards[0]).map(c => c.lift), ['down', 'up']);
  assert.equal(reports.closestConfiguration(r, { lift: 'up', booster: 'trailing', notch: 'high' }).key, 'up/none/high');
});

test('notches stand from the highest to the lowest', () => {
  assert.deepEqual(reports.notches(report()), [{ notch: 'high', offsetM: 0.02 }, { notch: 'low', offsetM: -0.02 }]);
});

test('what was not checked names every hazard without a result, a missing one too', () => {
  const r = report();
  assert.deepEqual(reports.notChecked(r, 'down/none/low').map(({ hazard }) => hazard.id), ['H3']);
  assert.deepEqual(reports.notChecked(r, 'down/none/low')[0].why,
    ['not surveyed: no profile in the file', 'No profile.']);
  r.hazards[1].cells = [];
  assert.deepEqual(reports.notChecked(r, 'down/none/low').map(({ hazard }) => hazard.id), ['H2', 'H3']);
});

test('a cell is cautioned about nothing that does not happen there', () => {
  const hazard = { cautions: ['a', 'r', 'e'], cautionsWhen: ['always', 'raised', 'escorts'] };
  const raise = { frontM: 0.1, rearM: 0 };
  assert.deepEqual(reports.cautionsAt(hazard, cell('k', 'clear')), ['a']);
  assert.deepEqual(reports.cautionsAt(hazard, cell('k', 'contact', { raise })), ['a', 'r']);
  assert.deepEqual(reports.cautionsAt(hazard, cell('k', 'tight', { corner: { escorts: true } })), ['a', 'e']);
  assert.deepEqual(reports.cautionsAt(hazard, cell('k', 'clear', { corner: { escorts: false } })), ['a']);
  assert.deepEqual(reports.cautionsAt(hazard, null), ['a']);
});

test('contact is what touches; what is not shown to stay free cannot exclude it', () => {
  const cell = (verdict, ground, corner = null) => ({
    verdict, ground: ground === null ? null : { valueM: ground }, overhead: null, units: null,
    corner: corner === null ? null : { valueM: corner },
  });
  assert.equal(reports.verdictWords(cell('contact', -0.01)), 'contact');
  assert.equal(reports.verdictWords(cell('contact', 0)), 'contact');
  assert.equal(reports.verdictWords(cell('contact', 0.01)), 'cannot exclude contact');
  assert.equal(reports.verdictWords(cell('contact', 0.01, -0.2)), 'contact');
  assert.equal(reports.verdictWords(cell('contact', null)), 'contact');
  assert.equal(reports.verdictWords(cell('tight', 0.01)), 'tight');
  assert.equal(reports.verdictWords(null), 'not surveyed');
});
