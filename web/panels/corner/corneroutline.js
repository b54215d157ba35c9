/** The outlines of the corner on show, drawn over the map: pavement, other lanes, islands, obstacles. */
import { el, replace, say } from '../../dom.js';
import { round } from '../../text/format.js';
import { shifted } from '../../line/course.js';
import { SHAPES, shapeOf, shapesOf } from '../../corner/corneroutline.js';
import { featureOf } from '../../survey/survey.js';
import { createAerial } from './aerial.js';
import { field as fieldOf } from '../parts/lineforms.js';

/** How much of the map is shown around a corner of which nothing is drawn. */
const AROUND_M = 80;

const HOW = 'Press the map for every point of an outline, or write it, and close it. Begin with the pavement, from '
  + 'before the corner to past it, with the line of the route inside. How far the least exact edge may be off is '
  + 'taken off the room everywhere: a base map shows roads to a few meters at best, so that a corner drawn over one '
  + 'is seldom clear. A survey is what makes it so.';

const field = (name, label, attributes) => fieldOf(name, label, { within: 'outline', ...attributes });

export function mountCornerOutline(root, { store, actions }) {
  const kind = el('select', { id: 'outline-kind', on: { change: () => ask() } },
    SHAPES.map(({ kind: value, word }) => el('option', { value }, word)));
  const draws = button('', toggle, { id: 'outline-draw', 'aria-pressed': 'false' });
  const typed = el('form', { id: 'outline-typed', class: 'line-row', novalidate: true, on: { submit: enter } },
    field('coordinates', 'Latitude, longitude', { placeholder: '41.9003, -101.19' }),
    field('bearing', 'or direction', { placeholder: '45 or NE' }),
    field('distance', 'and distance', { placeholder: '80 ft' }), el('button', { type: 'submit' }, 'Draw this point'));
  const size = field('size', 'Radius', {});
  const name = field('name', 'Name', { maxlength: 100 });
  const accuracy = field('accuracy', 'An edge may be off by', { placeholder: '3 ft' });
  const source = field('source', 'Drawn from', { placeholder: 'base map', maxlength: 100 });
  const count = el('p', { id: 'outline-count', role: 'status' });
  const shape = el('form', { id: 'outline-shape', class: 'line-row', novalidate: true, on: { submit: close } },
    name, size, accuracy, source, el('button', { type: 'submit' }, 'Close it'),
    button('Take back the last point', () => actions.undrawLinePoint(), {}));
  const hint = el('p', { class: 'fine-print' }, 'A point that is drawn is dragged on the map, or moved by arrow keys '
    + 'there; how far its edge may be off, and what it is drawn from, is said below first.');
  const refused = el('div', { class: 'outline-refused', role: 'alert' });
  const list = el('ul', { id: 'outline-list' });
  const edit = el('details', { id: 'outline-edit' }, el('summary', {}, 'Outlines of this corner, over the map'),
    el('div', { class: 'survey-body' }, el('p', { class: 'survey-how' }, HOW), list,
      el('div', { class: 'line-row' }, el('label', { class: 'field' }, el('span', {}, 'What is drawn'), kind), draws),
      typed, count, hint, problemAt(), shape, refused, createAerial({ store }).node));
  root.append(edit);
  shape.addEventListener('input', () => actions.sayExact(given(shape)));
  edit.addEventListener('toggle', () => {
    if (!edit.open && store.get().lineEdit.mode === 'shape') {
      actions.stopShape();
    }
    draw(store.get());
  });
  let listed = null;
  let wasOn = false;

  function button(label, click, attributes) {
    return el('button', { type: 'button', ...attributes, on: { click } }, label);
  }

  function problemAt() {
    return el('span', { class: 'line-wrong', 'data-at': 'shape', id: 'outline-at-shape', role: 'status' });
  }

  async function toggle() {
    if (store.get().lineEdit.mode === 'shape') {
      actions.stopShape();
    } else {
      await actions.drawShape();
      store.set({ focus: { lonLats: around(store.get()) } });
      document.getElementById('plan-map').scrollIntoView({ block: 'nearest' });
    }
  }

  /** What the map shows then: all that is drawn, else the surroundings of the corner. */
  function around({ inputs, hazard }) {
    const { properties: own, geometry } = inputs.route.json.features[featureOf(inputs.route, hazard)];
    const drawn = shapesOf(own).flatMap(({ lonLats }) => lonLats);
    return drawn.length > 0 ? drawn
      : [[-AROUND_M, -AROUND_M], [AROUND_M, AROUND_M]].map(by => shifted(geometry.coordinates, by));
  }

  const given = form => Object.fromEntries([...new FormData(form)].map(([key, value]) => [key, value.trim()]));

  function enter(event) {
    event.preventDefault();
    if (actions.typeLinePoint(given(typed))) {
      typed.reset();
      typed.querySelector('input').focus();
    }
  }

  async function close(event) {
    event.preventDefault();
    const said = given(shape);
    if (await actions.closeShape({ kind: kind.value, ...said })) {
      // Drawn from the same, the next is as exact.
      shape.reset();
      shape.elements.accuracy.value = said.accuracy;
      shape.elements.source.value = said.source;
    }
  }

  /** What else this kind of shape says. */
  function ask() {
    const { asked, named } = shapeOf(kind.value);
    size.hidden = !asked;
    say(size.firstElementChild, asked?.label ?? '');
    name.hidden = !named;
  }

  function properties({ inputs, hazard }) {
    const index = hazard === null ? -1 : featureOf(inputs?.route, hazard);
    return index < 0 ? null : inputs.route.json.features[index].properties;
  }

  function draw(state) {
    const own = properties(state);
    root.hidden = own?.hazard !== 'corner' || own.template !== undefined;
    const { mode, drawn, wrong, working, refused: why } = state.lineEdit;
    const on = mode === 'shape';
    if (root.hidden) {
      if (on) {
        actions.stopShape();
      }
      return;
    }
    edit.open ||= on && !wasOn;
    wasOn = on;
    draws.setAttribute('aria-pressed', String(on));
    say(draws, on ? 'Done drawing' : 'Draw on the map');
    typed.hidden = shape.hidden = count.hidden = !on;
    say(count, working ? 'Judging the corner…' : `${drawn.length} ${drawn.length === 1 ? 'point' : 'points'} drawn.`);
    hint.hidden = !on || !own.pavement;
    replace(refused, on && why.map(text => el('p', {}, text)));
    // The fields of the picture tell what is wrong with them themselves.
    root.querySelectorAll(':is(#outline-typed, #outline-shape) .line-wrong, #outline-at-shape').forEach(span => {
      const text = on && wrong?.at === span.dataset.at ? wrong.text : '';
      say(span, text);
      span.parentElement.querySelector('input')?.setAttribute('aria-invalid', String(text !== ''));
    });
    root.querySelectorAll('button').forEach(one => { one.disabled = working; });
    if (listed !== own) {
      listed = own;
      replace(list, shapesOf(own).map(one => el('li', { class: 'line-row' },
        el('span', {}, `${one.name ? `${one.name}: ` : ''}${shapeOf(one.kind).word}, `
          + `${one.kind === 'pole' ? one.radius : round(one.lonLats.length - 1, 'points')}`),
        button('Take it out', () => actions.removeShape(one),
          { 'aria-label': `Take out ${one.name ?? ''} ${shapeOf(one.kind).word}` }))));
    }
  }

  ask();
  const stops = [store.watch(['lineEdit', 'inputs', 'hazard'], draw)];
  return { unmount: () => { stops.forEach(stop => stop()); edit.remove(); } };
}
