import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';
import { changesOf, copied, emptied, missingIn } from '../../../web/rig/changes.js';
import { combinationsOf, measuredOf, usualStance } from '../../../web/rig/leftoff.js';
import { massOf, massText } from '../../../web/rig/unitweight.js';

const textOf = name => readFileSync(new URL(`../../../sample-routes/${name}.rig.json`, import.meta.url), 'utf8');
const LOADED = textOf('lowbed-loaded');
const changes = text => changesOf(JSON.parse(text), 0);
const by = (text, key, given = {}) =>
  (changes(text).find(one => one.key === key) ?? assert.fail(`no ${key}`)).make(text, given);
const stance = text => JSON.parse(text).stances[0];

/** By hand: axle 3 is at 49 ft 1 in, hinge and rear end at 51 ft 6 in; all behind axle 3 goes back by 4 ft 6 in. */
test('an axle more behind the last one, and all behind it farther back', () => {
  const made = stance(by(LOADED, 'axle-on-trailer', { spacing: '4 ft 6 in', radius: '17 1/4 in', weight: '2,500 lb' }));
  assert.deepEqual(made.trailer.axles.map(({ x }) => x), ['-40 ft', '-44 ft 6 1/2 in', '-49 ft 1 in', '-53 ft 7 in']);
  assert.equal(made.trailer.boosterHinge.x, '-56 ft');
  assert.equal(made.trailer.underside[0].x, '-56 ft');
  assert.equal(made.booster.closeCoupledAxle.x, '-58 ft 6 in');
  assert.equal(made.trailer.deckRear.x, '-35 ft 6 in');
  // 17,500 lb at 36 ft and 2,500 lb at 53 ft 7 in balance at (17500·432 + 2500·643) / 20000 = 458.375 in.
  assert.equal(made.weights.trailer.weight, '20,000 lb');
  assert.equal(made.weights.trailer.cg.x, '-38 ft 2 3/8 in');
  // 17,500 lb at 28 in and 2,500 lb at 17 1/4 in: 26.656 in, to the sixteenth 26 5/8 in or 26 11/16 in.
  assert.equal(made.weights.trailer.cg.h, '2 ft 2 11/16 in');
  assert.equal(made.weights.gross, '122,700 lb');
});

test('an axle less leaves the frame, and takes its weight along', () => {
  const made = stance(by(LOADED, 'axle-off-trailer', { which: '1', valve: '2', weight: '2,500 lb' }));
  assert.deepEqual(made.trailer.axles.map(({ x }) => x), ['-40 ft', '-49 ft 1 in']);
  assert.deepEqual(made.trailer.boosterHinge, stance(LOADED).trailer.boosterHinge);
  assert.deepEqual([made.trailer.valveAxle, made.trailer.liftAxle], [2, stance(LOADED).trailer.liftAxle]);
  // The last one is the lift axle: the one before it does not become it.
  const last = stance(by(LOADED, 'axle-off-trailer', { which: '2', valve: '1', weight: '2,500 lb' }));
  assert.deepEqual([last.trailer.valveAxle, last.trailer.liftAxle, last.weights.gauges.trailerUp],
    [1, undefined, undefined]);
  assert.equal(missingIn(changes(LOADED).find(({ key }) => key === 'axle-off-trailer').asked,
    { which: '2', valve: '', weight: '2,500 lb' }).key, 'valve');
  // (17500·432 − 2500·534.5) / 15000 = 414.917 in, to the sixteenth 414 15/16 in = 34 ft 6 15/16 in.
  assert.deepEqual([made.weights.trailer.weight, made.weights.trailer.cg.x], ['15,000 lb', '-34 ft 6 15/16 in']);
  assert.equal(made.weights.gross, '117,700 lb');
});

