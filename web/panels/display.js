/** Units, light or dark, print. */
import { el, replace } from '../dom.js';
import { THEMES } from '../preferences.js';

const UNIT_WORDS = { us: 'US customary', metric: 'metric' };
/** What is asked for after the report, and prints. */
const PRINTED = ['plan', 'comparison', 'passage', 'loads'];
const THEME_WORDS = { system: 'as the system', light: 'light', dark: 'dark' };

export function mountDisplay(root, { store, actions }) {
  let printing = false;
  let asked = false;
  const print = el('button', {
    id: 'print', type: 'button', on: {
      click: () => {
        printing = true;
        asked = false;
        replace(print, 'Loading what prints');
        printWhenReady(store.get());
      },
    },
  }, 'Print');
  const units = Object.keys(UNIT_WORDS).map(value => el('label', {},
    el('input', { type: 'radio', name: 'units', value, on: { change: () => store.set({ units: value }) } }),
    el('span', {}, UNIT_WORDS[value])));
  const theme = el('select', { id: 'theme', on: { change: () => store.set({ theme: theme.value }) } },
    THEMES.map(value => el('option', { value }, THEME_WORDS[value])));
  root.append(
    el('fieldset', { class: 'segmented' }, el('legend', { class: 'unseen' }, 'Units'), units),
    el('label', { class: 'field' }, el('span', {}, 'Paper'), theme),
    print);

  /** Everything that prints is asked for and there before it is printed, whatever has been looked at. */
  function printWhenReady(state) {
    if (!printing) {
      return;
    }
    const open = PRINTED.some(part => state[part].status === 'loading');
    if (!open && state.report !== null && state.comparison.status === 'none' && !asked) {
      asked = true;
      actions.drawComparison();
    } else if (!open) {
      printing = false;
      replace(print, 'Print');
      window.requestAnimationFrame(() => window.print());
    }
  }

  const stops = [store.watch(PRINTED, printWhenReady), store.watch(['units', 'theme'], state => {
    units.forEach(label => {
      const input = label.querySelector('input');
      input.checked = input.value === state.units;
    });
    theme.value = state.theme;
  })];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}
