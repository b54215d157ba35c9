/** Pieces of load that are moved and not kept: which, whether the sheet is of it yet, and keeping or dropping. */
import { el, replace, say } from '../../dom.js';
import { isOutdated, movedPieces } from '../../rig/moving.js';
import { movedWords } from '../../rig/piecewords.js';

export function mountWhatIf(root, { store, actions }) {
  const words = el('span', { id: 'what-if-words', role: 'status' });
  const keep = el('button', { id: 'what-if-keep', type: 'button', on: { click: () => leave(actions.keepMoved) } },
    'Keep it in the rig');
  const drop = el('button', { id: 'what-if-drop', type: 'button', on: { click: () => leave(actions.dropMoved) } },
    'Drop it');
  root.append(words, el('span', { class: 'what-if-buttons' }, keep, drop));

  /** The buttons go with what they end: the focus goes to the drawing that it came from. */
  function leave(act) {
    document.getElementById('loads-title').focus({ preventScroll: true });
    return act();
  }

  const stop = store.watch(['whatIf', 'inputs', 'busy', 'problem', 'units'], state => {
    const { whatIf, units, problem, busy } = state;
    const outdated = isOutdated(state);
    const sheets = document.getElementById('sheets');
    sheets.toggleAttribute('data-outdated', outdated);
    sheets.setAttribute('aria-busy', String(outdated));
    root.hidden = whatIf === null;
    root.dataset.status = whatIf === null ? 'none' : outdated ? 'outdated' : 'checked';
    if (whatIf === null) {
      say(words, '');
      return;
    }
    const moved = movedPieces(whatIf).map(({ name, shift }) => `${name} ${movedWords(shift, units)}`);
    say(words, `${moved.length === 0 ? 'Back to the rig as it is kept.'
      : `What-if, not in the rig: ${moved.join('; ')}.`} ${!outdated ? 'The sheet is of the load where it is now.'
      : problem !== null && !busy ? 'It is not checked: the sheet is outdated.'
        : 'Outdated: the sheet is of the load where it was; being checked.'}`);
    keep.disabled = moved.length === 0 || outdated;
  });
  return { unmount: () => { stop(); replace(root); } };
}
