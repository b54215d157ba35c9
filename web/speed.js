/** The speed for which a verdict stands. */
import { speedDown } from './format.js';

/** Dips, crests and structures are told a speed where they are clear; the rest is crawled over or judged by loads. */
export const isSped = ({ kind }) => ['dip', 'crest', 'low-structure'].includes(kind);

/** Of a cell that is clear: "15 mph at most", "crawl". */
export const speedWords = ({ mostMps }, units) => (mostMps ? `${speedDown(mostMps, units)} at most` : 'crawl');
