/** What a user can do to see whether a paper still comes out the same: made again from its record. No DOM. */
import { asProblem, wasAborted } from '../exchange/api.js';
import { LARGEST_FILE } from '../exchange/files.js';
import { lastOnly } from '../page/state.js';

/** Nothing verified yet. */
export const NOT_VERIFIED = Object.freeze({ status: 'none', name: '', data: null, problem: null });

/** So much of a file tells whether it is a record. */
const HEAD = 4 * 1024;

/** @param takeFiles what becomes of files that are no records */
export function createVerifying(store, api, takeFiles) {
  const turns = lastOnly();

  /** @param read signal → the text of a record */
  async function verify(name, read) {
    const turn = turns.begin();
    store.set({ verifying: { ...NOT_VERIFIED, status: 'reading', name } });
    try {
      const data = await api.verify(await read(turn.signal), turn.signal);
      if (turn.isCurrent()) {
        store.set({ verifying: { status: 'ready', name, data, problem: null } });
      }
    } catch (error) {
      if (!wasAborted(error) && turn.isCurrent()) {
        store.set({ verifying: { status: 'failed', name, data: null, problem: asProblem(error) } });
      }
    }
  }

  const isRecord = async file => /^\s*\{[^{]*"cresthaul"\s*:\s*"record\//.test(await file.slice(0, HEAD).text());

  return {
    /** A file that somebody says is a record. */
    verifyFile: file => verify(file.name, async () => (file.size > LARGEST_FILE ? '{}' : file.text())),
    verifyPaper: (id, name) => verify(name, signal => api.paperRecord(id, signal)),
    stopVerifying: () => {
      turns.cancel();
      store.set({ verifying: NOT_VERIFIED });
    },
    /** Records among files that were dropped are verified; the rest goes where it went. */
    takeFiles: async files => {
      const records = await Promise.all(files.map(isRecord));
      const first = files.find((file, k) => records[k]);
      if (first) {
        verify(first.name, () => first.text());
      }
      return takeFiles(files.filter((file, k) => !records[k]));
    },
  };
}
