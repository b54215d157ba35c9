/** The answer before everything else: how the plan ends, what to do first or what blocks, and where to read on. */
import { el, replace } from '../dom.js';
import { chainage, duration } from '../format.js';
import { isOutdated } from '../moving.js';
import { isBlocked, standing, WHOLE_ROUTE } from '../plan.js';
import { findConfiguration } from '../report.js';
import { outcomeTag } from './symbol.js';

export function mountAnswer(root, { store }) {
  const stop = store.watch(['report', 'plan', 'units', 'configuration', 'whatIf', 'inputs', 'busy'], state => {
    const { report, configuration } = state;
    // The plan of another place of the load is no answer.
    const { status, data } = isOutdated(state)
      ? { status: state.problem === null ? 'loading' : 'stopped', data: null } : state.plan;
    root.dataset.status = status;
    root.dataset.outcome = data?.outcome ?? '';
    if (report === null) {
      root.replaceChildren();
      return;
    }
    const outcome = data?.outcome ?? pending(status);
    document.title = `${state.whatIf === null ? '' : 'What-if: '}${outcome}: ${report.route.name} (Cresthaul)`;
    replace(root,
      el('p', { class: 'answer-head' },
        data ? outcomeTag(data.outcome) : el('strong', {}, `Route plan: ${pending(status)}`),
        data && ` ${isBlocked(data) ? 'NOT FOR DRIVING.' : standing(data)}`),
      data && el('p', {}, todo(data, state.units), ' ', el('a', { href: '#route-plan', on: { click: toPlan } },
        'Route plan with its steps and papers')),
      el('p', { class: 'fine-print' }, `The table below is of one configuration of ${report.configurations.length}: `,
        findConfiguration(report, configuration)?.label ?? configuration,
        '. The plan is over all of them.'));
  });
  return { unmount: () => { stop(); root.replaceChildren(); } };
}

const pending = status => ({ failed: 'not made', stopped: 'stopped' })[status] ?? 'being made';

/** The first thing to do, in words. */
function todo(plan, units) {
  if (isBlocked(plan)) {
    const places = plan.blocking.length === 1 ? '1 place' : `${plan.blocking.length} places`;
    return `Blocked at ${places}: ${plan.blocking.map(({ hazard, name, chainageM }) =>
      (hazard === WHOLE_ROUTE ? name : `${hazard} ${name} (${chainage(chainageM, units)})`)).join(', ')}.`;
  }
  const depart = plan.steps.find(({ step }) => step === 'depart');
  const label = depart?.set?.label;
  const open = plan.conditions.filter(({ settled }) => !settled);
  return `${label ? `Depart with ${label}. ` : ''}${plan.changes === 0 ? 'No change' : plan.changes === 1 ? '1 change'
    : `${plan.changes} changes`} on the way, ${duration(plan.seconds)} beyond driving.${open.length === 0 ? ''
    : ` Before departure, settle: ${open.map(({ hazard, name, what }) =>
      `${hazard === WHOLE_ROUTE ? name : hazard}, ${what}`).join('; ')}.`}`;
}

/** The address belongs to the selection: the link moves the focus instead. */
function toPlan(event) {
  event.preventDefault();
  document.getElementById('plan-outcome').focus();
  document.getElementById('route-plan').scrollIntoView();
}
