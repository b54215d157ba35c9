import assert from 'node:assert/strict';
import test from 'node:test';
import { checkingWords, followed, joined, newId } from '../../../web/exchange/underway.js';

const place = hazard => ({ hazard, kind: 'dip', name: hazard, chainageM: 1, clear: 2, best: 'clear' });
const told = (state, found = [], more = {}) => ({
  state, at: null, cells: 0, places: 3, configurations: 4, found, ...more,
});

test('places that were judged since stand behind those known, and an answer that came too late takes nothing away', () => {
  let known = null;
  for (const [answer, expected] of [
    [told('waiting'), []],
    [told('checking', [place('H2')]), ['H2']],
    [told('checking'), ['H2']],
    [told('checking', [place('H1'), place('H3')]), ['H2', 'H1', 'H3']],
    [told('none', []), ['H2', 'H1', 'H3']],
  ]) {
    known = joined(known, answer);
    assert.deepEqual(known.found.map(({ hazard }) => hazard), expected, answer.state);
  }
  assert.equal(known.state, 'checking');
  assert.equal(joined(null, told('none')), null);
});

test('in words', () => {
  for (const [progress, words] of [
    [null, ''],
    [told('waiting'), 'Waiting for its turn'],
    [told('checking', [place('H2')], { cells: 6, at: 'H3' }),
      '1 of 3 places judged in all 4 configurations (6 of 12, at H3 now)'],
    [told('checking', [1, 2, 3].map(i => place(`H${i}`)), { cells: 12, at: 'H3' }),
      '3 of 3 places judged in all 4 configurations (12 of 12)'],
    [told('planning'), 'All places judged; looking for the way'],
    [told('planning', [], { asked: 30, answered: 12, at: 'H7' }),
      'All places judged; 12 of 30 questions of the plan answered, at H7 now'],
  ]) {
    assert.equal(checkingWords(progress), words);
  }
});

test('is asked after until it ends; one question that fails does not end it, and a late answer is put nowhere', async () => {
  const answers = [{ n: 1 }, null, { n: 3 }, { n: 4 }];
  const put = [];
  let asked = 0;
  let on = true;
  await followed(async () => {
    asked++;
    if (asked === 4) {
      on = false;
    }
    if (answers[asked - 1] === null) {
      throw new Error('no answer');
    }
    return answers[asked - 1];
  }, () => on, answer => put.push(answer.n), 1);
  assert.deepEqual(put, [1, 3]);
  assert.equal(asked, 4);
});

test('ids are such as the server takes, and no two are the same', () => {
  const ids = new Set(Array.from({ length: 1000 }, newId));
  assert.equal(ids.size, 1000);
  for (const id of ids) {
    assert.match(id, /^[A-Za-z0-9-]{1,64}$/);
  }
});
