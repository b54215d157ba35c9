/** What a user can do about loads, as functions on the store. */
import { lastOnly } from './state.js';
import { Problem, wasAborted } from '../exchange/api.js';
import { shownInputs } from '../rig/moving.js';

const NO_LOADS = { status: 'none', data: null, problem: null, rig: null };

export function createLoadActions(store, api) {
  const requests = lastOnly();

  /** Fetches the loads of the configuration on show. The drawing before stays until the answer is there. */
  async function drawLoads() {
    const { report, configuration, loadsAsked } = store.get();
    const inputs = shownInputs(store.get());
    if (report === null || configuration === null) {
      requests.cancel();
      store.set({ loads: NO_LOADS });
      return;
    }
    const turn = requests.begin();
    store.set({ loads: { ...store.get().loads, status: 'loading', problem: null } });
    try {
      const data = await api.loads(inputs, { configuration, ...loadsAsked }, turn.signal);
      if (turn.isCurrent()) {
        store.set({ loads: { status: 'ready', data, problem: null, rig: inputs.rig } });
      }
    } catch (error) {
      if (!wasAborted(error) && turn.isCurrent()) {
        const problem = error instanceof Problem ? error : new Problem({ title: String(error) });
        store.set({ loads: { ...store.get().loads, status: 'failed', problem } });
      }
    }
  }

  /** Asks for more than the files say; a key set to null is asked for no longer. */
  function askLoads(patch) {
    const asked = { ...store.get().loadsAsked, ...patch };
    store.set({ loadsAsked: Object.fromEntries(Object.entries(asked).filter(([, value]) => value !== null)) });
    return drawLoads();
  }

  /** Forgets what was asked of other inputs; while a piece is moved they are the same but for its place. */
  function freshLoads() {
    if (store.get().whatIf === null) {
      store.set({ loads: NO_LOADS, loadsAsked: {} });
    }
    return drawLoads();
  }

  return { drawLoads, askLoads, freshLoads };
}
