import assert from 'node:assert/strict';
import test from 'node:test';
import { checkRequest, createApi } from '../../../web/exchange/api.js';
import { fileFromDisk, readFile } from '../../../web/exchange/files.js';

const answer = (status, text) => async () => ({ ok: status < 400, status, text: async () => text });

async function refusal(status, text) {
  const api = createApi(answer(status, text));
  return api.samples().then(() => assert.fail('should refuse'), problem => problem);
}

test('the request carries the files as the user wrote them, digit for digit', () => {
  const route = readFile('{ "a": 1.50, "long": 12345678901234567890 }', 'r.geojson', null);
  const rig = readFile('[1e0]', 'rig.json', null);
  assert.equal(checkRequest({ route, rig, stance: null, margins: null }),
    '{"route":{ "a": 1.50, "long": 12345678901234567890 },"rig":[1e0]}');
});

const disk = (...bytes) => ({ name: 'r.geojson', size: bytes.length, arrayBuffer: async () => Uint8Array.from(bytes).buffer });
const ascii = text => [...text].map(c => c.charCodeAt(0));

test('a file from disk is sent byte for byte, or not at all', async () => {
  const bytes = [...ascii('{"a": "'), 0xC3, 0xBC, ...ascii('"}\r\n')];
  const route = await fileFromDisk(disk(...bytes));
  assert.deepEqual([...new TextEncoder().encode(route.text)], bytes);
  // Decoded, each of these would be another file with another hash.
  const others = { 'a byte order mark': [0xEF, 0xBB, 0xBF, ...ascii('{}')], 'Latin-1': [...ascii('{"a": "'), 0xFC, ...ascii('"}')],
    'UTF-16': [0xFF, 0xFE, 0x7B, 0, 0x7D, 0] };
  for (const [name, wrong] of Object.entries(others)) {
    await assert.rejects(fileFromDisk(disk(...wrong)), problem => /UTF-8/.test(problem.title), name);
  }
});

test('stance, margins and the passage go along; what is not set stays out', () => {
  const inputs = { route: { text: '{}' }, rig: { text: '{}' }, stance: 'empty', margins: { ground: '2 in' } };
  assert.deepEqual(JSON.parse(checkRequest(inputs, { hazard: 'H1', line: null, frontRaise: undefined })),
    { route: {}, rig: {}, hazard: 'H1', stance: 'empty', margins: { ground: '2 in' } });
});

test('every problem of a refused file is kept, with its place and remedy', async () => {
  const problems = [1, 2, 3].map(n => ({ pointer: `/rig/${n}`, code: 'unit', message: `m${n}`, remedy: `r${n}` }));
  const problem = await refusal(422, JSON.stringify({ title: 'Refused', status: 422, detail: 'three', problems }));
  assert.equal(problem.title, 'Refused');
  assert.equal(problem.detail, 'three');
  assert.deepEqual(problem.problems, problems);
  assert.equal(problem.passing, false);
});

test('a refusal without problem details is told by its status and a remedy', async () => {
  const cases = [[413, '<html>', /too large/], [500, '', /again/], [502, '[]', /again/], [503, 'null', /again/]];
  for (const [status, text, remedy] of cases) {
    const problem = await refusal(status, text);
    assert.match(problem.title, new RegExp(status));
    assert.match(problem.remedy, remedy);
    assert.equal(problem.passing, status >= 500);
  }
});

test('a server that does not answer is told so, and may be tried again', async () => {
  const api = createApi(async () => { throw new TypeError('fetch failed'); });
  const problem = await api.version().then(() => assert.fail('should refuse'), p => p);
  assert.match(problem.title, /does not answer/);
  assert.equal(problem.passing, true);
});

test('an aborted request stays an abort', async () => {
  const api = createApi(async () => { throw new DOMException('given up', 'AbortError'); });
  await assert.rejects(api.version(), { name: 'AbortError' });
});

test('an answer that is not JSON is a problem', async () => {
  await assert.rejects(createApi(answer(200, '<html>')).version(), /could not be read/);
});

test('a file that is not JSON is refused by name, with the place', () => {
  for (const text of ['', '{', '{"a": NaN}', '{"a": 1,}', "{'a': 1}"]) {
    assert.throws(() => readFile(text, 'rig.json', null), error =>
      /rig\.json is not JSON/.test(error.title) && error.problems.length === 1 && error.problems[0].remedy !== '',
    text);
  }
});
