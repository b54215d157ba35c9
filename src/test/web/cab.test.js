import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';
import { createKeeping } from '../../../web/cab/keeping.js';
import { along } from '../../../web/cab/position.js';
import * as sheets from '../../../web/cab/sheet.js';
import { distanceLeft } from '../../../web/text/format.js';
import { WORDS, wordsOf } from '../../../web/cab/words.js';

const line = (text, more = {}) => ({ text, tick: false, source: null, figures: [], code: null, to: null, ...more });
const toDo = text => line(text, { tick: true });
const entry = (step, id, name, chainageM, more = {}) => ({
  step, id, kind: null, name, verdict: null, blocked: false, configuration: 'down/none/1', chainageM,
  chainage: line(`${chainageM} m`), landmark: null, comes: [line(`${name} comes`)], before: [], through: [], after: [],
  gauges: [], cautions: [], ...more,
});
const SHEET = {
  cresthaul: 'runsheet/1', units: 'metric', route: { name: 'Invented' }, rig: { name: 'Rig', stance: 'loaded' },
  banner: { drivable: true, headline: 'Way through.', lines: [] }, blocking: [], first: [toDo('Permit.')],
  legs: [
    { entries: [entry('depart', null, 'Leave', 0, { before: [toDo('Card A.'), line('Read.')] }),
      entry('passage', 'H1', 'First crossing', 1000, { before: [toDo('Look.')] })] },
    { entries: [entry('passage', 'H2', 'Bridge', 2500), entry('passage', 'H3', 'Second crossing', 3000)] },
  ],
  setUps: [], cards: [], cautions: [],
  crossings: [
    { hazard: 'H1', name: 'First crossing', number: '000001X', phone: null },
    { hazard: 'H3', name: 'Second crossing', number: null, phone: '+1 (555) 010-0100' }],
};
const KEPT = sheets.kept(SHEET, 'en', [[[0, 0, 0], [0.01, 0, 1113.2]]]);

/** As a browser's; with room for so many characters. */
function storage(room = 1e9) {
  const kept = new Map();
  return {
    getItem: key => kept.get(key) ?? null,
    setItem: (key, text) => {
      if (text.length > room) {
        throw new Error('QuotaExceededError');
      }
      kept.set(key, text);
    },
    removeItem: key => kept.delete(key),
  };
}

test('steps stand in driving order over all legs, each tick with a key of its own', () => {
  const list = sheets.entries(KEPT);
  assert.deepEqual(list.map(({ name }) => name), ['Leave', 'First crossing', 'Bridge', 'Second crossing']);
  assert.deepEqual(sheets.ticksOf(list[0], 0).map(({ key, line: { text } }) => [key, text]),
    [['0.before.0', 'Card A.']]);
  const keys = list.flatMap((own, index) => sheets.ticksOf(own, index).map(({ key }) => key));
  assert.equal(new Set(keys).size, 2);
});

test('the strip says what the sheet says: what comes, and what is set where something is set', () => {
  const list = sheets.entries(KEPT);
  assert.deepEqual(sheets.told(list[0]).map(({ text }) => text), ['Leave comes', 'Card A.', 'Read.']);
  assert.deepEqual(sheets.told(list[1]).map(({ text }) => text), ['First crossing comes']);
  assert.deepEqual([sheets.sinceM(list, 0), sheets.sinceM(list, 2)], [null, 1500]);
});

test('stuck at a step, it is that crossing, else the last one passed, else the next', () => {
  const list = sheets.entries(KEPT);
  assert.deepEqual([0, 1, 2, 3, 4].map(index => sheets.likelyCrossing(KEPT, list, index)),
    ['H1', 'H1', 'H1', 'H3', 'H3']);
  const none = { ...KEPT, sheet: { ...SHEET, crossings: [] } };
  assert.equal(sheets.likelyCrossing(none, list, 1), null);
});

test('a telephone number is dialed by its digits', () => {
  assert.equal(sheets.telephone('+1 (555) 010-0100'), 'tel:+15550100100');
  assert.equal(sheets.telephone('800 555 0199'), 'tel:8005550199');
});

test('a kept sheet is read back, and anything else is none', () => {
  assert.deepEqual(sheets.read(JSON.stringify(KEPT)), KEPT);
  for (const other of ['', '{', 'null', '{}', JSON.stringify(SHEET), JSON.stringify({ ...KEPT, cresthaul: 'cab/2' })]) {
    assert.equal(sheets.read(other), null, other.slice(0, 40));
  }
});

test('a long line is thinned and keeps both ends of every leg', () => {
  const leg = from => Array.from({ length: 9001 }, (_, i) => [i, 0, from + i]);
  const { line: thin } = sheets.kept(SHEET, 'en', [leg(0), leg(9000)]);
  assert.ok(thin.flat().length <= 4002, `${thin.flat().length}`);
  assert.deepEqual(thin.map(own => [own[0][2], own.at(-1)[2]]), [[0, 9000], [9000, 18000]]);
});

test('another letter is another sheet', () => {
  const seen = new Set(['', 'a', 'b', 'ab', 'ba', 'aa', JSON.stringify(KEPT)].map(sheets.identity));
  assert.equal(seen.size, 7);
  assert.equal(sheets.identity('ab'), sheets.identity('ab'));
});

