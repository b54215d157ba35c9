/** For the planner: every configuration kept all the way, sortable; one shown on the sheet, up to three plotted. */
import { el, replace } from '../../dom.js';
import { duration, offset, room, spareLeft, weight } from '../../text/format.js';
import { sorted, SPARE_KINDS, worstOf } from '../../report/plan.js';
import { raisedWords, ranked } from '../../report/report.js';
import { BOOSTER_WORDS } from '../../drawing/symbols.js';
import { mountCombinations } from './combinations.js';
import { mountDifferences } from './differences.js';
import { groupTable } from './grouptable.js';
import { mountMarginPlot } from './marginplot.js';
import { problemBox } from '../parts/problem.js';
import { outcomeTag, verdictIcon, verdictTag } from '../parts/symbol.js';

const COUNTS = [['clear', 'clear'], ['tight', 'tight'], ['contact', 'contact'], ['notSurveyed', 'not surveyed'],
  ['outsideLimits', 'outside limits'], ['loadsNotKnown', 'loads not known']];

/** Columns: key to sort by, head, whether figures. */
const COLUMNS = [
  ['axles', 'Axles'], ['booster', 'Booster'], ['notch', 'Notch'], ['outcome', 'Kept all the way'],
  ['blocking', 'Places that block', true], ['seconds', 'Slow passages', true], ['raised', 'Passed raised', true],
  ...SPARE_KINDS.map(([kind, word]) => [kind, `Least left ${word}`, true]),
  ['gross', 'Gross weight', true], ['length', 'Length', true],
  ['verdict', 'Whole route in transport'], ['loads', 'Loads'],
  ...COUNTS.map(([field, verdict]) => [field, [verdictIcon(verdict, 12), ` ${verdict}`], true]),
  ['raisedOnly', 'clear only raised', true],
];

export function mountComparison(root, { store, actions }) {
  const body = el('tbody');
  let order = { column: null, descending: false };
  const heads = new Map(COLUMNS.map(([key, words, figure]) => [key,
    el('th', { scope: 'col', class: figure ? 'figure' : null, 'data-sort': key },
      el('button', { type: 'button', class: 'sort', on: { click: () => sortBy(key) } }, words,
        el('span', { class: 'sort-mark', 'aria-hidden': 'true' })))]));
  const best = el('button', {
    id: 'sort-best', type: 'button', on: { click: () => sortBy(null) },
  }, 'Best first');
  const status = el('div', { id: 'comparison-status', role: 'status' });
  const trouble = el('div', {});
  const groups = el('div', { id: 'comparison-groups' });
  const plot = el('div', { id: 'margin-plot-panel' });
  const differ = el('div', { id: 'differences' });
  const combinations = el('div', { id: 'combinations' });
  root.append(
    el('p', { class: 'fine-print' }, 'Best for this route first: fewest hazards that not even a raise makes clear, '
      + 'then fewest contacts, then fewest not surveyed, then fewest tight. A head sorts by its column. '
      + 'Show puts one on the whole sheet; plot takes up to three.'),
    el('p', { id: 'comparison-trains' },
      'Not asked here: whether rail crossings are cleared in time before a train. The route plan asks it.'),
    el('p', { class: 'choosers' }, best), status, trouble,
    el('div', { class: 'table-frame', tabindex: '0', role: 'region', 'aria-label': 'Table of configurations' },
      el('table', { id: 'configuration-table' },
        el('caption', { class: 'unseen' },
          'Configurations, each held for the whole route, with their counts of verdicts'),
        el('thead', {}, el('tr', {},
          el('th', { scope: 'col' }, 'Show'), el('th', { scope: 'col' }, 'Plot'), [...heads.values()])),
        body)),
    plot, groups, differ, combinations);
  const panels = [mountMarginPlot(plot, { store, actions }), mountDifferences(differ, { store, actions }),
    mountCombinations(combinations, { store, actions })];

  function sortBy(column) {
    // A second press of the same head turns it round; the third goes back to best first.
    order = column !== null && order.column === column
      ? (order.descending ? { column: null, descending: false } : { column, descending: true })
      : { column, descending: false };
    draw(store.get());
  }

  function draw(state) {
    const { report, comparison, units, picks } = state;
    if (report === null) {
      return;
    }
    const compared = new Map((comparison.data?.configurations ?? []).map(c => [c.configuration, c]));
    const rows = ranked(report).map(verdict => ({ verdict, compared: compared.get(verdict.key) ?? null }));
    const active = body.contains(document.activeElement) ? document.activeElement : null;
    const again = active && `tr[data-configuration="${CSS.escape(active.closest('tr').dataset.configuration)}"] `
      + `input[type=${active.type}]`;
    replace(body, sorted(rows, order.column, order.descending)
      .map(row => line(row, units, comparison.data?.best === row.verdict.key)));
    for (const [key, head] of heads) {
      const now = order.column === key ? (order.descending ? 'descending' : 'ascending') : null;
      head.toggleAttribute('aria-sort', now !== null);
      if (now !== null) {
        head.setAttribute('aria-sort', now);
      }
      head.querySelector('.sort-mark').textContent = { ascending: ' ▲', descending: ' ▼' }[now] ?? '';
    }
    best.setAttribute('aria-pressed', String(order.column === null));
    mark(state);
    if (again) {
      body.querySelector(again)?.focus();
    }
    replace(groups, groupTable(picks.map(key => compared.get(key)).filter(Boolean), units, {
      id: 'comparison-loads', what: 'Configuration', frame: 'Groups of the plotted configurations',
    }));
  }

  function line({ verdict: c, compared }, units, isBest) {
    const show = el('input', {
      type: 'radio', name: 'configuration', value: c.key, 'aria-label': c.label,
      on: { change: () => actions.chooseConfiguration(c.key) },
    });
    const pick = el('input', {
      type: 'checkbox', name: 'pick', value: c.key, 'aria-label': `Plot ${c.label}`,
      on: { change: () => actions.pick(c.key, pick.checked), click: event => event.stopPropagation() },
    });
    return el('tr', {
      'data-configuration': c.key, 'data-verdict': c.verdict, 'data-outcome': compared?.outcome,
      'data-seconds': compared?.seconds,
      on: { click: event => event.target.closest('td, th').contains(pick) || show.click() },
    },
    el('td', {}, show),
    el('td', {}, pick),
    el('td', {}, `${c.axles}${raisedWords(c)}`),
    el('td', {}, BOOSTER_WORDS[c.booster] ?? c.booster),
    el('th', { scope: 'row' }, c.notch, el('span', { class: 'notch-offset' }, offset(c.notchOffsetM, units)),
      isBest && el('strong', { class: 'comparison-best' }, ' best')),
    comparedCells(compared, units),
    el('td', {}, verdictTag(c.verdict)),
    el('td', {}, verdictTag(c.loads ?? 'loads not known')),
    COUNTS.map(([field, verdict]) => count(c[field] ?? 0, verdict)),
    count(c.raisedOnly, null));
  }

  function mark({ configuration, picks }) {
    for (const row of body.rows) {
      const chosen = row.dataset.configuration === configuration;
      row.classList.toggle('chosen', chosen);
      row.querySelector('[type=radio]').checked = chosen;
      const pick = row.querySelector('[type=checkbox]');
      pick.checked = picks.includes(pick.value);
      pick.disabled = !pick.checked && picks.length >= 3;
    }
  }

  /** Asked for when somebody gets here: it takes a plan for every configuration. */
  const seen = new IntersectionObserver(entries => {
    if (entries.some(entry => entry.isIntersecting)) {
      wanted = true;
      ask(store.get());
    }
  }, { rootMargin: '200px' });
  let wanted = false;

  function ask({ report, comparison, picks, plan }) {
    // After the plan, so that the two do not take the machine from one another.
    if (report !== null && comparison.status === 'none' && plan.status !== 'loading' && (wanted || picks.length > 0)) {
      actions.drawComparison();
    }
  }

  const stops = [
    store.watch(['report', 'planAsked'], ({ report }) => {
      if (report !== null) {
        wanted = inSight(root);
        actions.forgetComparison();
      }
    }),
    store.watch(['report', 'comparison', 'picks', 'plan'], ask),
    store.watch(['report', 'units', 'comparison', 'picks'], draw),
    store.watch(['configuration'], mark),
    store.watch(['comparison'], ({ comparison: { status: now, problem } }) => {
      root.dataset.status = now;
      root.setAttribute('aria-busy', String(now === 'loading'));
      replace(status, statusLine(now, actions));
      replace(trouble, problem && problemBox(problem, null, again(actions)));
    }),
  ];
  seen.observe(root);

  return {
    unmount: () => {
      seen.disconnect();
      panels.forEach(panel => panel.unmount());
      stops.forEach(stop => stop());
      root.replaceChildren(root.firstElementChild);
    },
  };
}

