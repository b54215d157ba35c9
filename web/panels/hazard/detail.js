/** One hazard: its heading, its matrix, the result chosen, and the truck passing over it. */
import { el, replace } from '../../dom.js';
import { chainage } from '../../text/format.js';
import { around } from '../../report/listing.js';
import { findHazard } from '../../report/report.js';
import { kindIcon } from '../parts/symbol.js';
import { mountMatrix } from './matrix.js';
import { mountResult } from './result.js';
import { mountPassage } from '../passage/passage.js';
import { mountCorner } from '../corner/corner.js';
import { mountCornerOutline } from '../corner/corneroutline.js';
import { mountCornerForm } from '../corner/cornerform.js';
import { mountSurvey } from '../survey/survey.js';
import { kindOf } from '../../report/kinds.js';

export function mountDetail(root, { store, actions }) {
  const title = el('h2', { id: 'detail-title', tabindex: '-1' });
  const facts = el('p', { class: 'detail-facts' });
  const notes = el('p', { class: 'detail-notes' });
  const before = stepButton('detail-before', '‹ Hazard before');
  const after = stepButton('detail-after', 'Next hazard ›');
  const back = el('button', { type: 'button', on: { click: backToTable } }, 'Back to the table');
  const passage = el('div', { id: 'passage' });
  const corner = el('div', { id: 'corner', hidden: true });
  const form = el('div', { id: 'corner-form', hidden: true });
  const outline = el('div', { id: 'corner-outline', hidden: true });
  const survey = el('div', { id: 'survey' });
  const matrix = el('div', { class: 'detail-matrix' });
  const result = el('div', { id: 'result' });
  root.append(
    el('div', { class: 'detail-head' },
      el('div', {}, title, facts, notes),
      el('p', { class: 'detail-steps' }, before, after, back)),
    el('p', { class: 'outdated' }, 'The survey below has numbers that are not in the route yet. The answer to the '
      + 'numbers before is not shown.'),
    passage,
    corner,
    form,
    outline,
    survey,
    el('div', { class: 'detail-columns' }, matrix, result));

  const panels = [
    mountPassage(passage, { store, actions }),
    mountCorner(corner, { store, actions }),
    mountCornerForm(form, { store, actions }),
    mountCornerOutline(outline, { store, actions }),
    mountSurvey(survey, { store, actions }),
    mountMatrix(matrix, { store, actions }),
    mountResult(result, { store, actions }),
  ];
  const stops = [
    store.watch(['report', 'hazard', 'units', 'listing', 'configuration', 'plan'], state => {
      const { report, hazard: id, units } = state;
      const hazard = findHazard(report, id);
      root.hidden = hazard === null;
      root.dataset.hazard = id ?? '';
      if (hazard === null) {
        return;
      }
      replace(title, el('span', { class: 'hazard-id' }, hazard.id), ' ', hazard.name);
      replace(facts, kindIcon(hazard.kind), [
        kindOf(hazard.kind).word,
        `at ${chainage(hazard.chainageM, units)}`,
        hazard.landmark,
      ].filter(Boolean).join(' · '));
      replace(notes, hazard.notes.join(' · '));
      const next = around(state, id);
      target(before, next.before);
      target(after, next.after);
    }),
    store.watch(['survey', 'corner'], ({ survey: table, corner: measures }) => {
      // What stands here answers for the numbers before.
      root.toggleAttribute('data-outdated', [table, measures].some(one => one !== null && one.status !== 'same'));
    }),
    store.watch(['configuration'], ({ configuration }) => {
      root.dataset.configuration = configuration ?? '';
    }),
  ];

  function stepButton(id, label) {
    const click = event => actions.selectHazard(event.currentTarget.value);
    return el('button', { id, type: 'button', on: { click } }, label);
  }

  function target(button, hazard) {
    button.disabled = hazard === null;
    button.value = hazard?.id ?? '';
    button.title = hazard ? `${hazard.id} ${hazard.name}` : '';
  }

  function backToTable() {
    const row = document.querySelector('#hazard-table tr.chosen .hazard-open');
    (row ?? document.getElementById('hazards')).focus();
  }

  return {
    unmount: () => {
      panels.forEach(panel => panel.unmount());
      stops.forEach(stop => stop());
      root.replaceChildren();
    },
  };
}
