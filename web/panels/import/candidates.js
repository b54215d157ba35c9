/** Candidates of the route in force: who reported what, and the planner's dismissals, each with a name and a reason. */
import { el, replace } from '../../dom.js';
import { candidatesOf, statesInWords } from '../../import/candidates.js';
import { kindOf } from '../../report/kinds.js';
import { folded } from './importparts.js';

export function mountCandidates(root, { store, actions }) {
  const body = el('div', { class: 'candidates' });
  root.append(body);
  /** Who decided last, so that nobody writes a name fifty times. */
  let lastBy = '';
  let decided = null;

  function draw({ inputs }) {
    const all = candidatesOf(inputs?.route);
    root.hidden = all.length === 0;
    replace(body, !root.hidden && [
      el('p', { id: 'candidates-count' }, `${statesInWords(all)}. An open candidate is known by hearsay alone and `
        + 'never clear; a dismissed one is not judged, and every report says who dismissed it and why. What is decided '
        + 'here is written in the route file: save it.'),
      el('div', {
        class: 'table-frame import-frame', tabindex: '0', role: 'region', 'aria-label': 'Table of candidates',
      },
        el('table', { id: 'candidate-table' },
          el('thead', {}, el('tr', {}, ['Place', 'Kind', 'State', 'The source says', 'Decision']
            .map(word => el('th', { scope: 'col' }, word)))),
          el('tbody', {}, all.map(row)))),
    ]);
    // The rows are new; whoever decided goes on where that was.
    const at = [...body.querySelectorAll('tr')].find(one => one.dataset.id === decided);
    at?.querySelector('.candidate-dismiss > summary, .candidate-open')?.focus();
    decided = null;
  }

  function decide(one, decision) {
    decided = one.id;
    actions.decideCandidate(one, decision);
  }

  function row(one) {
    const { candidate: { state, source, object, date, raw, by, why } } = one;
    const said = `${source}, ${object}${date ? `, as of ${date}` : ''}${raw ? `: ${raw}` : ''}`;
    return el('tr', { 'data-id': one.id, 'data-state': state },
      el('th', { scope: 'row' }, el('span', { class: 'hazard-id' }, one.id), ` ${one.name}`),
      el('td', {}, kindOf(one.hazard).word),
      el('td', {}, state, state === 'dismissed' && ` by ${by}: ${why}`),
      el('td', { class: 'import-raw' }, folded(said)),
      el('td', {}, state === 'open' && dismissal(one), state === 'dismissed' && el('button', {
        type: 'button', class: 'candidate-open', 'aria-label': `Open ${one.id} again`,
        on: { click: () => decide(one, null) },
      }, 'Open again')));
  }

  function dismissal(one) {
    const field = (name, label, more) => el('label', { class: 'field' }, el('span', {}, label),
      el('input', { name, type: 'text', required: true, autocomplete: 'off', ...more }));
    const by = field('by', 'Dismissed by', { maxlength: 100, value: lastBy });
    return el('details', { class: 'candidate-dismiss' },
      el('summary', {
        'aria-label': `Dismiss ${one.id} ${one.name}`,
        on: { click: () => { by.querySelector('input').value ||= lastBy; } },
      }, 'Dismiss'),
      el('form', { on: { submit: dismissed } }, by, field('why', 'Why', { maxlength: 1000 }),
        el('button', { type: 'submit' }, 'Dismiss it')));

    function dismissed(event) {
      event.preventDefault();
      const given = Object.fromEntries([...new FormData(event.target)].map(([key, value]) => [key, value.trim()]));
      if (given.by && given.why) {
        lastBy = given.by;
        decide(one, given);
      }
    }
  }

  const stop = store.watch(['inputs'], draw);
  return { unmount: () => { stop(); body.remove(); } };
}
