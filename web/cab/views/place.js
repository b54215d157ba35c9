/** One place on one screen: what it is, what to do before, how to pass it, what after. */
import { el } from '../../dom.js';
import { SECTIONS, tickKey } from '../sheet.js';
import { line, title, verdictOf } from './line.js';

export function place(context) {
  const { list, at, words, go, setStep, index } = context;
  const entry = list[at];
  if (!entry) {
    return [el('h1', { tabindex: '-1' }, words.nothing)];
  }
  return [
    el('section', { id: 'cab-place', 'data-step': at, 'data-hazard': entry.id },
      el('h1', { tabindex: '-1' }, title(entry)),
      el('p', { class: 'cab-distance' }, el('strong', {}, `${words.at} ${entry.chainage.text}`), ' ',
        verdictOf(entry, words)),
      entry.landmark && el('p', { class: 'cab-landmark' }, `${words.landmark}: ${entry.landmark}`),
      entry.comes.map((told, n) => el('div', { class: told.code === 'blocked' ? 'cab-alert' : null },
        line(told, tickKey(at, 'comes', n), context))),
      SECTIONS.filter(section => entry[section].length > 0).map(section => [
        el('h2', {}, words[section]),
        entry[section].map((told, n) => line(told, tickKey(at, section, n), context))]),
      entry.cautions.length > 0 && el('details', { class: 'cab-fold' }, el('summary', {}, words.cautions),
        entry.cautions.map(text => el('p', { class: 'cab-line' }, text)))),
    el('div', { class: 'cab-buttons' },
      el('button', { type: 'button', id: 'cab-before', disabled: at === 0, on: { click: () => go('place', at - 1) } },
        words.back),
      at === index && el('button', { type: 'button', id: 'cab-passed', on: {
        click: () => {
          setStep(index + 1);
          go('next');
        },
      } }, words.passed),
      at !== index && el('button', {
        type: 'button', id: 'cab-following', disabled: at + 1 >= list.length,
        on: { click: () => go('place', at + 1) },
      }, words.following)),
  ];
}
