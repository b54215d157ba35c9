/** What a user can do about the line of the route in force: every change is one step back. No DOM. */
import { readFile } from '../exchange/files.js';
import { apartM, between, courseOfLines, linesOf, rounded, shifted } from './course.js';
import { drawnOn, newRoute } from './drawing.js';
import { rehung, withChanges } from './hanging.js';
import { goesOn, insertedPoint, keptBecause, movedPoint, pointsOf, removedPoint } from './positions.js';
import { pointOf } from './typed.js';
import { withFeature } from './places.js';

/** How long after the last step of an arrow key a point is put where it went, milliseconds. */
const PUT_AFTER = 700;
const TOWARD = { north: [0, 1], south: [0, -1], east: [1, 0], west: [-1, 0] };
const BROWSER = { set: (call, after) => setTimeout(call, after), clear: timer => clearTimeout(timer) };

/** Limits of the whole route hold on what is added as well, which nobody may have allowed. */
export const limitsTold = json => (json.limits === undefined ? [] : [
  `The weight limits of the whole route (${json.limits.name}) now count on the new part too: see that they hold there.`,
]);

/**
 * @param change (what, text, gone) → another text of the route in force, if the server accepts it; whether it did
 * @param undoing where another route is put into force, as undoing.js
 * @param timers {set, clear} of the browser, or stand-ins in tests
 */
