/** Weight and place of a piece from scale tickets: the form, what follows from it, and what does not. */
import { el, replace } from '../../dom.js';
import { weight } from '../../text/format.js';
import { tapeText } from '../../text/length.js';
import { pieceOf, weighedGroups, withPiece } from '../../rig/tickets.js';
import { valueAt, xOf } from '../../rig/frame.js';

/** How good a ticket is of itself when the stance does not say: two parts in a hundred, this program's choice. */
const USUAL_SHARE = 0.02;

export function createRigTickets(actions) {
  const piece = el('select', { name: 'piece', 'aria-label': 'Piece that was loaded between the two weighings' });
  const rows = el('tbody', {});
  const outcome = el('div', { id: 'rig-tickets-outcome', role: 'status', tabindex: '-1' });
  const put = el('button', { id: 'rig-tickets-put', type: 'button', disabled: true, on: { click: take } }, 'Put it in');
  const form = el('form', { id: 'rig-tickets-form', on: { submit: event => event.preventDefault(), input: work } },
    el('label', { class: 'field' }, el('span', {}, 'Piece that was loaded between the two weighings'), piece),
    el('table', { class: 'rig-table' },
      el('caption', { class: 'unseen' }, 'Scale tickets'),
      el('thead', {}, el('tr', {}, ['Axles', 'Empty', 'Loaded'].map(word => el('th', { scope: 'col' }, word)))),
      rows),
    outcome, el('p', {}, put));
  const node = el('details', { id: 'rig-tickets' }, el('summary', {}, 'A piece from scale tickets'),
    el('div', { class: 'rig-changes' },
      el('p', { class: 'fine-print' }, 'Every axle group by itself, on level ground, all axles down, booster '
        + 'trailing, before and after the piece was loaded, nothing else changed between. Written as 17,500 lb, '
        + '8600 kg or 8.6 t.'),
      form));
  let now = null;
  let shape = null;

  function draw(rig, stance, units) {
    now = { rig, stance, units };
    const groups = weighedGroups(rig.json, stance);
    const pieces = valueAt(rig.json, ['stances', stance, 'weights', 'pieces']) ?? [];
    const wanted = JSON.stringify([groups.map(({ key }) => key), pieces.map(({ name }) => name)]);
    if (wanted !== shape) {
      shape = wanted;
      const typed = given();
      replace(piece, pieces.map(({ name }, index) => el('option', { value: index }, name)));
      replace(rows, groups.map(({ key, name }) => el('tr', {},
        el('th', { scope: 'row' }, name),
        ['empty', 'loaded'].map(when => el('td', {}, el('input', {
          type: 'text', class: 'rig-input', name: `${key}/${when}`, 'aria-label': `${name}, ${when}`,
          autocomplete: 'off', maxlength: '40', value: typed[key]?.[when] ?? '',
        }))))));
    }
    work();
  }

  /** Key of a group → {empty, loaded}, as typed. */
  function given() {
    const tickets = {};
    for (const { name, value } of rows.querySelectorAll('input')) {
      const [key, when] = name.split('/');
      tickets[key] = { ...tickets[key], [when]: value.trim() };
    }
    return tickets;
  }

  function found() {
    const { rig, stance } = now;
    const accuracy = valueAt(rig.json, ['stances', stance, 'weights', 'accuracy']);
    const share = /^[\d.]+ ?%$/.test(accuracy ?? '') ? Number.parseFloat(accuracy) / 100 : USUAL_SHARE;
    return pieceOf(rig.json, stance, given(), share);
  }

  function work() {
    const { rig, stance, units } = now;
    const result = found();
    const pieces = valueAt(rig.json, ['stances', stance, 'weights', 'pieces']) ?? [];
    const same = result.kg !== undefined && pieces.length > 0
      && withPiece(rig.text, stance, Number(piece.value), result) === rig.text;
    put.disabled = result.kg === undefined || pieces.length === 0 || same;
    const typed = Object.values(given()).some(({ empty, loaded }) => empty || loaded);
    replace(outcome, result.missing ? typed && el('p', {}, `Not determined yet: both tickets of the ${result.missing}.`)
      : result.lighter ? el('p', {}, 'Loaded, all axles together weigh no more than empty.')
        : [...sentences(result, units, pieces.length, kingpinToDeck(rig.json, stance)),
          same && 'The list says so already.'].filter(Boolean).map(one => el('p', {}, one)));
  }

  function take() {
    actions.putPiece(Number(piece.value), found());
    // What is in the rig cannot be put there again: the button is off now.
    outcome.focus({ preventScroll: true });
  }

  return { node, draw };
}

const kingpinToDeck = (json, stance) => xOf(json, ['stances', stance, 'trailer', 'kingpin', 'x'])
  - xOf(json, ['stances', stance, 'trailer', 'deckFront', 'x']);

function sentences({ kg, kgGood, arm, armGood, steer }, units, pieces, deck) {
  const round = value => tapeText(Math.round(value / 25.4e9) * 25.4e9, units);
  return [
    `The piece weighs ${weight(kg, units)} (± ${weight(kgGood, units)}), and its center of gravity is `
      + `${round(arm)} behind the kingpin, ${round(arm - deck)} behind the deck front (± ${round(armGood)}), as good `
      + 'as the tickets are.',
    steer && Math.abs(steer.ticketKg - steer.levelKg) > steer.goodKg
      && `The steer axle gained ${weight(steer.ticketKg, units)}; by where the fifth wheel is it should have gained `
        + `${weight(steer.levelKg, units)}, give or take ${weight(steer.goodKg, units)}: look at the tickets of steer `
        + 'and drive axles, and at the place of the fifth wheel.',
    'Not determined by tickets: how high its center of gravity is, and how far it is to one side. They stay as they '
      + 'are in the list.',
    pieces === 0 && 'This stance weighs no piece to put it in: weights of tractor, trailer and gooseneck are needed '
      + 'too, and cannot be told from these tickets.',
  ].filter(Boolean);
}
