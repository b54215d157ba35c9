/** Stuck on a crossing: people first, then whom to call with which number. What is not known is said to be so. */
import { el } from '../../dom.js';
import { likelyCrossing, telephone } from '../sheet.js';

export function stuck(context) {
  const { kept, list, index, words, crossing, chooseCrossing, go } = context;
  const card = kept.sheet.cards.find(({ about }) => about === 'stuck');
  const [people, call, ...others] = card?.lines ?? [];
  const chosen = crossing ?? likelyCrossing(kept, list, index);
  const here = kept.sheet.crossings.find(({ hazard }) => hazard === chosen) ?? null;
  const choice = el('select', { id: 'cab-crossing', on: { change: () => chooseCrossing(choice.value) } },
    kept.sheet.crossings.map(({ hazard, name }) => el('option', { value: hazard }, `${hazard} ${name}`)));
  choice.value = chosen ?? '';
  return [
    el('section', { id: 'cab-stuck', 'data-hazard': chosen },
      el('h1', { tabindex: '-1' }, card?.title ?? words.stuck),
      people && el('p', { class: 'cab-first' }, people.text),
      call && el('p', { class: 'cab-first' }, call.text),
      kept.sheet.crossings.length === 0 ? el('p', {}, words.noCrossing)
        : el('label', { class: 'cab-field' }, words.whichCrossing, choice),
      here && el('p', { class: 'cab-number' }, `${words.crossingNumber}: `,
        el('strong', { 'data-number': here.number }, here.number ?? words.numberUnknown)),
      here && (here.phone
        ? el('a', { class: 'cab-call', id: 'cab-call', href: telephone(here.phone) }, `${words.call} ${here.phone}`)
        : el('p', { class: 'cab-alert', id: 'cab-no-phone' }, words.callUnknown)),
      el('a', { class: 'cab-call', id: 'cab-call-911', href: 'tel:911' }, `${words.call} 911`),
      others.map(({ text, source }) => el('p', { class: 'cab-line' }, text,
        source && el('span', { class: 'cab-source' }, ` ${source}`))),
      words.translated && el('p', { class: 'cab-line' }, words.translated)),
    el('div', { class: 'cab-buttons' },
      el('button', { type: 'button', id: 'cab-leave', class: 'wide', on: { click: () => go('next') } }, words.leave)),
  ];
}
