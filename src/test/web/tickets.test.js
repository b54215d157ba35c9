import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';
import { pieceOf, weighedGroups, withPiece } from '../../../web/rig/tickets.js';

const textOf = name => readFileSync(new URL(`../../../sample-routes/${name}.rig.json`, import.meta.url), 'utf8');
const LB = 0.45359237;
const FT = 12 * 25.4e9;
const lb = value => `${Math.round(value).toLocaleString('en-US')} lb`;
const tickets = (empty, loaded) => Object.fromEntries(Object.keys(empty)
  .map(key => [key, { empty: lb(empty[key]), loaded: lb(loaded[key]) }]));

/** Trailer axles at 40 ft, 44 ft 6 1/2 in, 49 ft 1 in: 44.5417 ft; booster axle 51 ft 6 in + 8 ft = 59.5 ft. */
test('where the groups stand behind the kingpin', () => {
  const groups = weighedGroups(JSON.parse(textOf('lowbed-loaded')), 0);
  assert.deepEqual(groups.map(({ key }) => key), ['steer', 'drive', 'trailer', 'booster-0']);
  assert.ok(Math.abs(groups[2].arm / FT - (40 + 44 + 6.5 / 12 + 49 + 1 / 12) / 3) < 1e-9);
  assert.ok(Math.abs(groups[3].arm / FT - 59.5) < 1e-9);
  // Booster 1 on axles 8 ft and 12 ft 6 in behind its hinge at 51 ft 6 in, the hinge for booster 2 at 15 ft 3 in.
  const two = weighedGroups(JSON.parse(textOf('lowbed-with-two-boosters')), 0);
  assert.deepEqual(two.map(({ key }) => key), ['steer', 'drive', 'jeep-0', 'trailer', 'booster-0', 'booster-1']);
  const trailer = JSON.parse(textOf('lowbed-with-two-boosters')).stances[0].trailer;
  assert.deepEqual([trailer.kingpin.x, trailer.boosterHinge.x], ['5 ft', '-51 ft 6 in']);
  assert.ok(Math.abs(two[4].arm / FT - (5 + 51.5 + 10.25)) < 1e-9);
  assert.ok(Math.abs(two[5].arm / FT - (5 + 51.5 + 15.25 + 8)) < 1e-9);
});

/**
 * By hand: 70,000 lb at 27 ft behind the kingpin, of which the booster takes 9,000 lb. Moments about the kingpin:
 * trailer axles (70000·27 − 9000·59.5) / 44.541667 = 30,409.7 lb; kingpin 30,590.3 lb. The drive axles' middle is 19 ft
 * behind the steer axle, the fifth wheel 18 ft: a nineteenth goes to the steer axle.
 */
test('weight and place of a piece that is known come back', () => {
  const json = JSON.parse(textOf('lowbed-loaded'));
  const trailer = (70000 * 27 - 9000 * 59.5) / ((40 + 44 + 6.5 / 12 + 49 + 1 / 12) / 3);
  const kingpin = 70000 - 9000 - trailer;
  const empty = { steer: 11000, drive: 16000, trailer: 19000, 'booster-0': 5000 };
  const loaded = {
    steer: empty.steer + kingpin / 19, drive: empty.drive + kingpin * 18 / 19, trailer: empty.trailer + trailer,
    'booster-0': 14000,
  };
  const piece = pieceOf(json, 0, tickets(empty, loaded), 0.01);
  assert.ok(Math.abs(piece.kg / LB - 70000) <= 2);
  assert.ok(Math.abs(piece.arm / FT - 27) < 0.002);
  assert.ok(Math.abs(piece.steer.levelKg - piece.steer.ticketKg) < 1);
  // Every ticket good to 1 %: the root of the sum of the squares of all eight.
  const all = [...Object.values(empty), ...Object.values(loaded)].map(one => one / 100);
  assert.ok(Math.abs(piece.kgGood / LB - Math.hypot(...all)) < 0.1);
  // The place against a finer and finer look: each ticket by itself 1 % heavier, the shifts taken together.
  const shifts = Object.keys(empty).flatMap(key => [[1.01, 1], [1, 1.01]].map(([a, b]) => pieceOf(json, 0,
    tickets({ ...empty, [key]: empty[key] * a }, { ...loaded, [key]: loaded[key] * b }), 0.01).arm - piece.arm));
  assert.ok(Math.abs(piece.armGood / Math.hypot(...shifts) - 1) < 0.02);
});

test('tickets that contradict the levers of the tractor are seen', () => {
  const json = JSON.parse(textOf('lowbed-loaded'));
  const empty = { steer: 11000, drive: 16000, trailer: 19000, 'booster-0': 5000 };
  const loaded = { steer: 16000, drive: 40000, trailer: 50000, 'booster-0': 14000 };
  const swapped = pieceOf(json, 0, tickets(empty, loaded), 0.01);
  // 29,000 lb more on the kingpin put 1,526 lb on the steer axle, not 5,000 lb.
  assert.ok(Math.abs(swapped.steer.levelKg / LB - 29000 / 19) < 1);
  assert.ok(Math.abs(swapped.steer.ticketKg / LB - 5000) < 1e-6);
  assert.ok(swapped.steer.goodKg < swapped.steer.ticketKg - swapped.steer.levelKg);
});

test('what is missing is named; nothing loaded is no piece; with a jeep the steer axle says nothing', () => {
  const json = JSON.parse(textOf('lowbed-loaded'));
  const all = { steer: 11000, drive: 16000, trailer: 19000, 'booster-0': 5000 };
  assert.deepEqual(pieceOf(json, 0, {}, 0.01), { missing: 'steer axle' });
  assert.deepEqual(pieceOf(json, 0, { ...tickets(all, all), drive: { empty: '16,000 lb', loaded: '' } }, 0.01),
    { missing: 'drive axles' });
  assert.deepEqual(pieceOf(json, 0, tickets(all, all), 0.01), { lighter: true });
  const jeep = { ...all, 'jeep-0': 9000, 'booster-1': 4000 };
  const more = Object.fromEntries(Object.entries(jeep).map(([key, value]) => [key, value + 1000]));
  assert.equal(pieceOf(JSON.parse(textOf('lowbed-with-two-boosters')), 0, tickets(jeep, more), 0.01).steer, null);
});

test('the piece is written where it is, and the sum of all with it', () => {
  const text = textOf('lowbed-loaded');
  const made = JSON.parse(withPiece(text, 0, 0, { kg: 71500 * LB, arm: 26.5 * FT })).stances[0].weights;
  const before = JSON.parse(text).stances[0].weights;
  const [piece] = before.pieces;
  assert.deepEqual(made.pieces[0], { ...piece, weight: '71,500 lb', cg: { ...piece.cg, x: '-26 ft 6 in' } });
  assert.equal(made.gross, '121,700 lb');
  assert.deepEqual({ ...made, pieces: 0, gross: 0 }, { ...before, pieces: 0, gross: 0 });
});
