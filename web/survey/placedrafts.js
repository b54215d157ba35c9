/**
 * What somebody types about the hazard on show, its survey or the template of its corner: a draft that goes into the
 * route as soon as it can be read, and is there again when the place is on show again. No DOM.
 */
import { tellDrafts } from './drafts.js';
import { featureOf } from './survey.js';

const BROWSER = { set: (call, after) => setTimeout(call, after), clear: timer => clearTimeout(timer) };

/**
 * @param kind 'survey' or 'corner': the key of the state
 * @param after how long after the last change it goes into the route, milliseconds
 * @param isOf (properties) → whether the place has one
 * @param begin (properties, units) → {draft, read}, and what else the state says of it
 * @param read (draft) → the draft as numbers, with the problems in it
 * @param write (text, index, properties, read) → the text of the route with it
 * @param word what is done, for the list of changes
 * @param placed (problems, index, read, draft) → which of them are of this draft: {here, elsewhere}
 * @param change (what, text) → another text of the route in force, if the server accepts it; whether it did
 * @param timers {set, clear} of the browser, or stand-ins in tests
 */
export function createPlaceDrafts(store, { kind, after, isOf, begin, read: readOf, write, word, placed }, change,
  timers = BROWSER) {
  /** Drafts that are not in the route yet, by hazard. */
  const kept = new Map();
  let timer = null;
  let sending = null;

  const now = () => store.get()[kind];
  const hold = value => store.set({ [kind]: value });
  const patch = part => hold({ ...now(), ...part });

  /** The draft of the hazard on show: the one that was begun, unless the route says something else of it since. */
  function show({ inputs, hazard, units }) {
    const index = hazard === null ? -1 : featureOf(inputs?.route, hazard);
    const properties = index < 0 ? null : inputs.route.json.features[index].properties;
    if (properties === null || !isOf(properties)) {
      leave(null);
      hold(null);
      return;
    }
    const shown = now();
    const base = JSON.stringify(properties);
    if (shown?.id === hazard) {
      if (shown.base === base || sending === base) {
        hold({ ...shown, index, base });
        return;
      }
      timers.clear(timer);
      kept.delete(hazard);
    }
    leave(hazard);
    const own = { id: hazard, index, kind: properties.hazard, name: properties.name, base };
    const before = kept.get(hazard);
    if (before?.base === base) {
      hold({ ...begin(properties, units), ...before, ...own });
      if (before.status === 'changed') {
        timer = timers.set(put, after);
      }
      return;
    }
    hold({
      ...begin(properties, units), ...own, status: 'same', refused: [], said: '', made: (shown?.made ?? 0) + 1,
    });
  }

  /** What was begun at a hazard is there when it is on show again. */
  function leave(next) {
    const shown = now();
    if (shown && shown.id !== next) {
      timers.clear(timer);
      if (shown.status === 'same') {
        kept.delete(shown.id);
      } else {
        kept.set(shown.id, shown);
      }
    }
  }

  /**
   * @param reshaped whether it has other fields than before
   * @param said what became of it, for those who do not see it
   */
  function edit(draft, reshaped = false, said = '') {
    patch({
      draft, said, read: readOf(draft), status: 'changed', refused: [], made: now().made + (reshaped ? 1 : 0),
    });
    timers.clear(timer);
    timer = timers.set(put, after);
  }

  /** Puts the draft into the route; what cannot be read stays a draft, and the route as it was. */
  async function put() {
    timers.clear(timer);
    const shown = now();
    if (!shown || shown.status === 'same') {
      return;
    }
    const { id, index, name, read, draft } = shown;
    if (read.problems.length > 0) {
      patch({ status: 'unread' });
      return;
    }
    const { route } = store.get().inputs;
    const text = write(route.text, index, route.json.features[index].properties, read);
    if (text === route.text) {
      patch({ status: 'same' });
      return;
    }
    patch({ status: 'sent' });
    sending = JSON.stringify(JSON.parse(text).features[index].properties);
    const accepted = await change(`${word} ${id} ${name}`, text);
    if (now()?.id !== id || now().draft !== draft) {
      return;
    }
    sending = null;
    if (accepted) {
      patch({ status: 'same' });
    } else if (store.get().problem === null) {
      // Another question to the server came between.
      patch({ status: 'changed' });
      timer = timers.set(put, after);
    } else {
      refuse(index, read, draft);
    }
  }

  function refuse(index, read, draft) {
    const { here, elsewhere } = placed(store.get().problem?.problems ?? [], index, read, draft);
    patch({ status: here.length > 0 ? 'refused' : 'unsent', refused: here });
    if (here.length > 0 && elsewhere.length === 0) {
      store.set({ problem: null, candidate: null });
    }
  }

  /** Gives up what is not in the route. */
  function reset() {
    kept.delete(now().id);
    timers.clear(timer);
    hold(null);
    show(store.get());
  }

  /** Every draft that is not in the route, as JSON has it. */
  function drafts() {
    const shown = now();
    const begun = shown !== null && shown.status !== 'same' ? [shown] : [];
    return [...[...kept.values()].filter(({ id }) => id !== shown?.id), ...begun]
      .map(({ id, base, draft }) => ({ id, base, draft }));
  }

  /** Takes up such drafts, each where the route still says what it was begun on. */
  function restore(given) {
    given.forEach(({ id, base, draft }) => {
      const read = readOf(draft);
      kept.set(id, {
        id, base, draft, read, refused: [], said: '', made: 1, status: read.problems.length > 0 ? 'unread' : 'changed',
      });
    });
    tell();
    const shown = now();
    if (shown !== null && kept.has(shown.id) && shown.status === 'same') {
      hold(null);
      show(store.get());
    }
  }

  const tell = () => tellDrafts(store, kind, kept);
  store.watch(['inputs', 'hazard'], show);
  store.watch(['inputs', kind], tell);

  return { edit, put, patch, reset, drafts, restore };
}
