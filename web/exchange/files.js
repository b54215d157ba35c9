/** Route and rig files as the page holds them: {id, name, text, json}. No DOM. */
import { Problem } from './api.js';

/** Files larger than this are not read into the page, bytes. */
export const LARGEST_FILE = 64 * 1024 * 1024;

/**
 * @param file a File of the browser
 * @param what it is to be: 'route', 'rig' or 'limits'
 */
export async function fileFromDisk(file, what) {
  if (file.size > LARGEST_FILE) {
    throw new Problem({ title: `${file.name} is larger than 64 MB`, remedy: 'Check a shorter stretch of the route.' });
  }
  const bytes = await file.arrayBuffer();
  if (isTrack(new Uint8Array(bytes, 0, Math.min(bytes.byteLength, 512)), file.name)) {
    throw new Problem({
      title: `${file.name} is a track, not a ${what} file`,
      detail: 'A track is looked through for what is wrong in it, and tied to a map, before it becomes a route.',
      remedy: 'Drop it on the page, or choose it under Import tracks and maps.',
    });
  }
  return readFile(textOf(bytes, file.name), file.name, null);
}

/** Whether a file is what `import` takes: by its name, or an XML or an archive by how it begins. */
export function isTrack(start, name) {
  const text = String.fromCharCode(...start).replace(/^\u00ef\u00bb\u00bf/, '').trimStart();
  return /\.(gpx|kml|kmz|csv)$/i.test(name) || text.startsWith('<') || text.startsWith('PK\u0003\u0004');
}

/** The text that the bytes are, to the last one: what is sent is then what is on disk, and has its hash. */
function textOf(bytes, name) {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw notPlain(name);
  }
}

const notPlain = name => new Problem({
  title: `${name} is not UTF-8 without a byte order mark`,
  remedy: 'Save it as UTF-8, without a byte order mark (BOM), and open it again.',
});

/** Reads a file's text as JSON; the text itself is kept, and sent as the user wrote it. */
export function readFile(text, name, id) {
  if (text.startsWith('\uFEFF')) {
    throw notPlain(name);
  }
  try {
    return { id, name, text, json: JSON.parse(text) };
  } catch (error) {
    throw new Problem({
      title: `${name} is not JSON`,
      problems: [{
        pointer: '', code: 'syntax', message: error.message, remedy: 'Correct the file there and open it again.',
      }],
    });
  }
}

/** The sample asked for; the first when none is. Never another in the place of one that is not there. */
export function pick(list, id) {
  const found = id ? list.find(item => item.id === id) : list[0];
  if (!found) {
    throw new Problem({
      title: id ? `There is no sample "${id}"` : 'There is no sample to show',
      remedy: 'Choose another, or open files of your own.',
    });
  }
  return found;
}

/** Why a link to a file from disk opens nothing. */
export function fromDisk(name) {
  return new Problem({
    title: `This link shows ${name}, a file from disk`,
    detail: 'A link cannot carry a file.',
    remedy: 'Open that file, or choose a sample.',
  });
}
