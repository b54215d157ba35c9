/** The line as a whole: cut, turned round, joined to another route. What goes with it is told by name before. */
import { el, replace } from '../../dom.js';
import { button, field } from '../parts/lineforms.js';

const radio = (name, value, label, attributes = {}) => el('label', { class: 'import-check' },
  el('input', { type: 'radio', name, value, ...attributes }), el('span', {}, label));
const check = (name, label) => el('label', { class: 'import-check' },
  el('input', { type: 'checkbox', name }), el('span', {}, label));

/** @returns {node, draw(state)} */
export function createLineParts({ store, actions }) {
  const cut = el('form', { id: 'line-cut', class: 'line-form', novalidate: true, on: { submit: askCut } },
    field('cut', 'Cut it at', { placeholder: 'the point on show' }),
    el('fieldset', { class: 'line-row' }, el('legend', {}, 'What stays'),
      radio('keep', 'before', 'The part before', { checked: true }), radio('keep', 'after', 'The part after')),
    el('button', { type: 'submit' }, 'Tell what goes'));
  const limits = check('limits', 'Its weight limits and permit hold the other way too');
  const stops = check('stops', 'Its stopping places can be used from the other side');
  const reverse = el('form', { id: 'line-reverse', class: 'line-form', on: { submit: askReverse } },
    el('fieldset', {}, el('legend', {}, 'The way back'),
      radio('paths', 'same', 'rolls on the paths that were surveyed: surveys are turned end for end'),
      radio('paths', 'other', 'has a lane of its own: nobody has surveyed it')),
    stops, limits,
    el('button', { type: 'submit' }, 'Tell what changes'));
  const file = el('input', {
    id: 'line-file', type: 'file', accept: '.geojson,.json,application/geo+json', on: { change: join },
  });
  const joining = el('div', { class: 'line-form' },
    el('label', { class: 'field file-field' }, el('span', {}, 'Route file to join, behind its end or before its start'),
      file, el('span', { class: 'line-wrong', id: 'line-at-join', 'data-at': 'join', role: 'status' })));
  const asked = el('div', { id: 'line-asked', tabindex: '-1', role: 'group', 'aria-label': 'What this comes to' });
  const part = (title, ...inside) => el('details', { class: 'line-part' }, el('summary', {}, title), inside);
  const node = el('div', { class: 'line-parts' },
    part('Cut the line', cut), part('Turn the line round', reverse), part('Join another route', joining), asked);
  let shown = null;

  const given = form => new FormData(form);

  function askCut(event) {
    event.preventDefault();
    actions.askCut({ at: given(cut).get('cut'), keep: given(cut).get('keep') });
  }

  function askReverse(event) {
    event.preventDefault();
    const said = given(reverse);
    actions.askReverse({ paths: said.get('paths'), stops: said.has('stops'), limits: said.has('limits') });
  }

  function join() {
    if (file.files[0]) {
      actions.askJoin(file.files[0]);
    }
    file.value = '';
  }

  const TITLES = {
    cut: ['Goes with the part that is cut away', 'Nothing goes with the part that is cut away.', 'Cut it'],
    reverse: ['Cannot be turned for certain, and is taken off', 'Everything can be turned.', 'Turn it round'],
    join: ['', '', 'Join it'],
  };

  function draw({ lineEdit, inputs }) {
    const now = lineEdit.asked;
    const features = inputs?.route.json.features ?? [];
    limits.hidden = !features.some(({ properties }) => properties?.limits) && inputs?.route.json.limits === undefined
      && inputs?.route.json.permit === undefined;
    stops.hidden = !features.some(({ properties }) => properties?.stop);
    if (now === shown) {
      return;
    }
    shown = now;
    if (now === null) {
      replace(asked);
      return;
    }
    const [head, none, label] = TITLES[now.kind];
    replace(asked,
      now.goes.length > 0 ? [el('p', { class: 'import-caveat' }, `${head} (Undo brings it back):`),
        el('ul', { id: 'line-goes' }, now.goes.map(text => el('li', {}, text)))] : none && el('p', {}, none),
      now.told.length > 0 && el('ul', {}, now.told.map(text => el('li', {}, text))),
      el('div', { class: 'line-row' },
        button(label, () => actions.doAsked(), { id: 'line-do' }),
        button('Leave it as it is', () => actions.giveUpAsked(), { id: 'line-leave' })));
    asked.focus();
  }

  return { node, draw };
}
