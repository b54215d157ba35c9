/** The table beside the plan: the configuration chosen, the route's verdict with it, and every hazard in order. */
import { el, replace, set } from '../../dom.js';
import { chainageFigure, chainageUnitName, clearance, raise, raiseWords, weightLeft } from '../../text/format.js';
import { ALL, listed, ONLY, shownWords } from '../../report/listing.js';
import {
  choices, findCell, findConfiguration, governing, leastSetting, raisedWords, verdictWords,
} from '../../report/report.js';
import { BOOSTER_WORDS } from '../../drawing/symbols.js';
import { kindIcon, verdictTag } from '../parts/symbol.js';
import { isDrafted } from '../../survey/drafts.js';
import { openHazard } from '../parts/opening.js';
import { speedWords } from '../../report/speed.js';
import { kindOf } from '../../report/kinds.js';

export function mountHazards(root, { store, actions }) {
  const lift = chooser('configuration-lift', 'Axles', value => actions.chooseSetting({ lift: value }));
  const booster = chooser('configuration-booster', 'Booster', value => actions.chooseSetting({ booster: value }));
  const notch = chooser('configuration-notch', 'Notch', value => actions.chooseSetting({ notch: value }));
  const verdict = el('div', { id: 'route-verdict' });
  const only = chooser('list-only', 'Show', value => actions.list({ only: value }));
  const kind = chooser('list-kind', 'Kind', value => actions.list({ kind: value || null }));
  options(only, ONLY, ALL.only);
  const shown = el('p', { id: 'list-shown', role: 'status' });
  const heads = [
    sortHead('chainage', 'figure'), el('th', { scope: 'col' }, 'Hazard'), sortHead('verdict'),
    sortHead('clearance', 'figure')];
  const body = el('tbody');
  const table = el('table', { id: 'hazard-table' },
    el('caption', { class: 'unseen' }, 'Verdict of each hazard for the chosen configuration'),
    el('thead', {}, el('tr', {}, heads)),
    body);
  root.append(
    el('div', { class: 'choosers' }, lift.field, booster.field, notch.field), verdict,
    el('div', { class: 'choosers list-choosers' }, only.field, kind.field), shown,
    el('div', { class: 'table-frame' }, table));

  body.addEventListener('click', event => {
    const row = event.target.closest('tr');
    if (row) {
      openHazard(actions, row.dataset.hazard, event);
    }
  });
  body.addEventListener('keydown', event => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step && event.target.matches('.hazard-open')) {
      const buttons = [...body.querySelectorAll('.hazard-open')];
      buttons[buttons.indexOf(event.target) + step]?.focus();
      event.preventDefault();
    }
  });

  const stops = [
    store.watch(['report', 'configuration', 'units', 'listing', 'plan', 'drafts'], state => {
      if (state.report === null) {
        return;
      }
      fillChoosers(state);
      fillListing(state);
      replace(verdict, routeVerdict(state.report, state.configuration));
      const { verdict: word, key } = findConfiguration(state.report, state.configuration);
      Object.assign(verdict.dataset, { verdict: word, configuration: key });
      const active = document.activeElement;
      const focused = body.contains(active) ? active.closest('tr').dataset.hazard : null;
      replace(body, listed(state).map(hazard => (isDrafted(state, hazard.id) ? outdated : row)(hazard, state)));
      if (focused) {
        rowOf(focused)?.querySelector('.hazard-open').focus();
      }
      mark(state);
    }),
    store.watch(['hazard'], mark),
  ];

  function rowOf(id) {
    return [...body.rows].find(line => line.dataset.hazard === id) ?? null;
  }

  function mark({ hazard }) {
    for (const line of body.rows) {
      const chosen = line.dataset.hazard === hazard;
      line.classList.toggle('chosen', chosen);
      line.querySelector('.hazard-open').setAttribute('aria-pressed', String(chosen));
    }
  }

  function fillChoosers({ report, configuration }) {
    const { lifts, boosters, notches } = choices(report);
    const now = findConfiguration(report, configuration);
    options(lift, lifts.map(l => [l.lift, `${l.axles}${raisedWords(l)}`]), now.lift);
    options(booster, boosters.map(b => [b, BOOSTER_WORDS[b] ?? b]), now.booster);
    options(notch, notches.map(n => [n.notch, n.notch]), now.notch);
  }

  function fillListing(state) {
    const { report, plan, listing, units } = state;
    const kinds = [...new Set(report.hazards.map(hazard => hazard.kind))];
    options(kind, [['', 'every kind'], ...kinds.map(value => [value, kindOf(value).word])], listing.kind ?? '');
    only.select.value = listing.only;
    only.select.querySelector('[value=blocks]').disabled = plan.data === null;
    shown.textContent = shownWords(state);
    root.querySelector('h2').textContent = listing.sort === 'chainage' && !listing.descending
      ? 'Hazards in order of travel' : 'Hazards';
    const words = { chainage: `At ${chainageUnitName(units)}`, verdict: 'Verdict', clearance: 'Clearance' };
    heads.filter(head => head.dataset.sort).forEach(head => {
      const { sort } = head.dataset;
      const now = sort !== listing.sort ? null : listing.descending ? 'descending' : 'ascending';
      set(head, { 'aria-sort': now });
      replace(head.firstChild, words[sort], el('span', { class: 'sort-mark', 'aria-hidden': 'true' },
        { ascending: ' ▲', descending: ' ▼' }[now]));
    });
  }

  /** A second press of the same head turns the order round. */
  function sortHead(sort, name = null) {
    const press = () => {
      const { listing } = store.get();
      actions.list({ sort, descending: listing.sort === sort && !listing.descending });
    };
    return el('th', { scope: 'col', class: name, 'data-sort': sort },
      el('button', { type: 'button', class: 'sort', on: { click: press } }));
  }

  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(root.firstElementChild); } };
}

