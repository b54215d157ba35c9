/**
 * Printing. The button and Ctrl+P load everything that prints, then print. A browser's own menu prints at once and lets
 * nobody wait: that print says what is not on it.
 */
import { el, replace } from '../../dom.js';
import { isOnItsWay, leftOut, PRINTED } from '../../page/printed.js';

/** The button, and the line that prints when something is missing. `unmount` takes the listeners away. */
export function mountPrinting(note, { store, actions }) {
  let printing = false;
  let asked = false;
  const button = el('button', { id: 'print', type: 'button', on: { click: print } }, 'Print');

  function print() {
    printing = true;
    asked = false;
    replace(button, 'Loading what prints');
    printWhenReady(store.get());
  }

  /** Everything that prints is asked for and there before it is printed, whatever has been looked at. */
  function printWhenReady(state) {
    if (!printing) {
      return;
    }
    const open = isOnItsWay(state);
    if (!open && state.report !== null && state.comparison.status === 'none' && !asked) {
      asked = true;
      actions.drawComparison();
    } else if (!open) {
      printing = false;
      replace(button, 'Print');
      window.requestAnimationFrame(() => window.print());
    }
  }

  function onKey(event) {
    if (event.key.toLowerCase() === 'p' && (event.ctrlKey || event.metaKey) && !event.shiftKey && !event.altKey) {
      event.preventDefault();
      print();
    }
  }

  function tellWhatIsLeftOut() {
    const parts = leftOut(store.get());
    note.hidden = parts.length === 0;
    replace(note, `Not on this print, because it was not loaded: ${parts.join('; ')}. `
      + 'The button Print on the page loads everything first.');
  }

  const hide = () => { note.hidden = true; };
  hide();
  window.addEventListener('keydown', onKey);
  window.addEventListener('beforeprint', tellWhatIsLeftOut);
  window.addEventListener('afterprint', hide);
  const stop = store.watch(['busy', ...PRINTED], printWhenReady);
  return {
    button,
    unmount: () => {
      stop();
      window.removeEventListener('keydown', onKey);
      window.removeEventListener('beforeprint', tellWhatIsLeftOut);
      window.removeEventListener('afterprint', hide);
    },
  };
}
