/** Puts units, axles and notches on the rig and off it, and begins another rig, by forms that ask for all it needs. */
import { el, focusHeld, replace } from '../../dom.js';
import { changesOf } from '../../rig/changes.js';

export function createRigChanges(actions) {
  const kind = el('select', { id: 'rig-change-kind', on: { change: ask } });
  const fields = el('div', { class: 'rig-asked' });
  const said = el('p', { id: 'rig-change-said', role: 'status' });
  const make = el('button', { type: 'submit' }, 'Make the change');
  const changing = el('form', { id: 'rig-change', on: { submit: change }, novalidate: true },
    el('label', { class: 'field' }, el('span', {}, 'Change'), kind), fields, make, said);
  const source = el('select', { name: 'source' });
  const name = el('input', { name: 'name', type: 'text', required: true, maxlength: '100', autocomplete: 'off' });
  const bare = el('input', { name: 'bare', type: 'checkbox' });
  const start = el('button', { type: 'submit' }, 'Begin');
  const beginning = el('form', { id: 'rig-begin', class: 'import-choice', on: { submit: begin } },
    el('label', { class: 'field' }, el('span', {}, 'From'), source),
    el('label', { class: 'field' }, el('span', {}, 'Its name'), name),
    el('label', { class: 'import-check' }, bare, el('span', {}, 'without load and weights')), start);
  const node = el('details', { id: 'rig-changes' },
    el('summary', {}, 'Begin another rig; add or take out axles, notches, boosters, jeeps, wheels that turn'),
    el('div', { class: 'rig-changes' },
      el('p', { class: 'fine-print' }, 'Another rig begins as a copy of one that is there. The rigs that come with the '
        + 'program are invented: tape your own over every figure.'),
      beginning,
      el('p', { class: 'fine-print' }, 'What is added is drawn as plainly as its figures say, and stands in the list '
        + 'below to be taped in full. An axle that is added makes the frame longer; one that is taken out leaves it.'),
      changing));
  const holdFocus = focusHeld(node, node.querySelector('summary'));
  let offered = [];
  let shape = null;

  function draw(rig, stance, rigs, busy) {
    offered = changesOf(rig.json, stance);
    const wanted = JSON.stringify([offered.map(({ key, title, asked }) => [key, title, asked]), rig.name, rigs]);
    if (busy) {
      holdFocus(true);
    }
    make.disabled = busy;
    start.disabled = busy;
    if (!busy) {
      holdFocus(false);
    }
    if (wanted === shape) {
      return;
    }
    shape = wanted;
    const chosen = kind.value;
    replace(kind, offered.map(({ key, title }) => el('option', { value: key }, title)));
    if (offered.some(({ key }) => key === chosen)) {
      kind.value = chosen;
    }
    replace(source, el('option', { value: '' }, `the rig on the page: ${rig.name}`),
      rigs.map(({ id, name: title }) => el('option', { value: id }, `invented: ${title}`)));
    ask();
  }

  const chosen = () => offered.find(({ key }) => key === kind.value);

  /** What the change asks for; what was typed stays as long as it is the same change. */
  function ask() {
    const typed = fields.dataset.change === kind.value ? given() : {};
    fields.dataset.change = kind.value;
    said.textContent = '';
    replace(fields, (chosen()?.asked ?? []).map(one => {
      const input = one.choices
        ? el('select', { name: one.key }, one.choices.map(([value, label]) => el('option', { value }, label)))
        : el('input', {
          name: one.key, type: 'text', autocomplete: 'off', maxlength: '120', placeholder: one.example,
          value: typed[one.key] ?? '',
        });
      return el('label', { class: 'field' }, el('span', {}, one.label), input);
    }));
  }

  const given = () => Object.fromEntries([...fields.querySelectorAll('input, select')]
    .map(input => [input.name, input.value]));

  function change(event) {
    event.preventDefault();
    const wanted = chosen();
    const missing = actions.changeRigBy(wanted.key, given());
    fields.querySelectorAll('[aria-invalid]').forEach(input => input.removeAttribute('aria-invalid'));
    said.textContent = missing === null ? '' : missing.sentence;
    if (missing === null) {
      fields.querySelectorAll('input').forEach(input => { input.value = ''; });
    } else {
      const input = fields.querySelector(`[name=${missing.key}]`);
      input.setAttribute('aria-invalid', 'true');
      input.setAttribute('aria-describedby', said.id);
      input.focus();
    }
  }

  async function begin(event) {
    event.preventDefault();
    if (await actions.beginRig({ source: source.value || null, name: name.value.trim(), bare: bare.checked })) {
      name.value = '';
      bare.checked = false;
    }
  }

  return { node, draw };
}