test('a booster on one axle that gets another is no longer close-coupled', () => {
  const { booster } = stance(by(LOADED, 'axle-on-booster', {
    spacing: '54 in', radius: '17 in', travelUp: '3 in', travelDown: '2 in', weight: '2,000 lb',
  }));
  assert.deepEqual(booster.axles, [{ x: '-8 ft', radius: '17 1/4 in' }, { x: '-12 ft 6 in', radius: '17 in' }]);
  assert.deepEqual([booster.axle, booster.closeCoupledAxle, booster.travelUp, booster.travelDown],
    [undefined, undefined, '3 in', '2 in']);
  assert.deepEqual(booster.states, ['none', 'trailing']);
  assert.equal(booster.underside[0].x, '-14 ft 6 in');
});

test('lift axle and notches', () => {
  const down = by(LOADED, 'lift-off');
  assert.equal(stance(down).trailer.liftAxle, undefined);
  assert.equal(stance(down).weights.gauges.trailerUp, undefined);
  assert.deepEqual(stance(by(down, 'lift-on', { which: '3', gap: '4 in', secondaryRise: '1 in' })).trailer.liftAxle,
    { gap: '4 in', secondaryRise: '1 in' });
  const names = text => JSON.parse(text).notches.map(({ name }) => name);
  assert.deepEqual(names(by(LOADED, 'notch-on', { name: '8', offset: '2 1/2 in' })),
    ['1', '2', '3', '4', '5', '6', '7', '8']);
  assert.deepEqual(names(by(LOADED, 'notch-on', { name: '3a', offset: '-1/4 in' })),
    ['1', '2', '3', '3a', '4', '5', '6', '7']);
  assert.deepEqual(names(by(LOADED, 'notch-on', { name: '0', offset: '-3 in' })),
    ['0', '1', '2', '3', '4', '5', '6', '7']);
  assert.deepEqual(names(by(LOADED, 'notch-off', { which: '0' })), ['2', '3', '4', '5', '6', '7']);
});

test('several lift axles, one after another', () => {
  const choices = (text, key) => changes(text).find(one => one.key === key)?.asked[0].choices.map(([value]) => value);
  const { liftAxle, axles } = stance(LOADED).trailer;
  // The height valves read axle 1; axle 3 is the lift axle already.
  assert.deepEqual(choices(LOADED, 'lift-on'), ['2']);
  const two = by(LOADED, 'lift-on', { which: '2', gap: '4 in', secondaryRise: '1/2 in' });
  const { trailer, weights } = stance(two);
  assert.deepEqual([trailer.liftAxle, trailer.liftAxles],
    [undefined, [{ axle: 2, gap: '4 in' }, { axle: 3, gap: liftAxle.gap }]]);
  assert.deepEqual(trailer.liftStates, [
    { up: [3], secondaryRise: liftAxle.secondaryRise, gauge: stance(LOADED).weights.gauges.trailerUp },
    { up: [2], secondaryRise: '1/2 in' },
  ]);
  assert.equal(weights.gauges.trailerUp, undefined);
  assert.deepEqual([choices(two, 'lift-on'), choices(two, 'lift-together'), choices(two, 'lift-apart')],
    [undefined, ['2-3'], undefined]);

  const both = by(two, 'lift-together', { up: '2-3', secondaryRise: '2 in' });
  assert.deepEqual(stance(both).trailer.liftStates[2], { up: [2, 3], secondaryRise: '2 in' });
  assert.deepEqual([choices(both, 'lift-together'), choices(both, 'lift-apart')], [undefined, ['3', '2', '2-3']]);
  assert.deepEqual(stance(by(both, 'lift-apart', { up: '2' })).trailer.liftStates.map(({ up }) => up), [[3], [2, 3]]);

  // What is taken out takes its states along; what is left keeps its number, or the one it has then.
  assert.deepEqual(stance(by(both, 'lift-off', { which: '2' })).trailer.liftStates.map(({ up }) => up), [[3]]);
  const less = stance(by(both, 'axle-off-trailer', { which: '1', valve: '1', weight: '2,500 lb' })).trailer;
  assert.deepEqual([less.axles.length, less.liftAxles, less.liftStates.map(({ up }) => up)],
    [axles.length - 1, [{ axle: 2, gap: liftAxle.gap }], [[2]]]);
});

