/** What was made of the route on this page: to undo, and to save before it is lost with the page. */
import { el, replace } from '../dom.js';
import { baseMapFileName, routeFileName } from '../imported.js';
import { saveText } from './saving.js';

export function mountRevisions(root, { store, actions }) {
  const isKept = ({ project }) => project?.status === 'saved' && project.revision === project.latest;
  const isUnsaved = state => (state.project ? !isKept(state) && state.project.revision === state.project.latest
    : state.revisions.length > 0 && state.saved !== state.inputs?.route.text);

  function draw(state) {
    const { revisions, undone, inputs, saved, busy, baseMap } = state;
    const last = revisions.at(-1);
    const again = undone[0];
    root.hidden = !(last || again) || !inputs;
    if (root.hidden) {
      replace(root);
      return;
    }
    const { route } = inputs;
    replace(root,
      el('span', {}, `${last ? `Last change of the route: ${last.what}.` : 'The route is as it was opened.'} `
        + (!last && !state.project ? ''
          : isKept(state) ? 'It is saved in the project.'
            : saved === route.text ? 'It is saved.' : 'The route as it is now is on this page only.')),
      el('button', { id: 'route-save', type: 'button', on: { click: save } }, 'Save the route as a file'),
      baseMap && el('button', { id: 'basemap-save', type: 'button', on: { click: saveBaseMap } }, 'Save its base map'),
      last?.before && el('button', {
        id: 'route-undo', type: 'button', disabled: busy, on: { click: () => actions.undoRevision() },
      }, last.before.name === route.name ? 'Undo this change' : `Undo: back to ${last.before.name}`),
      again && el('button', {
        id: 'route-redo', type: 'button', disabled: busy, on: { click: () => actions.redoRevision() },
      }, `Redo: ${again.what}`));

    function save() {
      saveText(route.text, routeFileName(route.name));
      actions.markSaved(route.text);
    }

    function saveBaseMap() {
      saveText(JSON.stringify(baseMap), baseMapFileName(route.name));
    }
  }

  function beforeLeaving(event) {
    if (isUnsaved(store.get())) {
      event.preventDefault();
    }
  }

  window.addEventListener('beforeunload', beforeLeaving);
  const stops = [store.watch(['revisions', 'undone', 'inputs', 'saved', 'busy', 'baseMap', 'project'], draw)];
  return {
    unmount: () => {
      window.removeEventListener('beforeunload', beforeLeaving);
      stops.forEach(stop => stop());
      root.replaceChildren();
    },
  };
}
