/**
 * What a user can do about where pieces of load lie: moved as a what-if, which all of the sheet follows, until it is
 * kept as one change of the rig or dropped. No DOM.
 */
import { Problem } from '../exchange/api.js';
import { readFile } from '../exchange/files.js';
import { piecesOf, within, withPieceMoved } from './piece.js';

/** How long after the last move the loads are asked for, and all else is checked, milliseconds. */
const LOADS_AFTER = 120;
const CHECK_AFTER = 450;
const BROWSER = { set: (call, after) => setTimeout(call, after), clear: timer => clearTimeout(timer) };

/** A file as it is kept: of a what-if the one it was made from. */
export const keptFile = file => file?.whatIfOf ?? file;

/** Whether what the sheet says is of another place of the load than is on show. */
export const isOutdated = ({ whatIf, inputs }) => whatIf !== null && inputs?.rig !== whatIf.file;

/** The inputs that loads are asked for: with pieces where they are on show. */
export const shownInputs = ({ whatIf, inputs }) => (whatIf === null ? inputs : { ...inputs, rig: whatIf.file });

/** How far a piece is moved now, picometers to the rear. */
export const shiftOf = (whatIf, stance, index) => whatIf?.shifts[`${stance}/${index}`] ?? 0;

/** Pieces that are moved: [{stance, index, name, shift}], of the rig that is kept. */
export function movedPieces({ base, shifts }) {
  return Object.entries(shifts).map(([key, shift]) => {
    const [stance, index] = key.split('/').map(Number);
    return { stance, index, name: base.json.stances[stance].weights.pieces[index].name, shift };
  });
}

/**
 * @param undoing where it is kept, to be taken back
 * @param open (kind, file, wanted) → puts a rig into force, as `openRead` of other actions
 * @param drawLoads asks for the loads of what is on show
 * @param told (shift) → a move in words, in the units on show
 * @param timers {set, clear} of the browser, or stand-ins in tests
 */
export function createMoving(store, { undoing, open, drawLoads, told }, timers = BROWSER) {
  const due = { loads: null, check: null };

  function wait(what, call, after) {
    timers.clear(due[what]);
    due[what] = timers.set(call, after);
  }

  function stopWaiting() {
    Object.values(due).forEach(timer => timers.clear(timer));
  }

  /** Checks what is on show, when it is not in force already. */
  function check() {
    const { whatIf, inputs } = store.get();
    if (whatIf !== null && inputs.rig !== whatIf.file) {
      open('rig', whatIf.file, undoing.shownOfRig(false));
    }
  }

  /**
   * Moves a piece.
   *
   * @param shift how far back from where the rig has it, picometers; kept on what it lies on
   */
  function move(stance, index, shift) {
    const { whatIf, inputs, rigDraft } = store.get();
    const base = whatIf?.base ?? inputs.rig;
    if (rigDraft !== null) {
      store.set({ problem: new Problem({
        title: 'A change of the rig is not in force yet', remedy: 'Finish it or give it up, then move the load.',
      }) });
      return;
    }
    const piece = piecesOf(base.json, stance).find(one => one.index === index);
    const shifts = { ...whatIf?.shifts, [`${stance}/${index}`]: within(piece, shift) };
    show(base, Object.fromEntries(Object.entries(shifts).filter(([, by]) => by !== 0)));
  }

  function show(base, shifts) {
    const text = Object.entries(shifts).reduce((made, [key, by]) =>
      withPieceMoved(made, ...key.split('/').map(Number), by), base.text);
    const { whatIf, inputs, busy } = store.get();
    if (text === base.text) {
      if (whatIf === null) {
        return;
      }
      // Where nothing else was checked the sheet is right as it stands.
      if (inputs.rig === base && !busy) {
        stopWaiting();
        store.set({ whatIf: null });
        drawLoads();
        return;
      }
    }
    const file = text === base.text ? base : { ...readFile(text, base.name, base.id), whatIfOf: base, shifts };
    store.set({ whatIf: { base, shifts, file } });
    wait('loads', drawLoads, LOADS_AFTER);
    wait('check', check, CHECK_AFTER);
  }

  /** Every piece goes back to where the rig has it. */
  function drop() {
    const { whatIf } = store.get();
    if (whatIf !== null) {
      show(whatIf.base, {});
      stopWaiting();
      check();
    }
  }

  /** The rig has the pieces where they are now. @returns whether it is in force */
  async function keep() {
    const { whatIf } = store.get();
    if (whatIf === null || whatIf.file === whatIf.base) {
      return false;
    }
    stopWaiting();
    const { base, file } = whatIf;
    return undoing.revise({
      kind: 'rig', before: base, made: readFile(file.text, base.name, null), wanted: undoing.shownOfRig(false),
      what: movedPieces(whatIf).map(({ name, shift }) => `moving ${name} ${told(shift)}`).join('; '),
    });
  }

  store.watch(['inputs'], ({ inputs, whatIf }) => {
    const rig = inputs?.rig ?? null;
    // Kept, dropped, or another rig was opened. An earlier place of the same what-if is only out of date.
    if (whatIf !== null && (rig === whatIf.base ? whatIf.file === rig : rig?.whatIfOf !== whatIf.base)) {
      stopWaiting();
      store.set({ whatIf: null });
    }
  });

  const orDrop = call => (...given) => (store.get().whatIf === null ? call(...given) : drop());
  return {
    movePiece: move,
    keepMoved: keep,
    dropMoved: drop,
    /** What is only tried is given up before anything that was kept is. */
    undoRevision: orDrop(undoing.actions.undoRevision),
    redoRevision: orDrop(undoing.actions.redoRevision),
  };
}
