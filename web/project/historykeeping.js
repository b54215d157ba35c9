/**
 * Undo and drafts that outlive the page: kept by the browser with the project they belong to, or where there is none
 * with the files they are of, and taken up again when those are opened. What found no room is said. No DOM.
 */
import { decode } from '../page/address.js';
import { stanceIn } from '../rig/leftoff.js';
import {
  backward, forward, markOf, MOST_CHARACTERS, readHistory, spliceOf, stepsAround, writeHistory,
} from './history.js';
import { readWork, writeWork } from './leftwork.js';
import { limitsOf } from '../limits/limits.js';
import { keptFile } from '../rig/moving.js';
import { newId } from '../exchange/underway.js';

const PREFIX = 'cresthaul.history.';
const LIST = 'cresthaul.histories';
/** How the id of work in no project begins. */
const PAGE = 'page-';
/** Work in no project that is kept: it is nowhere else. */
const MOST_PAGES = 5;
/** Projects whose steps a browser keeps: those worked on last. */
const MOST_PROJECTS = 20;
const WRITTEN_AFTER = 150;
const BROWSER = { set: (call, after) => setTimeout(call, after), clear: timer => clearTimeout(timer) };

const NO_ROOM = 'This browser keeps nothing of it: undo lasts as long as this page is open.';

/**
 * @param storage of the browser, or null where it lets the page have none
 * @param actions {check, surveyDrafts, restoreSurveyDrafts, cornerDrafts, restoreCornerDrafts, resumeDrawing,
 *     movePiece}
 */
