/** Which places have numbers that were typed and are not in the route: what stands of them is outdated. No DOM. */

/**
 * @param kind 'survey' or 'corner'
 * @param kept drafts that were begun at places that are not on show, by id: {id, base, status}
 */
export function tellDrafts(store, kind, kept) {
  const { inputs, drafts, [kind]: now } = store.get();
  const says = new Map((inputs?.route.json?.features ?? []).map(({ properties }) =>
    [properties?.id, JSON.stringify(properties)]));
  // A draft that was begun on what the route no longer says is given up as soon as somebody looks at it.
  const begun = [...kept.values()].filter(({ id, base }) => id !== now?.id && says.get(id) === base);
  const ids = [...begun, ...now !== null && now.status !== 'same' ? [now] : []].map(({ id }) => id);
  if (ids.join() !== drafts[kind].join()) {
    store.set({ drafts: { ...drafts, [kind]: ids } });
  }
}

/** Whether what is told of a place answers for numbers that somebody has changed since. */
export const isDrafted = ({ drafts }, id) => drafts.survey.includes(id) || drafts.corner.includes(id);
