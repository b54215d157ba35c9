/** What a user can do about the line as a whole: cut it, turn it round, join another. Told first, then done. No DOM. */
import { fileFromDisk } from '../exchange/files.js';
import { distanceOf } from '../text/format.js';
import { passagesOf } from './course.js';
import { alongOf, cutLine } from './cutting.js';
import { joinedRoute } from './joining.js';
import { reversedRoute } from './reversing.js';
import { coordinatesOf } from './typed.js';
import { limitsTold } from './lineactions.js';
import { hangingOn } from './hanging.js';

/** @param line the actions of lineactions.js */
export function createLinePartActions(store, line) {
  const quiet = { wrong: null, refused: [], told: [], said: '', asked: null };
  const patch = part => store.set({ lineEdit: { ...store.get().lineEdit, ...part } });
  const route = () => store.get().inputs.route;

  /** Where the line is to be cut, along the course of the page: {alongM} or {problem}. */
  function cutPlace(text) {
    const { points, lines, course } = line.lineParts();
    const { line: drawn, lineEdit } = store.get();
    if (text === '') {
      return { alongM: alongOf(course, lines, points[lineEdit.at]) };
    }
    const lonLat = coordinatesOf(text);
    if (lonLat) {
      const passages = passagesOf(course, lonLat);
      return passages.length === 1 ? { alongM: passages[0].alongM } : {
        problem: passages.length === 0 ? 'This point is more than 30 m beside the line.'
          : `The line passes there ${passages.length} times: write the distance from its start.`,
      };
    }
    const alongM = distanceOf(text);
    return alongM !== null && alongM <= drawn.lengthM ? { alongM: alongM * course.lengthM / drawn.lengthM } : {
      problem: `"${text}" is no place on this line. Write a distance along it, such as 3.2 mi or 5.1 km, or latitude `
        + 'and longitude.',
    };
  }

  /** Tells what a change comes to, and keeps it to be done; what cannot be is refused at once. */
  function ask(kind, what, { refused, text, told = [], goes = [], gone = [] }, done) {
    const asked = { kind, what, text, told, goes, gone, done, of: route().json };
    patch(refused.length > 0 ? { ...quiet, refused } : { ...quiet, asked });
    return refused.length === 0;
  }

  return {
    /** @param given {at, keep}: at empty for the point on show */
    askCut: async ({ at, keep }) => {
      await line.settleLine();
      const { alongM, problem } = cutPlace(at.trim());
      if (problem) {
        patch({ ...quiet, wrong: { at: 'cut', text: problem } });
        return false;
      }
      const { text, json } = route();
      const cut = cutLine(text, json, alongM, keep);
      return ask('cut', `cutting the line, its ${keep === 'before' ? 'first' : 'last'} part stays`, {
        ...cut, goes: cut.gone.map(({ said }) => said), gone: cut.gone.map(({ own }) => own.id),
      }, `The line is cut; its ${keep === 'before' ? 'first' : 'last'} part is the route.`);
    },
    /** @param choices as reversedRoute takes them */
    askReverse: async choices => {
      await line.settleLine();
      const { text, json } = route();
      const made = reversedRoute(text, json, choices);
      return ask('reverse', 'turning the line round', {
        ...made, goes: [...made.said, ...made.gone.map(({ said }) => `${said}: taken out.`)],
        // Nothing that was accepted or settled for the way before holds for the other.
        gone: hangingOn(json).map(({ own }) => own.id),
      }, 'The line runs the other way.');
    },
    /** @param file a File of the browser, or anything that has its name and arrayBuffer() */
    askJoin: async file => {
      await line.settleLine();
      const { text, json } = route();
      const read = await fileFromDisk(file, 'route').catch(problem => problem);
      if (read.json?.cresthaul !== 'route/1') {
        const why = read.json ? 'It is no route file of this program.' : `${read.title}. ${read.remedy ?? ''}`;
        patch({ ...quiet, wrong: { at: 'join', text: `${file.name}: ${why}` } });
        return false;
      }
      const made = joinedRoute(text, json, read.text, read.json);
      return ask('join', `joining ${read.json.name}`, { ...made, told: [...limitsTold(json), ...made.told ?? []] },
        `${read.json.name} is part of the route.`);
    },
    /** Does what was told, as long as the route is the one it was told of. */
    doAsked: async () => {
      const { asked } = store.get().lineEdit;
      if (asked.of !== route().json) {
        patch({ ...quiet, refused: ['The route has changed since this was told. Ask again.'] });
        return false;
      }
      patch(quiet);
      return line.sendLine(asked.what, asked.text, asked.told, { at: 0, said: asked.done }, asked.gone);
    },
    giveUpAsked: () => patch(quiet),
  };
}
