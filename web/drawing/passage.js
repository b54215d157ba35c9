/**
 * Geometry of the side view, in world meters: X along the road in travel direction, Z up. No DOM.
 * A pose is [originX, originZ, pitchRad], pitch nose-up positive; a unit point is [x, h] in the unit's own frame.
 */

import { shareLeft } from '../report/report.js';

/** Where a unit point stands in the world. */
export function place([originX, originZ, pitch], x, h) {
  const cos = Math.cos(pitch);
  const sin = Math.sin(pitch);
  return [originX + x * cos - h * sin, originZ + x * sin + h * cos];
}

/** The same as an SVG matrix from unit meters (y = −h) to world meters (y = −Z). */
export function unitMatrix([originX, originZ, pitch]) {
  const cos = Math.cos(pitch);
  const sin = Math.sin(pitch);
  return [cos, -sin, sin, cos, originX, -originZ];
}

/** Height of the ground, continued beyond its ends at the approach slopes. */
export function groundZ({ points, before, after }, s) {
  const first = points[0];
  const last = points[points.length - 1];
  if (s <= first[0]) {
    return first[1] + before.slope * (s - first[0]);
  }
  if (s >= last[0]) {
    return last[1] + after.slope * (s - last[0]);
  }
  let low = 0;
  let high = points.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (points[middle][0] <= s) {
      low = middle;
    } else {
      high = middle;
    }
  }
  const [a, b] = [points[low], points[high]];
  return a[1] + ((b[1] - a[1]) * (s - a[0])) / (b[0] - a[0]);
}

/** The ground between two distances in three parts: as surveyed, and what stands in for a survey beside it. */
export function groundParts(ground, from, to) {
  const surveyed = ground.points;
  const first = surveyed[0];
  const last = surveyed[surveyed.length - 1];
  return {
    before: from < first[0] ? [[from, groundZ(ground, from)], first] : [],
    surveyed,
    after: to > last[0] ? [last, [to, groundZ(ground, to)]] : [],
  };
}

/** Box around the combination at one position: {left, right, bottom, top}; the bottom is the ground under it. */
export function truckBox(passage, position) {
  const box = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity };
  const take = (x, z) => {
    box.left = Math.min(box.left, x);
    box.right = Math.max(box.right, x);
    box.bottom = Math.min(box.bottom, z);
    box.top = Math.max(box.top, z);
  };
  for (const unit of passage.units) {
    const pose = position.poses[unit.unit];
    for (const line of pose ? [unit.underside, unit.topside, ...unit.load] : []) {
      line.forEach(([x, h]) => take(...place(pose, x, h)));
    }
  }
  position.wheels.forEach(([x, z, radius]) => {
    take(x - radius, z - radius);
    take(x + radius, z + radius);
  });
  const under = [box.left, box.right, ...passage.ground.points.map(([s]) => s)
    .filter(s => s > box.left && s < box.right)];
  under.forEach(s => take(s, groundZ(passage.ground, s)));
  return box;
}

/** Road shown on either side of the truck, in truck lengths. */
const BESIDE = 0.15;

/** The window a passage is seen through when the truck stands where it is tightest, and the room a truck takes. */
export function frame(passage) {
  const boxes = passage.positions.map(position => truckBox(passage, position));
  const home = boxes[passage.tightest];
  const soffitTop = passage.soffit ? Math.max(...passage.soffit.map(([, z]) => z)) : -Infinity;
  const tallest = Math.max(...boxes.map(box => box.top - box.bottom), soffitTop - home.bottom);
  const longest = Math.max(...boxes.map(box => box.right - box.left));
  const first = passage.ground.points[0][0];
  const last = passage.ground.points[passage.ground.points.length - 1][0];
  // The surveyed road beside the truck is shown too, as much of it as leaves the truck large.
  const left = Math.max(Math.min(home.left, first), home.left - longest * BESIDE) - 1;
  const right = Math.min(Math.max(home.right, last), home.right + longest * BESIDE) + 1;
  return {
    boxes,
    left,
    bottom: home.bottom - 0.7,
    widthM: Math.max(right - left, longest + 2),
    heightM: tallest + 1.4,
    roadFrom: Math.min(first, ...boxes.map(box => box.left)) - (right - left),
    roadTo: Math.max(last, ...boxes.map(box => box.right)) + (right - left),
  };
}

