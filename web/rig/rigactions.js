/** What a user can do about the rig in force: measure it anew, put units on and off, begin another. No DOM. */
import { readFile } from '../exchange/files.js';
import { asProblem, Problem } from '../exchange/api.js';
import { changesOf, copied, emptied, missingIn } from './changes.js';
import { measuredOf } from './leftoff.js';
import { rowsOf, tapeOf } from './tape.js';
import { refusalOf, withRow } from './tapechange.js';
import { withPiece } from './tickets.js';

/** The rig as it is on the page: the change that is not in force yet, where there is one. {text, json, name} */
export function rigOnPage({ rigDraft, inputs }) {
  const rig = inputs?.rig ?? null;
  return rigDraft === null || rig === null ? rig
    : { id: null, name: rigDraft.name, text: rigDraft.text, json: JSON.parse(rigDraft.text) };
}

/** Index of the measured stance that is on show, whatever of it is left off. */
export const stanceOnPage = ({ inputs }) => measuredOf(inputs?.rig?.json, inputs?.stance);

/** @param undoing where a change is kept, to be taken back */
export function createRigActions(store, api, undoing) {
  /**
   * Puts another text of the rig in force. Until the server has taken it, and when it does not, it is a draft, which
   * the next change builds on: two figures that only make sense together can be given one after the other.
   *
   * @param fresh whether its configurations are others
   * @returns whether it is in force
   */
  async function change(what, text, fresh = false, name = null) {
    const { rigDraft, whatIf, inputs: { rig } } = store.get();
    if (whatIf !== null) {
      store.set({ problem: new Problem({
        title: 'The load is moved as a what-if', remedy: 'Keep it or drop it, then change the rig.',
      }) });
      return false;
    }
    if (text === rig.text) {
      giveUp();
      return true;
    }
    const draft = {
      text, what: [...rigDraft?.what ?? [], what], fresh: fresh || Boolean(rigDraft?.fresh),
      name: name ?? rigDraft?.name ?? rig.name,
    };
    store.set({ rigDraft: draft });
    return undoing.revise({
      kind: 'rig', what: draft.what.join('; '), before: rig, made: readFile(text, draft.name, null),
      wanted: undoing.shownOfRig(draft.fresh), fresh: draft.fresh,
    });
  }

  function giveUp() {
    if (store.get().rigDraft !== null) {
      store.set({ rigDraft: null, problem: null, candidate: null });
    }
  }

  let last = null;
  store.watch(['inputs', 'candidate', 'problem'], ({ inputs, candidate, problem, busy, rigDraft }) => {
    const another = inputs?.rig !== last;
    last = inputs?.rig ?? null;
    // In force, given up in the list of problems, or another rig was opened.
    if (rigDraft !== null && (another || (candidate === null && problem === null && !busy))) {
      store.set({ rigDraft: null });
    }
  });

  return {
    changeRig: change,
    giveUpRig: giveUp,
    /** What was refused, or has not been asked, is asked again. */
    checkRigAgain: () => {
      const { rigDraft } = store.get();
      store.set({ rigDraft: { ...rigDraft, what: rigDraft.what.slice(0, -1) } });
      return change(rigDraft.what.at(-1), rigDraft.text, rigDraft.fresh, rigDraft.name);
    },
    /** @returns why the figure cannot be taken, in a sentence; null where it is on its way */
    setRigRow: (id, typed) => {
      const { text, json } = rigOnPage(store.get());
      const row = rowsOf(tapeOf(json, stanceOnPage(store.get()))).find(one => one.id === id);
      const refusal = refusalOf(row, typed);
      if (refusal === null) {
        change(`${row.label}, ${typed}`, withRow(text, json, row, typed));
      }
      return refusal;
    },
    lookAtRow: id => store.set({ rigRow: id }),
    /**
     * Puts a unit or an axle on the rig, takes it off, or gives it another notch.
     *
     * @param given what was asked for, by key
     * @returns what is missing, {key, sentence}; null where it is on its way
     */
    changeRigBy: (key, given) => {
      const { text, json } = rigOnPage(store.get());
      const wanted = changesOf(json, stanceOnPage(store.get())).find(one => one.key === key);
      const missing = missingIn(wanted.asked, given);
      if (missing === null) {
        const trimmed = Object.fromEntries(Object.entries(given).map(([one, typed]) => [one, typed.trim()]));
        change(wanted.what, wanted.make(text, trimmed), true);
      }
      return missing;
    },
    /** A piece as scale tickets tell it. @param index of it; @param told {kg, arm} */
    putPiece: (index, told) => {
      const { text, json } = rigOnPage(store.get());
      const stance = stanceOnPage(store.get());
      const { name } = json.stances[stance].weights.pieces[index];
      return change(`${name} from scale tickets`, withPiece(text, stance, index, told));
    },
    /** Begins another rig. @param source id of an invented one, null for the one on the page; @param bare unloaded */
    beginRig: async ({ source, name, bare }) => {
      try {
        const text = source === null ? rigOnPage(store.get()).text : await api.sample('rigs', source);
        const made = copied(text, name);
        return await change(`beginning ${name}`, bare ? emptied(made) : made, true, name);
      } catch (error) {
        store.set({ problem: asProblem(error) });
        return false;
      }
    },
  };
}
