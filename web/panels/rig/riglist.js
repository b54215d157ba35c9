/** The list of what is taped: a table for every unit, an input for every figure. Nodes stay while their rows stay. */
import { el, replace } from '../../dom.js';

/**
 * @param commit (row, typed) → why it is refused, in a sentence, or null
 * @param look called with the id of the row that has the focus
 */
export function createRigList({ commit, look }) {
  const node = el('div', { class: 'rig-parts' });
  /** Row → {row, input, said, refused}; of the rows that are shown. */
  const fields = new Map();
  let shape = null;

  /** @param text row → what its figure reads; @param problems of the server, each with its row's id */
  function draw(parts, { text, problems }) {
    const wanted = JSON.stringify(parts.map(({ title, groups }) => [title, groups.map(group => [group.title,
      group.places.map(({ id, name, along, height, value }) => [id, name, along?.label, height?.id, value?.id])])]));
    if (wanted !== shape) {
      rebuild(parts);
      shape = wanted;
    }
    for (const row of parts.flatMap(({ groups }) => groups).flatMap(({ places }) => places)
      .flatMap(({ along, height, value }) => [along, height, value].filter(Boolean))) {
      update(fields.get(row.id), row, text(row), problems.filter(one => one.row === row.id));
    }
  }

  function update(field, row, shown, problems) {
    const { input, said } = field;
    const typing = document.activeElement === input && input.value !== input.dataset.shown;
    field.row = row;
    // What somebody is typing, or what was refused here and is nowhere else, is not written over.
    if (!typing && field.refused === null) {
      input.value = shown;
    }
    input.dataset.shown = shown;
    const words = field.refused !== null ? [field.refused]
      : problems.map(({ message, remedy }) => `${message} ${remedy ?? ''}`);
    input.toggleAttribute('aria-invalid', words.length > 0);
    if (words.length > 0) {
      input.setAttribute('aria-invalid', 'true');
    }
    const code = problems[0]?.pointer ?? '';
    said.dataset.pointer = code;
    replace(said, words.map(one => el('span', {}, one)));
    if (words.length > 0) {
      openAround(input);
    }
  }

  function rebuild(parts) {
    const opened = new Set([...node.querySelectorAll('details[open]')].map(one => one.dataset.group));
    const focused = node.contains(document.activeElement) ? document.activeElement.dataset.row : null;
    fields.clear();
    replace(node, parts.map(part => el('section', {
      class: 'rig-part', 'data-part': part.key, 'aria-label': part.title,
    }, el('h3', {}, part.title), part.groups.map(group => groupNode(part, group, opened)))));
    fields.get(focused)?.input.focus();
  }

  function groupNode(part, group, opened) {
    const table = el('table', { class: 'rig-table' },
      el('caption', { class: 'unseen' }, `${part.title}: ${group.title}`),
      el('thead', {}, el('tr', {}, ['Where to hold the tape', 'From the one named', 'Over the ground']
        .map(word => el('th', { scope: 'col' }, word)))),
      el('tbody', {}, group.places.map(placeRow)));
    if (group.open) {
      return table;
    }
    const key = `${part.key}/${group.key}`;
    return el('details', { class: 'rig-group', 'data-group': key, open: opened.has(key) },
      el('summary', {}, `${group.title} (${group.places.length})`), table);
  }

  function placeRow(place) {
    return el('tr', { 'data-place': place.id },
      el('th', { scope: 'row' }, place.name, place.hold && el('span', { class: 'rig-hold' }, place.hold)),
      place.value ? el('td', { colspan: '2' }, fieldNode(place.value))
        : [el('td', {}, place.along && [el('span', { class: 'rig-hold' }, `from ${place.along.from}`),
          fieldNode(place.along)]),
        el('td', {}, place.height && fieldNode(place.height))]);
  }

  function fieldNode(row) {
    const said = el('span', { class: 'rig-said', id: `said-${row.id.replaceAll('/', '-')}` });
    const input = el('input', {
      type: 'text', class: 'rig-input', 'data-row': row.id, 'aria-label': row.label, 'aria-describedby': said.id,
      autocomplete: 'off', spellcheck: 'false', maxlength: '120',
      on: { focus: () => look(row.id), change: take, keydown: back },
    });
    const field = { row, input, said, refused: null };
    fields.set(row.id, field);
    return [input, said];

    function take() {
      const typed = input.value.trim();
      if (typed === input.dataset.shown) {
        field.refused = null;
        update(field, field.row, input.dataset.shown, []);
        return;
      }
      field.refused = null;
      field.refused = commit(field.row, typed);
      if (field.refused !== null) {
        update(field, field.row, input.dataset.shown, []);
      }
    }

    function back(event) {
      if (event.key === 'Escape') {
        input.value = input.dataset.shown;
        field.refused = null;
        update(field, field.row, input.dataset.shown, []);
      }
    }
  }

  /** Opens what a field is in. */
  function openAround(input) {
    const group = input.closest('details');
    if (group) {
      group.open = true;
    }
  }

  return {
    node, draw,
    goTo: id => {
      const field = fields.get(id);
      if (field) {
        openAround(field.input);
        field.input.scrollIntoView({ block: 'center' });
        field.input.focus({ preventScroll: true });
        field.input.select();
      }
    },
    /** Shows which row is looked at. */
    mark: id => {
      for (const [key, { input }] of fields) {
        input.classList.toggle('looked-at', key === id);
      }
    },
  };
}
