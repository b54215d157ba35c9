/** The weight limits of the whole route: which are in force, the file of them, and that file as a form. */
import { el, replace, say } from '../../dom.js';
import { limitsFileName } from '../../exchange/filenames.js';
import { beginning, beyondForm, formOf, limitsOf, LISTS, SINGLE, withForm } from '../../limits/limits.js';
import { saveText } from '../parts/saving.js';

export function mountLimits(root, { store, actions }) {
  const summary = el('span', { class: 'inputs-summary', id: 'limits-in-force' });
  const words = el('p', {});
  const file = el('input', { id: 'limits-file', type: 'file', accept: '.json,application/json', on: { change: open } });
  const save = el('button', { id: 'limits-save', type: 'button', on: { click: saveFile } }, 'Save as a file');
  const remove = el('button', { id: 'limits-remove', type: 'button', on: { click: () => actions.removeLimits() } },
    'Leave it out');
  const form = el('form', { id: 'limits-form', novalidate: true, on: { submit: put } });
  const beyond = el('p', { class: 'fine-print' });
  const told = el('p', { id: 'limits-said', role: 'status' });
  const edit = el('details', { id: 'limits-edit' }, el('summary', {}, 'Write or change them'),
    el('div', { class: 'limits-form' }, form, beyond,
      el('p', { class: 'import-buttons' },
        el('button', { id: 'limits-put', type: 'submit', form: 'limits-form' }, 'Put them in force'),
        el('button', { id: 'limits-again', type: 'button', on: { click: fresh } }, 'As they are in force')),
      told));
  root.append(el('details', { class: 'inputs' },
    el('summary', {}, el('span', { class: 'inputs-label' }, 'Weight limits'), summary),
    el('div', { class: 'limits-body' }, words,
      el('div', { class: 'import-choice' },
        el('label', { class: 'field file-field' }, el('span', {}, 'Limits file, such as a permit\'s'), file),
        save, remove),
      edit)));
  /** Text of the file that the form was filled from. */
  let base = null;

  function open() {
    const [chosen] = file.files;
    if (chosen) {
      actions.openLimits(chosen);
    }
    // The same file, corrected, must be able to come in again.
    file.value = '';
  }

  function saveFile() {
    const { name, text } = limitsOf(store.get().inputs);
    saveText(text, limitsFileName(name));
    actions.markSaved('limits', text);
  }

  function fresh() {
    const { text } = beginning(store.get().inputs);
    base = text;
    fill(formOf(JSON.parse(text)));
    const more = beyondForm(JSON.parse(text));
    say(beyond, more.length > 0 ? `Kept as in the file: ${more.join(', ')}.` : '');
    say(told, '');
    mark([]);
  }

  function fill(values) {
    replace(form,
      el('div', { class: 'limits-fields' }, SINGLE.map(one => field(one, `/${one.key}`, values[one.key], one.label))),
      LISTS.map(list => {
        const rows = el('tbody', {}, values[list.key].map((row, index) => listRow(list, row, index)));
        return el('fieldset', { class: 'limits-list', 'data-list': list.key }, el('legend', {}, list.title),
          el('table', { hidden: values[list.key].length === 0 }, el('caption', { class: 'unseen' }, list.title),
            el('thead', {}, el('tr', {}, list.columns.map(({ label }) => el('th', { scope: 'col' }, label)),
              el('th', { scope: 'col' }, el('span', { class: 'unseen' }, 'Take out')))), rows),
          el('button', {
            id: `limits-add-${list.key}`, type: 'button', on: { click: () => addRow(list) },
          }, 'Add a row'));
      }));
  }

  /** @param head label on show, or null in a table, where the column says it */
  function field({ key, label, hint, choices, needed, count }, path, value, head) {
    const attributes = {
      name: key, 'data-path': path, 'aria-label': head === null ? label : null,
      'aria-describedby': `limits-said-${path.slice(1).replaceAll('/', '-')}`,
    };
    const input = choices
      ? el('select', attributes, choices.map(([one, word]) => el('option', { value: one }, word)))
      : el('input', {
        ...attributes, type: 'text', inputmode: count ? 'numeric' : null, autocomplete: 'off', maxlength: '2000',
        placeholder: hint, required: Boolean(needed),
      });
    input.value = value;
    const said = el('span', { class: 'limits-said', id: attributes['aria-describedby'], 'data-at': path });
    return head === null ? [input, said]
      : el('label', { class: 'field' }, el('span', {}, head), input, said);
  }

  const listRow = ({ key, columns }, row, index) => el('tr', {},
    columns.map(one => el('td', { 'data-head': one.label },
      field(one, `/${key}/${index}/${one.key}`, row[one.key], null))),
    el('td', {}, el('button', {
      type: 'button', class: 'limits-take', 'aria-label': `Take out row ${index + 1}`,
      on: { click: () => takeRow(key, index) },
    }, 'Take out')));

  function addRow(list) {
    const values = given();
    values[list.key].push(Object.fromEntries(list.columns.map(({ key }) => [key, ''])));
    fill(values);
    form.querySelector(`[data-path="/${list.key}/${values[list.key].length - 1}/${list.columns[0].key}"]`).focus();
  }

  function takeRow(key, index) {
    const values = given();
    values[key].splice(index, 1);
    fill(values);
    form.querySelector(`#limits-add-${key}`).focus();
  }

  /** What stands in the form. */
  function given() {
    const at = path => form.querySelector(`[data-path="${path}"]`).value;
    return {
      ...Object.fromEntries(SINGLE.map(({ key }) => [key, at(`/${key}`)])),
      ...Object.fromEntries(LISTS.map(({ key, columns }) => [key,
        [...form.querySelectorAll(`[data-list="${key}"] tbody tr`)].map((row, index) =>
          Object.fromEntries(columns.map(one => [one.key, at(`/${key}/${index}/${one.key}`)])))])),
    };
  }

  async function put(event) {
    event.preventDefault();
    const { name } = beginning(store.get().inputs);
    const values = given();
    // Empty rows are not in the file, so that a refusal counts the others alone.
    LISTS.forEach(({ key }) => {
      values[key] = values[key].filter(row => Object.values(row).some(text => text.trim() !== ''));
    });
    fill(values);
    mark([]);
    say(told, 'Checking…');
    const done = await actions.changeLimits(name, withForm(base, values));
    const { problem } = store.get();
    const own = done ? [] : (problem?.problems ?? []).filter(({ pointer }) => pointer.startsWith('/limits'));
    say(told, done ? `${given().name} is in force.` : `Not in force: ${problem?.title ?? 'stopped'}.`);
    mark(own);
    (done ? form.querySelector('[data-path="/name"]')
      : form.querySelector('[aria-invalid]') ?? form.querySelector('[data-path="/name"]')).focus();
  }

  /** What the reader refuses stands at its field; what belongs to none at the first of its list, or below. */
  function mark(problems) {
    form.querySelectorAll('.limits-said').forEach(one => replace(one));
    form.querySelectorAll('[aria-invalid]').forEach(one => one.removeAttribute('aria-invalid'));
    problems.forEach(({ pointer, message, remedy }) => {
      const path = pointer.slice('/limits'.length);
      const at = [...form.querySelectorAll('.limits-said')].find(({ dataset }) =>
        dataset.at === path || (path !== '' && dataset.at.startsWith(`${path}/`)));
      if (at) {
        at.append(`${message} ${remedy ?? ''} `);
        form.querySelector(`[data-path="${at.dataset.at}"]`).setAttribute('aria-invalid', 'true');
      } else {
        say(told, `${told.textContent} ${message} ${remedy ?? ''}`);
      }
    });
  }

  const stops = [store.watch(['inputs', 'busy'], ({ inputs, busy }) => {
    root.hidden = inputs === null;
    if (inputs === null) {
      return;
    }
    const own = inputs.route.json?.limits;
    const { json, name } = limitsOf(inputs);
    const source = json ?? own;
    root.dataset.force = json ? 'file' : own ? 'route' : 'federal';
    replace(summary, source ? `${source.name} (${source.source}, ${source.date})` : 'federal limits');
    replace(words, json
      ? `${name}, a limits file, holds for the whole route${own ? `, in place of what the route file says (${own.name})`
        : ''}.`
      : own ? 'They stand in the route file. A limits file holds in their place.'
        : 'Neither the route file nor a limits file says any: federal limits hold where weights are known.');
    save.hidden = remove.hidden = !json;
    remove.disabled = busy;
    form.querySelectorAll('button').forEach(one => { one.disabled = busy; });
    document.getElementById('limits-put').disabled = busy;
    if (base !== beginning(inputs).text && !busy) {
      fresh();
    }
  })];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}