export function createLineActions(store, change, undoing, timers = BROWSER) {
  let timer = null;
  let stepM = 3.048;
  let known = { json: null };

  const edit = () => store.get().lineEdit;
  const patch = part => store.set({ lineEdit: { ...edit(), ...part } });
  const quiet = { wrong: null, refused: [], told: [], said: '', asked: null };
  const route = () => store.get().inputs.route;

  /** Lines and points of the route in force, found once. */
  function line() {
    const json = store.get().inputs?.route.json ?? null;
    if (known.json !== json || !known.lines) {
      const lines = linesOf(json);
      known = { json, lines, points: pointsOf(lines), course: courseOfLines(lines) };
    }
    return known;
  }

  /** What the program refused, by the name of the place it is about: the page has it at the line, not far above. */
  function refusal(json) {
    const { problem } = store.get();
    const refused = (problem?.problems ?? []).map(({ pointer, message, remedy }) => {
      const [, index] = pointer.match(/^(?:\/route)?\/features\/(\d+)/) ?? [];
      const { id, name, route: leg } = json.features?.[index]?.properties ?? {};
      const who = id ? `${id} ${name}: ` : leg ? `${leg}: ` : '';
      return `${who}${message}${remedy ? ` ${remedy}` : ''}`;
    });
    if (refused.length > 0) {
      store.set({ problem: null, candidate: null });
    }
    return refused;
  }

  /**
   * Puts another line into force.
   *
   * @param made {text, positions, origins} as `edited` gives them
   * @param after {at, said, told}: the point on show then, and what is said of it
   */
  async function put(what, made, after = {}) {
    const before = route();
    const hung = rehung(before.json, made);
    if (hung.refused.length > 0) {
      patch({ ...quiet, moved: null, refused: hung.refused, made: edit().made + 1 });
      return false;
    }
    const text = hung.twins.reduce((now, { feature }) => withFeature(now, feature),
      withChanges(made.text, hung.changes));
    const { told = [], ...shown } = after;
    return send(what, text, [...told, ...hung.told, ...hung.twins.map(twin => twin.said)], shown);
  }

  /** @param gone ids of hazards that are no longer judged */
  async function send(what, text, told, after = {}, gone = null) {
    patch({ ...quiet, working: true });
    const accepted = await change(what, text, gone);
    const { said = '', ...more } = after;
    patch({
      working: false, moved: null, made: edit().made + 1,
      ...(accepted ? { told, said, ...more } : { refused: refusal(JSON.parse(text)) }),
    });
    return accepted;
  }

  const clamped = at => Math.max(0, Math.min(line().points.length - 1, at));

  /** Whatever was moved step by step is where it went. */
  function settle() {
    timers.clear(timer);
    timer = null;
    const { moved, at } = edit();
    return moved === null ? undefined : movePoint(at, moved);
  }

  function movePoint(at, lonLat) {
    timers.clear(timer);
    const { text, json } = route();
    const point = line().points[at];
    if (apartM(point.lonLat, lonLat) < 0.005) {
      patch({ moved: null });
      return undefined;
    }
    return put(`moving point ${at + 1} of the line`, movedPoint(text, json, point, lonLat),
      { at, said: `Point ${at + 1} is moved.` });
  }

  function insert(at, lonLat) {
    const { text, json } = route();
    const { points, lines } = line();
    if (!goesOn(lines, points[at])) {
      patch({ ...quiet, refused: ['The leg ends here. Draw on from the end of the line instead.'] });
      return undefined;
    }
    const middle = lonLat ?? between(points[at].lonLat, points[at + 1].lonLat, 0.5);
    return put(`putting a point behind point ${at + 1} of the line`, insertedPoint(text, json, points[at], middle),
      { at: at + 1, said: `Point ${at + 2} is new.` });
  }

  function remove(at) {
    const { text, json } = route();
    const { points, lines } = line();
    const why = keptBecause(lines, points[at]);
    if (why !== null) {
      patch({ ...quiet, refused: [why] });
      return undefined;
    }
    return put(`taking out point ${at + 1} of the line`, removedPoint(text, json, points[at]),
      { at: Math.min(at, points.length - 2), said: `Point ${at + 1} is taken out.` });
  }

  /** The line that was drawn becomes another leg behind the end, or a route of its own. */
  async function finish(name) {
    const { mode, drawn } = edit();
    if (drawn.length < 2) {
      patch({ ...quiet, refused: ['A line has two points or more.'] });
      return false;
    }
    const done = { mode: 'points', drawn: [], at: 0, said: `${name} is drawn.` };
    if (mode === 'on') {
      const { text, json } = route();
      return put(`drawing ${name}`, drawnOn(text, json, name, drawn),
        { ...done, at: line().points.length - 1, told: limitsTold(json) });
    }
    const before = { ...route(), ...(store.get().baseMap && { baseMap: store.get().baseMap }) };
    const made = { ...readFile(newRoute(name, drawn), `${name}.route.geojson`, null), baseMap: store.get().baseMap };
    patch({ ...quiet, working: true });
    const accepted = await undoing.revise({ kind: 'route', what: `drawing ${name}`, before, made });
    patch({ working: false, made: edit().made + 1, ...(accepted ? done : { refused: refusal(made.json) }) });
    return accepted;
  }

  // Another line: what was moved on the one before is no longer there.
  store.watch(['inputs'], ({ inputs, lineEdit }) => {
    if (lineEdit.mode === 'off' || !inputs || known.json === inputs.route.json) {
      return;
    }
    timers.clear(timer);
    // What is drawn on begins where the line ends now.
    const drawn = lineEdit.mode === 'on' ? [line().points.at(-1).lonLat, ...lineEdit.drawn.slice(1)] : lineEdit.drawn;
    patch({ moved: null, at: clamped(lineEdit.at), made: lineEdit.made + 1, drawn });
  });

  return {
    /**
     * @param mode 'points' to change the line, 'on' to draw on from its end, 'new' to draw another, 'shape' to draw an
     *     outline of a corner, 'off'
     */
    editLine: async mode => {
      await settle();
      const { points } = line();
      const drawn = mode === 'on' ? [points.at(-1).lonLat] : [];
      patch({ ...quiet, mode, drawn, moved: null, at: clamped(edit().at), made: edit().made + 1 });
    },
    lineParts: line,
    selectLinePoint: async at => {
      await settle();
      patch({ ...quiet, at: clamped(at), made: edit().made + 1 });
    },
    moveLinePoint: movePoint,
    /** A point that was dragged, whichever was on show. */
    dragLinePoint: async (at, lonLat) => {
      if (at !== edit().at) {
        await settle();
        patch({ ...quiet, at });
      }
      return movePoint(at, lonLat.map(rounded));
    },
    setLineStep: meters => { stepM = meters; },
    /** By an arrow: one step toward 'north' and so on; it is put there when no other step follows. */
    stepLinePoint: toward => {
      const { at, moved } = edit();
      const [east, north] = TOWARD[toward];
      patch({ ...quiet, moved: shifted(moved ?? line().points[at].lonLat, [east * stepM, north * stepM]) });
      timers.clear(timer);
      timer = timers.set(settle, PUT_AFTER);
    },
    settleLine: settle,
    insertLinePoint: insert,
    removeLinePoint: remove,
    /** A point as typed: where the point on show goes, or the next one of what is drawn. */
    typeLinePoint: given => {
      const { mode, drawn, at } = edit();
      const isDrawn = mode === 'on' || mode === 'new' || mode === 'shape';
      const read = pointOf(given, isDrawn ? drawn.at(-1) ?? null : line().points[at].lonLat);
      if (read.problem) {
        patch({ ...quiet, wrong: { at: read.at, text: read.problem } });
        return false;
      }
      if (isDrawn) {
        patch({ ...quiet, drawn: [...drawn, read.lonLat], said: `Point ${drawn.length + 1} is drawn.` });
        return true;
      }
      return movePoint(at, read.lonLat);
    },
    drawLinePoint: lonLat => patch({ ...quiet, drawn: [...edit().drawn, lonLat] }),
    undrawLinePoint: () => {
      const { mode, drawn } = edit();
      patch({ ...quiet, drawn: drawn.slice(0, Math.max(mode === 'on' ? 1 : 0, drawn.length - 1)) });
    },
    /** What was drawn before the page was left. */
    resumeDrawing: ({ mode, drawn }) => patch({
      ...quiet, mode, drawn: mode === 'on' ? [line().points.at(-1).lonLat, ...drawn.slice(1)] : drawn,
      at: clamped(edit().at), made: edit().made + 1,
    }),
    finishLine: finish,
    sendLine: send,
  };
}
