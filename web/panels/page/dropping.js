/** Files dropped anywhere on the page. */
import { el } from '../../dom.js';

export function mountDropping(root, { actions }) {
  root.append(el('p', {}, 'Drop tracks, map extracts, elevation rasters, a route, a rig or limits'));
  root.hidden = true;
  const hasFiles = event => [...event.dataTransfer?.types ?? []].includes('Files');

  function over(event) {
    if (hasFiles(event)) {
      event.preventDefault();
      event.dataTransfer.dropEffect = 'copy';
      root.hidden = false;
    }
  }

  function leave(event) {
    // Only when the pointer leaves the window, not when it goes from one part of the page to another.
    if (event.relatedTarget === null) {
      root.hidden = true;
    }
  }

  function drop(event) {
    root.hidden = true;
    if (hasFiles(event)) {
      event.preventDefault();
      actions.takeFiles([...event.dataTransfer.files]);
    }
  }

  const listeners = { dragenter: over, dragover: over, dragleave: leave, drop };
  Object.entries(listeners).forEach(([type, listener]) => window.addEventListener(type, listener));
  return {
    unmount: () => {
      Object.entries(listeners).forEach(([type, listener]) => window.removeEventListener(type, listener));
      root.replaceChildren();
    },
  };
}
