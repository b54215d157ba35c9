/** A paper made again from its record: identical, or what differs. */
import { el, replace } from '../../dom.js';
import { problemBox } from '../parts/problem.js';
import { when } from './projectparts.js';

const PAPERS = { runsheet: 'run sheet', statement: 'statement' };

export function mountVerifying(root, { store, actions }) {
  const file = el('input', {
    id: 'verify-file', type: 'file', accept: '.json,application/json', on: {
      change: () => file.files.length > 0 && actions.verifyFile(file.files[0]),
    },
  });
  const outcome = el('div', { id: 'verify-outcome', role: 'status' });
  const trouble = el('div', {});
  const details = el('details', { class: 'inputs' },
    el('summary', {}, el('span', { class: 'inputs-label' }, 'Verify a paper'),
      el('span', { class: 'inputs-hint' }, 'is it still the same?')),
    el('div', { class: 'projects-body' },
      el('label', { class: 'field file-field' }, el('span', {}, 'Record of a run sheet or statement'), file),
      outcome, trouble,
      el('p', { class: 'fine-print' }, 'A record stands beside each paper of a project, with all that the paper was '
        + 'made from. The paper is made again from it and compared to the last byte. Nothing on the page changes.')));
  root.append(details);

  const stop = store.watch(['verifying'], ({ verifying: { status, name, data, problem } }) => {
    root.dataset.status = status;
    root.dataset.identical = data === null ? '' : String(data.identical);
    if (status !== 'none') {
      details.open = true;
    }
    replace(trouble, problem && problemBox(problem, null));
    replace(outcome, status === 'reading' && [`Making ${name} again… `,
      el('button', { id: 'verify-stop', type: 'button', on: { click: () => actions.stopVerifying() } }, 'Stop')],
    data && told(name, data));
    file.value = '';
  });
  return { unmount: () => { stop(); root.replaceChildren(); } };
}

function told(name, { paper, version, issued, now, identical, differing, differences }) {
  const head = el('p', {}, el('strong', {}, identical ? 'Identical. ' : 'NOT identical. '),
    `${name}: the ${PAPERS[paper]} that version ${version} issued ${when(issued)}, made again by version ${now}`
      + `${identical ? ', is the same to the last byte.' : ', is another.'}`);
  if (identical) {
    return head;
  }
  return [head, differing === null
    ? el('p', {}, 'Issue it as JSON to see each value that differs.')
    : differing === 0 ? el('p', {}, 'The paper in the record does not have the hash that the record says.')
      : el('div', { class: 'table-frame', tabindex: '0', role: 'region', 'aria-label': 'Values that differ' },
        el('table', { id: 'verify-table' },
          el('caption', {}, `${differing} ${differing === 1 ? 'value differs' : 'values differ'}`
            + `${differing > differences.length ? `; the first ${differences.length}` : ''}`),
          el('thead', {}, el('tr', {}, ['Value', 'In the record', 'Made again'].map(word =>
            el('th', { scope: 'col' }, word)))),
          el('tbody', {}, differences.map(({ pointer, then, again }) => el('tr', {},
            el('th', { scope: 'row' }, el('code', {}, pointer)), el('td', {}, then), el('td', {}, again))))))];
}
