/** What a user can do about the places of the route in force. No DOM. */
import { Problem } from '../exchange/api.js';
import {
  freeId, isMovedTooFar, lonLatOf, MOVED_AT_MOST_M, NEW_PLACES, propertiesOf, withoutPlace, withPlace, withPlaceAt,
  withWords,
} from './places.js';

/** @param change (what, text, gone) → another text of the route in force, if the server accepts it; whether it did */
export function createPlaceActions(store, change) {
  /** Where somebody said a place is; null after telling that it is nowhere. */
  function place(text) {
    const { line } = store.get();
    const lonLat = line && lonLatOf(text, line.line);
    if (!lonLat) {
      store.set({
        problem: new Problem({
          title: `"${text}" is no place on this route`,
          remedy: 'Write a distance along it, such as 3.2 mi or 5.1 km, or latitude and longitude, such as '
            + '41.9003, -101.19.',
        }),
      });
    }
    return lonLat;
  }

  const route = () => store.get().inputs.route;

  return {
    /** @param given {kind, name, at, landmark, more} as written; whether the route has it now */
    addPlace: async given => {
      const lonLat = place(given.at);
      const kind = NEW_PLACES.find(one => one.kind === given.kind);
      if (!lonLat || !kind) {
        return false;
      }
      const id = freeId(route(), kind.letter);
      return change(`adding ${id} ${given.name}`,
        withPlace(route().text, propertiesOf(kind, { ...given, id }), lonLat));
    },
    /** @param given {name, landmark, at} as written; at empty where it stays */
    changePlace: async ({ index, id }, given) => {
      const lonLat = given.at ? place(given.at) : null;
      if (given.at && !lonLat) {
        return false;
      }
      const feature = route().json.features[index];
      if (lonLat && isMovedTooFar(feature, lonLat)) {
        store.set({
          problem: new Problem({
            title: `${id} was measured where it is`,
            detail: `What its file says of the road holds there. It can be put right by ${MOVED_AT_MOST_M} m, and not `
              + 'become another place.',
            remedy: 'Add a place where the other one is, and have it surveyed.',
          }),
        });
        return false;
      }
      const named = withWords(route().text, index, given);
      const text = lonLat ? withPlaceAt(named, index, lonLat) : named;
      return text === route().text ? false : change(`${lonLat ? 'moving' : 'naming'} ${id} ${given.name}`, text);
    },
    removePlace: ({ index, id, name }) => change(`taking out ${id} ${name}`, withoutPlace(route().text, index), id),
  };
}
