/** Work that is in no project, as a text that a browser can keep: files, where somebody looks, every step. No DOM. */
import { encode } from '../page/address.js';
import { readFile } from '../exchange/files.js';
import { hasLimits, NO_LIMITS } from '../limits/limits.js';
import { keptFile } from '../rig/moving.js';

const FORM = 'cresthaul-work/1';

/**
 * @param history the steps, as writeHistory gives them
 * @param withMap whether the base map is kept too: without it the route is drawn alone
 */
export function writeWork(state, history, withMap) {
  const { inputs, revisions, undone, baseMap } = state;
  const part = ({ id, name, text }) => ({ id, name, text });
  return JSON.stringify({
    cresthaul: FORM, name: inputs.route.json?.name ?? inputs.route.name,
    what: revisions.at(-1)?.what ?? undone[0]?.what ?? '', view: encode(state), history,
    files: {
      route: part(inputs.route), rig: part(keptFile(inputs.rig)),
      ...(hasLimits(inputs) && { limits: part(inputs.limits) }),
    },
    ...(withMap && baseMap && { baseMap }),
  });
}

/** What such a text says: {name, what, view, history, files, baseMap}; null for anything else. */
export function readWork(text) {
  try {
    const { cresthaul, name, what, view, history, files, baseMap } = JSON.parse(text);
    if (cresthaul !== FORM || typeof history !== 'string') {
      return null;
    }
    const file = ({ id, name: called, text: own }) => readFile(own, called, id);
    return {
      name: String(name), what: String(what), view: String(view), history,
      files: {
        route: { ...file(files.route), baseMap: baseMap ?? null }, rig: file(files.rig),
        limits: files.limits ? file(files.limits) : NO_LIMITS,
      },
    };
  } catch {
    return null;
  }
}