test('boosters and jeeps that are taken out leave nothing behind', () => {
  const none = by(LOADED, 'booster-off');
  assert.equal(JSON.stringify(stance(none)).includes('"booster"'), false);
  assert.deepEqual([stance(none).weights.regulator, stance(none).weights.shims, stance(none).weights.gross],
    [undefined, undefined, '115,000 lb']);
  const two = textOf('lowbed-with-two-boosters');
  const one = by(two, 'booster-off');
  assert.deepEqual([stance(one).boostersBehind, stance(one).booster.nextHinge, stance(one).weights.boostersBehind],
    [undefined, undefined, undefined]);
  const jeepless = by(two, 'jeep-off');
  assert.deepEqual([stance(jeepless).jeeps, stance(jeepless).plan.jeep, stance(jeepless).weights.jeeps],
    [undefined, undefined, undefined]);
});

test('wheels that turn, and are fixed again', () => {
  const castering = by(LOADED, 'castering', { which: 'trailer:1', limit: '18 deg' });
  assert.deepEqual(stance(castering).trailer.axles[1].steering, { wheels: 'castering', limit: '18 deg' });
  const commanded = by(castering, 'commanded', { which: 'booster', limit: '20 deg', ratio: '50 %' });
  assert.deepEqual(stance(commanded).booster.axle.steering, { wheels: 'commanded', ratio: '50 %', limit: '20 deg' });
  const asked = (text, key) => changes(text).find(one => one.key === key)?.asked[0].choices.map(([value]) => value);
  assert.deepEqual(asked(LOADED, 'steering-off'), undefined);
  assert.deepEqual(asked(commanded, 'steering-off'), ['trailer:1', 'booster']);
  // The only axle of a booster has to guide it; that of the tractor has no such wheels.
  assert.deepEqual(asked(LOADED, 'castering'), ['trailer:0', 'trailer:1', 'trailer:2']);
  assert.deepEqual(asked(commanded, 'castering'), ['trailer:0', 'trailer:2']);
  const back = by(by(commanded, 'steering-off', { which: 'booster' }), 'steering-off', { which: 'trailer:1' });
  assert.deepEqual(JSON.parse(back), JSON.parse(LOADED));
  const two = by(textOf('lowbed-with-two-boosters'), 'castering', { which: 'jeep-0:1', limit: '9 deg' });
  assert.equal(stance(two).jeeps[0].axles[1].steering.limit, '9 deg');
});

test('what is asked for is all there, or the first that is not is named', () => {
  const asked = changes(LOADED).find(({ key }) => key === 'axle-on-trailer').asked;
  assert.deepEqual(asked.map(({ key }) => key), ['spacing', 'radius', 'weight']);
  const given = { spacing: '4 ft', radius: '17 in', weight: '2,500 lb' };
  assert.equal(missingIn(asked, given), null);
  assert.deepEqual(missingIn(asked, { ...given, weight: ' ' }),
    { key: 'weight', sentence: 'Weight of the axle is missing.' });
  assert.equal(missingIn(asked, { ...given, spacing: '4' }).key, 'spacing');
  assert.equal(missingIn(asked, { ...given, weight: '2500' }).key, 'weight');
  const chart = { key: 'c', label: 'C', example: '', chart: true };
  assert.equal(missingIn([chart], { c: '14 psi 4,600 lb, 90 psi 23,800 lb' }), null);
  assert.equal(missingIn([chart], { c: '14 psi 4,600 lb' }).key, 'c');
  // A stance without weights is not asked for any.
  const light = changes(emptied(LOADED)).flatMap(one => one.asked).map(({ key }) => key);
  assert.equal(light.includes('weight'), false);
});

