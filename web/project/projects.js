/** What a user can do about projects: begin, open, look back; and the saving that nobody has to think of. No DOM. */
import { asProblem, Problem, wasAborted } from '../exchange/api.js';
import { decode, encode } from '../page/address.js';
import { readFile } from '../exchange/files.js';
import { stanceIn } from '../rig/leftoff.js';
import { hasLimits, limitsOf, NO_LIMITS } from '../limits/limits.js';
import { keptFile } from '../rig/moving.js';
import { NOTHING_SAVED } from '../page/state.js';

/** How long after a change it is saved, and how long after a failure it is tried again, milliseconds. */
const SAVED_AFTER = 300;
const AGAIN_AFTER = 3000;

/** Called as a function of their own, as the browser wants them. */
const BROWSER = { set: (call, after) => setTimeout(call, after), clear: timer => clearTimeout(timer) };

/**
 * @param checking the actions that open files and check them
 * @param timers {set, clear} of the browser, or stand-ins in tests
 */
export function createProjectActions(store, api, checking, timers = BROWSER) {
  /** Files as the server has them: text → hash. */
  const known = new Map();
  const baseMapTexts = new WeakMap();
  let savedKey = null;
  let timer = null;
  let saving = null;
  /** The route of a project whose check has not answered yet. */
  let opening = null;

  const project = () => store.get().project;
  const patch = part => store.set({ project: { ...project(), ...part } });

  async function loadProjects() {
    try {
      const [{ projects }, { removed }] = await Promise.all([api.projects(), api.removedProjects()]);
      store.set({ projects, removed });
    } catch (error) {
      if (!wasAborted(error)) {
        store.set({ projects: [], removed: [], problem: asProblem(error) });
      }
    }
  }

  /** The files in force, each with its text. */
  function files() {
    const { inputs, baseMap } = store.get();
    // What is only tried is not saved.
    const rig = keptFile(inputs.rig);
    const all = [
      { kind: 'route', name: inputs.route.name, text: inputs.route.text },
      { kind: 'rig', name: rig.name, text: rig.text },
    ];
    if (hasLimits(inputs)) {
      all.push({ kind: 'limits', name: inputs.limits.name, text: inputs.limits.text });
    }
    if (baseMap) {
      if (!baseMapTexts.has(baseMap)) {
        baseMapTexts.set(baseMap, JSON.stringify(baseMap));
      }
      all.push({ kind: 'basemap', name: 'base map', text: baseMapTexts.get(baseMap) });
    }
    return all;
  }

  /** All that makes a revision when it changes; where somebody looks is saved along with it, and makes none. */
  function key(name = project()?.name) {
    const { inputs, planAsked } = store.get();
    const { stance, margins } = inputs;
    return JSON.stringify([name, files().map(({ kind, text }) => [kind, text]), stance, margins, planAsked]);
  }

  /** The request: files that the server has are named by their hash alone. */
  function body(name, reason) {
    const view = encode({ ...store.get(), project: null });
    const { author } = store.get();
    const head = { name, reason, ...(author && { author }), ...(view && { view }) };
    const parts = files().map(({ kind, name: file, text }) => {
      const said = JSON.stringify({ kind, name: file, ...(known.has(text) && { sha256: known.get(text) }) });
      return known.has(text) ? said : `${said.slice(0, -1)},"document":${text}}`;
    });
    return `${JSON.stringify(head).slice(0, -1)},"files":[${parts.join(',')}]}`;
  }

  /** Takes up what the server answered to having saved. */
  function kept(answer, sent, texts) {
    answer.files.forEach(({ sha256 }, index) => known.set(texts[index], sha256));
    savedKey = sent;
    store.set({
      project: {
        id: answer.id, name: answer.name, revision: answer.revision, latest: answer.revision, saved: answer.saved,
        status: 'saved', problem: null, revisions: null, papers: null,
      },
    });
  }

  async function begin(name) {
    const sent = key(name);
    const texts = files().map(({ text }) => text);
    try {
      kept(await api.beginProject(body(name, 'begun')), sent, texts);
      await loadProjects();
    } catch (error) {
      store.set({ problem: asProblem(error) });
    }
  }

  /** Saves what is there now on the revision that is known here. */
  async function save(reason) {
    const { id, name, revision } = project();
    const sent = key();
    const texts = files().map(({ text }) => text);
    patch({ status: 'saving' });
    try {
      const answer = await api.saveProject(id, revision, body(name, reason));
      if (project()?.id === id) {
        kept(answer, sent, texts);
      }
    } catch (error) {
      if (project()?.id === id) {
        failed(asProblem(error));
      }
    }
  }

  function failed(problem) {
    const offline = problem.status === 0 || problem.status === 503;
    patch({ status: problem.status === 412 ? 'saved since' : offline ? 'offline' : 'failed', problem });
    if (problem.status !== 412) {
      later(AGAIN_AFTER);
    }
  }

  function later(milliseconds) {
    timers.clear(timer);
    timer = timers.set(due, milliseconds);
  }

  /** One save at a time; what changed meanwhile is saved after it. */
  async function due() {
    const { inputs } = store.get();
    if (!isOwn() || inputs === null || key() === savedKey) {
      return;
    }
    if (saving === null) {
      saving = save(changed()).finally(() => { saving = null; });
    }
    await saving;
    if (isOwn() && project().status === 'saved' && key() !== savedKey) {
      later(SAVED_AFTER);
    }
  }

  /** Whether what is on the page is to be saved: not while somebody looks at an earlier revision. */
  const isOwn = () => project() !== null && project().revision === project().latest
    && project().status !== 'saved since' && project().status !== 'opening';

  /** What changed since it was saved, in words. */
  function changed() {
    const { inputs, revisions } = store.get();
    const [name, parts, stance, margins] = JSON.parse(savedKey);
    const was = Object.fromEntries(parts);
    const made = kind => {
      const last = revisions.at(-1);
      return last?.kind === kind && last.made.text === (keptFile(inputs[kind]) ?? NO_LIMITS).text ? last.what : null;
    };
    if (inputs.route.text !== was.route) {
      return made('route') ?? `route ${inputs.route.name}`;
    }
    if (keptFile(inputs.rig).text !== was.rig) {
      return made('rig') ?? `rig ${inputs.rig.name}`;
    }
    if (limitsOf(inputs).text !== (was.limits ?? NO_LIMITS.text)) {
      return made('limits') ?? `limits ${limitsOf(inputs).name}`;
    }
    if (name !== project().name) {
      return 'named';
    }
    return inputs.stance !== stance ? `stance ${inputs.stance ?? 'of the rig'}`
      : JSON.stringify(inputs.margins) !== JSON.stringify(margins) ? 'margins' : 'what is asked of the plan';
  }

  /**
   * Opens a project. @param number of a revision to look at, or null for the latest
   * @param wanted a decoded address that says more than the project, or null
   */
  async function open(id, number = null, wanted = null) {
    timers.clear(timer);
    opening = null;
    store.set({ busy: true, problem: null });
    try {
      const latest = await api.project(id);
      const asked = number === null || number === latest.revision ? latest : await api.projectRevision(id, number);
      const read = await Promise.all(asked.files.map(async ({ kind, name, sha256 }) => {
        const text = await api.keptFile(sha256);
        known.set(text, sha256);
        return [kind, readFile(text, name, null)];
      }));
      const { route, rig, limits = NO_LIMITS, basemap } = Object.fromEntries(read);
      if (!route || !rig) {
        throw new Problem({ title: `${asked.name} has no route or no rig`, remedy: 'Look at an earlier revision.' });
      }
      const view = wanted ?? decode(asked.view);
      opening = { ...route, baseMap: basemap?.json ?? null };
      if (basemap) {
        baseMapTexts.set(basemap.json, basemap.text);
      }
      savedKey = null;
      store.set({
        revisions: [], undone: [], saved: NOTHING_SAVED,
        project: {
          id, name: asked.name, revision: asked.revision, latest: latest.revision, saved: asked.saved,
          status: 'opening', problem: null, revisions: null, papers: null,
        },
      });
      loadSamples();
      await checking.check({
        route: opening, rig, limits, stance: stanceIn(rig, view.stance), margins: view.margins,
      }, view);
    } catch (error) {
      store.set({ busy: false, problem: asProblem(error), project: null });
    }
  }

  function close() {
    timers.clear(timer);
    savedKey = null;
    store.set({ project: null });
    return loadProjects();
  }

  /** What else the page offers to open, when it began with a project. */
  async function loadSamples() {
    try {
      if (store.get().samples === null) {
        store.set({ samples: await api.samples() });
      }
    } catch {
      // The project is there without them.
    }
  }

  store.watch(['inputs'], ({ inputs }) => {
    if (opening === null || inputs === null) {
      return;
    }
    const isThere = inputs.route === opening;
    opening = null;
    if (!isThere) {
      store.set({ project: null });
      return;
    }
    store.set({ baseMap: inputs.route.baseMap });
    savedKey = key();
    patch({ status: 'saved' });
  });

  // Whatever changes is looked at a moment later, when all that belongs to it has changed.
  store.watch(['inputs', 'planAsked', 'baseMap'], () => {
    if (isOwn() && savedKey !== null) {
      later(SAVED_AFTER);
    }
  });

  return {
    loadProjects,
    loadSamples,
    beginProject: begin,
    openProject: open,
    closeProject: close,
    /** The open project under another name; a blank one is none. */
    renameProject: name => {
      if (name.trim() !== '' && isOwn()) {
        patch({ name: name.trim() });
        return due();
      }
      return undefined;
    },
    /** @param revision that was looked at: nobody removes what somebody has saved since */
    removeProject: async ({ id, revision, name }) => {
      try {
        await api.removeProject(id, revision, store.get().author);
        store.set({ notice: `${name} is removed. It can be brought back under Projects at any time.` });
        await (project()?.id === id ? close() : loadProjects());
      } catch (error) {
        store.set({ problem: asProblem(error) });
        await loadProjects();
      }
    },
    bringBackProject: async ({ id, name }) => {
      try {
        await api.bringBackProject(id, store.get().author);
        store.set({ notice: `${name} is back.` });
      } catch (error) {
        store.set({ problem: asProblem(error) });
      }
      await loadProjects();
    },
    setAuthor: author => store.set({ author }),
    listRevisions: async () => {
      const { id } = project();
      try {
        const { revisions } = await api.projectRevisions(id);
        if (project()?.id === id) {
          patch({ revisions: revisions.reverse() });
        }
      } catch (error) {
        store.set({ problem: asProblem(error) });
      }
    },
    listPapers: async () => {
      const { id } = project();
      try {
        const { papers } = await api.projectPapers(id);
        if (project()?.id === id) {
          patch({ papers: papers.reverse() });
        }
      } catch (error) {
        store.set({ problem: asProblem(error) });
      }
    },
    /** The revision that is looked at becomes the latest again; those between stay. */
    restoreRevision: async () => {
      const { revision, latest } = project();
      patch({ revision: latest });
      await save(`restored revision ${revision}`);
    },
    /** After somebody else has saved: this is saved on top of it, and theirs stays as a revision. */
    saveOnTop: async () => {
      const { id } = project();
      try {
        const { revision } = await api.project(id);
        patch({ revision, latest: revision });
        await save('saved on top of it');
      } catch (error) {
        failed(asProblem(error));
      }
    },
    saveNow: due,
    projectFiles: files,
    projectBody: body,
    /**
     * What is on the page goes on from another revision.
     *
     * @param on that revision; kept a version that is saved on it first, as a request, or null
     */
    adopt: async ({ id, name, on, kept: before, reason }) => {
      patch({ name, revision: on, latest: on, status: 'saving', problem: null, compared: false });
      try {
        const number = before === null ? on : (await api.saveProject(id, on, before)).revision;
        patch({ revision: number, latest: number });
        await save(reason);
      } catch (error) {
        failed(asProblem(error));
      }
    },
  };
}
