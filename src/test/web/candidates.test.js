import assert from 'node:assert/strict';
import test from 'node:test';
import { candidatesOf, statesInWords, withDecision } from '../../../web/import/candidates.js';
import { spanOf } from '../../../web/text/jsontext.js';

const TEXT = `{ "cresthaul": "route/1", "note": "\\"features\\": [ } \\\\",
 "features" : [
  {"type":"Feature","properties":{"route":"leg 1"},"geometry":{"coordinates":[[1.50,2e0]]}},
  {"type":"Feature","properties":{"id":"H1","name":"Mill","hazard":"crest", "candidate" : {"source":"map","object":"way 7",
    "raw":"a}b","state":"open"}, "note":"x"}},
  {"properties":{"id":"H2","name":"Own","hazard":"dip"}},
  {"properties":{"id":"H3","name":"Gone","hazard":"dip","candidate":{"source":"map","object":"way 8","state":"dismissed","by":"J. Doe","why":"lifted"}}}
 ]}`;
const route = text => ({ text, json: JSON.parse(text) });

test('candidates are found, and what is no candidate is not', () => {
  const all = candidatesOf(route(TEXT));
  assert.deepEqual(all.map(({ index, id }) => [index, id]), [[1, 'H1'], [3, 'H3']]);
  assert.equal(statesInWords(all), '1 open, 1 dismissed');
  assert.deepEqual(candidatesOf(null), []);
  assert.deepEqual(candidatesOf(route('{"features":[{}, {"properties":{}}]}')), []);
  assert.deepEqual(candidatesOf(route('{"features":7}')), []);
});

test('a dismissal changes the candidate and not one other byte', () => {
  const changed = withDecision(TEXT, 1, { by: 'A. "B"', why: 'track lifted' });
  const [from, to] = spanOf(TEXT, ['features', 1, 'properties', 'candidate']);
  assert.equal(changed.slice(0, from), TEXT.slice(0, from));
  assert.ok(changed.endsWith(TEXT.slice(to)));
  assert.deepEqual(JSON.parse(changed).features[1].properties.candidate,
    { source: 'map', object: 'way 7', raw: 'a}b', state: 'dismissed', by: 'A. "B"', why: 'track lifted' });
});

test('opened again, nobody has dismissed it', () => {
  const opened = withDecision(TEXT, 3, null);
  assert.deepEqual(JSON.parse(opened).features[3].properties.candidate,
    { source: 'map', object: 'way 8', state: 'open' });
  assert.equal(statesInWords(candidatesOf(route(opened))), '2 open');
});

test('every part of a document is where it is said to be', () => {
  const check = (value, path) => {
    const [from, to] = spanOf(TEXT, path);
    assert.deepEqual(JSON.parse(TEXT.slice(from, to)), value, path.join('/'));
    if (value !== null && typeof value === 'object') {
      Object.entries(value).forEach(([key, part]) => check(part, [...path, Array.isArray(value) ? Number(key) : key]));
    }
  };
  check(JSON.parse(TEXT), []);
  assert.throws(() => spanOf(TEXT, ['features', 4]));
  assert.throws(() => spanOf(TEXT, ['none']));
});
