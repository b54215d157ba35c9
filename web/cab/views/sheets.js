/** The sheets on this phone: use one, remove one, open one from a file. */
import { el } from '../../dom.js';

export function sheets({ keeping, words, id, use, remove, openFile, secure }) {
  const file = el('input', { id: 'cab-file', type: 'file', accept: '.json,application/json', on: {
    change: () => file.files[0] && openFile(file.files[0]),
  } });
  const kept = keeping.sheets().map(own => ({ own, file: keeping.sheet(own) })).filter(({ file: f }) => f !== null);
  return [
    el('h1', { tabindex: '-1' }, words.sheets),
    el('p', { class: 'cab-line' }, secure ? words.kept : words.notKept),
    kept.length === 0 && el('p', { id: 'cab-none' }, words.none),
    el('ul', { class: 'cab-list' }, kept.map(({ own, file: { sheet } }) => el('li', { 'data-sheet': own },
      el('p', {}, el('strong', {}, sheet.route.name), `, ${sheet.rig.name}, ${sheet.rig.stance}`),
      el('p', { class: sheet.banner.drivable ? 'cab-line' : 'cab-alert' }, sheet.banner.headline),
      el('div', { class: 'cab-buttons' },
        el('button', { type: 'button', class: 'cab-use', 'aria-current': own === id ? 'true' : null,
          on: { click: () => use(own) } }, words.use),
        el('button', { type: 'button', class: 'cab-remove', on: { click: () => remove(own) } }, words.remove))))),
    el('label', { class: 'cab-field' }, words.openFile, file),
  ];
}
