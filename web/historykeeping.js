/**
 * Undo and drafts that outlive the page: kept by the browser with the project they belong to, and taken up again when
 * it is opened. What found no room is said. No DOM.
 */
import {
  backward, forward, markOf, MOST_CHARACTERS, readHistory, spliceOf, stepsAround, writeHistory,
} from './history.js';
import { limitsOf } from './limits.js';
import { keptFile } from './moving.js';

const PREFIX = 'cresthaul.history.';
const LIST = 'cresthaul.histories';
/** Projects whose steps a browser keeps: those worked on last. */
const MOST_PROJECTS = 20;
const WRITTEN_AFTER = 150;
const BROWSER = { set: (call, after) => setTimeout(call, after), clear: timer => clearTimeout(timer) };

const NO_ROOM = 'This browser keeps nothing of it: undo lasts as long as this page is open.';

/**
 * @param storage of the browser, or null where it lets the page have none
 * @param actions {surveyDrafts, restoreSurveyDrafts, movePiece}
 */
export function createHistoryKeeping(store, storage, actions, timers = BROWSER) {
  const { surveyDrafts, restoreSurveyDrafts, movePiece } = actions;
  /** The project whose steps are on the page. */
  let taken = null;
  let timer = null;

  const isOwn = project => project !== null && project.status !== 'opening' && project.revision === project.latest;

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

  /** Those of the projects that were not worked on for longest make room. */
  function makeRoom(id, most) {
    const ids = [id, ...list().filter(other => other !== id)];
    ids.slice(most).forEach(other => {
      try {
        storage.removeItem(PREFIX + other);
      } catch {
        // Nothing can be kept, so nothing is.
      }
    });
    put(LIST, JSON.stringify(ids.slice(0, most)));
  }

  function drafts() {
    const { rigDraft, whatIf, inputs } = store.get();
    const rig = keptFile(inputs.rig);
    return {
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
    const { project } = store.get();
    if (!isOwn(project) || taken !== project.id) {
      return;
    }
    let note = NO_ROOM;
    const tries = [[MOST_CHARACTERS, MOST_PROJECTS], [MOST_CHARACTERS, 1], [MOST_CHARACTERS / 8, 1]];
    for (const [most, projects] of tries) {
      makeRoom(project.id, projects);
      const { text, left } = writeHistory(store.get(), drafts(), most);
      if (put(PREFIX + project.id, text)) {
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
    const { inputs, baseMap } = store.get();
    const { revisions, undone, ahead, lost } = stepsAround(found,
      { route: { ...inputs.route, baseMap }, rig: inputs.rig, limits: limitsOf(inputs) });
    const notice = ahead > 0
      ? `${ahead === 1 ? 'One change was' : `${ahead} changes were`} not saved before the page was left: Redo makes `
        + `${ahead === 1 ? 'it' : 'them'} again.`
      : lost ? 'The project was changed elsewhere since: what was undone here before cannot be. See its revisions.'
        : null;
    store.set({ revisions, undone, ...(notice && { notice }) });
    takeDrafts(found.drafts, inputs.rig);
  }

  function takeDrafts({ rig, load, surveys }, file) {
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
    } catch {
      // Written by another version: the files themselves are the server's, and are there.
    }
  }

  store.watch(['project', 'revisions', 'undone', 'rigDraft', 'survey', 'whatIf'], ({ project }) => {
    if (!isOwn(project)) {
      taken = null;
    } else if (taken !== project.id) {
      take(project.id);
    } else {
      timers.clear(timer);
      timer = timers.set(write, WRITTEN_AFTER);
    }
  });

  return {
    /** Before the page goes. */
    writeHistory: () => timer !== null && write(),
  };
}
