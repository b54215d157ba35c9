/** The survey of the hazard on show: a table to type and paste into, its drawing, and the answer to these numbers. */
import { el, onWidth, replace, say } from '../../dom.js';
import { against } from '../../text/format.js';
import { HEIGHTS, OVERHEAD_KINDS } from '../../survey/heights.js';
import { lengthOf, UNITS } from '../../text/typedlength.js';
import { findCell, findConfiguration, findHazard, governing, verdictWords } from '../../report/report.js';
import { FIELDS, RAILS } from '../../survey/survey.js';
import { createLevelNotes } from './levelnotes.js';
import { createSurveyTable } from './surveytable.js';
import { drawSurvey } from './surveyview.js';
import { DRAFT_STATES } from '../parts/draftstates.js';
import { verdictTag } from '../parts/symbol.js';

const HOW = 'Distances count from the point of the hazard along travel, negative before it; heights are above any one '
  + 'level. Type them, or copy columns in a spreadsheet and paste them into the first cell. Enter and arrow keys go '
  + 'from row to row.';

export function mountSurvey(root, { store, actions }) {
  const table = createSurveyTable(actions);
  const notes = createLevelNotes(actions);
  const frame = el('div', { class: 'survey-drawing' });
  const answer = el('div', { id: 'survey-answer', role: 'status' });
  const state = el('p', { id: 'survey-state', role: 'status' });
  const said = el('p', { id: 'survey-said', role: 'status' });
  const first = el('p', { class: 'survey-first' });
  const fields = Object.fromEntries([...FIELDS, RAILS, ...HEIGHTS].map(field => [field.key, fieldOf(field)]));
  const unit = which => el('select', {
    id: `survey-unit-${which}`, on: { change: event => actions.surveyUnit(which, event.target.value) },
  }, UNITS.map(value => el('option', { value }, value)));
  const units = { distance: unit('distance'), height: unit('height') };
  const summary = el('summary', {}, 'Survey of this place');
  const edit = el('details', { id: 'survey-edit', on: { toggle: () => draw(store.get()) } }, summary,
    el('div', { class: 'survey-body' },
      el('p', { class: 'survey-how' }, HOW),
      el('div', { class: 'survey-fields' },
        labeled('Distances without a unit are in', units.distance),
        labeled('Heights without a unit are in', units.height),
        ['accuracy', 'source', 'date', 'tracks'].map(key => fields[key].node)),
      el('div', { class: 'survey-fields survey-heights' }, HEIGHTS.map(({ key }) => fields[key].node)),
      el('details', { class: 'survey-more' }, el('summary', {}, 'The road beyond the table'),
        el('div', { class: 'survey-fields' },
          FIELDS.slice(3).map(({ key }) => fields[key].node))),
      notes.node,
      state, first,
      el('div', { class: 'survey-columns' },
        el('div', {}, table.node,
          el('p', { class: 'import-buttons' },
            button('survey-add', 'Add a row', () => table.show(`${store.get().survey.draft.rows.length},0`)),
            button('survey-order', 'Put rows in order', () => actions.orderSurvey()),
            button('survey-clear', 'Take out all rows', () => actions.clearSurvey()),
            button('survey-reset', 'Back to what the route has', () => actions.resetSurvey())),
          said),
        el('div', { class: 'survey-side' }, frame, answer))));
  root.append(edit);
  let drawn = null;

  function button(id, label, click) {
    return el('button', { id, type: 'button', on: { click } }, label);
  }

  function labeled(label, control) {
    return el('label', { class: 'field' }, el('span', {}, label), control);
  }

  function fieldOf({ key, label, example, needed, words }) {
    const isAsked = needed || HEIGHTS.some(one => one.key === key);
    const input = words ? el('select', {
      id: `survey-${key}`, 'aria-describedby': `survey-at-${key}`,
      on: { change: () => actions.surveyField(key, input.value) },
    }) : el('input', {
      id: `survey-${key}`, type: 'text', autocomplete: 'off', placeholder: example, maxlength: 200,
      'aria-describedby': `survey-at-${key}`, on: { input: () => actions.surveyField(key, input.value) },
    });
    const problem = el('span', { class: 'survey-problem', id: `survey-at-${key}`, 'data-at': key });
    return { input, problem, node: labeled(isAsked ? label : `${label}, if known`, [input, problem]) };
  }

  function draw({ survey, units: system, passage, position, report, hazard, configuration, busy }) {
    root.hidden = survey === null;
    root.dataset.status = survey?.status ?? 'none';
    if (survey === null || !edit.open) {
      table.forget();
      drawn = null;
      return;
    }
    table.draw(survey);
    notes.draw(survey);
    Object.entries(units).forEach(([which, select]) => { select.value = survey.draft.units[which]; });
    fields.tracks.node.hidden = survey.kind !== 'rail-crossing';
    heightsFor(survey);
    tellFields(survey);
    const fresh = survey.status === 'same' && !busy;
    say(state, DRAFT_STATES[survey.status]);
    firstProblem(survey);
    say(said, survey.said);
    root.querySelector('#survey-reset').disabled = survey.status === 'same' || survey.status === 'sent';
    tellAnswer(fresh, findCell(findHazard(report, hazard), configuration),
      findConfiguration(report, configuration)?.label, system);
    const shown = fresh && passage.status === 'ready' && passage.data.ground ? passage.data : null;
    const what = [survey.read, survey.draft.fields.tracks, shown, position, system, frame.clientWidth];
    if (drawn === null || what.some((one, k) => one !== drawn[k])) {
      drawn = what;
      const rails = survey.draft.fields.tracks.split(/[;\n]|,\s/)
        .map(text => lengthOf(text, survey.draft.units.distance).m).filter(Number.isFinite);
      drawSurvey(frame, { lines: survey.read.drawn, rails, passage: shown, position, units: system });
    }
  }

  /** Of a structure or a wire, what can be said of it. */
  function heightsFor({ kind }) {
    root.querySelector('.survey-heights').hidden = !OVERHEAD_KINDS.includes(kind);
    for (const { key, kinds, words } of HEIGHTS) {
      const { input, node } = fields[key];
      node.hidden = !kinds.includes(kind);
      if (words?.[kind] && input.dataset.kind !== kind) {
        input.dataset.kind = kind;
        replace(input, words[kind].map(word => el('option', { value: word }, word)));
      }
    }
  }

  function tellFields({ draft, read, refused, status }) {
    const words = new Map([...refused, ...status === 'changed' ? [] : read.problems].map(({ at, text }) => [at, text]));
    for (const [key, { input, problem }] of Object.entries(fields)) {
      if (input !== document.activeElement || input.value.trim() !== draft.fields[key].trim()) {
        input.value = draft.fields[key];
      }
      say(problem, words.get(key) ?? '');
      input.setAttribute('aria-invalid', String(words.has(key)));
    }
  }

  /** With many rows, what is wrong may be pages away. */
  function firstProblem({ read, refused, status }) {
    const all = status === 'unread' ? read.problems : refused;
    const at = all.find(one => /^\d+,\d+$/.test(one.at))?.at;
    replace(first, at && [`${all.length === 1 ? 'One thing' : `${all.length} things`} to mend. `,
      el('button', { type: 'button', on: { click: () => table.show(at) } },
        `Go to row ${Number(at.split(',')[0]) + 1}`)]);
  }

  function tellAnswer(fresh, cell, label, system) {
    if (fresh && cell) {
      const least = governing(cell);
      answer.dataset.verdict = cell.verdict;
      replace(answer, el('p', {}, verdictTag(cell.verdict, verdictWords(cell)), ` ${label ?? ''}`),
        least && gapWords(against(least.clearance.valueM, least.clearance.requiredM, system)));
    } else {
      delete answer.dataset.verdict;
      replace(answer, el('p', { class: 'survey-waiting' }, 'No answer to these numbers yet.'));
    }
  }

  const gapWords = ({ gap, need }) => el('p', {}, 'least gap ', el('strong', {}, gap), `, needs ${need}`);

  const stops = [
    store.watch(['survey', 'units', 'passage', 'position', 'report', 'configuration', 'busy'], draw),
    onWidth(frame, () => draw(store.get())),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}
