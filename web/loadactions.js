/** What a user can do about loads, as functions on the store. */
import { lastOnly } from './state.js';
import { Problem, wasAborted } from './api.js';

const NO_LOADS = { status: 'none', data: null, problem: null };

export function createLoadActions(store, api) {
  const requests = lastOnly();

  /** Fetches the loads of the configuration on show. The drawing before stays until the answer is there. */
  async function drawLoads() {
    const { inputs, report, configuration, loadsAsked } = store.get();
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
        store.set({ loads: { status: 'ready', data, problem: null } });
      }
    } catch (error) {
      if (!wasAborted(error) && turn.isCurrent()) {
        const problem = error instanceof Problem ? error : new Problem({ title: String(error) });
        store.set({ loads: { status: 'failed', data: store.get().loads.data, problem } });
      }
    }
  }

  /** Asks for more than the files say; a key set to null is asked for no longer. */
  function askLoads(patch) {
    const asked = { ...store.get().loadsAsked, ...patch };
    store.set({ loadsAsked: Object.fromEntries(Object.entries(asked).filter(([, value]) => value !== null)) });
    return drawLoads();
  }

  /** Forgets what was asked of other inputs. */
  function freshLoads() {
    store.set({ loads: NO_LOADS, loadsAsked: {} });
    return drawLoads();
  }

  return { drawLoads, askLoads, freshLoads };
}
