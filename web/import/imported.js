/** Questions asked of what an import found. No DOM. */

import { chainage } from '../text/format.js';

/** In the order in which they are told. */
const STATUS = ['new', 'known', 'surveyed', 'dismissed'];

/** How many candidates of each status, and how many are doubtful: {word, count}, none of which is zero. */
export function counts(candidates) {
  const all = STATUS.map(word => ({ word, count: candidates.filter(({ status }) => status === word).length }));
  all.push({ word: 'doubtful', count: candidates.filter(({ doubtful }) => doubtful).length });
  return all.filter(({ count }) => count > 0);
}

/** "19 candidates: 17 new, 2 known, 3 of them doubtful" */
export function countsInWords(candidates) {
  if (candidates.length === 0) {
    return 'No candidates';
  }
  const all = counts(candidates);
  const plain = all.filter(({ word }) => word !== 'doubtful').map(({ word, count }) => `${count} ${word}`);
  const doubtful = all.find(({ word }) => word === 'doubtful');
  return `${candidates.length} ${candidates.length === 1 ? 'candidate' : 'candidates'}: ${plain.join(', ')}`
    + (doubtful ? `; ${doubtful.count} of them doubtful` : '');
}

/** Notes by what became of them, the doubtful first: {done, notes}. */
export function notesByDone(notes) {
  return ['doubtful', 'corrected', 'left out']
    .map(done => ({ done, notes: notes.filter(note => note.done === done) }))
    .filter(group => group.notes.length > 0);
}

/** Where a note points: the file, and its line or point. */
export const noteAt = ({ file, line, point }) =>
  file + (line > 0 ? `, line ${line}` : point > 0 ? `, point ${point}` : '');

/** What a raster was good for. @param cells how far apart its cells are, in words */
export function rasterWords({ sketches, tooCoarse, without }, cells) {
  const use = sketches === 0 ? 'no open candidate is sketched from it'
    : `${sketches} ${sketches === 1 ? 'place' : 'places'} sketched, cells up to ${cells} apart`
      + (tooCoarse ? ': too coarse to show the hump of a crossing, so it orders nothing' : '');
  return `${use}${without > 0 ? `; no usable heights at ${without} ${without === 1 ? 'place' : 'places'}` : ''}.`;
}

/** Where a candidate is: from where to where it is that the map says nothing, else its place. */
export const where = ({ kind, chainageM, fromM, toM }, units) => (kind === 'off-map'
  ? `${chainage(fromM, units)} to ${chainage(toM, units)}` : chainage(chainageM, units));

/** A kind as people say it. */
export const kindWords = kind => kind.replaceAll('-', ' ');

/** How far it has come, in words. @param progress what the server says, or null */
export function progressWords(progress, files) {
  const count = files.length === 1 ? files[0].name : `${files.length} files`;
  const percent = share => `${Math.floor(share * 100)} %`;
  switch (progress?.state) {
    case 'receiving': return `Sending ${count}, ${percent(progress.share)}`;
    case 'waiting': return 'Waiting for its turn';
    case 'tracks': return 'Reading the tracks';
    case 'map': return `Reading ${progress.file}, pass ${progress.time}, ${percent(progress.share)}`;
    case 'base-map':
      return `Cutting the base map from ${progress.file}, pass ${progress.time}, ${percent(progress.share)}`;
    default: return `Reading ${count}`;
  }
}
