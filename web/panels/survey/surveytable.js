/** The table of a survey: what is typed and pasted, row by row, and at each cell what is wrong with it. */
import { el, replace } from '../../dom.js';

/** Rows on show at once; the others are a page away. */
const PAGE = 60;

/** @param actions of the survey; @returns {node, draw(survey)} */
export function createSurveyTable(actions) {
  const head = el('thead');
  const body = el('tbody');
  const pager = el('p', { class: 'survey-pager' });
  const node = el('div', {},
    el('div', { class: 'table-frame survey-frame' },
      el('table', { id: 'survey-rows', on: { input: typed, keydown: keyed, paste: pasted } }, head, body)),
    pager);
  let page = 0;
  let drawn = null;
  let current = null;
  /** Cell that gets the focus when the rows are there. */
  let next = null;

  const place = input => input.dataset.cell.split(',').map(Number);
  const cell = (row, column) => body.querySelector(`[data-cell="${row},${column}"]`);

  function typed({ target }) {
    if (target.dataset.cell) {
      actions.surveyCell(...place(target), target.value);
    } else if (target.dataset.offset) {
      actions.surveyOffset(Number(target.dataset.offset), target.value);
    }
  }

  function keyed(event) {
    const step = { ArrowDown: 1, Enter: 1, ArrowUp: -1 }[event.key];
    if (!event.target.dataset.cell || step === undefined || event.altKey || event.ctrlKey || event.metaKey) {
      return;
    }
    event.preventDefault();
    const [row, column] = place(event.target);
    go(row + step, column);
  }

  /** To a cell, on whatever page it is; past the last row there is a new one. */
  function go(row, column) {
    if (row < 0) {
      return;
    }
    next = [row, column];
    if (row >= current.draft.rows.length) {
      page = Math.floor(row / PAGE);
      actions.addSurveyRow(current.draft.rows.length);
    } else if (cell(row, column)) {
      focusNext();
    } else {
      page = Math.floor(row / PAGE);
      rows();
    }
  }

  function focusNext() {
    const input = next && cell(...next);
    next = null;
    input?.focus();
    input?.select();
  }

  /** One cell's text goes in where the caret is; a table goes into cells. */
  function pasted(event) {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (event.target.dataset.cell && /[\t\n\r;]|\d\s+[-+]?\d+[.,]?\d*\s+[-+]?\d/.test(text.trim())) {
      event.preventDefault();
      next = place(event.target);
      actions.pasteSurvey(...next, text);
    }
  }

  function draw(survey) {
    current = survey;
    const key = survey && `${survey.id} ${survey.made}`;
    if (key !== drawn) {
      page = drawn?.startsWith(`${survey?.id} `) ? page : 0;
      drawn = key;
      headings();
      rows();
    }
    tell();
  }

  function headings() {
    const { draft: { lines } } = current;
    replace(head,
      el('tr', {}, el('th', { scope: 'col' }, '#'), el('th', { scope: 'col' }, 'Distance'),
        lines.map(({ name }) => el('th', { scope: 'col' }, name[0].toUpperCase() + name.slice(1))),
        el('th', { scope: 'col' }, 'Row')),
      el('tr', { class: 'survey-offsets' },
        el('th', { scope: 'row', colspan: 2 }, 'To the right of the middle, if known'),
        lines.map(({ name, offset, isSoffit }, k) => el('td', {}, !isSoffit && [el('input', {
          type: 'text', 'data-offset': k, value: offset, autocomplete: 'off',
          'aria-label': `Line ${name} runs to the right of the middle by`, 'aria-describedby': `survey-at-offset${k}`,
        }), problemAt(`offset${k}`)])),
        el('td', {})));
  }

  function rows() {
    const { draft } = current;
    page = Math.max(0, Math.min(page, Math.ceil(draft.rows.length / PAGE) - 1));
    const from = page * PAGE;
    const names = ['Distance', ...draft.lines.map(({ name }) => name)];
    const active = document.activeElement?.dataset?.cell ?? null;
    replace(body, draft.rows.slice(from, from + PAGE).map((cells, i) => row(from + i, cells, names)));
    const pages = Math.ceil(draft.rows.length / PAGE);
    replace(pager, pages > 1 && [
      turn('‹ Rows before', page - 1, page > 0),
      el('span', {}, `Rows ${from + 1} to ${Math.min(from + PAGE, draft.rows.length)} of ${draft.rows.length}`),
      turn('Rows after ›', page + 1, page < pages - 1),
    ]);
    next ??= active?.split(',').map(Number) ?? null;
    focusNext();
  }

  function turn(label, to, enabled) {
    return el('button', {
      type: 'button', disabled: !enabled, on: { click: () => { page = to; rows(); tell(); } },
    }, label);
  }

  const problemAt = at => el('span', {
    class: 'survey-problem', id: `survey-at-${at.replace(',', '-')}`, 'data-at': at,
  });

  function row(index, cells, names) {
    const button = (kind, label, sign, click) => el('button', {
      type: 'button', class: `survey-row-${kind}`, 'aria-label': `${label} ${index + 1}`,
      title: `${label} ${index + 1}`, on: { click },
    }, sign);
    return el('tr', { 'data-row': index },
      el('th', { scope: 'row' }, String(index + 1)),
      cells.map((text, column) => el('td', {}, el('input', {
        type: 'text', inputmode: 'text', autocomplete: 'off', spellcheck: 'false', value: text,
        'data-cell': `${index},${column}`, 'aria-label': `${names[column]}, row ${index + 1}`,
        'aria-describedby': `survey-at-${index}-${column}`,
      }), problemAt(`${index},${column}`))),
      el('td', { class: 'survey-row-buttons' },
        button('add', 'New row above row', '+', () => { next = [index, 0]; actions.addSurveyRow(index); }),
        button('remove', 'Take out row', '×', () => {
          next = [Math.max(0, Math.min(index, current.draft.rows.length - 2)), 0];
          actions.removeSurveyRow(index);
        })));
  }

  /** What is wrong, at its cell; nothing where all is well. */
  function tell() {
    const words = new Map([...current.refused, ...current.status === 'changed' ? [] : current.read.problems]
      .map(({ at, text }) => [at, text]));
    node.querySelectorAll('.survey-problem').forEach(span => {
      const text = words.get(span.dataset.at) ?? '';
      if (span.textContent !== text) {
        span.textContent = text;
        span.previousElementSibling.toggleAttribute('aria-invalid', false);
        if (text !== '') {
          span.previousElementSibling.setAttribute('aria-invalid', 'true');
        }
      }
    });
  }

  return {
    node, draw,
    /** Shows a cell. @param at "row,column" */
    show: at => go(...at.split(',').map(Number)),
    forget: () => { drawn = null; },
  };
}
