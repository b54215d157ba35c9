/** Remembers how the sheet is displayed, where the browser lets it. */
import { SYSTEMS } from '../text/format.js';

export const THEMES = ['system', 'light', 'dark'];
const KEY = 'cresthaul.display';

const AUTHOR_KEY = 'cresthaul.author';

/** Of the driver's run sheet. */
export const LANGUAGES = [['en', 'English'], ['es', 'Español']];
const LANGUAGE_KEY = 'cresthaul.sheet-language';

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

/** The language that run sheets were made in last. */
export function recallLanguage(window) {
  let kept = null;
  try {
    kept = window.localStorage.getItem(LANGUAGE_KEY);
  } catch {
    // Storage is off: English serves.
  }
  return LANGUAGES.some(([value]) => value === kept) ? kept : 'en';
}

export function rememberLanguage(window, language) {
  try {
    window.localStorage.setItem(LANGUAGE_KEY, language);
  } catch {
    // Storage is off: the choice lasts as long as the page.
  }
}

/** Who said to be working here. */
export function recallAuthor(window) {
  try {
    return (window.localStorage.getItem(AUTHOR_KEY) ?? '').slice(0, 100);
  } catch {
    // Storage is off: nobody has said.
    return '';
  }
}

export function rememberAuthor(window, author) {
  try {
    window.localStorage.setItem(AUTHOR_KEY, author);
  } catch {
    // Storage is off: the name lasts as long as the page.
  }
}
