/** The first page of the cab: what comes next, how far, what to set, and what follows. */
import { el } from '../../dom.js';
import { ticksOf, sinceM, told } from '../sheet.js';
import { distanceLeft, room } from '../../text/format.js';
import { along } from '../position.js';
import { title, verdictOf } from './line.js';

export function strip(context) {
  const { list, index, words, keeping, id, go, setStep } = context;
  const entry = list[index];
  if (!entry) {
    return [el('h1', { tabindex: '-1' }, words.nothing),
      el('button', { type: 'button', id: 'cab-back', on: { click: () => setStep(list.length - 1) } }, words.back)];
  }
  const ticks = ticksOf(entry, index);
  const kept = keeping.ticks(id);
  const done = ticks.filter(({ key }) => kept.has(key)).length;
  const { lines } = context.kept.sheet.banner;
  return [
    lines.length > 0 && el('details', { class: 'cab-fold', id: 'cab-resolve' },
      el('summary', {}, `${words.resolve} (${lines.length})`), lines.map(text => el('p', { class: 'cab-line' }, text))),
    el('section', { id: 'cab-next', 'data-step': index, 'data-hazard': entry.id },
      el('h1', { tabindex: '-1' }, el('small', {}, `${words.next} `), stepWord(entry, words), title(entry)),
      el('p', { class: 'cab-distance' }, el('strong', {}, `${words.at} ${entry.chainage.text}`), ' ',
        since(context), ' ', verdictOf(entry, words)),
      whereNow(context),
      entry.landmark && el('p', { class: 'cab-landmark' }, `${words.landmark}: ${entry.landmark}`),
      el('ul', { class: 'cab-told' }, told(entry).map(({ text, code }) =>
        el('li', { class: code === 'blocked' ? 'cab-alert' : null }, text)))),
    el('div', { class: 'cab-buttons' },
      el('button', { type: 'button', id: 'cab-open', class: 'wide', on: { click: () => go('place', index) } },
        words.open, ticks.length > 0 && ` (${done}/${ticks.length} ${words.done})`),
      el('button', { type: 'button', id: 'cab-back', disabled: index === 0, on: { click: () => setStep(index - 1) } },
        words.back),
      el('button', { type: 'button', id: 'cab-passed', on: { click: () => setStep(index + 1) } }, words.passed)),
    index + 1 < list.length && el('section', { class: 'cab-then' }, el('h2', {}, words.then),
      el('ol', {}, list.slice(index + 1, index + 4).map((other, n) => el('li', {},
        el('button', { type: 'button', on: { click: () => go('place', index + 1 + n) } },
          el('span', { class: 'figure' }, other.chainage.text), ' ',
          el('span', {}, stepWord(other, words), title(other)), ' ', verdictOf(other, words)))))),
  ];
}

const stepWord = ({ step, id }, words) => (id === null && ['raise', 'lower', 'depart', 'arrive'].includes(step)
  ? '' : words.steps[step] && `${words.steps[step]}: `);

/** How far it is from the step before: the trip meter will do. */
function since({ list, index, words, kept }) {
  const distanceM = sinceM(list, index);
  return distanceM === null ? null
    : words.since(distanceLeft(distanceM, kept.sheet.units), title(list[index - 1]));
}

/** The phone's own word on it, where the driver lets it; it moves nothing. */
function whereNow({ list, index, words, kept, position }) {
  if (position.status === 'off') {
    return null;
  }
  if (position.status !== 'on') {
    return el('p', { id: 'cab-position', role: 'status' },
      position.status === 'refused' ? words.positionRefused : words.positionWait);
  }
  const { units } = kept.sheet;
  const aimM = list[index].chainageM;
  const here = along(kept.line, position.at, index === 0 ? aimM : (aimM + list[index - 1].chainageM) / 2);
  const leftM = here === null ? null : aimM - here.chainageM;
  return el('p', { id: 'cab-position', role: 'status', 'data-left-m': here?.isOn ? leftM : null },
    here === null || !here.isOn ? words.offRoute : leftM < -position.at.accuracyM ? words.past
      : el('strong', {}, words.left(distanceLeft(Math.max(0, leftM), units))),
    ` ${words.accuracy(room(position.at.accuracyM, units, 'up'))}`);
}
