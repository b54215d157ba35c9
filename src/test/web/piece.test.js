import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';
import { lengthOf } from '../../../web/text/length.js';
import { piecesOf, refusalOfPlace, riseOf, within, withPieceMoved } from '../../../web/rig/piece.js';
import { movedWords, placeWords, stepOf } from '../../../web/rig/piecewords.js';

const RIG = readFileSync(new URL('../../../sample-routes/lowbed-loaded.rig.json', import.meta.url), 'utf8');
const inches = value => value * 25.4e9;
const json = JSON.parse(RIG);
const [loader, box] = piecesOf(json, 0);
const outlineOf = (text, k) => JSON.parse(text).stances[0].trailer.load[k].outline;

test('a piece may go to both ends of what it lies on, by the tape', () => {
  // Deck from -10 ft 6 in to -35 ft 6 in; the loader from -11 ft 6 in to -34 ft 9 in, its center at -27 ft.
  assert.deepEqual([loader.name, loader.least, loader.most, loader.behind],
    ['wheel loader', inches(-12), inches(9), inches(16.5 * 12)]);
  assert.deepEqual([loader.from, loader.to], [inches(15.5 * 12), inches(17.25 * 12)]);
  // The gooseneck ends at 1 ft 9 in; the box from -7 ft 9 in to -9 ft 3 in.
  assert.deepEqual([box.name, box.least, box.most], ['chain box on the gooseneck', inches(-114), inches(15)]);
  assert.equal(within(loader, inches(40)), inches(9));
  assert.equal(within(loader, inches(-40)), inches(-12));
  assert.equal(within(loader, inches(3)), inches(3));
});

test('moved forward on a deck that falls there, nothing changes but the places along it', () => {
  const moved = withPieceMoved(RIG, 0, 0, inches(-12));
  const [before, after] = [outlineOf(RIG, 0), outlineOf(moved, 0)];
  assert.equal(after.length, 16);
  before.forEach((point, k) => {
    assert.equal(lengthOf(after[k].x), lengthOf(point.x) + inches(12));
    assert.equal(after[k].h, point.h);
  });
  assert.equal(JSON.parse(moved).stances[0].weights.pieces[0].cg.x, '-26 ft');
  assert.equal(withPieceMoved(moved, 0, 0, inches(12)).length > 0, true);
  // Every line that says nothing of the loader is as it was.
  const [a, b] = [RIG.split('\n'), moved.split('\n')];
  assert.equal(a.length, b.length);
  assert.equal(a.filter((line, k) => line !== b[k]).length, 17);
});

test('moved back the deck is higher, and so is the piece: never lower than it may be', () => {
  // 1/2 in over 25 ft: 9 in farther back it is 0.015 in, taken as 1/16 in.
  assert.ok(Math.abs(riseOf(json, 0, loader, inches(9)) - inches(0.5 * 9 / 300)) < 1);
  const after = outlineOf(withPieceMoved(RIG, 0, 0, inches(9)), 0);
  outlineOf(RIG, 0).forEach((point, k) => {
    assert.equal(lengthOf(after[k].h), lengthOf(point.h) + inches(1 / 16));
    assert.equal(lengthOf(after[k].x), lengthOf(point.x) - inches(9));
  });
  const { cg } = JSON.parse(withPieceMoved(RIG, 0, 0, inches(9))).stances[0].weights.pieces[0];
  assert.deepEqual([cg.x, cg.h, cg.offset], ['-27 ft 9 in', '6 ft 2 1/16 in', '1 in']);
});

test('there and back by separate moves of one file is the same place along it', () => {
  const back = withPieceMoved(withPieceMoved(RIG, 0, 0, inches(-7)), 0, 0, inches(7));
  assert.deepEqual(outlineOf(back, 0).map(({ x }) => lengthOf(x)), outlineOf(RIG, 0).map(({ x }) => lengthOf(x)));
  assert.equal(withPieceMoved(RIG, 0, 0, 0), RIG);
  assert.equal(withPieceMoved(RIG, 0, 7, inches(1)), RIG);
});

test('two pieces, each by itself', () => {
  const both = withPieceMoved(withPieceMoved(RIG, 0, 0, inches(-6)), 0, 1, inches(-6));
  assert.deepEqual(outlineOf(both, 1).map(({ x }) => x), ['-8 ft 9 in', '-7 ft 3 in']);
  assert.equal(outlineOf(both, 0)[0].x, '-34 ft 3 in');
});

test('where it cannot lie, with the ends; what is no length', () => {
  const told = length => `${length / inches(1)} in`;
  assert.equal(refusalOfPlace(loader, inches(200), told), null);
  assert.match(refusalOfPlace(loader, inches(240), told), /hang over an end there.*186 in to 207 in/);
  assert.match(refusalOfPlace(loader, null, told), /no length/);
});

test('a piece across an end of the deck stays where it is', () => {
  const across = JSON.parse(RIG);
  across.stances[0].trailer.load[0].outline[0].x = '-36 ft';
  const [piece] = piecesOf(across, 0);
  assert.deepEqual([piece.least, piece.most], [0, 0]);
  assert.match(refusalOfPlace(piece, inches(200), String), /across an end/);
  assert.equal(refusalOfPlace(piece, piece.behind, String), null);
  const long = JSON.parse(RIG);
  long.stances[0].trailer.load[0].outline.at(-1).x = '-9 ft';
  assert.deepEqual(piecesOf(long, 0)[0].most, 0);
});

test('what is not drawn or not weighed is no piece to be moved', () => {
  const undrawn = JSON.parse(RIG);
  undrawn.stances[0].trailer.load.pop();
  assert.deepEqual(piecesOf(undrawn, 0).map(({ name }) => name), ['wheel loader']);
  delete undrawn.stances[0].weights;
  assert.deepEqual(piecesOf(undrawn, 0), []);
  assert.deepEqual(piecesOf(undrawn, 3), []);
});

test('in words, in feet and in meters', () => {
  assert.equal(movedWords(inches(14), 'us'), '14 in farther back');
  assert.equal(movedWords(inches(-26), 'us'), '2 ft 2 in farther forward');
  assert.equal(movedWords(stepOf('metric'), 'metric'), '10 mm farther back');
  assert.equal(placeWords(json, 0, loader, inches(-3), 'us'), 'wheel loader: center of gravity 16 ft 3 in behind the '
    + 'deck front, 3 in farther forward than in the rig. It can go 12 in back and 9 in forward. What it lies on is lower '
    + 'there; its heights are left as they were taped.');
  assert.match(placeWords(json, 0, loader, inches(3), 'us'), /is higher there, and its heights are raised as much\.$/);
});