/** The route's verdict with one configuration: word, label and counts. */
export function routeVerdict(report, key) {
  const c = findConfiguration(report, key);
  const counts = [
    [c.clear, 'clear'], [c.tight, 'tight'], [c.contact, 'contact'], [c.notSurveyed, 'not surveyed'],
    [c.outsideLimits, 'outside limits'], [c.loadsNotKnown, 'loads not known'],
  ].filter(([count]) => count > 0).map(([count, word]) => `${count} ${word}`);
  return [
    verdictTag(c.verdict),
    el('span', { class: 'route-verdict-label' }, `Whole route, ${c.label}`),
    el('span', { class: 'route-verdict-counts' },
      report.hazards.length === 0 ? 'The route names no hazards: nothing was judged.' : counts.join(' · '),
      c.raisedOnly > 0 && ` (${c.raisedOnly} of those not clear would be, raised)`),
  ];
}

function row(hazard, { report, configuration, units }) {
  const cell = findCell(hazard, configuration);
  const verdict = cell?.verdict ?? 'not surveyed';
  const least = governing(cell);
  return el('tr', {
    'data-hazard': hazard.id, 'data-verdict': verdict, 'data-value-m': least?.clearance.valueM,
  },
  el('td', { class: 'figure' }, chainageFigure(hazard.chainageM, units)),
  el('th', { scope: 'row' },
    el('button', { type: 'button', class: 'hazard-open' },
      el('span', { class: 'hazard-id' }, hazard.id), ' ', el('span', { class: 'hazard-name' }, hazard.name)),
    el('span', { class: 'hazard-what' }, kindIcon(hazard.kind), kindOf(hazard.kind).word,
      hazard.landmark && ` · ${hazard.landmark}`)),
  el('td', {}, verdictTag(verdict, verdictWords(cell)),
    el('span', { class: 'hazard-remedy' }, remedy(hazard, cell, report, configuration, units))),
  el('td', { class: 'figure' },
    least ? clearance(least.clearance.valueM, units) : cell?.load && weightLeft(cell.load.marginKg, units),
    el('span', { class: 'hazard-side' }, least?.side ?? (cell?.load ? 'to the limit' : 'unknown'))));
}

/** A place whose numbers are being changed: the verdict of the numbers before is not shown as its answer. */
function outdated(hazard, state) {
  const line = row(hazard, state);
  line.dataset.outdated = 'true';
  replace(line.cells[2], el('strong', { class: 'hazard-outdated' }, 'outdated'),
    el('span', { class: 'hazard-remedy' }, 'what was typed is not in the route yet'));
  replace(line.cells[3]);
  return line;
}

/** The speed where it clears; where it does not a notch that would, then a raise, else why there is none. */
function remedy(hazard, cell, report, configuration, units) {
  if (cell?.verdict === 'clear' && kindOf(hazard.kind).sped) {
    return speedWords(cell, units);
  }
  if (!cell || ['clear', 'not surveyed', 'loads not known'].includes(cell.verdict)) {
    return null;
  }
  const least = leastSetting(hazard, findConfiguration(report, configuration));
  if (least?.notch) {
    return least.text;
  }
  return cell.raise ? raiseWords(cell.raise, units) : cell.raiseNote ?? cell.reasons[0];
}

function chooser(id, label, choose) {
  const select = el('select', { id, on: { change: () => choose(select.value) } });
  return { select, field: el('label', { class: 'field' }, el('span', {}, label), select) };
}

function options({ select }, list, chosen) {
  replace(select, list.map(([value, label]) => el('option', { value }, label)));
  select.value = chosen;
}
