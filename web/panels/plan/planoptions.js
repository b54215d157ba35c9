/** What the planner allows: configurations to keep or not to use, raising, and what each change takes. */
import { el, replace } from '../../dom.js';
import { asSpeed, asTime, speedUnitName } from '../../text/format.js';
import { decisions } from '../../report/plan.js';

/** Times by their key in a request. */
const TIMES = [
  ['stop', 'Stop and move off'], ['notch', 'Another notch'], ['liftAxle', 'Lift axle up or down'],
  ['regulator', 'Booster regulator'], ['shim', 'Shim in or out'], ['raise', 'Raise before a hazard'],
  ['lower', 'Lower after it'], ['coupleBooster', 'Couple the booster'], ['uncoupleBooster', 'Uncouple the booster'],
  ['closeCouple', 'Close-couple the booster'], ['openCloseCoupling', 'Open the close coupling'],
  ['loadBooster', 'Load the booster'], ['unloadBooster', 'Unload the booster'],
];

export function mountPlanOptions(root, { store, actions }) {
  const keep = el('select', { id: 'plan-keep' });
  const raising = el('input', { id: 'plan-no-raising', type: 'checkbox' });
  const reserve = el('input', { id: 'plan-reserve', type: 'text', size: 8, autocomplete: 'off', placeholder: '10 %' });
  const fewest = el('input', { id: 'plan-fewest', type: 'checkbox' });
  const forbidden = el('div', { class: 'plan-forbid' });
  const fields = new Map([...TIMES.map(([key]) => key), 'crawl'].map(key => [key, el('input', {
    id: `plan-time-${key}`, type: 'text', size: 10, autocomplete: 'off', spellcheck: 'false',
    'aria-describedby': 'plan-times-note',
  })]));
  const crawlNote = el('span', {}, 'Crawling speed');
  const decided = el('ul', { id: 'plan-decided', class: 'plan-list' });
  const summary = el('span', { class: 'inputs-summary' });
  const form = el('form', { on: { submit: apply } },
    el('div', { class: 'choosers' },
      el('label', { class: 'field' }, el('span', {}, 'Keep one configuration'), keep),
      el('label', { class: 'plan-check' }, raising, ' Pass everything in transport stance, never raised'),
      el('label', { class: 'field' }, el('span', {}, 'Reserve to keep, % of what is required'), reserve),
      el('label', { class: 'plan-check' }, fewest, ' Fewest conditions first, then least time')),
    el('fieldset', {}, el('legend', {}, 'Not to be used'), forbidden),
    el('fieldset', { class: 'plan-times' }, el('legend', {}, 'What it takes'),
      TIMES.map(([key, label]) => el('label', { class: 'field' }, el('span', {}, label), fields.get(key))),
      el('label', { class: 'field' }, crawlNote, fields.get('crawl')),
      el('p', { id: 'plan-times-note', class: 'fine-print' },
        'As "15 min", "90 s" or "1 h 30 min"; a bare number is minutes. Emptied: as the rig file says, or this '
          + 'program\'s own choice, which has no source.')),
    el('p', { class: 'plan-buttons' },
      el('button', { id: 'plan-apply', type: 'submit' }, 'Plan with these'),
      el('button', { id: 'plan-plain', type: 'button', on: { click: () => actions.plainPlan() } },
        'Clear all plan options')));
  root.append(decided, el('details', {},
    el('summary', {}, el('span', { class: 'inputs-label' }, 'What the plan may use, and what changes take'), summary),
    form));
  /** Times as last shown in the fields: what was not touched is not asked for. */
  let shown = {};

  function apply(event) {
    event.preventDefault();
    const { planAsked, units } = store.get();
    const times = {};
    for (const [key, field] of fields) {
      const text = withUnit(field.value.trim(), key === 'crawl' ? speedUnitName(units) : 'min');
      if (text !== '' && (text !== shown[key] || key in planAsked.times)) {
        times[key] = text;
      }
    }
    actions.askPlan({
      times,
      fix: keep.value || null,
      avoidRaising: raising.checked,
      leastReserve: reserve.value.trim() === '' ? null : withUnit(reserve.value.trim(), '%'),
      fewestConditions: fewest.checked,
      forbid: [...forbidden.querySelectorAll('input:checked')].map(input => input.value),
    });
  }

  function fill({ report, planAsked }) {
    if (report === null) {
      return;
    }
    replace(keep, el('option', { value: '' }, 'whichever serves best'),
      report.configurations.map(c => el('option', { value: c.key }, c.label)));
    keep.value = planAsked.fix ?? '';
    raising.checked = planAsked.avoidRaising;
    reserve.value = planAsked.leastReserve ?? '';
    fewest.checked = planAsked.fewestConditions;
    replace(forbidden, report.configurations.map(c => {
      const box = el('input', { type: 'checkbox', name: 'forbid', value: c.key });
      box.checked = planAsked.forbid.includes(c.key);
      return el('label', { class: 'plan-check' }, box, ` ${c.label}`);
    }));
    const said = [
      planAsked.fix !== null && 'one kept',
      planAsked.forbid.length > 0 && `${planAsked.forbid.length} not to be used`,
      planAsked.avoidRaising && 'no raising',
      planAsked.leastReserve !== null && `reserve ${planAsked.leastReserve}`,
      planAsked.fewestConditions && 'fewest conditions',
      planAsked.settled.length > 0 && `${planAsked.settled.length} settled`,
      Object.keys(planAsked.times).length > 0 && 'times changed',
    ].filter(Boolean);
    replace(summary, said.join(', ') || 'none set');
  }

  function fillTimes({ plan, planAsked, units }) {
    crawlNote.textContent = `Crawling speed (${speedUnitName(units)})`;
    const times = plan.data?.options.times;
    if (times) {
      shown = Object.fromEntries([...TIMES.map(([key]) => [key, asTime(times[key])]),
        ['crawl', asSpeed(times.crawlMps, units)]]);
    }
    const wrong = new Set((plan.problem?.problems ?? []).map(({ pointer }) => pointer));
    for (const [key, field] of fields) {
      field.value = planAsked.times[key] ?? shown[key] ?? '';
      field.setAttribute('aria-invalid', String(wrong.has(`/plan/times/${key}`)));
    }
  }

  const stops = [
    store.watch(['report', 'planAsked'], fill),
    store.watch(['plan', 'planAsked', 'units'], fillTimes),
    // With a plan they stand among its conditions; without one they must be there to be undone.
    store.watch(['plan', 'planAsked', 'report'], ({ plan, planAsked, report }) => {
      const list = plan.data === null && report !== null ? decisions(report, planAsked) : [];
      replace(decided, list.map(({ id, name, what }) => el('li', { 'data-hazard': id },
        `${id} ${name}: ${what}. `,
        el('button', { type: 'button', 'aria-label': `Undo ${id}`, on: { click: () => actions.undecide(id) } },
          'Undo'))));
    }),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}

/** A bare number gets the unit its field names. */
const withUnit = (text, unit) => (/^[\d.]+$/.test(text) ? `${text} ${unit}` : text);
