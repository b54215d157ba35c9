/** The line of the route: drawn anew, drawn on, its points moved, put in and taken out, by forms and on the map. */
import { el, focusHeld, replace, say } from '../../dom.js';
import { axisUnitM, axisUnitName, chainage, round } from '../../text/format.js';
import { apartM } from '../../line/course.js';
import { coordinatesText } from '../../line/typed.js';
import { nearestChainage } from '../../line/places.js';
import { button, field } from '../parts/lineforms.js';
import { createLineParts } from './lineparts.js';

const MODES = [
  ['points', 'Change its points'], ['on', 'Draw on from the end'], ['new', 'Draw a new line'], ['off', 'Done'],
];
const TOWARD = [['north', '↑'], ['west', '←'], ['east', '→'], ['south', '↓']];
/** How far an arrow moves a point, feet or meters. */
const STEPS = [1, 10, 100];

const HOW = {
  off: 'Choose what to do. The map above shows it, and every change can be undone.',
  points: 'Press a point on the map, or go from one to the next here. Drag it, or move it by the arrows; a plus '
    + 'between two points becomes one. What hangs on the line stays where it is: a change that would leave it beside '
    + 'the line, or pass it in another direction than it was measured in, is refused by its name.',
  on: 'Press the map for every point, or write it. The new leg begins where the line ends; what lies on it, nobody has '
    + 'surveyed.',
  new: 'Press the map for every point, or write it. The new line becomes a route of its own, with no places on it yet; '
    + 'the route before comes back by Undo.',
};

const textAt = (wrong, at) => (wrong?.at === at ? wrong.text : '');

