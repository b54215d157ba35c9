/** What a user can do when somebody else has saved since: see both versions, choose, put them together. No DOM. */
import { encode } from '../page/address.js';
import { asProblem, wasAborted } from '../exchange/api.js';
import { readFile } from '../exchange/files.js';
import { limitsOf, NO_LIMITS } from '../limits/limits.js';
import { keptFile } from '../rig/moving.js';
import { compareVersions, openOf } from './versions.js';

/**
 * @param projects {projectFiles, projectBody, adopt, saveNamed} of the projects' actions
 * @param check (inputs, wanted) puts files into force
 */
export function createMerging(store, api, projects, check) {
  const project = () => store.get().project;

  /** A revision as the server has it, with the texts of its files. */
  async function versionOf({ name, view, files }) {
    const texts = await Promise.all(files.map(async ({ kind, sha256 }) => [kind, await api.keptFile(sha256)]));
    return { name, view, files: Object.fromEntries(texts) };
  }

  const mine = () => ({
    name: project().name, view: encode({ ...store.get(), project: null }),
    files: Object.fromEntries(projects.projectFiles().map(({ kind, text }) => [kind, text])),
  });

  /** Both versions side by side; those who cannot have them still have the other ways out. */
  async function compare() {
    const { id, revision } = project();
    store.set({ merge: null });
    try {
      const [latest, base] = await Promise.all([api.project(id), api.projectRevision(id, revision)]);
      const [before, theirs] = [await versionOf(base), await versionOf(latest)];
      const versions = [before, mine(), theirs];
      const made = key();
      if (project()?.id !== id || project().status !== 'saved since') {
        return;
      }
      const { differences, put } = compareVersions(versions, store.get().units);
      store.set({
        merge: {
          on: latest.revision, author: latest.author, differences, put, choices: {}, map: versions[1].files.basemap,
          key: made,
        },
      });
    } catch (error) {
      if (!wasAborted(error) && project()?.id === id) {
        store.set({ problem: asProblem(error) });
      }
    }
  }

  /** All that is compared: who goes on working has it compared anew. */
  function key() {
    const { inputs: { stance, margins }, planAsked } = store.get();
    return JSON.stringify([project().name, projects.projectFiles(), stance, margins, planAsked]);
  }

  /** The file in force where the text is its, else one of its own. */
  function fileOf(kind, text, baseMap) {
    const now = kind === 'limits' ? limitsOf(store.get().inputs) : keptFile(store.get().inputs[kind]);
    if (now.text === text) {
      return now;
    }
    return text === NO_LIMITS.text ? NO_LIMITS
      : { ...readFile(text, now.json === null ? 'limits' : now.name, null), ...(kind === 'route' && { baseMap }) };
  }

  async function putTogether() {
    const { merge, inputs, revisions, configuration, hazard, picks, stop, baseMap } = store.get();
    const before = { route: inputs.route, rig: keptFile(inputs.rig), limits: limitsOf(inputs) };
    if (merge === null || openOf(merge.differences, merge.choices).length > 0) {
      return;
    }
    if (key() !== merge.key) {
      await compare();
      return;
    }
    const { id } = project();
    const { route, rig, limits = NO_LIMITS.text, basemap, name, settings } = merge.put(merge.choices);
    // What of mine is not taken stays as a revision of its own.
    const left = merge.differences.some(({ id: one, by }) => by !== 'theirs' && (merge.choices[one] ?? by) !== 'mine');
    const kept = left ? projects.projectBody(project().name, `as it was before revision ${merge.on} came to it`) : null;
    const map = basemap === merge.map ? baseMap : basemap ? JSON.parse(basemap) : null;
    const files = {
      route: fileOf('route', route, map), rig: fileOf('rig', rig, map), limits: fileOf('limits', limits, map),
    };
    await check({ ...files, stance: settings.stance, margins: settings.margins },
      { configuration, hazard, plan: settings.plan, picks, stop });
    if (store.get().inputs.route !== files.route || store.get().inputs.rig !== files.rig || project()?.id !== id) {
      return;
    }
    const steps = ['route', 'rig', 'limits'].filter(kind => before[kind].text !== files[kind].text).map(kind => ({
      kind, what: `putting together with revision ${merge.on}`, before: { ...before[kind], baseMap }, made: files[kind],
      fresh: kind === 'rig',
    }));
    store.set({ revisions: [...revisions, ...steps], undone: [], merge: null, baseMap: map });
    await projects.adopt({ id, name, on: merge.on, kept, reason: `put together with revision ${merge.on}` });
  }

  store.watch(['project'], ({ project: now, merge }) => {
    if (now?.status === 'saved since' && !now.compared) {
      store.set({ project: { ...now, compared: true } });
      compare();
    } else if (merge !== null && now?.status !== 'saved since') {
      store.set({ merge: null });
    }
  });

  return {
    compareAgain: compare,
    putTogether,
    /** @param side 'mine' or 'theirs' */
    chooseDifference: (id, side) => {
      const { merge } = store.get();
      store.set({ merge: { ...merge, choices: { ...merge.choices, [id]: side } } });
    },
    chooseAll: side => {
      const { merge } = store.get();
      store.set({
        merge: { ...merge, choices: Object.fromEntries(merge.differences.map(({ id }) => [id, side])) },
      });
    },
  };
}
