/** Work on the server that is asked after while it runs. No DOM. */

/** An id that nobody else uses. */
export const newId = () => Array.from(crypto.getRandomValues(new Uint8Array(16)), byte => byte.toString(16)).join('-');

const pause = ms => new Promise(resolve => { setTimeout(resolve, ms); });

/**
 * Asks how far something has come, again and again, for as long as it runs.
 *
 * @param ask () → a promise of what the server tells
 * @param isOn whether it runs and anybody wants to know
 * @param put takes what was told
 * @param everyMs how long is waited before each question
 */
export async function followed(ask, isOn, put, everyMs) {
  while (isOn()) {
    await pause(everyMs);
    if (!isOn()) {
      return;
    }
    try {
      const told = await ask();
      if (isOn()) {
        put(told);
      }
    } catch {
      // What is wrong with the server is told by the work itself.
    }
  }
}

/**
 * What is known of a check after another answer about it: places that were judged since are behind those known.
 *
 * @param before the same, or null
 */
export function joined(before, told) {
  if (told.state === 'none') {
    return before;
  }
  const from = before?.found ?? [];
  return { ...told, found: told.found.length > 0 ? [...from, ...told.found] : from };
}

/** How far a check has come, in words. */
export function checkingWords(progress) {
  switch (progress?.state) {
    case 'waiting': return 'Waiting for its turn';
    case 'checking': {
      const { found, places, cells, configurations, at } = progress;
      const now = at === null || found.length === places ? '' : `, at ${at} now`;
      return `${found.length} of ${places} places judged in all ${configurations} configurations `
        + `(${cells} of ${places * configurations}${now})`;
    }
    case 'planning': {
      const { asked = 0, answered = 0, at } = progress;
      const now = at === null ? '' : `, at ${at} now`;
      return asked === 0
        ? 'All places judged; looking for the way'
        : `All places judged; ${answered} of ${asked} questions of the plan answered${now}`;
    }
    default: return '';
  }
}