export function mountLine(root, { store, actions }) {
  const modes = MODES.map(([mode, label]) => button(label, () => go(mode),
    { class: 'line-mode', 'data-mode': mode, 'aria-pressed': 'false' }));
  const how = el('p', { class: 'line-how' });
  const point = el('p', { id: 'line-point' });
  const number = el('input', { id: 'line-number', type: 'number', min: 1, on: { change: jump } });
  const step = el('select', { id: 'line-step' });
  const single = el('div', { class: 'line-row' },
    button('‹ Point before', () => actions.selectLinePoint(now().at - 1), { id: 'line-before' }),
    el('label', { class: 'field' }, el('span', {}, 'Point'), number),
    button('Point after ›', () => actions.selectLinePoint(now().at + 1), { id: 'line-after' }),
    button('Show it on the map', show, { id: 'line-show' }),
    button('Put a point behind it', () => actions.insertLinePoint(now().at), { id: 'line-insert' }),
    button('Take it out', () => actions.removeLinePoint(now().at), { id: 'line-remove' }));
  const arrows = el('div', { class: 'line-row', role: 'group', 'aria-label': 'Move the point' },
    el('label', { class: 'field' }, el('span', {}, 'Each arrow moves it by'), step),
    TOWARD.map(([toward, sign]) => button(sign, () => actions.stepLinePoint(toward),
      { class: 'line-nudge', 'data-toward': toward, 'aria-label': `Move ${toward}`, title: `Move ${toward}` })));
  const enter = el('button', { type: 'submit' });
  const typed = el('form', { id: 'line-typed', class: 'line-row', novalidate: true, on: { submit } },
    field('coordinates', 'Latitude, longitude', { placeholder: '41.9003, -101.19' }),
    field('bearing', 'or direction', { placeholder: '45 or NE' }),
    field('distance', 'and distance', { placeholder: '250 ft' }),
    enter);
  const name = el('input', { id: 'line-name', type: 'text', maxlength: 100, autocomplete: 'off', value: '' });
  const finish = button('', () => actions.finishLine(name.value.trim() || name.placeholder), { id: 'line-finish' });
  const drawing = el('div', { class: 'line-row' },
    button('Take back the last point', () => actions.undrawLinePoint(), { id: 'line-undraw' }),
    el('label', { class: 'field' }, el('span', {}, 'Name'), name), finish);
  const parts = createLineParts({ store, actions });
  const said = el('p', { id: 'line-said', role: 'status', tabindex: '-1' });
  const refused = el('div', { id: 'line-refused', role: 'alert' });
  const told = el('ul', { id: 'line-told' });
  const open = el('details', { id: 'line-edit' }, el('summary', {}, 'Draw the line, or change it'),
    el('div', { class: 'import-body' },
      el('div', { class: 'line-row', role: 'group', 'aria-label': 'What to do with the line' }, modes),
      how, point, single, arrows, typed, drawing, parts.node, said, refused, told));
  root.append(open);
  const holdFocus = focusHeld(open, said);
  open.addEventListener('toggle', () => {
    if (!open.open && !['off', 'shape'].includes(now().mode)) {
      actions.editLine('off');
    }
  });
  step.addEventListener('change', () => actions.setLineStep(Number(step.value)));

  const now = () => store.get().lineEdit;

  async function go(mode) {
    await actions.editLine(mode);
    if (mode !== 'off') {
      document.getElementById('plan-map').scrollIntoView({ block: 'nearest' });
    }
  }

  function jump() {
    if (number.value !== '') {
      actions.selectLinePoint(Math.round(Number(number.value)) - 1);
    }
  }

  function show() {
    const { points } = actions.lineParts();
    const around = points.slice(Math.max(0, now().at - 1), now().at + 2);
    store.set({ focus: { lonLats: around.map(({ lonLat }) => lonLat) } });
    document.getElementById('plan-map').scrollIntoView({ block: 'nearest' });
  }

  async function submit(event) {
    event.preventDefault();
    const given = Object.fromEntries([...new FormData(typed)].map(([key, value]) => [key, value.trim()]));
    if (await actions.typeLinePoint(given)) {
      typed.reset();
      typed.querySelector('input').focus();
    }
  }

  let before = 'off';

  function draw({ lineEdit, line, units, inputs }) {
    const { at, drawn, moved, wrong, working, told: news } = lineEdit;
    // Outlines of a corner are drawn by a form of their own.
    const mode = lineEdit.mode === 'shape' ? 'off' : lineEdit.mode;
    root.dataset.mode = mode;
    root.dataset.refused = String(lineEdit.refused.length);
    const isDrawing = mode === 'on' || mode === 'new';
    // What was drawn before the page was left is gone on with where it can be seen.
    open.open ||= isDrawing && before === 'off';
    before = mode;
    modes.forEach(one => one.setAttribute('aria-pressed', String(one.dataset.mode === mode && mode !== 'off')));
    modes.at(-1).hidden = mode === 'off';
    say(how, HOW[mode]);
    single.hidden = arrows.hidden = mode !== 'points';
    typed.hidden = mode === 'off';
    drawing.hidden = !isDrawing;
    say(enter, isDrawing ? 'Draw this point' : 'Move the point there');
    say(said, working ? 'Judging the route on this line…' : lineEdit.said);
    replace(refused, lineEdit.refused.map(text => el('p', {}, text)));
    replace(told, news.map(text => el('li', {}, text)));
    told.hidden = news.length === 0;
    parts.node.hidden = isDrawing;
    parts.draw({ lineEdit, inputs });
    open.querySelectorAll('.line-wrong').forEach(span => {
      const text = mode !== 'off' || lineEdit.mode === 'off' ? textAt(wrong, span.dataset.at) : '';
      say(span, text);
      span.previousElementSibling.setAttribute('aria-invalid', String(text !== ''));
    });
    if (working) {
      holdFocus(true);
    }
    open.querySelectorAll('button').forEach(one => { one.disabled = working; });
    if (!working) {
      holdFocus(false);
    }
    if (inputs === null) {
      return;
    }
    if (isDrawing) {
      const legs = new Set(actions.lineParts().lines.map(({ feature }) => feature)).size;
      name.placeholder = mode === 'on' ? `Leg ${legs + 1}` : 'New route';
      say(finish, mode === 'on' ? 'Add this leg' : 'Make it the route');
      const length = drawn.slice(1).reduce((sum, lonLat, k) => sum + apartM(drawn[k], lonLat), 0);
      say(point, `${drawn.length} ${drawn.length === 1 ? 'point' : 'points'} drawn, ${chainage(length, units)}.`);
    } else if (mode === 'points') {
      const { points } = actions.lineParts();
      const lonLat = moved ?? points[at].lonLat;
      number.max = points.length;
      number.value = at + 1;
      const where = line ? `, at ${chainage(nearestChainage(line.line, points[at].lonLat), units)}` : '';
      say(point, `Point ${at + 1} of ${points.length}${where}: ${coordinatesText(lonLat)}`
        + `${points[at].at.length > 1 ? '; two legs meet there' : ''}.`);
    } else {
      say(point, '');
    }
  }

  const stops = [
    store.watch(['units'], ({ units }) => {
      replace(step, STEPS.map(count =>
        el('option', { value: count * axisUnitM(units), selected: count === 10 }, round(count, axisUnitName(units)))));
      actions.setLineStep(Number(step.value));
    }),
    store.watch(['lineEdit', 'line', 'units', 'inputs'], draw),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); open.remove(); } };
}
