/** What was made of route, rig and limits here, as one row of changes: to be taken back and made again. No DOM. */

import { hasLimits, limitsOf } from '../limits/limits.js';
import { keptFile } from '../rig/moving.js';

/** @param open (kind, file, wanted) → puts a route, rig or limits into force, as `openRead` of other actions */
export function createUndoing(store, open) {
  /** What is on its way into force: {kind, file, arrived}. Only the last one asked for can arrive. */
  let coming = null;

  /**
   * Whether a file came into force in the place of the one before.
   *
   * @param before the file that undoing brings back, or null
   * @param wanted what to show of it
   * @param fresh whether its configurations are others, so that none that was asked for is asked for again
   */
  function revise({ kind, what, before, made, wanted = {}, fresh = false }) {
    return comesIntoForce(kind, made, wanted, () => store.set({
      revisions: [...store.get().revisions, { kind, what, before, made, fresh }], undone: [],
    }));
  }

  /** @param arrived called at once when it is in force, before anything else can be */
  async function comesIntoForce(kind, file, wanted, arrived) {
    coming = { kind, file, arrived };
    await open(kind, file, wanted);
    return store.get().inputs?.[kind] === file;
  }

  /**
   * What is shown and asked now, for another text of the same.
   *
   * @param gone the hazard, or list of hazards, that is no longer judged as before, or null
   */
  function shown(gone = null) {
    const { configuration, hazard, planAsked, picks, stop } = store.get();
    const isGone = id => [gone].flat().includes(id);
    const plan = Object.fromEntries(Object.entries(planAsked).map(([key, value]) => [key,
      ['acceptTight', 'setAside'].includes(key) ? value.filter(one => !isGone(one))
        : key === 'settled' ? value.filter(one => !isGone(one.hazard)) : value]));
    return { configuration, hazard: isGone(hazard) ? null : hazard, plan, picks, stop, sameRoute: true };
  }

  /** The same for another text of the rig, which may have other configurations. */
  function shownOfRig(fresh) {
    const { plan, picks, stop } = shown();
    return fresh ? { plan: { ...plan, fix: null }, picks: [], stop } : { plan, picks, stop };
  }

  /** What is shown of a file that comes back, where it is another text of the one in force. */
  function kept({ kind, fresh }, file) {
    return kind === 'rig' ? shownOfRig(fresh)
      : kind === 'limits' || file.name === store.get().inputs?.route?.name ? shown() : {};
  }

  /** The file that was there before comes back; a change that is not in force is given up first. */
  async function undo() {
    const last = store.get().revisions.at(-1);
    if (store.get().rigDraft !== null) {
      store.set({ rigDraft: null, problem: null, candidate: null });
    } else if (last?.before) {
      await comesIntoForce(last.kind, last.before, kept(last, last.before), () => {
        const { revisions, undone } = store.get();
        store.set({ revisions: revisions.slice(0, -1), undone: [last, ...undone] });
      });
    }
  }

  /** What was taken back last is made again. */
  async function redo() {
    const [next] = store.get().undone;
    if (next) {
      await comesIntoForce(next.kind, next.made, kept(next, next.made), () => {
        const { revisions, undone } = store.get();
        store.set({ revisions: [...revisions, next], undone: undone.slice(1) });
      });
    }
  }

  store.watch(['inputs'], ({ inputs }) => {
    if (coming !== null && inputs?.[coming.kind] === coming.file) {
      const { arrived } = coming;
      coming = null;
      arrived();
    }
    forgetOthers(inputs);
  });

  /** Another file is opened: what was made of the one before is no longer there to be undone. */
  function forgetOthers(inputs) {
    for (const kind of ['route', 'rig', 'limits']) {
      const { revisions, undone } = store.get();
      const isOf = revision => revision.kind === kind;
      const own = revisions.findLast(isOf)?.made ?? undone.find(isOf)?.before;
      if (own && keptFile(kind === 'limits' ? limitsOf(inputs) : inputs?.[kind])?.text !== own.text) {
        store.set({
          revisions: revisions.filter(one => !isOf(one)), undone: undone.filter(one => !isOf(one)),
          saved: { ...store.get().saved, [kind]: null },
        });
      }
    }
  }

  return {
    revise, shown, shownOfRig,
    actions: {
      undoRevision: undo,
      redoRevision: redo,
      markSaved: (kind, text) => store.set({ saved: { ...store.get().saved, [kind]: text } }),
    },
  };
}

/** Whether what was made of a kind of file on this page is neither saved as a file nor as it was opened. */
export const isUnsavedFile = ({ revisions, saved, inputs }, kind) =>
  revisions.some(revision => revision.kind === kind) && (kind !== 'limits' || hasLimits(inputs))
  && saved[kind] !== keptFile(inputs?.[kind]).text;
