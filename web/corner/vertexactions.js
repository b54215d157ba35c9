/** What a user can do to the points of outlines that are drawn already: moved on the map, by mouse or keys. No DOM. */
import { vertexProblems, verticesOf, withVertexAt } from './corneroutline.js';
import { apartM, rounded, shifted } from '../line/course.js';

/** How long after the last step of an arrow key a point is put where it went, milliseconds. */
const PUT_AFTER = 700;
/** How far an arrow key moves it, meters, about a foot; so many times farther with Shift. */
const STEP_M = 0.3;
const FAR = 10;
const TOWARD = { north: [0, 1], south: [0, -1], east: [1, 0], west: [-1, 0] };
const BROWSER = { set: (call, after) => setTimeout(call, after), clear: timer => clearTimeout(timer) };

/**
 * @param corner () → {index, properties} of the corner on show
 * @param put (what, text, after) → whether the route is in force with that text; after what is drawn then
 * @param timers {set, clear} of the browser, or stand-ins in tests
 */
export function createVertexActions(store, corner, put, timers = BROWSER) {
  let timer = null;
  let exact = { accuracy: '', source: '' };

  const edit = () => store.get().lineEdit;
  const patch = part => store.set({ lineEdit: { ...edit(), ...part } });
  const all = () => verticesOf(corner().properties);

  /** Whatever was moved step by step is where it went, unless another corner is on show. */
  function settle() {
    timers.clear(timer);
    const { vertex } = edit();
    if (!vertex?.to) {
      return undefined;
    }
    return vertex.of === store.get().hazard ? move(vertex.at, vertex.to) : patch({ vertex: null });
  }

  async function move(at, lonLat) {
    timers.clear(timer);
    const { index, properties } = corner();
    const one = all()[at];
    const vertex = { at, to: null, of: store.get().hazard };
    if (one === undefined || apartM(one.lonLat, lonLat) < 0.005) {
      patch({ vertex });
      return false;
    }
    const unit = store.get().units === 'us' ? 'ft' : 'm';
    const given = { ...exact, leastM: store.get().aerial?.leastM ?? 0 };
    const [wrong] = vertexProblems(properties, one, given, unit);
    if (wrong) {
      patch({ vertex, wrong, refused: [], said: `Not moved. ${wrong.text}` });
      return false;
    }
    patch({ vertex });
    return put(`moving a point of the ${one.shape.kind} at ${properties.id}`, withVertexAt(
      store.get().inputs.route.text, index, properties, one, lonLat.map(rounded), given, unit,
    ), { said: 'The point is moved.' });
  }

  return {
    settleVertex: settle,
    /** How exact what is drawn or moved next is, as written: {accuracy, source}. */
    sayExact: said => { exact = said; },
    /** @param at number of the point among those of all shapes, from 0; beyond the last comes the first */
    selectVertex: async at => {
      await settle();
      const count = all().length;
      patch({ vertex: { at: (at + count) % count, to: null, of: store.get().hazard }, wrong: null, said: '' });
    },
    dragVertex: move,
    stepVertex: (toward, far) => {
      const { vertex } = edit();
      const [east, north] = TOWARD[toward];
      const by = STEP_M * (far ? FAR : 1);
      patch({ vertex: { ...vertex, to: shifted(vertex.to ?? all()[vertex.at].lonLat, [east * by, north * by]) } });
      timers.clear(timer);
      timer = timers.set(settle, PUT_AFTER);
    },
  };
}
