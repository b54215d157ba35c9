/** Set-ups, what is done before leaving, and how things are done: long cards, folded. */
import { el } from '../../dom.js';
import { tickKey } from '../sheet.js';
import { line } from './line.js';

export function cards(context) {
  const { kept: { sheet }, words, list, index } = context;
  const now = (list[index] ?? list[list.length - 1])?.configuration;
  return [
    el('h1', { tabindex: '-1' }, words.cards),
    fold(words.beforeLeaving, sheet.first.map((told, n) => line(told, tickKey('first', n), context)), index === 0),
    sheet.setUps.map((card, c) => fold(card.title,
      card.lines.map((told, n) => line(told, tickKey('set', c, n), context)), card.configuration === now)),
    sheet.cards.filter(({ about }) => about !== 'stuck').map((card, c) => fold(card.title,
      card.lines.map((told, n) => line(told, tickKey('card', c, n), context)))),
    fold(words.cautions, [
      words.translated && el('p', { class: 'cab-alert' }, words.translated),
      sheet.cautions.map(text => el('p', { class: 'cab-line' }, text))]),
  ];
}

const fold = (name, content, open = false) =>
  el('details', { class: 'cab-fold', open }, el('summary', {}, name), content);
