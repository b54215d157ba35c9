/** Route, rig, stance and margins in force, samples to choose from, and the way in for files from disk. */
import { el, replace } from '../../dom.js';
import { stancesOf, usualStance } from '../../rig/leftoff.js';
import { MARGINS, marginsOf, saidMargins } from '../../page/margins.js';
import { required } from '../../text/format.js';

export function mountInputs(root, { store, actions }) {
  const summary = el('span', { class: 'inputs-summary' });
  const route = chooser('route-choice', 'Route', id => actions.openSample('route', id));
  const rig = chooser('rig-choice', 'Rig', id => actions.openSample('rig', id));
  const stance = chooser('stance-choice', 'Stance', name => actions.setStance(name));
  const kept = MARGINS.map(({ key, id, field }) => ({ key, ...marginField(id, field) }));
  const margins = el('form', { class: 'inputs-margins', on: { submit: applyMargins } },
    kept.map(({ field }) => field),
    el('button', { id: 'margins-apply' }, 'Check with these'));
  const details = el('details', { class: 'inputs' },
    el('summary', {}, el('span', { class: 'inputs-label' }, 'Route and rig'), summary,
      el('span', { class: 'inputs-hint' }, 'change, or use your own files')),
    el('div', { class: 'inputs-body' },
      el('div', { class: 'inputs-choice' }, route.field, rig.field, stance.field),
      margins,
      el('fieldset', { class: 'inputs-files' },
        el('legend', {}, 'Use your own files'),
        fileField('route-file', 'Route file', '.geojson,.json,application/geo+json', 'route'),
        fileField('rig-file', 'Rig file', '.json,application/json', 'rig'),
        el('p', { class: 'fine-print' }, 'Files are checked by the program of this page; only a project keeps them. '
          + 'When a file has mistakes they are listed, and the sheet stays as it was.'))));
  root.append(details);

  function applyMargins(event) {
    event.preventDefault();
    actions.setMargins(saidMargins(Object.fromEntries(kept.map(({ key, input }) => [key, input.value.trim()]))));
  }

  function fileField(id, label, accept, kind) {
    const input = el('input', { id, type: 'file', accept, on: { change: opened } });
    function opened() {
      const file = input.files[0];
      if (file) {
        const open = () => actions.openFile(kind, file);
        // A track chosen as a route is on its way to one.
        if (kind === 'route') {
          actions.openRouteFile(file, open);
        } else {
          open();
        }
      }
      // The same file, mended, must be able to come in again.
      input.value = '';
    }
    return el('label', { class: 'field file-field' }, el('span', {}, label), input);
  }

  const stops = [
    store.watch(['samples', 'inputs', 'busy'], ({ samples, inputs, candidate }) => {
      const force = inputs ?? candidate;
      offer(route, samples?.routes ?? [], force?.route);
      offer(rig, samples?.rigs ?? [], force?.rig);
      const stances = stancesOf(force?.rig);
      setOptions(stance.select, stances.map(name => [name, name]), force?.stance ?? usualStance(force?.rig));
      kept.forEach(({ key, input }) => {
        input.value = force?.margins?.[key] ?? '';
      });
      replace(summary, force ? [force.route, force.rig].map(file => file?.name ?? 'none').join(' — ') : 'opening…');
    }),
    store.watch(['report', 'units'], ({ report, units }) => {
      kept.forEach(({ key, input }) => {
        input.placeholder = report ? required(marginsOf(report)[key], units) : '';
      });
    }),
    // When a link or a first start cannot be met, the way to mend it is in sight.
    store.watch(['problem', 'report'], ({ problem, report }) => {
      if (problem && report === null) {
        details.open = true;
      }
    }),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}

function chooser(id, label, choose) {
  const select = el('select', { id, on: { change: () => choose(select.value) } });
  return { select, field: el('label', { class: 'field' }, el('span', {}, label), select) };
}

function marginField(id, label) {
  const input = el('input', { id, type: 'text', inputmode: 'text', autocomplete: 'off', spellcheck: 'false' });
  return { input, field: el('label', { class: 'field' }, el('span', {}, label), input) };
}

/** Samples, and above them the file from disk that is in force. */
function offer({ select }, samples, file) {
  const own = file && file.id === null ? [['', `${file.name} (from disk)`]] : [];
  setOptions(select, [...own, ...samples.map(({ id, name }) => [id, name])], file ? file.id ?? '' : undefined);
}

function setOptions(select, options, chosen) {
  replace(select, options.map(([value, label]) => el('option', { value, disabled: value === '' }, label)));
  if (chosen !== undefined) {
    select.value = chosen;
  }
}