test('masses', () => {
  assert.equal(massOf('17,500 lb'), 17500 * 0.45359237);
  assert.equal(massOf('8.6 t'), 8600);
  assert.equal(massOf('8600 kg'), 8600);
  ['8,600 kg', '17500', 'lb', '1,00 lb', undefined].forEach(text => assert.equal(massOf(text), null, text));
  assert.equal(massText(17500 * 0.45359237, '1 lb'), '17,500 lb');
  assert.equal(massText(8600.4, '1 t'), '8600 kg');
});

test('another rig is a copy under its name, without which vehicles it was; or without load too', () => {
  const copy = JSON.parse(copied(LOADED, 'Lowbed "two"'));
  const { identity, ...rest } = JSON.parse(LOADED);
  assert.ok(identity);
  assert.deepEqual({ ...copy, name: 0 }, { ...rest, name: 0 });
  assert.equal(copy.name, 'Lowbed "two"');
  const bare = JSON.parse(emptied(LOADED)).stances[0];
  assert.deepEqual([bare.weights, bare.trailer.load, bare.plan.trailer.loadWidth], [undefined, undefined, undefined]);
  assert.deepEqual(bare.trailer.axles, stance(LOADED).trailer.axles);
});

/** The table that the program's own test reads too: LeftOffReaderTest. */
test('the combinations a stance runs as have the names the program knows them by', () => {
  const table = JSON.parse(readFileSync(new URL('../resources/combinations.json', import.meta.url), 'utf8'));
  assert.ok(table.length > 5);
  for (const { jeeps, boosters, names } of table) {
    const one = {
      name: 'loaded', jeeps: jeeps.map(off => ({ states: off ? ['in', 'out'] : ['in'] })),
      boostersBehind: boosters.map(off => (off ? { states: ['trailing', 'none'] } : {})),
    };
    assert.deepEqual(combinationsOf(one), names);
    names.forEach(name => assert.equal(measuredOf({ stances: [{ name: 'empty' }, one] }, name), 1));
  }
});

test('units may be left off from the rear, until another comes behind them', () => {
  const titles = text => changes(text).map(({ title }) => title).filter(title => /left off|Never leave/.test(title));
  const TWO = by(by(textOf('lowbed-with-two-boosters'), 'jeep-fixed'), 'booster-fixed');
  assert.deepEqual(titles(TWO), ['Let the jeep be left off', 'Let booster 2 be left off']);
  const off = by(by(TWO, 'jeep-loose'), 'booster-loose');
  assert.deepEqual(stance(off).jeeps[0].states, ['in', 'out']);
  assert.deepEqual(stance(off).boostersBehind[0].states, ['trailing', 'none']);
  assert.deepEqual(titles(off), ['Never leave the jeep off', 'Let the booster be left off',
    'Never leave booster 2 off']);
  assert.deepEqual(stance(by(off, 'booster-loose')).booster.states, ['trailing', 'none']);
  assert.deepEqual(stance(by(off, 'booster-fixed')).boostersBehind[0].states, ['trailing']);
  const jeep = {
    axle: '12 ft', spacing: '54 in', wheel: '11 ft', wheelH: '47 in', radius: '17 in', overhang: '2 ft', under: '14 in',
    over: '40 in', travelUp: '3 in', travelDown: '3 in', neck: '50 in', neckTop: '58 in', neckEnd: '7 ft',
    weight: '9,000 lb', cgX: '13 ft', cgH: '30 in',
  };
  assert.deepEqual(stance(by(off, 'jeep-on', jeep)).jeeps.map(({ states }) => states), [['in'], undefined]);
});

/** As StanceChoice of the server has it: the drawing is of the stance that is checked. */
test('where no stance is named it is the one that the server checks', () => {
  const of = (...names) => ({ json: { stances: names.map(name => ({ name })) } });
  assert.deepEqual([of('empty', 'loaded'), of('empty'), of('loaded', 'empty')].map(usualStance),
    ['loaded', 'empty', 'loaded']);
  assert.equal(measuredOf(of('empty', 'loaded').json, null), 1);
  assert.equal(measuredOf(of('empty', 'loaded').json, 'empty'), 0);
});
