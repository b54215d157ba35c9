/** Saves texts as files of the reader's own. */
import { el } from '../../dom.js';

/** Long enough for the browser to have taken the file. */
const KEPT_MS = 60_000;

export function saveText(text, name) {
  const url = URL.createObjectURL(new Blob([text], { type: 'application/geo+json' }));
  el('a', { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), KEPT_MS);
}
