/** Hazards and stopping places of the route in force: added, moved, named and taken out by forms, and undone. */
import { el, replace } from '../../dom.js';
import { chainage, chainageFine } from '../../text/format.js';
import { kindOf } from '../../report/kinds.js';
import { MOVED_AT_MOST_M, NEW_PLACES, placesOf } from '../../line/places.js';

const HOW = 'A distance along the route, such as 3.2 mi or 5.1 km, or latitude and longitude, such as 41.9003, -101.19';

export function mountPlaces(root, { store, actions }) {
  const table = el('div', { class: 'places' });
  const kind = el('select', { id: 'place-kind', name: 'kind', on: { change: ask } },
    NEW_PLACES.map(({ kind: value, word }) => el('option', { value }, word)));
  const more = el('label', { class: 'field', id: 'place-more' });
  const adding = el('form', { id: 'place-add', class: 'import-choice', on: { submit: add } },
    el('label', { class: 'field' }, el('span', {}, 'Kind'), kind),
    field('name', 'Name', { required: true, maxlength: 100 }),
    field('at', 'At', { required: true, maxlength: 60, title: HOW, 'aria-describedby': 'place-how', id: 'place-at' }),
    field('landmark', 'Landmark', { maxlength: 100 }),
    more,
    el('button', { type: 'submit' }, 'Add'),
    el('button', { id: 'place-pick', type: 'button', on: { click: pick } }, 'Point on the map'));
  const open = el('details', { id: 'place-edit' },
    el('summary', {}, 'Add, move or take out places'),
    el('div', { class: 'import-body' },
      el('p', { id: 'place-how' }, `${HOW}. A new hazard is not surveyed, and so never clear, until its survey is in `
        + `the file; one that was measured can be moved by ${MOVED_AT_MOST_M} m at most.`),
      adding, el('p', { id: 'place-said', role: 'status' }), table));
  root.append(open);
  ask();

  function field(name, label, attributes) {
    return el('label', { class: 'field' }, el('span', {}, label),
      el('input', { name, type: 'text', autocomplete: 'off', ...attributes }));
  }

  /** One more thing that the kind asks for. */
  function ask() {
    const { asked } = NEW_PLACES.find(one => one.kind === kind.value);
    more.hidden = !asked;
    replace(more, asked && [el('span', {}, asked.needed ? asked.label : `${asked.label}, if known`),
      el('input', {
        name: 'more', type: 'text', autocomplete: 'off', maxlength: 60, placeholder: asked.example,
        required: Boolean(asked.needed),
      })]);
  }

  const given = form => Object.fromEntries([...new FormData(form)].map(([key, value]) => [key, value.trim()]));

  const say = words => { root.querySelector('#place-said').textContent = words; };

  async function add(event) {
    event.preventDefault();
    const asked = given(adding);
    if (await actions.addPlace({ ...asked, more: asked.more ?? '' })) {
      say(`${asked.name} is added.`);
      // Of one kind there are often several: the kind stays as it was chosen.
      const chosen = kind.value;
      adding.reset();
      kind.value = chosen;
      ask();
      adding.querySelector('[name=name]').focus();
    }
  }

  function pick() {
    store.set({ picking: !store.get().picking });
    if (store.get().picking) {
      document.getElementById('plan-map').scrollIntoView({ block: 'nearest' });
    }
  }

  function picked({ picking, picked: at, units }) {
    const button = root.querySelector('#place-pick');
    button.setAttribute('aria-pressed', String(picking));
    if (at !== null) {
      adding.querySelector('[name=at]').value = chainageFine(at, units);
      store.set({ picked: null });
      say('The place on the route that is nearest to the point is filled in.');
      adding.querySelector('[name=name]').focus();
    } else if (picking) {
      say('Now press the map where the place is.');
    }
  }

  function draw({ inputs, line, units, busy }) {
    const all = placesOf(inputs?.route);
    const spots = new Map([...(line?.hazards ?? []), ...(line?.stops ?? [])].map(spot => [spot.id, spot.chainageM]));
    const at = place => spots.get(place.id) ?? Infinity;
    const opened = table.querySelector('details[open]')?.closest('tr').dataset.id ?? null;
    replace(table, inputs && el('div', {
      class: 'table-frame import-frame', tabindex: '0', role: 'region', 'aria-label': 'Table of places',
    }, el('table', { id: 'place-table' },
      el('thead', {}, el('tr', {}, ['At', 'Place', 'Kind', 'Change'].map(word => el('th', { scope: 'col' }, word)))),
      el('tbody', {}, all.sort((a, b) => at(a) - at(b)).map(place =>
        row(place, spots.has(place.id) ? chainage(at(place), units) : 'not judged', busy, place.id === opened))))));
  }

  function row(place, where, busy, opened) {
    const form = el('form', { on: { submit: change } },
      field('name', 'Name', { required: true, maxlength: 100, value: place.name }),
      field('landmark', 'Landmark', { maxlength: 100, value: place.landmark }),
      field('at', 'Move to', { maxlength: 60, title: HOW }),
      el('button', { type: 'submit', disabled: busy }, 'Change it'),
      el('button', {
        type: 'button', class: 'place-remove', disabled: busy, on: { click: () => actions.removePlace(place) },
      }, 'Take it out'));
    const word = place.stop ? NEW_PLACES.find(one => one.kind === place.kind)?.word ?? place.kind
      : kindOf(place.kind).word;
    return el('tr', { 'data-id': place.id },
      el('td', {}, where),
      el('th', { scope: 'row' }, el('span', { class: 'hazard-id' }, place.id), ` ${place.name}`),
      el('td', {}, word),
      el('td', {}, el('details', { class: 'place-change', open: opened },
        el('summary', { 'aria-label': `Change ${place.id} ${place.name}` }, 'Change'), form)));

    function change(event) {
      event.preventDefault();
      actions.changePlace(place, given(form));
    }
  }

  const stops = [
    store.watch(['inputs', 'line', 'units', 'busy'], draw),
    store.watch(['picking', 'picked'], picked),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); open.remove(); } };
}
