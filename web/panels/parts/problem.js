/** What went wrong, every place to mend, and what to do; shown above a sheet that stays as it was. */
import { el, replace } from '../../dom.js';
import { hasLimits } from '../../limits/limits.js';

export function mountProblem(root, { store, actions }) {
  const notice = document.getElementById('notice');
  const stops = [
    store.watch(['problem', 'candidate'], ({ problem, candidate, report }) => {
      root.classList.toggle('shown', problem !== null);
      if (problem === null) {
        root.removeAttribute('data-status');
        root.replaceChildren();
        return;
      }
      root.dataset.status = problem.status;
      replace(root, problemBox(problem, candidate,
        problem.passing
          && el('button', { id: 'problem-retry', type: 'button', on: { click: actions.retry } }, 'Try again'),
        report && el('button', { id: 'problem-dismiss', type: 'button', on: { click: actions.dismissProblem } },
          'Keep the sheet as it is')));
    }),
    store.watch(['notice'], state => {
      notice.textContent = state.notice ?? '';
    }),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}

/** One problem as a box, with buttons under it. @param offered the inputs that were refused, or null */
export function problemBox(problem, offered, ...buttons) {
  return el('div', { class: 'problem', role: 'alert' },
    el('p', { class: 'problem-title' }, problem.title),
    offered && el('p', { class: 'problem-offered' }, `Offered: ${[
      offered.route, offered.rig, hasLimits(offered) && offered.limits,
    ].map(file => file?.name).filter(Boolean).join(' — ')}`),
    problem.detail && el('p', {}, problem.detail),
    problem.problems.length > 0 && el('ol', { class: 'problem-list' }, problem.problems.map(problemItem)),
    problem.remedy && el('p', { class: 'problem-remedy' }, problem.remedy),
    buttons.some(Boolean) && el('p', { class: 'problem-buttons' }, buttons));
}

function problemItem({ pointer, code, message, remedy }) {
  return el('li', { class: 'problem-item', 'data-pointer': pointer, 'data-code': code },
    pointer && el('code', { class: 'problem-pointer' }, pointer),
    el('span', { class: 'problem-message' }, message),
    remedy && el('span', { class: 'problem-remedy' }, remedy));
}
