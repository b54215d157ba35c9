/** What a user can do about tracks, maps and heights from elsewhere, and about the route made of them. No DOM. */
import { lastOnly, NO_IMPORT } from '../page/state.js';
import { asProblem, Problem, wasAborted } from '../exchange/api.js';
import { withDecision } from './candidates.js';
import { isTrack, readFile } from '../exchange/files.js';
import { hasLimits } from '../limits/limits.js';
import { followed, newId } from '../exchange/underway.js';

/** Files together larger than this are not sent, bytes: what the server takes. */
const MOST_BYTES = 1024 ** 3;
/** How often is asked how far it has come, milliseconds. */
const ASKED_EACH = 300;
/** So much of a file tells whether it is one of this program's own. */
const HEAD = 64 * 1024;

/**
 * @param open (kind, file, wanted) → puts a route or rig that was read into force, as `openRead` of other actions
 * @param undoing where a change of the route is kept, to be taken back
 * @param openLimits opens a limits file
 */
export function createImportActions(store, api, open, undoing, openLimits) {
  const runs = lastOnly();
  let running = null;

  const patch = part => store.set({ importing: { ...store.get().importing, ...part } });

  /** Sends the files that are there; what comes is a preview, and nothing is kept. */
  async function read() {
    stopRun();
    const { update } = store.get().importing;
    const turn = runs.begin();
    const id = newId();
    running = id;
    patch({ status: 'reading', progress: null, data: null, problem: null });
    try {
      const told = follow(id, turn);
      const { importing, inputs } = store.get();
      const data = await api.importRoute(form(importing, update ? inputs?.route : null), id, turn.signal);
      running = null;
      if (turn.isCurrent()) {
        patch({ status: 'ready', data });
      }
      await told;
    } catch (error) {
      if (!wasAborted(error) && turn.isCurrent()) {
        running = null;
        patch({ status: 'failed', problem: asProblem(error) });
      }
    }
  }

  /** Asks how far it has come for as long as it runs. */
  const follow = (id, turn) => followed(
    () => api.importProgress(id, turn.signal),
    () => turn.isCurrent() && running === id,
    progress => patch({ progress }),
    ASKED_EACH,
  );

  /** Ends what runs, here and on the server. */
  function stopRun() {
    if (running !== null) {
      const id = running;
      running = null;
      runs.cancel();
      api.stopImport(id).catch(() => { /* The connection that was closed tells the server as well. */ });
    }
  }

  function add(more) {
    const before = store.get().importing;
    const files = [...before.files, ...more];
    if (files.reduce((sum, file) => sum + file.size, 0) > MOST_BYTES) {
      patch({
        status: before.status === 'none' ? 'failed' : before.status,
        problem: new Problem({
          title: 'These files are larger than 1 GB together',
          remedy: 'Cut the map extract to the surroundings of the route.',
        }),
      });
      return undefined;
    }
    patch({ files });
    return read();
  }

  /** Files of any kind, as they were dropped: routes and rigs of this program are opened, all else is imported. */
  async function take(files) {
    if (files.length === 0) {
      return undefined;
    }
    const kinds = await Promise.all(files.map(ownKind));
    const rig = files[kinds.indexOf('rig')];
    const map = files[kinds.indexOf('basemap')];
    const others = files.filter((file, index) => !['rig', 'limits', 'basemap'].includes(kinds[index]));
    const own = others.length === 1 && kinds[files.indexOf(others[0])] === 'route';
    const limits = files[kinds.indexOf('limits')];
    const imported = others.length > 0 && !own ? add(others) : undefined;
    if (own) {
      await openOwn('route', others[0]);
    }
    if (rig) {
      await openOwn('rig', rig);
    }
    if (limits) {
      await openLimits(limits);
    }
    // Last: it is drawn beneath the route that is then on show.
    if (map) {
      await openOwn('route', map);
    }
    return imported;
  }

  async function openOwn(kind, file) {
    try {
      return await open(kind, readFile(await file.text(), file.name, null));
    } catch (error) {
      store.set({ problem: asProblem(error) });
      return undefined;
    }
  }

  /** Puts the route that was made in force; the one before is kept, to come back. */
  async function keep() {
    const { importing: { data, update }, inputs, baseMap } = store.get();
    const cut = data.baseMap ? JSON.parse(data.baseMap) : null;
    const made = {
      ...readFile(data.route, `${data.preview.name}.geojson`, null),
      // The same route without a new map is still drawn on the one there was.
      baseMap: cut ?? (update ? baseMap : null),
      ...(hasLimits(inputs) && update && { limits: inputs.limits }),
    };
    // They are not in force for another route, and come back with the one they were opened for.
    const before = hasLimits(inputs) ? { ...inputs.route, limits: inputs.limits } : inputs?.route ?? null;
    if (await revise(`importing ${data.preview.name}`, before, made)) {
      store.set({ importing: NO_IMPORT });
    }
  }

  /** Whether the route came into force. @param wanted what to show of it */
  function revise(what, route, made, wanted = {}) {
    const { baseMap } = store.get();
    const before = route === null || baseMap === null ? route : { ...route, baseMap };
    return undoing.revise({ kind: 'route', what, before, made, wanted });
  }

  /** A person dismisses a candidate by {by, why}, or opens it again by null: the same route but for that. */
  function decide({ index, id, name }, decision) {
    const { text } = store.get().inputs.route;
    return change(`${decision === null ? 'opening' : 'dismissing'} ${name}${decision === null ? ' again' : ''}`,
      withDecision(text, index, decision), decision === null ? null : id);
  }

  /** The same route with another text. @param gone hazard that is no longer judged, or null */
  function change(what, text, gone = null) {
    const { inputs: { route }, baseMap } = store.get();
    return revise(what, route, { ...readFile(text, route.name, null), baseMap }, undoing.shown(gone));
  }

  return {
    takeFiles: take,
    importFiles: add,
    /** A file chosen as a route: a track among them is imported. */
    openRouteFile: async (file, otherwise) => {
      const start = new Uint8Array(await file.slice(0, 512).arrayBuffer());
      return isTrack(start, file.name) ? add([file]) : otherwise();
    },
    removeImportFile: index => {
      const files = store.get().importing.files.filter((file, i) => i !== index);
      patch({ files });
      return files.length > 0 ? read() : discard();
    },
    /** A file comes earlier (by -1) or later (by 1) along the route than the one beside it. */
    moveImportFile: (index, by) => {
      const files = [...store.get().importing.files];
      files.splice(index + by, 0, ...files.splice(index, 1));
      patch({ files, order: 'given' });
      return read();
    },
    setImportUpdate: update => {
      patch({ update });
      return store.get().importing.files.length > 0 ? read() : undefined;
    },
    /**
     * What files do not say themselves: {crs} of CSV and GeoJSON, {rasterCrs} and {rasterUnit} of rasters; {order} of
     * the tracks, 'time' or 'given', and the {longestGap} between them that is taken as driven.
     */
    sayOfImport: said => {
      patch(said);
      return store.get().importing.files.length > 0 ? read() : undefined;
    },
    importAgain: read,
    stopImport: () => {
      if (running !== null) {
        stopRun();
        patch({ status: 'stopped', progress: null });
      }
    },
    discardImport: discard,
    keepImport: keep,
    decideCandidate: decide,
    changeRoute: change,
  };

  function discard() {
    stopRun();
    store.set({ importing: NO_IMPORT });
  }
}

/** The request: every file, what is said of them, and the route that is brought up to date. */
function form({ files, crs, rasterCrs, rasterUnit, order, longestGap }, route) {
  const all = new FormData();
  files.forEach(file => all.append('file', file, file.name));
  if (route) {
    all.append('update', new Blob([route.text]), route.name);
  }
  Object.entries({ crs, rasterCrs }).filter(([, code]) => code)
    .forEach(([key, code]) => all.append(key, /^\d+$/.test(code) ? `EPSG:${code}` : code));
  if (rasterUnit) {
    all.append('rasterUnit', rasterUnit);
  }
  all.append('order', order);
  if (longestGap) {
    all.append('longestGap', longestGap);
  }
  return all;
}

/** 'route', 'rig', 'limits' or 'basemap' for a file of this program's own formats, else null. */
async function ownKind(file) {
  const head = await file.slice(0, HEAD).text();
  return head.trimStart().startsWith('{')
    ? head.match(/"cresthaul"\s*:\s*"(route|rig|limits|basemap)\//)?.[1] ?? null : null;
}

/** Long enough that nobody else has it. */
