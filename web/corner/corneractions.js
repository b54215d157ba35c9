/** What a user can do to the template of the corner on show: put into the route as soon as it can be read. No DOM. */
import {
  draftOf, isForm, placed, readDraft, withBorrow, withCorner, withField, withLayout, withObstacle, withObstacleAdded,
  withoutItem,
} from './cornerform.js';
import { createPlaceDrafts } from '../survey/placedrafts.js';

/**
 * @param change (what, text) → another text of the route in force, if the server accepts it; whether it did
 * @param timers {set, clear} of the browser, or stand-ins in tests
 */
export function createCornerActions(store, change, timers) {
  const drafts = createPlaceDrafts(store, {
    kind: 'corner', after: 900, isOf: ({ hazard }) => hazard === 'corner', begin, read: readDraft, write: withCorner,
    word: 'measuring', placed: (problems, index, read, draft) => placed(problems, index, draft),
  }, change, timers);
  const { edit } = drafts;

  function begin(properties, units) {
    const { pavement, template } = properties;
    const drawn = pavement ? 'outlines' : template && !isForm(template) ? 'more' : null;
    const draft = drawn === null ? draftOf(properties, units === 'us' ? 'ft' : 'm') : null;
    return { drawn, draft, read: draft && readDraft(draft), field: null };
  }

  const now = () => store.get().corner.draft;
  return {
    cornerField: (path, text) => edit(withField(now(), path, text)),
    cornerLayout: layout => edit(withLayout(now(), layout), true),
    cornerBorrow: (road, lent) => edit(withBorrow(now(), road, lent)),
    cornerObstacle: (index, key, text) => edit(withObstacle(now(), index, key, text)),
    addCornerObstacle: () => edit(withObstacleAdded(now()), true),
    removeCornerItem: (list, index) => edit(withoutItem(now(), list, index), true),
    /** The number that is looked at, in the form and in the drawing. */
    lookAtCorner: field => drafts.patch({ field }),
    /** Gives up what is not in the route. */
    resetCorner: drafts.reset,
    cornerDrafts: drafts.drafts,
    restoreCornerDrafts: drafts.restore,
  };
}
