/** What a user can do to the template of the corner on show: put into the route as soon as it can be read. No DOM. */
import {
  draftOf, isForm, placed, readDraft, withBorrow, withCorner, withField, withLayout, withObstacle, withObstacleAdded,
  withoutItem,
} from './cornerform.js';
import { tellDrafts } from './drafts.js';
import { featureOf } from './survey.js';

/** How long after the last change it goes into the route, milliseconds. */
const PUT_AFTER = 900;
const BROWSER = { set: (call, after) => setTimeout(call, after), clear: timer => clearTimeout(timer) };

/**
 * @param change (what, text) → another text of the route in force, if the server accepts it; whether it did
 * @param timers {set, clear} of the browser, or stand-ins in tests
 */
export function createCornerActions(store, change, timers = BROWSER) {
  /** Drafts that are not in the route yet, by hazard. */
  const kept = new Map();
  let timer = null;
  let sending = null;

  const patch = part => store.set({ corner: { ...store.get().corner, ...part } });
  const propertiesAt = index => store.get().inputs.route.json.features[index].properties;

  /** The draft of the corner on show: the one that was begun, unless the route says something else of it since. */
  function show({ inputs, hazard, units }) {
    const index = hazard === null ? -1 : featureOf(inputs?.route, hazard);
    const properties = index < 0 ? null : inputs.route.json.features[index].properties;
    const now = store.get().corner;
    if (properties?.hazard !== 'corner') {
      leave(now);
      store.set({ corner: null });
      return;
    }
    const base = JSON.stringify(properties);
    if (now?.id === hazard && (now.base === base || sending === base)) {
      store.set({ corner: { ...now, index, base } });
      return;
    }
    if (now?.id === hazard) {
      timers.clear(timer);
      kept.delete(hazard);
    } else {
      leave(now);
    }
    const before = kept.get(hazard);
    if (before?.base === base) {
      store.set({ corner: { ...before, index } });
      return;
    }
    const { pavement, template } = properties;
    const drawn = pavement ? 'outlines' : template && !isForm(template) ? 'more' : null;
    const draft = drawn === null ? draftOf(properties, units === 'us' ? 'ft' : 'm') : null;
    store.set({
      corner: {
        id: hazard, index, name: properties.name, base, drawn, draft, read: draft && readDraft(draft), status: 'same',
        refused: [], made: (now?.made ?? 0) + 1, field: null,
      },
    });
  }

  /** What was begun at a corner is there when it is on show again. */
  function leave(corner) {
    timers.clear(timer);
    if (corner && corner.status !== 'same') {
      kept.set(corner.id, corner);
    } else if (corner) {
      kept.delete(corner.id);
    }
  }

  function edit(draft, reshaped = false) {
    patch({
      draft, read: readDraft(draft), status: 'changed', refused: [], made: store.get().corner.made + (reshaped ? 1 : 0),
    });
    timers.clear(timer);
    timer = timers.set(put, PUT_AFTER);
  }

  /** Puts the draft into the route; what cannot be read stays a draft, and the route as it was. */
  async function put() {
    timers.clear(timer);
    const { corner, inputs } = store.get();
    if (!corner || corner.status === 'same') {
      return;
    }
    const { id, index, name, read, draft } = corner;
    if (read.problems.length > 0) {
      patch({ status: 'unread' });
      return;
    }
    const text = withCorner(inputs.route.text, index, propertiesAt(index), read);
    if (text === inputs.route.text) {
      patch({ status: 'same' });
      return;
    }
    patch({ status: 'sent' });
    sending = JSON.stringify(JSON.parse(text).features[index].properties);
    const accepted = await change(`measuring ${id} ${name}`, text);
    const after = store.get().corner;
    if (after?.id !== id || after.draft !== draft) {
      return;
    }
    sending = null;
    if (accepted) {
      patch({ status: 'same' });
    } else if (store.get().problem === null) {
      // Another question to the server came between.
      patch({ status: 'changed' });
      timer = timers.set(put, PUT_AFTER);
    } else {
      refuse(index, draft);
    }
  }

  function refuse(index, draft) {
    const { here, elsewhere } = placed(store.get().problem?.problems ?? [], index, draft);
    patch({ status: here.length > 0 ? 'refused' : 'unsent', refused: here });
    if (here.length > 0 && elsewhere.length === 0) {
      store.set({ problem: null, candidate: null });
    }
  }

  store.watch(['inputs', 'hazard'], show);
  store.watch(['inputs', 'corner'], () => tellDrafts(store, 'corner', kept));

  const now = () => store.get().corner.draft;
  return {
    cornerField: (path, text) => edit(withField(now(), path, text)),
    cornerLayout: layout => edit(withLayout(now(), layout), true),
    cornerBorrow: (road, lent) => edit(withBorrow(now(), road, lent)),
    cornerObstacle: (index, key, text) => edit(withObstacle(now(), index, key, text)),
    addCornerObstacle: () => edit(withObstacleAdded(now()), true),
    removeCornerItem: (list, index) => edit(withoutItem(now(), list, index), true),
    /** The number that is looked at, in the form and in the drawing. */
    lookAtCorner: field => patch({ field }),
    /** Gives up what is not in the route. */
    resetCorner: () => {
      kept.delete(store.get().corner.id);
      timers.clear(timer);
      store.set({ corner: null });
      show(store.get());
    },
  };
}
