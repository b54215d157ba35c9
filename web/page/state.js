import { ALL } from '../report/listing.js';

/**
 * The page's state and the one way to change it. No DOM here.
 *
 * inputs     what is in force: {route, rig, limits, stance, margins}; route and rig are {id, name, text, json}, id
 *            null for a file from disk; limits likewise, or left out, or NO_LIMITS; stance null means
 *            "loaded", or the rig's first
 * candidate  inputs that were offered and refused, with the problem; the inputs in force stay untouched
 * progress   how far the check that runs has come: {state, at, cells, places, configurations, found}, or null
 * problem    why the last attempt to open or check failed; notice what a link asked for in vain
 * samples    what the server offers, line the route for the plan, report the check's answer
 * hazard     id of the hazard on show, configuration the key on show; chosen whether a person or a link chose it: until
 *            then the plan's is shown
 * view       {line, leveling, raised}: which passage of it; null line and leveling mean the tightest case's
 * passage    {status: 'none' | 'loading' | 'ready' | 'failed', data, problem}
 * focus      what the map is asked to show: {lonLats: [[lon, lat], ...]}, or null
 * position   index into passage.data.positions: where the truck stands
 * loads      {status, data, problem, rig}: the load sheet of the configuration, as passage, and of which rig it is;
 *            loadsAsked {hazard, piece, regulator, readings}: what is asked of it beyond the files, spelled as in a
 *            request
 * plan       {status: 'none' | 'loading' | 'ready' | 'failed' | 'stopped', data, problem}: the route plan; data is
 *            there only while it answers what is asked
 * planAsked  {times, forbid, fix, avoidRaising, acceptTight, setAside, leastReserve, fewestConditions, settled}:
 *             what is asked of it, spelled as in a request
 * comparison as plan: every configuration kept all the way
 * combinations as plan: a plan for every combination of the stance
 * picks      keys of the configurations whose margins are plotted, three at most
 * stop       id of the stopping place on show, or null
 * listing    {only: 'all' | 'open' | 'blocks', kind, sort: 'chainage' | 'verdict' | 'clearance', descending}: which
 *            hazards table, map and strip map show, and in what order; kind null for every kind
 * importing  {status: 'none' | 'reading' | 'ready' | 'failed' | 'stopped', files, update, crs, progress, data,
 *            problem}:
 *            tracks and maps on their way to a route; files as the browser has them, update whether the route in force
 *            is brought up to date, crs the EPSG code that was given for points, or nothing, data what the server
 *            answered: nothing of it is in force until it is kept
 * revisions  what was made of route, rig and limits on this page, oldest first: {kind, what, before, made, fresh},
 *            files as in inputs; fresh where the rig's configurations became others
 * undone     revisions that were taken back, the last one first to come again
 * undoNote   what of them this browser does not keep, in a sentence, or null
 * work       id under which this browser keeps what is changed in no project, or null; leftWork what it has of
 *            before, {id, name, what}, or null
 * survey     the survey of the hazard on show as a table, or null where it has none: {id, index, kind, name, base,
 *            draft, read, status: 'same' | 'changed' | 'sent' | 'unread' | 'refused' | 'unsent', refused: [{at, text}],
 *            said, made}; draft as in survey.js, 'same' when the route says it; made counts up with other rows
 * drafts     {survey, corner}: ids of hazards whose numbers somebody has typed that are not in the route, on show or
 *            not
 * saved      {route, rig, limits}: the text of each as it was saved last as a file, or null
 * rigDraft   a change of the rig that is not in force yet, or was refused: {text, what: [...], fresh, name} or null
 * whatIf     pieces of load that are moved and not kept, or null: {base: the rig as it is kept, shifts: how far back,
 *            by "stance/piece", picometers, file: the rig with them moved}; what the sheet says is of inputs.rig
 * rigRow     id of the row of the taped rig that is looked at, or null
 * aerial     a picture from above placed on the map, or null: {canvas, pairs: [{pixel, lonLat}], leastM}, leastM the
 *            least that an edge drawn over it may be off
 * corner     the template of the corner on show as a form, or null: {id, index, name, base, drawn, draft, read, status,
 *            refused, made, field}, as survey; drawn 'outlines' or 'more' where a form cannot say it, field the number
 *            that is looked at
 * lineEdit   what is done to the line: {mode: 'off' | 'points' | 'on' | 'new' | 'shape', at, moved, drawn, wrong,
 *            refused, told, said, made, working, vertex, asked}: the point on show by its number from 0, where it is
 *            on its way to, what is drawn, {at, text} of a field that cannot be read, sentences; made counts up with
 *            another line or point;
 *            vertex the point of a corner's outlines on show, {at, to, of: the corner}, to where it is on its way, or
 *            null;
 *            asked is what cutting, turning or joining comes to before it is done: {kind, what, text, goes, told, gone}
 * picking    whether the next press on the map is a place; picked its chainage, meters, or null
 * projects   the projects that the server keeps, saved last first, or null before it was asked
 * removed    the projects that are removed and can be brought back, {project, removed, author}, or null likewise
 * project    the one that is open, or null: {id, name, revision, latest, saved, status, problem, revisions, papers};
 *            status
 *            'opening' | 'saved' | 'saving' | 'offline' | 'failed' | 'saved since'; revision is on the page, which is
 *            only looked at when it is not the latest; revisions and issued papers once they were asked for
 * merge      both versions of the project after somebody else has saved since, or null: {on, author, differences, put,
 *            choices, key, map}; differences and put as in merge/versions.js, on the number of their revision
 * verifying  {status: 'none' | 'reading' | 'ready' | 'failed', name, data, problem}: a paper made again from its record
 * author     who says to be working here
 * baseMap    what is drawn beneath the route: the GeoJSON of a base map, or null
 * units      'us' | 'metric'; theme 'system' | 'light' | 'dark'
 */
