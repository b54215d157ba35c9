import assert from 'node:assert/strict';
import test from 'node:test';
import { marksIn, midTurn, northOf, turning, windowOf } from '../../../web/drawing/corner.js';

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

test('north is found from a line known in both frames, and is none where the line is in one alone', () => {
  const near = (a, b) => assert.ok(Math.abs(a - b) < 1e-9, `${a} is not ${b}`);
  // Drawn to the right and driven north: north lies to the right, a quarter turn clockwise.
  near(northOf([[0, 0], [10, 0]], [[-99, 44], [-99, 44.001]]), Math.PI / 2);
  // Drawn upward and driven east: north lies to the left.
  near(northOf([[0, 0], [0, 10]], [[-99, 0], [-98.999, 0]]), -Math.PI / 2);
  // At 60 degrees a degree of longitude is half as long: as far east as north, drawn upward, is an eighth to the left.
  near(northOf([[0, 0], [0, 5], [0, 10]], [[0, 60], [0.001, 60.0005], [0.002, 60.001]]), -Math.PI / 4);
  assert.equal(northOf([[0, 0], [10, 0]], null), null);
  assert.equal(northOf([[0, 0], [0, 0]], [[1, 1], [1, 1]]), null);
});

test('the middle of a turn is where half of its bending is done', () => {
  const arc = Array.from({ length: 91 }, (_, i) => i * Math.PI / 180)
    .map(turned => [Math.sin(turned) * 20, 20 - Math.cos(turned) * 20]);
  const [x, y] = midTurn([[-100, 0], ...arc, [20, 300]]);
  // Of a quarter circle after a straight: at 45 degrees, x = 20 sin 45, y = 20 - 20 cos 45, within a step of the arc.
  assert.ok(Math.hypot(x - 14.1421, y - 5.8579) < 0.36, `${x} ${y}`);
  assert.equal(midTurn([[0, 0], [1, 0], [2, 0]]), null);
});
