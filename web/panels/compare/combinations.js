/** For the planner: the stance with every unit and without those that may be left off, each with a plan of its own. */
import { el, replace } from '../../dom.js';
import { combinationsOf, measuredOf } from '../../rig/leftoff.js';
import { duration, percentDown, room, weight } from '../../text/format.js';
import { framed } from '../parts/framed.js';
import { problemBox } from '../parts/problem.js';
import { outcomeTag } from '../parts/symbol.js';
import { groupTable } from './grouptable.js';

const HEADS = ['Combination', 'Outcome', 'Blocked at', 'To settle', 'Changes and slow passages', 'Changes', 'Longest',
  'Gross weight', 'Least reserve', 'On the sheet'];
const FIGURES = ['To settle', 'Changes and slow passages', 'Changes', 'Longest', 'Gross weight'];

export function mountCombinations(root, { store, actions }) {
  const compare = el('button', {
    id: 'combinations-compare', type: 'button', on: { click: () => actions.drawCombinations() },
  }, 'Plan each combination');
  const stop = el('button', {
    id: 'combinations-stop', type: 'button', on: { click: () => actions.stopCombinations() },
  }, 'Stop');
  const status = el('p', { id: 'combinations-status', role: 'status' });
  const trouble = el('div', {});
  const table = el('div', {});
  const groups = el('div', {});
  root.append(
    el('h3', {}, 'With and without units that may be left off'),
    el('p', { class: 'fine-print' }, 'Each gets a plan of its own. What was accepted, set aside, settled, kept or '
      + 'forbidden for one combination does not count here. Heights are those measured with every unit coupled: where '
      + 'leaving one off changes them, measure that stance.'),
    el('p', { class: 'choosers' }, compare, stop), status, trouble, table, groups);

  let last = questionOf(store.get());

  function draw({ inputs, report, combinations: { status: now, data, problem }, units }) {
    const json = inputs?.rig?.json;
    const stance = json?.stances?.[measuredOf(json, inputs.stance)];
    const names = stance ? combinationsOf(stance) : [];
    root.hidden = report === null || names.length < 2;
    root.dataset.status = now;
    root.setAttribute('aria-busy', String(now === 'loading'));
    compare.hidden = now === 'loading';
    stop.hidden = now !== 'loading';
    status.textContent = saidOf(now, names.length);
    replace(trouble, problem && problemBox(problem));
    replace(table, data && framed('Combinations side by side', tableOf(data, report, units)));
    replace(groups, data && groupTable(data.combinations.map(c => ({ label: c.stance, groups: c.groups })), units, {
      id: 'combination-loads', what: 'Combination', frame: 'Axle groups of the combinations',
    }));
  }

  function tableOf({ combinations }, report, units) {
    return el('table', { id: 'combination-table' },
      el('caption', { class: 'unseen' }, 'Combinations, each with its plan'),
      el('thead', {}, el('tr', {}, HEADS.map(head =>
        el('th', { scope: 'col', class: FIGURES.includes(head) ? 'figure' : null }, head)))),
      el('tbody', {}, combinations.map(c => el('tr', { 'data-stance': c.stance, 'data-outcome': c.outcome },
        el('th', { scope: 'row' }, c.stance, el('span', { class: 'hazard-side' }, c.configurations.join(' → '))),
        el('td', {}, outcomeTag(c.outcome)),
        el('td', {}, c.blocking.join(', ') || 'nowhere'),
        el('td', { class: 'figure' }, String(c.conditions)),
        el('td', { class: 'figure' }, duration(c.seconds)),
        el('td', { class: 'figure' }, String(c.changes)),
        el('td', { class: 'figure' }, room(c.lengthM, units, 'up')),
        el('td', { class: 'figure' }, weight(c.grossKg, units)),
        el('td', {}, c.least.share === null ? 'not known' : `${percentDown(c.least.share)} at ${c.least.shareAt}`),
        el('td', {}, c.stance === report?.rig.stance ? 'this one' : el('button', {
          type: 'button', class: 'combination-show', 'aria-label': `Put ${c.stance} on the sheet`,
          on: { click: () => actions.setStance(c.stance) },
        }, 'Show'))))));
  }

  const stops = [
    // Another combination of the same rig on the sheet leaves what was compared; all else makes it another question.
    store.watch(['inputs', 'planAsked'], state => {
      const asked = questionOf(state);
      if (asked !== last) {
        last = asked;
        actions.forgetCombinations();
      }
    }),
    store.watch(['inputs', 'report', 'combinations', 'units'], draw),
  ];
  return { unmount: () => { stops.forEach(one => one()); root.replaceChildren(); } };
}

const saidOf = (status, count) => ({
  loading: `Planning ${count} combinations…`, stopped: 'Stopped before all were planned.',
})[status] ?? '';

/** What the comparison hangs on. */
function questionOf({ inputs, planAsked }) {
  const json = inputs?.rig?.json;
  return JSON.stringify([inputs?.route?.text, inputs?.rig?.text, inputs?.limits?.text, inputs?.margins,
    json && measuredOf(json, inputs.stance), planAsked.times, planAsked.avoidRaising, planAsked.leastReserve,
    planAsked.fewestConditions]);
}
