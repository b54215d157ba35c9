/** Two versions of one project: what differs, whose is taken at each, and both put together. */
import { el, replace, say } from '../../dom.js';
import { openOf } from '../../merge/versions.js';

const BY = { mine: 'only I changed it', theirs: 'only they changed it', both: 'both changed it' };

export function mountMerging(root, { store, actions }) {
  const head = el('h2', { id: 'merge-title', tabindex: '-1' }, 'Two versions of this project');
  const told = el('p', { id: 'merge-told', role: 'status' });
  const frame = el('div', { class: 'table-frame', tabindex: '0', role: 'region', 'aria-label': 'What differs' });
  const put = el('button', { id: 'merge-put', type: 'button', on: { click: () => actions.putTogether() } },
    'Put both together');
  const left = el('span', { id: 'merge-left', role: 'status' });
  root.append(head, told, frame, el('p', { class: 'import-buttons' }, put,
    el('button', { id: 'merge-again', type: 'button', on: { click: () => actions.compareAgain() } }, 'Compare again'),
    left));
  let drawn = null;

  const stop = store.watch(['merge', 'busy'], ({ merge, busy }) => {
    root.hidden = merge === null;
    if (merge === null) {
      drawn = null;
      return;
    }
    const { differences, choices } = merge;
    if (drawn !== differences) {
      drawn = differences;
      const alone = differences.filter(({ by }) => by !== 'both').length;
      say(told, differences.length === 0 ? 'Both say the same.' : [
        `Revision ${merge.on}${merge.author && ` by ${merge.author}`} and what is on this page differ in `
          + `${count(differences.length, 'thing')}.`,
        alone > 0 && `${count(alone, 'change')} of one side alone can be put together as they are.`,
        'What is not taken stays as a revision.'].filter(Boolean).join(' '));
      replace(frame, differences.length > 0 && table(differences));
    }
    differences.forEach(({ id, by }) => {
      const taken = choices[id] ?? by;
      frame.querySelectorAll('input').forEach(input => {
        if (input.dataset.id === id) {
          input.checked = input.value === taken;
        }
      });
    });
    const open = openOf(differences, choices).length;
    say(left, open === 0 ? '' : `Choose mine or theirs at ${count(open, 'thing')} that both changed.`);
    put.disabled = busy || open > 0;
  });

  function table(differences) {
    return el('table', { id: 'merge-table' },
      el('caption', { class: 'unseen' }, 'What differs, before and in both versions'),
      el('thead', {}, el('tr', {}, ['Where', 'What', 'Before', 'Mine', 'Theirs', ''].map(word =>
        el('th', { scope: 'col' }, word || el('span', { class: 'unseen' }, 'Who changed it'))))),
      el('tbody', {}, differences.map((one, row) => el('tr', { 'data-id': one.id, 'data-by': one.by },
        el('th', { scope: 'row' }, one.where), el('td', {}, one.what),
        el('td', { 'data-head': 'Before' }, one.before),
        el('td', { 'data-head': 'Mine' }, choice(one, row, 'mine')),
        el('td', { 'data-head': 'Theirs' }, choice(one, row, 'theirs')),
        el('td', { class: 'merge-by' }, BY[one.by])))));
  }

  const choice = (one, row, side) => el('label', { class: 'merge-choice' },
    el('input', {
      type: 'radio', name: `merge-${row}`, value: side, 'data-id': one.id,
      'aria-label': `${one.where}, ${one.what}: ${side}, ${one[side]}`,
      on: { change: () => actions.chooseDifference(one.id, side) },
    }), el('span', {}, one[side]));

  return { unmount: () => { stop(); root.replaceChildren(); } };
}

const count = (number, word) => `${number} ${word}${number === 1 ? '' : 's'}`;
