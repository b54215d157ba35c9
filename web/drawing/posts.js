/** Posts along the route line on the map. No DOM. */
import { pointAt } from '../line/legs.js';
import { niceStep } from './scale.js';

/** Posts at even chainages: {value, at}, about `count` of them, the start left out. @param unitM meters in a unit */
export function posts(line, lengthM, unitM, count) {
  const step = niceStep(lengthM / unitM / count);
  const found = [];
  for (let n = 1; n * step * unitM < lengthM; n++) {
    const at = pointAt(line, n * step * unitM);
    if (at) {
      found.push({ value: Number((n * step).toPrecision(12)), at });
    }
  }
  return found;
}
