import test from 'node:test';
import assert from 'node:assert/strict';
import { kindOf } from '../../../web/report/kinds.js';
import { speedWords } from '../../../web/report/speed.js';

test('only places that are driven at a speed are told one', () => {
  assert.deepEqual(['dip', 'crest', 'low-structure', 'rail-crossing', 'corner', 'stretch', 'posted-bridge']
    .map(kind => kindOf(kind).sped), [true, true, true, false, false, false, false]);
});

test('a speed is rounded down, none is a crawl', () => {
  assert.equal(speedWords({ mostMps: 11.1 }, 'us'), '20 mph at most');
  assert.equal(speedWords({ mostMps: 11.1 }, 'metric'), '35 km/h at most');
  assert.equal(speedWords({ mostMps: null }, 'us'), 'crawl');
});
