/** The rig in force, as a person tapes it: every distance to be typed, the drawing that echoes it beside. */
import { el, onWidth, replace } from '../../dom.js';
import { rigOnPage, stanceOnPage } from '../../rig/rigactions.js';
import { rowsOf, tapeOf } from '../../rig/tape.js';
import { rowOf } from '../../rig/tapechange.js';
import { isImperial, lengthOf, shownLength, tapeText } from '../../text/length.js';
import { createRigDrawing } from './rigdrawing.js';
import { createRigChanges } from './rigchanges.js';
import { createRigList } from './riglist.js';
import { createRigTickets } from './rigtickets.js';

export function mountRig(root, { store, actions }) {
  /** What was typed for a distance, as long as it is what the file comes to: row → {typed, value}. */
  const echoes = new Map();
  const list = createRigList({
    commit: (row, typed) => {
      const refusal = actions.setRigRow(row.id, typed);
      if (refusal === null && row.kind !== 'written') {
        echoes.set(row.id, { typed, value: lengthOf(typed) });
        draw(store.get());
      }
      return refusal;
    },
    look: id => actions.lookAtRow(id),
  });
  const drawing = createRigDrawing(id => {
    actions.lookAtRow(id);
    list.goTo(id);
  });
  const changes = createRigChanges(actions);
  const tickets = createRigTickets(actions);
  const state = el('div', { id: 'rig-state', role: 'status' });
  const stance = el('p', { id: 'rig-stance' });
  const open = el('details', { id: 'rig-edit', on: { toggle: () => draw(store.get()) } },
    el('summary', {}, 'Tape it, change it, see it to scale'),
    el('div', { class: 'rig-body' },
      el('div', { class: 'rig-list' },
        el('p', { class: 'fine-print' }, 'Measured coupled, on level ground, at the reference notch, lift axle down, '
          + 'leveling in auto, walking from front to rear. A distance that changes moves all that lies behind it on '
          + 'that unit; a center of gravity too: weigh again where the change is more than a correction.'),
        stance, state, changes.node, tickets.node, list.node),
      el('div', { class: 'rig-drawing' }, drawing.node)));
  root.append(open);

  const text = units => row => {
    if (row.kind === 'written') {
      return shownLength(row.text, units);
    }
    const echo = echoes.get(row.id);
    return echo?.value === row.value && isImperial(echo.typed) === (units === 'us') ? echo.typed
      : tapeText(row.value, units);
  };

  function draw(state_) {
    const { inputs, units, rigRow, busy, problem, rigDraft } = state_;
    const rig = rigOnPage(state_);
    if (!open.open || rig === null) {
      return;
    }
    const index = stanceOnPage(state_);
    const parts = tapeOf(rig.json, index);
    const rows = rowsOf(parts);
    stance.textContent = toldStance(rig.name, rig.json.stances?.[index]?.name ?? '', inputs?.stance);
    const problems = rigDraft === null || problem === null ? [] : problem.problems
      .filter(({ pointer }) => pointer.startsWith('/rig'))
      .map(one => ({ ...one, row: rowOf(rows, one.pointer.slice('/rig'.length))?.id ?? null }));
    replace(state, stateOf(rigDraft, busy, problem, problems));
    changes.draw(rig, index, state_.samples?.rigs ?? [], busy);
    tickets.draw(rig, index, units);
    list.draw(parts, { text: text(units), problems, units });
    drawing.draw({ json: rig.json, stance: index, parts, chosen: rigRow, units, text: text(units) });
    list.mark(rigRow);
    if (inputs === null) {
      replace(state);
    }
  }

  /** How it stands with a change that is not in force. */
  function stateOf(draft, busy, problem, problems) {
    if (draft === null) {
      return null;
    }
    if (busy) {
      return el('p', {}, 'Checking the rig…');
    }
    const others = problems.filter(one => one.row === null);
    return el('div', { class: 'rig-draft' },
      el('p', {}, problem === null ? 'This rig has not been checked; the sheet shows the one before.'
        : problems.length > others.length
          ? 'The program does not take this rig yet: see the rows that are marked. The sheet shows the one before.'
          : `The program does not take this rig yet: ${problem.title}. The sheet shows the one before.`),
      others.length > 0 && el('ul', {}, others.map(one => el('li', {}, `${one.message} ${one.remedy ?? ''}`))),
      el('p', { class: 'import-buttons' },
        el('button', { id: 'rig-give-up', type: 'button', on: { click: () => actions.giveUpRig() } },
          'Back to the rig before'),
        (problem === null || problem.passing) && el('button', {
          id: 'rig-again', type: 'button', on: { click: () => actions.checkRigAgain() },
        }, 'Check it')));
  }

  const stops = [
    store.watch(['inputs', 'rigDraft', 'units', 'busy', 'problem', 'rigRow'], draw),
    store.watch(['rigRow'], () => drawing.show()),
    onWidth(drawing.node, () => draw(store.get())),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); open.remove(); } };
}

/** With every unit it is taped; what of it is checked may be less. */
const toldStance = (rig, measured, checked) => `${rig}, stance ${measured}${(checked ?? measured) === measured ? ''
  : `, every unit coupled. Checked is "${checked}"`}`;
