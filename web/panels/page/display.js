/** Units, light or dark, print. */
import { el } from '../../dom.js';
import { THEMES } from '../../page/preferences.js';
import { mountPrinting } from './printing.js';

const UNIT_WORDS = { us: 'US customary', metric: 'metric' };
const THEME_WORDS = { system: 'as the system', light: 'light', dark: 'dark' };

export function mountDisplay(root, { store, actions }) {
  const printing = mountPrinting(document.getElementById('print-note'), { store, actions });
  const units = Object.keys(UNIT_WORDS).map(value => el('label', {},
    el('input', { type: 'radio', name: 'units', value, on: { change: () => store.set({ units: value }) } }),
    el('span', {}, UNIT_WORDS[value])));
  const theme = el('select', { id: 'theme', on: { change: () => store.set({ theme: theme.value }) } },
    THEMES.map(value => el('option', { value }, THEME_WORDS[value])));
  root.append(
    el('fieldset', { class: 'segmented' }, el('legend', { class: 'unseen' }, 'Units'), units),
    el('label', { class: 'field' }, el('span', {}, 'Paper'), theme),
    printing.button);

  const stop = store.watch(['units', 'theme'], state => {
    units.forEach(label => {
      const input = label.querySelector('input');
      input.checked = input.value === state.units;
    });
    theme.value = state.theme;
  });
  return { unmount: () => { stop(); printing.unmount(); root.replaceChildren(); } };
}