test('ticks and the step are kept for their sheet alone, and go with it', () => {
  const box = storage();
  const keeping = createKeeping(box);
  const one = keeping.keep(KEPT);
  const two = keeping.keep({ ...KEPT, language: 'es' });
  assert.deepEqual([one.kept, two.kept, keeping.sheets()], [true, true, [two.id, one.id]]);
  keeping.tick(one.id, '0.before.0', true);
  keeping.setStep(one.id, 2);
  const again = createKeeping(box);
  assert.deepEqual([[...again.ticks(one.id)], again.step(one.id)], [['0.before.0'], 2]);
  assert.deepEqual([[...again.ticks(two.id)], again.step(two.id)], [[], 0]);
  assert.deepEqual(again.sheet(one.id), KEPT);
  again.tick(one.id, '0.before.0', false);
  assert.equal(again.ticks(one.id).size, 0);
  again.remove(one.id);
  assert.deepEqual([again.sheets(), again.sheet(one.id), again.step(one.id)], [[two.id], null, 0]);
});

test('a phone without room says so and shows the sheet while the page is open', () => {
  for (const full of [storage(200), null]) {
    const keeping = createKeeping(full);
    const { id, kept } = keeping.keep(KEPT);
    assert.equal(kept, false);
    assert.deepEqual(keeping.sheet(id), KEPT);
  }
});

test('a position is the nearest point of the line, at its chainage', () => {
  // On the equator a degree is 111,320 m both ways: half along, 22.264 m to the side.
  const { chainageM, offM, isOn } = along(KEPT.line, { lon: 0.005, lat: 0.0002, accuracyM: 10 }, 0);
  assert.ok(Math.abs(chainageM - 556.6) < 0.01, `${chainageM}`);
  assert.ok(Math.abs(offM - 22.264) < 0.001, `${offM}`);
  assert.equal(isOn, true);
  assert.equal(along(KEPT.line, { lon: 0.005, lat: 0.002, accuracyM: 10 }, 0).isOn, false);
  assert.equal(along(null, { lon: 0, lat: 0, accuracyM: 1 }, 0), null);
});

test('where the route comes by twice, the pass that is expected counts', () => {
  const there = [[0, 0, 0], [0.01, 0, 1113.2]];
  const back = [[0.01, 0.0001, 1200], [0, 0.0001, 2313.2]];
  const at = { lon: 0.005, lat: 0.00004, accuracyM: 10 };
  assert.ok(Math.abs(along([there, back], at, 500).chainageM - 556.6) < 0.01);
  assert.ok(Math.abs(along([there, back], at, 2000).chainageM - 1756.6) < 0.01);
});

test('a distance that is left never reads more than it is', () => {
  // 1.99 mi; 0.3 mi is 1,584 ft; 899 ft.
  assert.deepEqual([3202.6, 482.8032, 274.0152, 0].map(m => distanceLeft(m, 'us')),
    ['1.9 mi', '0.3 mi', '850 ft', '0 ft']);
  assert.deepEqual([1999, 299.9, 9.9].map(m => distanceLeft(m, 'metric')), ['1.9 km', '290 m', '0 m']);
});

test('both languages have every word, and what the catalogs of the papers have is the same', () => {
  const shape = words => Object.entries(words).map(([key, value]) =>
    [key, typeof value === 'object' ? Object.keys(value) : typeof value]);
  assert.deepEqual(shape(WORDS.en), shape(WORDS.es));
  assert.equal(wordsOf({ language: 'xx' }), WORDS.en);
  const same = {
    title: 'paper-cab', before: 'paper-before', through: 'paper-through', after: 'paper-after', gauges: 'paper-gauges',
    cautions: 'paper-cautions', beforeLeaving: 'paper-before-leaving', resolve: 'paper-resolve',
    blocks: 'paper-what-blocks',
  };
  for (const language of ['en', 'es']) {
    const words = WORDS[language];
    const catalog = readFileSync(`src/main/resources/language/${language}.properties`, 'utf8');
    const of = key => catalog.match(new RegExp(`^${key}=(.*)$`, 'm'))[1];
    Object.entries(same).forEach(([word, key]) => assert.equal(words[word], of(key)));
    Object.entries(words.verdicts).forEach(([verdict, word]) =>
      assert.equal(word, of(`verdict-${verdict.replaceAll(' ', '-')}`)));
    assert.equal(words.blocked('X'), of('paper-blocked').replace('{verdict}', 'X'));
  }
  assert.equal(WORDS.es.translated, readFileSync('src/main/resources/language/es.properties', 'utf8')
    .match(/^paper-translated=(.*)$/m)[1]);
});

test('the worker keeps every file that the page asks for, each of its scripts and styles being one', () => {
  const read = name => readFileSync(`web/cab/${name}`, 'utf8');
  const shell = [...read('worker.js').match(/const SHELL = \[([^\]]*)\]/)[1].matchAll(/'([^']+)'/g)]
    .map(found => found[1]);
  const asked = [...read('cab.html').matchAll(/(?:href|src)="([^"]+)"/g)].map(found => found[1]);
  const icons = JSON.parse(read('cab.webmanifest')).icons.map(icon => icon.src);
  assert.ok(asked.length > 4 && icons.length > 1);
  assert.deepEqual([...shell].sort(), [...new Set(['cab.html', ...asked, ...icons])].sort());
});
