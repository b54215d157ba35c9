/** A hazard's matrix: a row for each notch, highest first; a column for each axle and booster state that differs. */
import { el, replace, roving } from '../../dom.js';
import { clearance, offset, raiseWords, weightLeft } from '../../text/format.js';
import {
  axlesWords, cellsAt, findHazard, governing, leastSetting, matrixColumns, notches, severity, shareLeft,
} from '../../report/report.js';
import { BOOSTER_WORDS } from '../../drawing/symbols.js';
import { verdictTag } from '../parts/symbol.js';

export function mountMatrix(root, { store, actions }) {
  const frame = el('div', { class: 'table-frame' });
  root.append(el('h3', {}, 'Every setting at this hazard'), frame,
    el('p', { class: 'fine-print' }, 'Booster states with equal results share a column. '
      + 'Pick a cell to look at it; arrow keys move between cells.'));
  roving(frame, 'button', (key, button) => {
    const cell = button.closest('td');
    const row = cell.parentElement;
    switch (key) {
      case 'ArrowLeft': return cell.previousElementSibling?.querySelector('button') ?? null;
      case 'ArrowRight': return cell.nextElementSibling?.querySelector('button') ?? null;
      case 'ArrowUp': return row.previousElementSibling?.cells[cell.cellIndex].querySelector('button') ?? null;
      case 'ArrowDown': return row.nextElementSibling?.cells[cell.cellIndex]?.querySelector('button') ?? null;
      default: return null;
    }
  });

  const stop = store.watch(['report', 'hazard', 'configuration', 'units'], state => {
    const hazard = findHazard(state.report, state.hazard);
    if (hazard === null) {
      frame.replaceChildren();
      return;
    }
    const focused = frame.contains(document.activeElement) ? document.activeElement.dataset.configurations : null;
    replace(frame, matrix(state, hazard, actions));
    bringIntoSight(frame);
    if (focused) {
      frame.querySelector(`button[data-configurations="${CSS.escape(focused)}"]`)?.focus();
    }
  });
  return { unmount: () => { stop(); root.replaceChildren(); } };
}

/** Scrolls the frame, never the page, until the chosen cell is in it beside the column of notches. */
function bringIntoSight(frame) {
  const cell = frame.querySelector('td.chosen');
  if (cell) {
    const heads = frame.querySelector('tbody th').offsetWidth;
    const start = cell.offsetLeft - heads;
    const end = cell.offsetLeft + cell.offsetWidth;
    if (start < frame.scrollLeft || end > frame.scrollLeft + frame.clientWidth) {
      frame.scrollLeft = start;
    }
  }
}

function matrix({ report, configuration, units }, hazard, actions) {
  const columns = matrixColumns(report, hazard);
  const rows = notches(report);
  const anyChosen = report.configurations.some(c => c.key === configuration);
  let first = !anyChosen;
  return el('table', { id: 'matrix' },
    el('caption', { class: 'unseen' }, `Verdicts at ${hazard.id} for every notch, axle state and booster state`),
    el('thead', {},
      el('tr', {}, el('th', { scope: 'col', rowspan: 2, class: 'corner' }, 'Notch'), axleHeads(columns)),
      el('tr', {}, columns.map(column => el('th', { scope: 'col' },
        column.boosters.map(booster => BOOSTER_WORDS[booster] ?? booster).join(', '))))),
    el('tbody', {}, rows.map(({ notch, offsetM }) => el('tr', {},
      el('th', { scope: 'row' }, notch, el('span', { class: 'notch-offset' }, offset(offsetM, units))),
      columns.map(column => {
        const cells = cellsAt(report, hazard, column, notch);
        const chosen = cells.some(({ configuration: c }) => c.key === configuration);
        const stop = chosen || first;
        first = false;
        return el('td', { class: chosen ? 'chosen' : null },
          cells.length === 0 ? 'not on this rig' : cellButton(cells, { chosen, stop, units, configuration, actions }));
      })))),
    el('tfoot', {}, el('tr', {}, el('th', { scope: 'row' }, 'In transport'),
      columns.map(column => el('td', {},
        leastSetting(hazard, { lift: column.lift, booster: column.boosters[0] })?.text)))));
}

function axleHeads(columns) {
  const heads = [];
  for (const { lift, axles, axlesUp } of columns) {
    if (heads.at(-1)?.lift === lift) {
      heads.at(-1).span++;
    } else {
      heads.push({ lift, axles, axlesUp, span: 1 });
    }
  }
  return heads.map(head => el('th', { scope: 'colgroup', colspan: head.span }, axlesWords(head)));
}

/**
 * One button for all booster states that share the cell. It shows and picks the one in force, with its own numbers;
 * when none is, the worst of them. What it reads is true of each: states share a column only when they read alike.
 */
function cellButton(cells, { chosen, stop, units, configuration, actions }) {
  const worst = cells.reduce((a, b) => (order(b) < order(a) ? b : a));
  const picked = cells.find(({ configuration: c }) => c.key === configuration) ?? worst;
  const { cell } = picked;
  const least = governing(cell);
  const verdict = cell?.verdict ?? 'not surveyed';
  const value = least ? clearance(least.clearance.valueM, units) : cell?.load && weightLeft(cell.load.marginKg, units);
  const raise = cell?.raise && raiseWords(cell.raise, units);
  return el('button', {
    type: 'button',
    'data-configuration': picked.configuration.key,
    'data-configurations': cells.map(({ configuration: c }) => c.key).join(' '),
    'data-verdict': verdict,
    'data-value-m': least?.clearance.valueM,
    'aria-pressed': String(chosen),
    tabindex: stop ? '0' : '-1',
    on: { click: () => actions.chooseConfiguration(picked.configuration.key) },
  },
  el('span', { class: 'unseen' }, `${picked.configuration.label}: `),
  verdictTag(verdict),
  value && el('span', { class: 'matrix-value' }, value,
    least?.side === 'overhead' && el('span', { class: 'matrix-side' }, ' overhead'),
    least?.side === 'units' && el('span', { class: 'matrix-side' }, ' between units')),
  raise && el('span', { class: 'matrix-raise' }, raise));
}

/** Worst first: by verdict, then by what is left as a share of what is needed. */
function order({ cell }) {
  const least = governing(cell);
  // No share makes up for a verdict.
  const share = least ? Math.max(-1, Math.min(1, shareLeft(least.clearance) / 1e6)) : 0;
  return severity(cell?.verdict) * 10 + share;
}