/**
 * The lower left corner of the window at a position: as little moved from home as keeps the whole truck inside, so
 * that the road stands still while the truck crosses what is tight, and the view never jumps.
 *
 * @param heightM how much height the window shows: a truck and more
 */
export function camera(frame, index, heightM) {
  const box = frame.boxes[index];
  return {
    left: contain(frame.left, frame.widthM, box.left - 1, box.right + 1),
    bottom: contain(frame.bottom, heightM, box.bottom - 0.5, box.top + 0.5),
  };
}

/** Start of a window of this size, least moved from `start`, that holds low to high (its middle if it cannot). */
export function contain(start, size, low, high) {
  if (high - low >= size) {
    return (low + high - size) / 2;
  }
  return Math.min(Math.max(start, high - size), low);
}

/** Ends of the dimension line of a clearance: {x, from, to, valueM} in the world; null when there is none. */
export function dimensionLine(position, side) {
  const at = side === 'ground' ? position.groundAt : position.overheadAt;
  const valueM = side === 'ground' ? position.groundM : position.overheadM;
  const pose = at && position.poses[at.unit];
  if (!pose || valueM === null) {
    return null;
  }
  const [x, z] = place(pose, at.xM, at.hM);
  return { x, from: z, to: side === 'ground' ? z - valueM : z + valueM, valueM, unit: at.unit };
}

/** A circle around what is tight reaches this many gaps from its middle, and between these bounds, meters. */
const REACH_IN_GAPS = 3.2;
const LEAST_REACH_M = 0.2;
const MOST_REACH_M = 0.9;

/** Radius of the circle that is shown enlarged, meters; one for the whole passage, so that its scale stands still. */
export function detailReach(passage, cell) {
  const tightest = passage.positions[passage.tightest];
  const gap = Math.abs(dimensionLine(tightest, tighterSide(tightest, cell))?.valueM ?? 0);
  return Math.min(MOST_REACH_M, Math.max(LEAST_REACH_M, gap * REACH_IN_GAPS));
}

/** Whether the road was surveyed; where it was not, the passage comes with a straight line in its place. */
export function roadKnown(passage) {
  return passage.positions.some(position => typeof position.groundM === 'number');
}

/**
 * The top line of a load, closed down to the deck it stands on: a polygon in the trailer's frame. Beyond the ends of
 * the deck it is closed straight.
 */
export function loadPolygon(load, topside) {
  const [rear, front] = [load[0], load[load.length - 1]];
  const onDeck = ([x, h]) => Math.min(h, topAt(topside, x) ?? h);
  const between = topside.filter(([x]) => x > rear[0] && x < front[0]).reverse();
  return [...load, [front[0], onDeck(front)], ...between, [rear[0], onDeck(rear)]];
}

/** Height of a line that runs rear to front; the higher end of a vertical face; null beyond its ends. */
function topAt(line, x) {
  let top = null;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    if (x >= a[0] && x <= b[0]) {
      const h = b[0] > a[0] ? a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]) : Math.max(a[1], b[1]);
      top = Math.max(top ?? -Infinity, h);
    }
  }
  return top;
}

/** Which clearance of a position is tighter against what it needs; ground when the other is not known. */
export function tighterSide(position, cell) {
  if (position.overheadM === null || position.overheadM === undefined || !cell?.overhead) {
    return 'ground';
  }
  if (position.groundM === null || position.groundM === undefined || !cell.ground) {
    return 'overhead';
  }
  const over = shareLeft({ valueM: position.overheadM, requiredM: cell.overhead.requiredM });
  const under = shareLeft({ valueM: position.groundM, requiredM: cell.ground.requiredM });
  return over < under ? 'overhead' : 'ground';
}

/** Index of the position whose steer axle is nearest to a distance. */
export function nearestIndex(positions, steerM) {
  let best = 0;
  positions.forEach((position, index) => {
    if (Math.abs(position.steerM - steerM) < Math.abs(positions[best].steerM - steerM)) {
      best = index;
    }
  });
  return best;
}

/** Wheels that do not simply ride, in words, front to rear: "trailer axle 3 hanging". */
export function wheelWords(position) {
  const counts = new Map();
  return [...position.wheels]
    .sort((a, b) => b[0] - a[0])
    .map(([, , , group, state]) => {
      counts.set(group, (counts.get(group) ?? 0) + 1);
      return { state, text: `${group} axle ${counts.get(group)} ${state}` };
    })
    .filter(({ state }) => state !== 'riding')
    .map(({ text }) => text);
}
