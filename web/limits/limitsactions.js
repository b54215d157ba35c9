/** What a user can do about weight limits of the whole route: open a file of them, write one, leave it out. No DOM. */
import { asProblem } from '../exchange/api.js';
import { fileFromDisk, readFile } from '../exchange/files.js';
import { limitsOf, NO_LIMITS } from './limits.js';

/** @param undoing where a change is kept, to be taken back */
export function createLimitsActions(store, undoing) {
  const put = (what, made) => undoing.revise({
    kind: 'limits', what, before: limitsOf(store.get().inputs), made, wanted: undoing.shown(),
  });

  async function open(file) {
    try {
      const read = await fileFromDisk(file, 'limits');
      return await put(`limits of ${read.name}`, read);
    } catch (error) {
      store.set({ problem: asProblem(error) });
      return false;
    }
  }

  return {
    openLimits: open,
    /** @returns whether they are in force */
    changeLimits: (name, text) => put('limits of the whole route', readFile(text, name, null)),
    removeLimits: () => put('leaving out the limits file', NO_LIMITS),
  };
}