export function initialState() {
  return {
    version: null,
    settings: null,
    samples: null,
    inputs: null,
    candidate: null,
    busy: false,
    progress: null,
    problem: null,
    notice: null,
    line: null,
    report: null,
    hazard: null,
    configuration: null,
    chosen: false,
    view: { line: null, leveling: null, raised: false },
    passage: { status: 'none', data: null, problem: null },
    position: 0,
    focus: null,
    loads: { status: 'none', data: null, problem: null },
    loadsAsked: {},
    plan: { status: 'none', data: null, problem: null },
    planProgress: null,
    planAsked: PLAIN_PLAN,
    comparison: { status: 'none', data: null, problem: null },
    combinations: { status: 'none', data: null, problem: null },
    picks: [],
    stop: null,
    listing: ALL,
    importing: NO_IMPORT,
    revisions: [],
    undone: [],
    undoNote: null,
    work: null,
    leftWork: null,
    saved: NOTHING_SAVED,
    rigDraft: null,
    whatIf: null,
    rigRow: null,
    aerial: null,
    corner: null,
    lineEdit: NO_EDIT,
    picking: false,
    picked: null,
    survey: null,
    drafts: { survey: [], corner: [] },
    projects: null,
    removed: null,
    project: null,
    merge: null,
    verifying: { status: 'none', name: '', data: null, problem: null },
    author: '',
    baseMap: null,
    exaggeration: 1,
    units: 'us',
    theme: 'system',
  };
}

/** Nothing is done to the line of the route. */
export const NO_EDIT = Object.freeze({
  mode: 'off', at: 0, moved: null, drawn: [], wrong: null, refused: [], told: [], said: '', made: 0, working: false,
  vertex: null, asked: null,
});

/** No file saved from this page. */
export const NOTHING_SAVED = Object.freeze({ route: null, rig: null, limits: null });

/** No files on their way to a route. */
export const NO_IMPORT = Object.freeze({
  status: 'none', files: [], update: false, crs: '', rasterCrs: '', rasterUnit: '', order: 'time', longestGap: '',
  progress: null, data: null, problem: null,
});

/** Nothing asked of a plan beyond the files. */
export const PLAIN_PLAN = Object.freeze({
  times: {}, forbid: [], fix: null, avoidRaising: false, acceptTight: [], setAside: [],
  leastReserve: null, fewestConditions: false, settled: [],
});

/** A store: get the state, set some of its keys, watch some of its keys. */
export function createStore(initial = initialState()) {
  let state = Object.freeze({ ...initial });
  const watchers = new Set();

  return {
    get: () => state,

    /** Replaces the given keys; watchers of keys whose value changed are called once, in order of watching. */
    set(patch) {
      const changed = Object.keys(patch).filter(key => {
        if (!(key in state)) {
          throw new Error(`the state has no ${key}`);
        }
        return !Object.is(state[key], patch[key]);
      });
      if (changed.length === 0) {
        return;
      }
      state = Object.freeze({ ...state, ...patch });
      for (const watcher of [...watchers]) {
        if (watchers.has(watcher) && watcher.keys.some(key => changed.includes(key))) {
          watcher.call(state);
        }
      }
    },

    /** Calls `call(state)` now and whenever one of `keys` changes; returns the function that stops it. */
    watch(keys, call) {
      const watcher = { keys, call };
      watchers.add(watcher);
      call(state);
      return () => watchers.delete(watcher);
    },
  };
}

/**
 * Keeps only the last of several overlapping requests. Each `begin` aborts the one before and makes its
 * `isCurrent()` false for good, so that a late answer can never overwrite a newer one.
 */
export function lastOnly() {
  let controller = null;
  return {
    begin() {
      controller?.abort();
      const own = new AbortController();
      controller = own;
      return { signal: own.signal, isCurrent: () => controller === own };
    },
    cancel() {
      controller?.abort();
      controller = null;
    },
  };
}
