/** The speed for which a verdict stands. */
import { speedDown } from '../text/format.js';

/** Of a cell that is clear: "15 mph at most", "crawl". */
export const speedWords = ({ mostMps }, units) => (mostMps ? `${speedDown(mostMps, units)} at most` : 'crawl');
