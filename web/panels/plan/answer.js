/** The answer before everything else: how the plan ends, what to do first or what blocks, and where to read on. */
import { el, replace } from '../../dom.js';
import { chainage, duration } from '../../text/format.js';
import { isOutdated } from '../../rig/moving.js';
import { isBlocked, NO_WAY, standing, WHOLE_ROUTE } from '../../report/plan.js';
import { findConfiguration } from '../../report/report.js';
import { outcomeTag } from '../parts/symbol.js';

export function mountAnswer(root, { store }) {
  const stop = store.watch([
    'report', 'plan', 'planProgress', 'units', 'configuration', 'whatIf', 'inputs', 'busy',
  ], state => {
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
    const early = status === 'loading' && !isOutdated(state) ? state.planProgress?.blocked ?? null : null;
    const outcome = data?.outcome ?? (early?.length > 0 ? NO_WAY : pending(status));
    document.title = `${state.whatIf === null ? '' : 'What-if: '}${outcome}: ${report.route.name} (Cresthaul)`;
    replace(root,
      el('p', { class: 'answer-head' },
        data || early?.length > 0 ? outcomeTag(outcome) : el('strong', {}, `Route plan: ${pending(status)}`),
        data ? ` ${isBlocked(data) ? 'NOT FOR DRIVING.' : standing(data)}` : early?.length > 0 && ' NOT FOR DRIVING.'),
      early !== null && el('p', {}, soFar(early, state.units)),
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
    return blockedAt(plan.blocking, units);
  }
  const depart = plan.steps.find(({ step }) => step === 'depart');
  const label = depart?.set?.label;
  const open = plan.conditions.filter(({ settled }) => !settled);
  return `${label ? `Depart with ${label}. ` : ''}${plan.changes === 0 ? 'No change' : plan.changes === 1 ? '1 change'
    : `${plan.changes} changes`} on the way, ${duration(plan.seconds)} beyond driving.${open.length === 0 ? ''
    : ` Before departure, settle: ${open.map(({ hazard, name, what }) =>
      `${hazard === WHOLE_ROUTE ? name : hazard}, ${what}`).join('; ')}.`}`;
}

function blockedAt(blocking, units) {
  const places = blocking.length === 1 ? '1 place' : `${blocking.length} places`;
  return `Blocked at ${places}: ${blocking.map(({ hazard, name, chainageM }) =>
    (hazard === WHOLE_ROUTE ? name : `${hazard} ${name} (${chainage(chainageM, units)})`)).join(', ')}.`;
}

/** What is settled while the rest of the plan is being made. A way without its conditions is no answer yet. */
const soFar = (blocked, units) => (blocked.length > 0
  ? `${blockedAt(blocked, units)} What would open them is being looked for.`
  : 'No place blocks every way; steps and conditions are being worked out.');

/** The address belongs to the selection: the link moves the focus instead. */
function toPlan(event) {
  event.preventDefault();
  document.getElementById('plan-outcome').focus();
  document.getElementById('route-plan').scrollIntoView();
}
