/** Prints the route file that comes in, driven the other way on the paths that were surveyed. */
import { readFileSync } from 'node:fs';
import { reversedRoute } from '../../../web/line/reversing.js';

const text = readFileSync(0, 'utf8');
const { refused, text: made } = reversedRoute(text, JSON.parse(text), { paths: 'same', stops: true, limits: true });
if (refused.length > 0) {
  throw new Error(refused.join(' '));
}
process.stdout.write(made);
