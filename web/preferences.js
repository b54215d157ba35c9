/** Remembers how the sheet is displayed, where the browser lets it. */
import { SYSTEMS } from './format.js';

export const THEMES = ['system', 'light', 'dark'];
const KEY = 'cresthaul.display';

/** What was remembered; anything unreadable counts as nothing. */
export function recall(window) {
  let kept = null;
  try {
    kept = JSON.parse(window.localStorage.getItem(KEY));
  } catch {
    // Storage is off, or holds something else: the defaults serve.
  }
  return {
    ...(SYSTEMS.includes(kept?.units) && { units: kept.units }),
    ...(THEMES.includes(kept?.theme) && { theme: kept.theme }),
  };
}

export function remember(window, { units, theme }) {
  try {
    window.localStorage.setItem(KEY, JSON.stringify({ units, theme }));
  } catch {
    // Storage is off: the choice lasts as long as the page.
  }
}
