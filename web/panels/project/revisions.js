/** What was made of route, rig and limits on this page: to undo, and to save before it is lost with the page. */
import { el, replace } from '../../dom.js';
import { baseMapFileName, limitsFileName, rigFileName, routeFileName } from '../../exchange/filenames.js';
import { hasLimits } from '../../limits/limits.js';
import { keptFile } from '../../rig/moving.js';
import { isUnsavedFile } from '../../project/undoing.js';
import { saveText } from '../parts/saving.js';

const KINDS = ['route', 'rig', 'limits'];


export function mountRevisions(root, { store, actions }) {
  const isKept = ({ project }) => project?.status === 'saved' && project.revision === project.latest;
  const isOf = (state, kind) => [...state.revisions, ...state.undone].some(revision => revision.kind === kind);
  const isUnsaved = state => (state.project ? !isKept(state) && state.project.revision === state.project.latest
    : KINDS.some(kind => isUnsavedFile(state, kind)) && !isInBrowser(state))
    || (state.project !== null || !isInBrowser(state)) && (state.rigDraft !== null || state.whatIf !== null);

  let held = null;
  root.setAttribute('tabindex', '-1');

  function draw(state) {
    const { revisions, undone, inputs, busy, baseMap, undoNote } = state;
    const focused = root.contains(document.activeElement) ? document.activeElement : null;
    held = focused?.id && focused !== root ? focused.id : held;
    const last = revisions.at(-1);
    const again = undone[0];
    root.hidden = !(last || again) || !inputs;
    if (root.hidden) {
      replace(root);
      return;
    }
    const { route } = inputs;
    const rig = keptFile(inputs.rig);
    replace(root,
      el('span', {},
        `${last ? `Last change: ${last.what}.` : 'All is as it was opened.'} ${where(state)}`
        + `${undoNote === null ? '' : ` ${undoNote}`}`),
      isOf(state, 'route')
        && el('button', { id: 'route-save', type: 'button', on: { click: save } }, 'Save the route as a file'),
      isOf(state, 'rig')
        && el('button', { id: 'rig-save', type: 'button', on: { click: saveRig } }, 'Save the rig as a file'),
      isOf(state, 'limits') && hasLimits(inputs)
        && el('button', { id: 'changes-limits-save', type: 'button', on: { click: saveLimits } },
          'Save the limits as a file'),
      isOf(state, 'route') && baseMap
        && el('button', { id: 'basemap-save', type: 'button', on: { click: saveBaseMap } }, 'Save its base map'),
      last?.before && el('button', {
        id: 'route-undo', type: 'button', disabled: busy, on: { click: () => actions.undoRevision() },
      }, last.before.name === inputs[last.kind].name ? 'Undo this change' : `Undo: back to ${last.before.name}`),
      again && el('button', {
        id: 'route-redo', type: 'button', disabled: busy, on: { click: () => actions.redoRevision() },
      }, `Redo: ${again.what}`));
    if (focused) {
      refocus();
    }

    function save() {
      saveText(route.text, routeFileName(route.name));
      actions.markSaved('route', route.text);
    }

    function saveRig() {
      saveText(rig.text, rigFileName(rig.name));
      actions.markSaved('rig', rig.text);
    }

    function saveLimits() {
      saveText(inputs.limits.text, limitsFileName(inputs.limits.name));
      actions.markSaved('limits', inputs.limits.text);
    }

    function saveBaseMap() {
      saveText(JSON.stringify(baseMap), baseMapFileName(route.name));
    }
  }

  /** The buttons are other ones now, and none can be pressed while a check runs: until then their bar has the focus. */
  function refocus() {
    const button = held === null ? null : document.getElementById(held);
    const usable = button !== null && !button.disabled;
    (usable ? button : root).focus({ preventScroll: true });
    if (usable) {
      held = null;
    }
  }

  /** Where what was changed is kept, in a sentence. */
  function where(state) {
    const unsaved = KINDS.filter(kind => isUnsavedFile(state, kind));
    return isKept(state) ? 'It is saved in the project.'
      : unsaved.length > 0 ? onlyHere(unsaved, isInBrowser(state))
        : state.revisions.length > 0 && !state.project ? 'It is saved.' : '';
  }

  function beforeLeaving(event) {
    if (isUnsaved(store.get())) {
      event.preventDefault();
    }
  }

  window.addEventListener('beforeunload', beforeLeaving);
  const stops = [store.watch(
    ['revisions', 'undone', 'inputs', 'saved', 'busy', 'baseMap', 'project', 'rigDraft', 'whatIf', 'undoNote', 'work'],
    draw)];
  return {
    unmount: () => {
      window.removeEventListener('beforeunload', beforeLeaving);
      stops.forEach(stop => stop());
      root.replaceChildren();
    },
  };
}

/** "The rig as it is now is on this page only." */
function onlyHere(kinds, inBrowser) {
  const words = kinds.join(' and ');
  const where = inBrowser ? 'kept in this browser only' : 'on this page only';
  return kinds.length > 1 ? `${words[0].toUpperCase()}${words.slice(1)} as they are now are ${where}.`
    : kinds[0] === 'limits' ? `The limits as they are now are ${where}.`
      : `The ${words} as it is now is ${where}.`;
}

/** Whether leaving the page takes nothing away, though no project has it. */
const isInBrowser = ({ project, work, undoNote }) => project === null && work !== null && undoNote === null;
