/** Level and rod notes of a survey: typed as in the field book, reduced, closed, and taken into the table. */
import { el, replace, say } from '../../dom.js';
import { UNITS } from '../../text/typedlength.js';
import { COLUMNS, blankReading, hasReadings, heightText, reduced, resultWords } from '../../survey/leveling.js';

const HOW = 'One row for each point the rod stood on: first the backsight on the benchmark; then an intermediate sight '
  + 'for each point of the road; at a turning point foresight and new backsight in one row; last the foresight back on '
  + 'the benchmark. Points of the road have a distance and a line: left, center or right.';
const RULE = 'Allowable: 12 mm times the root of the length in kilometers, third order, Federal Geodetic Control '
  + 'Committee 1984, from memory.';
const CLOSINGS = [['start', 'the benchmark it began on'], ['other', 'another known level'], ['none', 'nothing']];
/** Empty rows below what is written. */
const SPARE = 2;

/** @returns {node, draw(survey)} */
export function createLevelNotes(actions) {
  const field = (key, label, example) => {
    const input = el('input', {
      id: `notes-${key}`, type: 'text', autocomplete: 'off', maxlength: 60, placeholder: example,
      'aria-describedby': `notes-at-${key}`, on: { input: () => actions.surveyNotes({ [key]: input.value }) },
    });
    return { input, node: labeled(label, input, problemAt(key)) };
  };
  const choice = (key, label, values) => {
    const select = el('select', {
      id: `notes-${key}`, 'aria-describedby': `notes-at-${key}`,
      on: { change: () => actions.surveyNotes({ [key]: select.value }) },
    }, values.map(([value, words]) => el('option', { value }, words)));
    return { input: select, node: labeled(label, select, problemAt(key)) };
  };
  const fields = {
    unit: choice('unit', 'Readings without a unit are in', UNITS.map(unit => [unit, unit])),
    start: field('start', 'Level of the benchmark', '100'),
    closing: choice('closing', 'Closed on', CLOSINGS),
    end: field('end', 'Its level', '101.25'),
    loop: field('loop', 'Length of the loop, if known', '800 ft'),
  };
  const spread = el('input', {
    id: 'notes-spread', type: 'checkbox', on: { change: () => actions.surveyNotes({ spread: spread.checked }) },
  });
  const body = el('tbody');
  const outcome = el('p', { id: 'notes-outcome', role: 'status' });
  const take = el('button', { id: 'notes-take', type: 'button', on: { click: () => actions.takeNotes() } },
    'Put these heights into the table');
  const node = el('details', { id: 'survey-notes', class: 'survey-more' }, el('summary', {}, 'Level and rod notes'),
    el('div', { class: 'survey-body' },
      el('p', { class: 'survey-how' }, HOW),
      el('div', { class: 'survey-fields' }, Object.values(fields).map(one => one.node),
        el('label', { class: 'import-check' }, spread, 'Spread the misclosure over the set-ups')),
      problemAt('notes'),
      el('div', { class: 'table-frame survey-frame' },
        el('table', { id: 'notes-rows', on: { input: typed, keydown: keyed, paste: pasted } },
          el('thead', {}, el('tr', {}, ['#', ...COLUMNS, 'Level'].map(word => el('th', { scope: 'col' }, word)))),
          body)),
      outcome, el('p', { class: 'survey-how' }, RULE),
      el('p', { class: 'import-buttons' }, take)));
  let drawn = null;

  function labeled(label, ...control) {
    return el('label', { class: 'field' }, el('span', {}, label), control);
  }

  function problemAt(at) {
    return el('span', { class: 'survey-problem', id: `notes-at-${at.replace(',', '-')}`, 'data-note-at': at });
  }

  const place = input => input.dataset.note.split(',').map(Number);

  function typed({ target }) {
    actions.surveyReading(...place(target), target.value);
  }

  function keyed(event) {
    const step = { ArrowDown: 1, Enter: 1, ArrowUp: -1 }[event.key];
    if (step !== undefined && !event.altKey && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      const [row, column] = place(event.target);
      body.querySelector(`[data-note="${row + step},${column}"]`)?.focus();
    }
  }

  function pasted(event) {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (/[\t\n\r;]/.test(text.trim())) {
      event.preventDefault();
      actions.pasteReadings(...place(event.target), text);
    }
  }

  function draw(survey) {
    const { notes, units } = survey.draft;
    if (notes === drawn?.notes && units === drawn.units && survey.refused === drawn.refused) {
      return;
    }
    drawn = { notes, units, refused: survey.refused };
    const count = notes.rows.length + SPARE;
    for (let k = body.children.length; k < count; k++) {
      body.append(row(k));
    }
    [...body.children].slice(count).forEach(one => one.remove());
    const read = reduced(notes, units.distance);
    const words = new Map([...read.problems, ...survey.refused].map(({ at, text }) => [at, text]));
    [...body.children].forEach((tr, k) =>
      fill(tr, notes.rows[k] ?? blankReading(), read.levels[k] ?? null, notes.unit));
    Object.entries(fields).forEach(([key, { input }]) => put(input, notes[key]));
    spread.checked = notes.spread;
    fields.end.node.hidden = notes.closing !== 'other';
    node.querySelectorAll('[data-note-at]').forEach(span => {
      say(span, words.get(span.dataset.noteAt) ?? '');
      span.previousElementSibling?.setAttribute('aria-invalid', String(words.has(span.dataset.noteAt)));
    });
    take.disabled = read.problems.length > 0 || read.points.length === 0;
    replace(outcome, hasReadings(notes) && outcomeWords(read, notes));
  }

  function outcomeWords(read, notes) {
    if (read.problems.length > 0) {
      return 'Something is to be mended before there are heights.';
    }
    const length = m => `${heightText(m, notes.unit)} ${notes.unit}`;
    const { back, fore, rises, falls, first, last } = read.sums;
    return `Backsights ${length(back)} less foresights ${length(fore)}, rises ${length(rises)} less falls `
      + `${length(falls)}: last less first ${length(last - first)}${read.agrees ? '' : ', which do not agree'}. `
      + `${resultWords(read, notes).replace(/^./, letter => letter.toUpperCase())}.`
      + `${read.allowedM !== null && Math.abs(read.misclosureM) > read.allowedM ? ' Level it again.' : ''}`;
  }

  function row(k) {
    return el('tr', {}, el('th', { scope: 'row' }, String(k + 1)),
      COLUMNS.map((name, column) => el('td', {}, el('input', {
        type: 'text', autocomplete: 'off', spellcheck: 'false', maxlength: column === COLUMNS.length - 1 ? 80 : 24,
        'data-note': `${k},${column}`, 'aria-label': `${name}, note ${k + 1}`,
        'aria-describedby': `notes-at-${k}-${column}`,
      }), problemAt(`${k},${column}`))),
      el('td', { class: 'figure' }));
  }

  function fill(tr, cells, levelM, unit) {
    tr.querySelectorAll('input').forEach((input, column) => put(input, cells[column]));
    say(tr.lastElementChild, Number.isFinite(levelM) ? heightText(levelM, unit) : '');
  }

  /** What is being typed is left alone. */
  function put(input, value) {
    if (input.value !== value && (input !== document.activeElement || input.value.trim() !== value.trim())) {
      input.value = value;
    }
  }

  return { node, draw };
}
