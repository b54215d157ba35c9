/** Moves a piece of load along what it lies on: by a slider, by steps, by a distance that is typed. */
import { el, replace, say } from '../../dom.js';
import { lengthOf, tapeText } from '../../text/length.js';
import { piecesOf, refusalOfPlace } from '../../rig/piece.js';
import { behindWords, placeWords, stepOf } from '../../rig/piecewords.js';
import { keptFile, shiftOf } from '../../rig/moving.js';
import { stanceOnPage } from '../../rig/rigactions.js';

/** The pieces of the stance on show, where the rig that is kept has them. */
export function piecesOnPage({ inputs, whatIf }) {
  const stance = stanceOnPage({ inputs });
  const rig = whatIf?.base ?? keptFile(inputs?.rig);
  return rig ? piecesOf(rig.json, stance).map(piece => ({
    ...piece, stance, shift: shiftOf(whatIf, stance, piece.index),
  })) : [];
}

/** @param chosen () → index of the piece that is chosen; choose(index, name) chooses another */
export function createLoadMove(store, actions, { chosen, choose }) {
  const which = el('select', { id: 'piece-choice', on: { change: () => choose(Number(which.value)) } });
  const whichField = el('label', { class: 'field' }, el('span', {}, 'Piece'), which);
  const slider = el('input', { id: 'piece-at', type: 'range', step: 1, on: { input: slide } });
  const typed = el('input', { id: 'piece-typed', type: 'text', autocomplete: 'off', size: 12, maxlength: 40 });
  const refused = el('p', { id: 'piece-refused', class: 'rig-said', role: 'alert' });
  const told = el('p', { id: 'piece-said', class: 'plot-words' });
  const button = (id, words, click) => el('button', { id, type: 'button', on: { click } }, words);
  const ahead = button('piece-ahead', '', () => step(-1));
  const astern = button('piece-astern', '', () => step(1));
  const back = button('piece-back', 'Back to where the rig has it', () => moveTo(0));
  const form = el('form', { class: 'choosers', on: { submit: put } },
    el('label', { class: 'field' }, el('span', {}, 'Center of gravity behind the deck front'), typed),
    el('button', { type: 'submit' }, 'Move it there'));
  const node = el('div', { class: 'load-move' },
    whichField,
    el('label', { class: 'field' }, el('span', {}, 'Along the deck, as in the plot: to the rear is right'), slider),
    el('div', { class: 'choosers' }, astern, ahead, back), form, refused, told);

  const piece = () => piecesOnPage(store.get()).find(({ index }) => index === chosen());

  function moveTo(shift) {
    const { stance, index } = piece();
    say(refused, '');
    actions.movePiece(stance, index, shift);
  }

  /** The rear is on the right, as in the plot above. */
  function slide() {
    moveTo(Number(slider.value) * stepOf(store.get().units));
  }

  const step = sign => moveTo(piece().shift + sign * stepOf(store.get().units));

  function put(event) {
    event.preventDefault();
    const now = piece();
    const { units } = store.get();
    const behind = lengthOf(typed.value);
    const refusal = refusalOfPlace(now, behind, length => tapeText(length, units));
    say(refused, refusal ?? '');
    typed.setAttribute('aria-invalid', String(refusal !== null));
    if (refusal === null) {
      actions.movePiece(now.stance, now.index, behind - now.behind);
      typed.value = '';
    } else {
      typed.focus();
    }
  }

  function draw() {
    const state = store.get();
    const { units } = state;
    const pieces = piecesOnPage(state);
    const now = pieces.find(({ index }) => index === chosen());
    node.hidden = now === undefined;
    if (now === undefined) {
      return;
    }
    whichField.hidden = pieces.length < 2;
    replace(which, pieces.map(({ index, name }) => el('option', { value: index }, name)));
    which.value = now.index;
    const size = stepOf(units);
    slider.min = Math.ceil(now.least / size);
    slider.max = Math.floor(now.most / size);
    slider.value = Math.round(now.shift / size);
    slider.disabled = now.least === now.most;
    slider.setAttribute('aria-valuetext', behindWords(now, now.shift, units));
    typed.placeholder = tapeText(now.behind + now.shift, units);
    ahead.textContent = `${tapeText(size, units)} forward`;
    astern.textContent = `${tapeText(size, units)} back`;
    const rig = state.whatIf?.base ?? keptFile(state.inputs.rig);
    say(told, placeWords(rig.json, now.stance, now, now.shift, units));
  }

  return { node, draw };
}
