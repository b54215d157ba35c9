/** The template of the corner on show: a form, a drawing to scale that carries its numbers, and the answer. */
import { el, onWidth, replace, say } from '../../dom.js';
import { against } from '../../text/format.js';
import { fieldsOf, LAYOUTS, lentBy } from '../../corner/cornerform.js';
import { findCell, findConfiguration, findHazard } from '../../report/report.js';
import { drawTemplate } from './cornerformview.js';
import { DRAFT_STATES } from '../parts/draftstates.js';
import { verdictTag } from '../parts/symbol.js';

const OTHERS = {
  outlines: 'This corner is drawn by its outlines. They stay as the file has them.',
  more: 'The file says more of this corner than a form holds. It stays as the file has it.',
};
const LENT = { approach: 'approach', exit: 'exit', third: 'third road', crossing: 'road between' };

export function mountCornerForm(root, { store, actions }) {
  const others = el('p', { class: 'survey-how' });
  const state = el('p', { id: 'corner-form-state', role: 'status' });
  const layout = el('select', { id: 'corner-layout', on: { change: () => actions.cornerLayout(layout.value) } },
    LAYOUTS.map(({ key, word }) => el('option', { value: key }, word)));
  const fields = el('div', { class: 'corner-fields' });
  const frame = el('div', { class: 'corner-form-frame' });
  const answer = el('div', { id: 'corner-form-answer', role: 'status' });
  const reset = el('button', { id: 'corner-form-reset', type: 'button', on: { click: () => actions.resetCorner() } },
    'Back to what the route has');
  const body = el('div', { class: 'survey-body' },
    el('p', { class: 'survey-how' }, 'Widths count from the center line. Places of obstacles count from where the '
      + 'center lines meet: along the approach, and to its left. A number without a unit is in ',
    el('span', { id: 'corner-unit' }), '.'),
    el('label', { class: 'field' }, el('span', {}, 'What it looks like'), layout), state,
    el('div', { class: 'corner-columns' }, el('div', {}, fields, reset),
      el('div', { class: 'survey-side' }, frame, answer)));
  const edit = el('details', { id: 'corner-edit', on: { toggle: () => draw(store.get()) } },
    el('summary', {}, 'Measures of this corner'), others, body);
  root.append(edit);
  fields.addEventListener('focusin', ({ target }) => actions.lookAtCorner(target.dataset.path ?? null));
  let made = null;

  const problemAt = at => el('span', {
    class: 'survey-problem', id: `corner-at-${at.replaceAll('.', '-')}`, 'data-at': at,
  });

  function control({ path, label, words, optional, example }, value) {
    const attributes = {
      id: `corner-${path.replaceAll('.', '-')}`, 'data-path': path,
      'aria-describedby': `corner-at-${path.replaceAll('.', '-')}`,
    };
    const changed = ({ target }) => actions.cornerField(path, target.value);
    const input = words
      ? el('select', { ...attributes, on: { change: changed } },
        words.map(word => el('option', { value: word, selected: word === value }, word)))
      : el('input', {
        ...attributes, type: 'text', autocomplete: 'off', maxlength: 60, value, placeholder: example,
        on: { input: changed },
      });
    return el('label', { class: 'field' }, el('span', {}, optional && !words ? `${label}, if there is` : label), input,
      problemAt(path));
  }

  /** One more when rows come and go: what is typed stays where the caret is. */
  function rows({ draft, id, made: count }) {
    const key = `${id} ${count}`;
    if (key === made) {
      return;
    }
    made = key;
    const focus = document.activeElement?.id;
    layout.value = draft.layout;
    replace(fields,
      el('div', { class: 'corner-grid' }, fieldsOf(draft).map(field => control(field, draft.fields[field.path]))),
      el('fieldset', { class: 'line-row' }, el('legend', {}, 'Opposing lanes that escorts may hold'),
        lentBy(draft).map(road => el('label', { class: 'import-check' },
          el('input', {
            type: 'checkbox', 'data-lent': road, checked: draft.borrow.includes(road),
            on: { change: ({ target }) => actions.cornerBorrow(road, target.checked) },
          }), el('span', {}, LENT[road])))),
      el('h3', {}, 'Obstacles that nothing may touch'),
      draft.obstacles.map((one, k) => (one.kept ? kept('obstacles', k, `${one.kept.name ?? 'An outline'}, `
        + `${one.kept.outline.length} points`) : obstacle(one, k))),
      draft.islands.map(({ kept: island }, k) => kept('islands', k, `An island of ${island.outline.length} points`)),
      el('button', { id: 'corner-add', type: 'button', on: { click: () => actions.addCornerObstacle() } },
        'Add a pole or a sign'),
      el('p', {}, problemAt('all')));
    document.getElementById(focus)?.focus();
  }

  const kept = (list, k, words) => el('div', { class: 'line-row' }, el('span', {}, `${words}, as the file has it.`),
    takeOut(list, k, words));

  const takeOut = (list, k, words) => el('button', {
    type: 'button', 'aria-label': `Take out ${words}`, on: { click: () => actions.removeCornerItem(list, k) },
  }, 'Take it out');

  function obstacle(one, k) {
    const part = (key, label) => el('label', { class: 'field' }, el('span', {}, label), el('input', {
      type: 'text', autocomplete: 'off', maxlength: 60, value: one[key], id: `corner-obstacles-${k}-${key}`,
      'data-path': `obstacles.${k}.along`, 'aria-describedby': `corner-at-obstacles-${k}-${key}`,
      on: { input: ({ target }) => actions.cornerObstacle(k, key, target.value) },
    }), problemAt(`obstacles.${k}.${key}`));
    return el('div', { class: 'line-row', role: 'group', 'aria-label': `Obstacle ${k + 1}` },
      part('name', 'Name'), part('along', 'Along'), part('left', 'To the left'), part('radius', 'Radius'),
      takeOut('obstacles', k, `obstacle ${k + 1}`));
  }

  function draw({ corner, passage, report, hazard, configuration, units, busy }) {
    root.hidden = corner === null;
    root.dataset.status = corner?.status ?? 'none';
    if (corner === null || !edit.open) {
      made = null;
      return;
    }
    body.hidden = corner.drawn !== null;
    others.hidden = corner.drawn === null;
    say(others, OTHERS[corner.drawn] ?? '');
    if (corner.drawn !== null) {
      return;
    }
    rows(corner);
    say(root.querySelector('#corner-unit'), corner.draft.unit === 'ft' ? 'feet' : 'meters');
    say(state, corner.draft.isNew && corner.status === 'same' ? 'Nobody has measured this corner.'
      : DRAFT_STATES[corner.status]);
    reset.disabled = corner.status === 'same' || corner.status === 'sent';
    tell(corner);
    const fresh = corner.status === 'same' && !busy;
    const shown = fresh && passage.status === 'ready' && passage.data.pavement ? passage.data : null;
    drawTemplate(frame, corner, shown, units, path => look(path));
    tellAnswer(fresh, findCell(findHazard(report, hazard), configuration),
      findConfiguration(report, configuration)?.label, units);
  }

  /** From a number in the drawing to its field. */
  function look(path) {
    const input = root.querySelector(`[data-path="${path}"]`);
    input?.focus();
    input?.select?.();
  }

  function tell({ read, refused, status }) {
    const silent = status === 'same' || status === 'changed';
    const words = new Map([...refused, ...silent ? [] : read.problems].map(({ at, text }) => [at, text]));
    root.querySelectorAll('.survey-problem').forEach(span => {
      const text = words.get(span.dataset.at) ?? '';
      say(span, text);
      span.previousElementSibling?.setAttribute('aria-invalid', String(text !== ''));
    });
  }

  function tellAnswer(fresh, cell, label, system) {
    if (fresh && cell) {
      answer.dataset.verdict = cell.verdict;
      const room = cell.corner && against(cell.corner.valueM, cell.corner.requiredM, system);
      replace(answer, el('p', {}, verdictTag(cell.verdict), ` ${label ?? ''}`),
        room && el('p', {}, 'least room ', el('strong', {}, room.gap), `, needs ${room.need}`));
    } else {
      delete answer.dataset.verdict;
      replace(answer, el('p', { class: 'survey-waiting' }, 'No answer to these numbers yet.'));
    }
  }

  const stops = [
    store.watch(['corner', 'units', 'passage', 'report', 'configuration', 'busy'], draw),
    onWidth(frame, () => draw(store.get())),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}

