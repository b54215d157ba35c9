/** Pieces of load in the side view, to be taken by mouse, finger or arrow keys and moved along what they lie on. */
import { set, svg } from '../../dom.js';
import { behindWords, longStepOf, movedWords, stepOf } from '../../rig/piecewords.js';

/** A finger needs this much, pixels. */
const TOUCH_PX = 44;

/**
 * @param node the drawing they are in
 * @param move (piece, shift) puts one elsewhere, choose(index) makes it the one that is asked about
 */
export function createPieceHandles(node, { move, choose }) {
  const layer = svg('g', { class: 'load-handles' });
  const handles = new Map();
  let scale = 1;
  let units = 'us';
  let held = null;

  function handleOf({ index }) {
    const box = svg('rect', { class: 'piece-box' });
    const arrows = svg('path', { class: 'piece-arrows' });
    const handle = {
      box, arrows, piece: null,
      node: svg('g', {
        class: 'piece-handle', role: 'slider', tabindex: '0', 'data-piece': index,
        on: {
          pointerdown: event => take(event, handle), keydown: event => press(event, handle), focus: () => choose(index),
        },
      }, box, arrows),
    };
    return handle;
  }

  function take(event, handle) {
    if (event.button !== 0) {
      return;
    }
    // The handle gets the focus, and not the text beside it a selection.
    event.preventDefault();
    handle.node.focus({ preventScroll: true });
    held = { pointer: event.pointerId, handle, fromX: event.clientX, shift: handle.piece.shift };
    node.setPointerCapture(event.pointerId);
  }

  node.addEventListener('pointermove', event => {
    if (held?.pointer === event.pointerId) {
      const size = stepOf(units);
      const back = (held.fromX - event.clientX) / scale * 1e12;
      move(held.handle.piece, Math.round((held.shift + back) / size) * size);
    }
  });
  for (const end of ['pointerup', 'pointercancel']) {
    node.addEventListener(end, event => {
      if (held?.pointer === event.pointerId) {
        held = null;
      }
    });
  }

  function press(event, { piece }) {
    const { key, shiftKey, altKey, ctrlKey, metaKey } = event;
    const size = shiftKey ? longStepOf(units) : stepOf(units);
    const to = {
      ArrowLeft: piece.shift + size, ArrowDown: piece.shift + size, ArrowRight: piece.shift - size,
      ArrowUp: piece.shift - size, PageDown: piece.shift + longStepOf(units),
      PageUp: piece.shift - longStepOf(units), Home: piece.most, End: piece.least,
    }[key];
    if (to !== undefined && !altKey && !ctrlKey && !metaKey) {
      event.preventDefault();
      move(piece, to);
    }
  }

  /**
   * @param drawn [{piece, left, right, top, bottom}], pixels, where each is drawn now; the larger first, so that none
   *        lies beneath another's room for a finger
   */
  function draw(drawn, chosen, drawing) {
    ({ scale, units } = drawing);
    const sized = [...drawn].sort((a, b) => (b.right - b.left) - (a.right - a.left));
    const keys = sized.map(({ piece }) => piece.index);
    if (keys.join() !== [...handles.keys()].join()) {
      handles.clear();
      sized.forEach(({ piece }) => handles.set(piece.index, handleOf(piece)));
      layer.replaceChildren(...[...handles.values()].map(handle => handle.node));
    }
    sized.forEach(one => place(handles.get(one.piece.index), one, one.piece.index === chosen));
  }

  function place(handle, { piece, left, right, top, bottom }, isChosen) {
    handle.piece = piece;
    const [wide, high] = [Math.max(TOUCH_PX, right - left), Math.max(TOUCH_PX, bottom - top)];
    const [x, y] = [(left + right) / 2, bottom - high / 2];
    set(handle.box, { x: x - wide / 2, y: bottom - high, width: wide, height: high });
    const span = Math.min(16, wide / 2 - 4);
    set(handle.arrows, {
      d: `M${x - span} ${y}H${x + span}M${x - span + 5} ${y - 5}l-5 5l5 5M${x + span - 5} ${y - 5}l5 5l-5 5`,
    });
    const size = stepOf(units);
    set(handle.node, {
      'data-chosen': isChosen, 'data-shift': piece.shift, 'aria-disabled': piece.least === piece.most || null,
      'aria-label': `${piece.name}, along the deck`,
      'aria-valuemin': Math.floor(-piece.most / size), 'aria-valuemax': Math.ceil(-piece.least / size),
      'aria-valuenow': Math.round(-piece.shift / size),
      'aria-valuetext': `${behindWords(piece, piece.shift, units)}${piece.shift === 0 ? ''
        : `, ${movedWords(piece.shift, units)} than in the rig`}`,
    });
  }

  return { layer, draw };
}
