/** Every place of the sheet in driving order, to go to. */
import { el } from '../../dom.js';
import { ticksOf } from '../sheet.js';
import { title, verdictOf } from './line.js';

export function places({ kept, list, index, words, keeping, id, go }) {
  const ticks = keeping.ticks(id);
  let step = 0;
  return [
    el('h1', { tabindex: '-1' }, words.places),
    kept.sheet.legs.map(leg => [
      el('h2', {}, leg.name), el('p', { class: 'cab-line' }, leg.where.text),
      leg.entering.map(({ text }) => el('p', { class: 'cab-line' }, text)),
      el('ol', { class: 'cab-list' }, leg.entries.map(entry => {
        const at = step++;
        const own = ticksOf(entry, at);
        const done = own.filter(({ key }) => ticks.has(key)).length;
        return el('li', {}, el('button', {
          type: 'button', 'data-step': at, 'aria-current': at === index ? 'step' : null,
          on: { click: () => go('place', at) },
        },
        el('span', { class: 'figure' }, list[at].chainage.text), ' ', el('span', {}, title(entry)), ' ',
        own.length > 0 && el('span', { class: 'cab-count' }, `${done}/${own.length}`), ' ',
        verdictOf(entry, words)));
      }))]),
  ];
}