export function createHistoryKeeping(store, storage, actions, timers = BROWSER) {
  const {
    check, surveyDrafts, restoreSurveyDrafts, cornerDrafts, restoreCornerDrafts, resumeDrawing, movePiece,
  } = actions;
  /** The project, or the work in none, whose steps are on the page. */
  let taken = null;
  let timer = null;

  const isOwn = project => project !== null && project.status !== 'opening' && project.revision === project.latest;

  /** Under which id what is on the page is kept, or null. */
  const ownId = ({ project, work }) => (project === null ? work : isOwn(project) ? project.id : null);

  function get(key) {
    try {
      return storage.getItem(key);
    } catch {
      return null;
    }
  }

  /** Whether it is kept. */
  function put(key, text) {
    try {
      storage.setItem(key, text);
      return true;
    } catch {
      return false;
    }
  }

  function list() {
    try {
      const ids = JSON.parse(get(LIST) ?? '[]');
      return Array.isArray(ids) ? ids.filter(id => typeof id === 'string') : [];
    } catch {
      return [];
    }
  }

  function forget(id) {
    try {
      storage.removeItem(PREFIX + id);
    } catch {
      // Nothing can be kept, so nothing is.
    }
  }

  /** Those of the projects that were not worked on for longest make room. */
  function makeRoom(id, most) {
    const others = list().filter(other => other !== id);
    const pages = others.filter(other => other.startsWith(PAGE)).slice(0, MOST_PAGES);
    const projects = others.filter(other => !other.startsWith(PAGE)).slice(0, most - 1);
    const left = [id, ...others.filter(other => pages.includes(other) || projects.includes(other))];
    others.filter(other => !left.includes(other)).forEach(forget);
    put(LIST, JSON.stringify(left));
  }

  function drafts() {
    const { rigDraft, whatIf, inputs, lineEdit: { mode, drawn }, hazard } = store.get();
    const rig = keptFile(inputs.rig);
    return {
      line: drawn.length > 0 && mode !== 'off' ? { mode, drawn, hazard } : null,
      corners: cornerDrafts(),
      rig: rigDraft && {
        ...rigDraft, text: undefined, splice: spliceOf(rig.text, rigDraft.text), mark: markOf(rig.text),
      },
      load: whatIf && { shifts: whatIf.shifts, mark: markOf(whatIf.base.text) },
      surveys: surveyDrafts(),
    };
  }

  function write() {
    timers.clear(timer);
    timer = null;
    const id = ownId(store.get());
    if (id === null || taken !== id) {
      return;
    }
    let note = NO_ROOM;
    const tries = [
      [MOST_CHARACTERS, MOST_PROJECTS, true], [MOST_CHARACTERS, 1, true], [MOST_CHARACTERS, 1, false],
      [MOST_CHARACTERS / 8, 1, false],
    ];
    for (const [most, projects, withMap] of tries) {
      makeRoom(id, projects);
      const { text, left } = writeHistory(store.get(), drafts(), most);
      if (put(PREFIX + id, id.startsWith(PAGE) ? writeWork(store.get(), text, withMap) : text)) {
        note = left === 0 ? null : `The oldest ${left} of these changes find no room in this browser: undo reaches `
          + 'them as long as this page is open.';
        break;
      }
    }
    if (store.get().undoNote !== note) {
      store.set({ undoNote: note });
    }
  }

  /** What was kept of the project that was opened, around its files as they are. */
  function take(id) {
    taken = id;
    const found = readHistory(get(PREFIX + id) ?? '');
    if (found === null || store.get().revisions.length > 0) {
      // Begun with what was changed before.
      timer = timers.set(write, WRITTEN_AFTER);
      return;
    }
    const { revisions, undone, ahead, lost } = around(found);
    const notice = ahead > 0
      ? `${ahead === 1 ? 'One change was' : `${ahead} changes were`} not saved before the page was left: Redo makes `
        + `${ahead === 1 ? 'it' : 'them'} again.`
      : lost ? 'The project was changed elsewhere since: what was undone here before cannot be. See its revisions.'
        : null;
    store.set({ revisions, undone, ...(notice && { notice }) });
    takeDrafts(found.drafts, store.get().inputs.rig);
  }

  function around(found) {
    const { inputs, baseMap } = store.get();
    return stepsAround(found, { route: { ...inputs.route, baseMap }, rig: inputs.rig, limits: limitsOf(inputs) });
  }

  function takeDrafts({ rig, load, surveys, corners, line }, file) {
    try {
      if (rig && rig.mark === markOf(file.text)) {
        const { what, fresh, name } = rig;
        const text = forward(file.text, rig.splice);
        if (backward(text, rig.splice) === file.text && JSON.parse(text)) {
          store.set({ rigDraft: { text, what, fresh, name } });
        }
      } else if (load && load.mark === markOf(file.text)) {
        Object.entries(load.shifts).forEach(([key, shift]) => movePiece(...key.split('/').map(Number), shift));
      }
      restoreSurveyDrafts(Array.isArray(surveys) ? surveys : []);
      restoreCornerDrafts(Array.isArray(corners) ? corners : []);
      if (line && (line.mode !== 'shape' || line.hazard === store.get().hazard)) {
        resumeDrawing(line);
      }
    } catch {
      // Written by another version: the files themselves are the server's, and are there.
    }
  }

  /** Whether there is anything that a reload would take away. */
  function isBegun(state) {
    const { revisions, undone, rigDraft, whatIf } = state;
    const { line, corners, surveys } = drafts();
    return revisions.length + undone.length + corners.length + surveys.length > 0
      || rigDraft !== null || whatIf !== null || line !== null;
  }

  /** Work in no project gets an id with the first change, and is no longer this page's when other files are opened. */
  function follow(state) {
    const { project, work, inputs } = state;
    if (project !== null || inputs === null) {
      if (work !== null && isOwn(project)) {
        // Begun with what was changed before, which is in it now.
        if (state.revisions.length > 0) {
          forget(work);
        }
        store.set({ work: null });
      }
      return;
    }
    if (work === null && isBegun(state)) {
      taken = PAGE + newId();
      store.set({ work: taken });
    } else if (work !== null && !isBegun(state)) {
      const left = readWork(get(PREFIX + work) ?? '');
      const same = left?.files.route.text === inputs.route.text && left.files.rig.text === keptFile(inputs.rig).text;
      if (same) {
        forget(work);
      }
      taken = null;
      store.set({ work: null });
    }
  }

  const WATCHED = [
    'project', 'revisions', 'undone', 'rigDraft', 'survey', 'corner', 'lineEdit', 'whatIf', 'hazard', 'planAsked',
  ];
  store.watch(WATCHED, state => {
    follow(state);
    const id = ownId(store.get());
    if (id === null) {
      taken = null;
    } else if (taken !== id) {
      take(id);
    } else {
      timers.clear(timer);
      timer = timers.set(write, WRITTEN_AFTER);
    }
  });

  /** The last work in no project that this browser has: {id, name, what}, or null. */
  function findLeft() {
    for (const id of list().filter(one => one.startsWith(PAGE))) {
      const left = readWork(get(PREFIX + id) ?? '');
      if (left !== null) {
        return { id, name: left.name, what: left.what };
      }
    }
    return null;
  }

  /**
   * Work in no project is on the page again.
   *
   * @param wanted a decoded address, or null for where somebody looked last
   * @returns whether there is such work
   */
  async function takeUp(id, wanted = null) {
    const left = readWork(get(PREFIX + id) ?? '');
    if (left === null) {
      return false;
    }
    const { route, rig, limits } = left.files;
    const view = wanted ?? decode(left.view);
    await check({ route, rig, limits, stance: stanceIn(rig, view.stance), margins: view.margins }, view);
    const found = readHistory(left.history);
    if (store.get().inputs?.route === route && found !== null) {
      taken = id;
      const { revisions, undone } = around(found);
      store.set({ work: id, leftWork: null, revisions, undone });
      takeDrafts(found.drafts, rig);
    }
    return true;
  }

  return {
    /** Before the page goes. */
    writeHistory: () => timer !== null && write(),
    findLeft,
    takeUp,
    offerLeft: () => store.set({ leftWork: findLeft() }),
    forgetLeft: () => {
      forget(store.get().leftWork.id);
      put(LIST, JSON.stringify(list().filter(id => id !== store.get().leftWork.id)));
      store.set({ leftWork: findLeft() });
    },
  };
}
