import assert from 'node:assert/strict';
import test from 'node:test';
import { marksIn, turning, windowOf } from '../../../web/drawing/corner.js';

const at = (x, y, steerRad, bend) => ({ steerRad, articulationRad: [bend], poses: [[x, y, 0], [x - 30, y, 0]] });

test('the window holds every unit from the first wheel over to the last coupling straight, however far out', () => {
  const positions = [at(-90, 0, 0, 0), at(-20, 0, 0.2, 0), at(30, 60, 0, 0.3), at(30, 130, 0, 0)];
  assert.deepEqual(turning(positions), { first: 1, last: 2 });
  const { left, top, width, height } = windowOf({ positions });
  assert.ok(left <= -50 && left + width >= 30 && top <= -60 && top + height >= 0);
  assert.ok(left > -90, 'the long straight run before the turn is not what the window is for');
});

test('a turn back by 180 degrees is held whole, and only marks in the window are drawn', () => {
  const positions = [at(-40, 0, 0.3, 0.1), at(30, 25, 0.5, 0.9), at(-60, 50, 0, 0.2), at(-200, 50, 0, 0)];
  const box = windowOf({ positions });
  assert.ok(box.left <= -90 - 10 && box.top <= -60 && box.left > -150);
  const marks = [{ words: 'wheel over', at: [-40, 0] }, { words: 'island 1 ends', at: [-180, 50] },
    { words: 'straight', at: [-60, 50] }];
  assert.deepEqual(marksIn({ marks }, box).map(m => m.letter), ['A', 'C']);
});

test('a passage that never bends is shown whole', () => {
  assert.deepEqual(turning([at(0, 0, 0, 0), at(1, 0, 0, 0)]), { first: 0, last: 1 });
});
