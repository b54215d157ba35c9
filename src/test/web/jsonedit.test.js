import assert from 'node:assert/strict';
import test from 'node:test';
import { withItem, withKey, without, withValue } from '../../../web/text/jsonedit.js';

const TEXT = '{ "a" : [ 1 ,{"b":"x]\\"}"} ],\n  "c":{}, "d" : [ ] }';

test('a value is written anew, and every other byte stays', () => {
  assert.equal(withValue(TEXT, ['a', 1, 'b'], 'y'), TEXT.replace('"x]\\"}"', '"y"'));
  assert.equal(withValue(TEXT, ['a'], { e: [1, 'z'] }), TEXT.replace('[ 1 ,{"b":"x]\\"}"} ]', '{"e": [1, "z"]}'));
});

test('keys and items come in where they belong', () => {
  assert.equal(withKey(TEXT, ['c'], 'k', 1), TEXT.replace('{}', '{"k": 1}'));
  assert.equal(withKey(TEXT, [], 'k', 1), TEXT.replace('[ ] }', '[ ], "k": 1 }'));
  assert.equal(withKey(TEXT, [], 'c', 1), TEXT.replace('{}', '1'));
  assert.equal(withItem(TEXT, ['d'], 0, 'n'), TEXT.replace('[ ]', '["n"]'));
  assert.equal(withItem(TEXT, ['a'], 0, 'n'), TEXT.replace('[ 1', '[ "n", 1'));
  assert.equal(withItem(TEXT, ['a'], 1, 'n'), TEXT.replace('[ 1', '[ 1, "n"'));
  assert.equal(withItem(TEXT, ['a'], 2, 'n'), TEXT.replace('} ],', '}, "n" ],'));
});

test('what is taken out leaves sound JSON, wherever it stood', () => {
  for (const path of [['a'], ['c'], ['d'], ['a', 0], ['a', 1], ['a', 1, 'b']]) {
    const expected = JSON.parse(TEXT);
    const holder = path.slice(0, -1).reduce((value, step) => value[step], expected);
    if (Array.isArray(holder)) {
      holder.splice(path.at(-1), 1);
    } else {
      delete holder[path.at(-1)];
    }
    assert.deepEqual(JSON.parse(without(TEXT, path)), expected, String(path));
  }
  assert.equal(without(TEXT, ['none']), TEXT);
  assert.equal(without(TEXT, ['a', 5]), TEXT);
  assert.equal(without(withKey(TEXT, [], 'k', 1), ['k']), TEXT);
  assert.equal(without(withItem(TEXT, ['a'], 1, 'n'), ['a', 1]), TEXT);
});
