/** What a user can do to the outlines of the corner on show, drawn over the map. No DOM. */
import { problemsOf, shapeOf, withoutShape, withShape } from './corneroutline.js';
import { featureOf } from '../survey/survey.js';
import { createVertexActions } from './vertexactions.js';

/**
 * @param change (what, text) → another text of the route in force, if the server accepts it; whether it did
 * @param line the actions of lineactions.js, which take points from the map
 * @param timers {set, clear} of the browser, or stand-ins in tests
 */
export function createOutlineActions(store, change, line, timers) {
  const patch = part => store.set({ lineEdit: { ...store.get().lineEdit, ...part } });

  /** The corner on show: {index, properties}. */
  function corner() {
    const { inputs, hazard } = store.get();
    const index = featureOf(inputs.route, hazard);
    return { index, properties: inputs.route.json.features[index].properties };
  }

  /** @param after what is drawn and said when it is in the route */
  async function put(what, text, after = { drawn: [], said: 'It is in the route.' }) {
    patch({ working: true, refused: [], said: '', wrong: null });
    const accepted = await change(what, text);
    const { problem, inputs } = store.get();
    const refused = accepted ? []
      : (problem?.problems ?? []).map(({ message, remedy }) => `${message} ${remedy ?? ''}`.trim());
    if (refused.length > 0) {
      store.set({ problem: null, candidate: null });
    }
    patch({ working: false, refused, ...(accepted && after) });
    return accepted && inputs !== null;
  }

  const vertices = createVertexActions(store, corner, put, timers);

  return {
    ...vertices,
    /** The next presses on the map are points of a shape. */
    drawShape: () => line.editLine('shape'),
    stopShape: async () => {
      await vertices.settleVertex();
      patch({ vertex: null });
      return line.editLine('off');
    },
    /** @param given {kind, name, size, accuracy, source} as written; whether the corner has it now */
    closeShape: async given => {
      const { drawn } = store.get().lineEdit;
      const { index, properties } = corner();
      const unit = store.get().units === 'us' ? 'ft' : 'm';
      const leastM = store.get().aerial?.leastM ?? 0;
      const shape = { ...given, leastM, lonLats: given.kind === 'pole' ? drawn.slice(-1) : drawn };
      const [first] = problemsOf(properties, shape, unit);
      if (first) {
        patch({ wrong: first, refused: [], said: '' });
        return false;
      }
      return put(`drawing ${shapeOf(given.kind).word} at ${properties.id}`,
        withShape(store.get().inputs.route.text, index, properties, shape, unit));
    },
    removeShape: shape => {
      const { index, properties } = corner();
      return put(`taking out ${shapeOf(shape.kind).word} at ${properties.id}`,
        withoutShape(store.get().inputs.route.text, index, properties, shape));
    },
  };
}