const again = actions => el('button', { type: 'button', on: { click: () => actions.drawComparison() } }, 'Compare');

function statusLine(now, actions) {
  switch (now) {
    case 'loading':
      return ['Planning with each configuration… ',
        el('button', { id: 'comparison-stop', type: 'button', on: { click: () => actions.stopComparison() } }, 'Stop')];
    case 'stopped':
      return ['Stopped before all were compared. ', again(actions)];
    default:
      return null;
  }
}

function inSight(node) {
  const { top, bottom } = node.getBoundingClientRect();
  return bottom > top && top < window.innerHeight && bottom > 0;
}

function comparedCells(compared, units) {
  if (compared === null) {
    return COLUMNS.slice(3, 13).map(() => el('td', { class: 'figure none' }, '…'));
  }
  return [
    el('td', {}, outcomeTag(compared.outcome)),
    el('td', { class: 'figure', 'data-count': 'blocking', title: compared.blocking.join(', ') },
      String(compared.blocking.length)),
    el('td', { class: 'figure' }, duration(compared.seconds)),
    el('td', { class: 'figure' }, String(compared.raised)),
    SPARE_KINDS.map(([kind]) => {
      const worst = worstOf(compared, kind);
      return el('td', { class: 'figure', 'data-worst': kind, 'data-left': worst?.spare.left },
        worst ? spareLeft(kind, worst.spare.left, units) : 'none judged',
        worst && el('span', { class: 'hazard-side' }, worst.hazard));
    }),
    el('td', { class: 'figure' }, weight(compared.grossKg, units)),
    el('td', { class: 'figure' }, room(compared.lengthM, units, 'up')),
  ];
}

function count(value, verdict) {
  const name = value === 0 ? 'figure none' : 'figure';
  return el('td', { class: name, 'data-count': verdict ?? 'raised only' }, String(value));
}
