/** The route plan: how it ends, what must be settled, what blocks, the steps, what the planner allows, the papers. */
import { el, replace, say } from '../../dom.js';
import { duration } from '../../text/format.js';
import { standing } from '../../report/plan.js';
import { blockingList, conditionList, leastLine, tradeTable } from './planoutcome.js';
import { mountPlanOptions } from './planoptions.js';
import { mountPlanStrip } from './planstrip.js';
import { mountPapers } from './papers.js';
import { problemBox } from '../parts/problem.js';
import { stepList } from './plansteps.js';
import { crossingTable, robustnessTable } from './plantables.js';
import { outcomeTag } from '../parts/symbol.js';
import { checkingWords } from '../../exchange/underway.js';

export function mountRoutePlan(root, { store, actions }) {
  const status = el('div', { id: 'plan-status', role: 'status' });
  const progress = el('p', { id: 'plan-progress', class: 'fine-print' });
  const trouble = el('div', { id: 'plan-problem' });
  const outcome = el('h3', { id: 'plan-outcome', tabindex: '-1' });
  const words = el('p', { id: 'plan-standing' });
  const figures = el('p', { id: 'plan-figures', class: 'fine-print' });
  const strip = el('div', { class: 'plan-strip' });
  const settle = el('div', { class: 'plan-columns' });
  const steps = el('div', { id: 'plan-steps-frame' });
  const options = el('div', { id: 'plan-options' });
  const tables = el('div', { class: 'plan-tables' });
  const papers = el('div', { id: 'papers' });
  const cautions = el('div', { class: 'cautions' });
  const head = el('div', { class: 'plan-head' }, outcome, words, figures);
  const answer = el('div', { id: 'plan-answer', hidden: true },
    strip, settle, steps, tables, el('div', { class: 'plan-cautions' }, cautions));
  root.append(status, progress, trouble, head, papers, options, answer);
  let moveFocus = false;

  /** What is pressed here asks anew, and goes with the answer before: the focus waits for the new one. */
  const own = Object.fromEntries([
    'acceptTight', 'setAside', 'undecide', 'settle', 'unsettle', 'askPlan', 'plainPlan', 'drawPlan',
  ]
    .map(name => [name, (...given) => {
      moveFocus = true;
      return actions[name](...given);
    }]));
  const shared = { store, actions: { ...actions, ...own } };
  // Before the panels within, which cannot draw what has no width.
  const stopShowing = store.watch(['plan'], ({ plan }) => {
    answer.hidden = head.hidden = plan.data === null;
  });
  const panels = [
    mountPlanStrip(strip, shared), mountPlanOptions(options, shared), mountPapers(papers, shared),
  ];

  const stops = [
    stopShowing,
    store.watch(['report', 'planAsked'], ({ report }) => {
      if (report !== null) {
        actions.drawPlan();
      }
    }),
    store.watch(['plan', 'planProgress'], ({ plan, planProgress }) => {
      progress.hidden = plan.status !== 'loading' || planProgress === null;
      say(progress, progress.hidden ? '' : checkingWords(planProgress));
    }),
    store.watch(['plan', 'units', 'report'], state => {
      const { status: now, data, problem } = state.plan;
      root.dataset.status = now;
      root.dataset.outcome = data?.outcome ?? '';
      root.setAttribute('aria-busy', String(now === 'loading'));
      replace(status, statusLine(now, actions, own));
      replace(trouble, problem && problemBox(problem, null,
        el('button', { id: 'plan-retry', type: 'button', on: { click: () => own.drawPlan() } }, 'Ask again')));
      if (data === null || state.report === null) {
        if (now === 'failed' && moveFocus) {
          moveFocus = false;
          document.getElementById('plan-retry').focus();
        }
        return;
      }
      replace(outcome, outcomeTag(data.outcome));
      replace(words, standing(data));
      replace(figures, `${data.changes} ${data.changes === 1 ? 'change' : 'changes'} of configuration on the way; `
        + `changes and slow passages take ${duration(data.seconds)} beyond driving at road speed`
        + `${data.stopsAtBlocks ? ', were it not blocked' : ''}.`);
      Object.assign(figures.dataset, { seconds: data.seconds, changes: data.changes });
      replace(settle, conditionList(state, shared.actions), blockingList(state, shared.actions));
      replace(steps, stepList(state, actions));
      replace(tables, leastLine(state), tradeTable(state), crossingTable(data, state.units),
        robustnessTable(data, state.units));
      replace(cautions, el('h3', {}, 'Caution'), el('ul', {}, data.cautions.map(text => el('li', {}, text))));
      if (moveFocus) {
        moveFocus = false;
        outcome.focus({ preventScroll: false });
      }
    }),
  ];
  return {
    unmount: () => {
      panels.forEach(panel => panel.unmount());
      stops.forEach(stop => stop());
      root.replaceChildren(root.firstElementChild);
    },
  };
}

function statusLine(now, actions, own) {
  const button = (id, words, click) => el('button', { id, type: 'button', on: { click } }, words);
  switch (now) {
    case 'loading':
      return ['Working out the plan… ', button('plan-stop-asking', 'Stop', () => actions.stopPlan())];
    case 'stopped':
      return ['Stopped: there is no plan for what is asked. ',
        button('plan-again', 'Work it out', () => own.drawPlan())];
    case 'failed':
      return 'There is no plan for what is asked.';
    default:
      return null;
  }
}
