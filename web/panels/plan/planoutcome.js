/** What must be settled before a plan holds, and what blocks: what would open each, and the planner's decisions. */
import { el } from '../../dom.js';
import { chainage, clearance, duration, percentDown } from '../../text/format.js';
import { acceptable, decisions, findPassage, WHOLE_ROUTE } from '../../report/plan.js';
import { findConfiguration } from '../../report/report.js';
import { togetherWords, waitingTogether } from '../../report/surveyfirst.js';
import { kindIcon, verdictTag } from '../parts/symbol.js';
import { openPassage } from './plansteps.js';

/** What of the conditions the planner decided and can undo. */
const DECISIONS = ['tight, accepted', 'set aside'];

const press = (words, click, data = {}) => el('button', { type: 'button', ...data, on: { click } }, words);

/** Conditions, and everything the planner decided with its undo, needed by this plan or not. */
export function conditionList({ report, plan: { data }, planAsked }, actions) {
  const decided = decisions(report, planAsked);
  if (data.conditions.length === 0 && decided.length === 0) {
    return null;
  }
  const unused = decided.filter(({ id }) => !data.conditions.some(({ hazard }) => hazard === id));
  const undo = id => decided.some(decision => decision.id === id)
    && press('Undo', () => actions.undecide(id), { class: 'plan-undo', 'data-undo': id, 'aria-label': `Undo ${id}` });
  return el('div', { id: 'plan-conditions' },
    el('h3', {}, 'Conditions'),
    el('ul', { class: 'plan-list' },
      data.conditions.map(({ hazard, name, what, text, settled = null }) => el('li', {
        'data-hazard': hazard, 'data-what': what, 'data-settled': settled ? 'true' : null,
      },
        el('strong', {}, title(hazard, name)), ` ${what}. ${text} `, DECISIONS.includes(what) && undo(hazard),
        settled ? settledLine(settled, actions) : settleForm({ hazard, what, name }, actions))),
      unused.map(({ id, name, what }) => el('li', { 'data-hazard': id, 'data-what': 'not needed' },
        el('strong', {}, title(id, name)), ` ${what}; this plan does not need it. `, undo(id)))));
}

const settledLine = (settled, actions) => el('span', { class: 'plan-settled' },
  el('strong', {}, `Settled by ${settled.by} on ${settled.date}: `), settled.agreed, ' ',
  press('Not settled', () => actions.unsettle(settled), { class: 'plan-unsettle', 'data-unsettle': settled.hazard }));

/** Who settled a condition, when and what was agreed; this program judges none of it. */
function settleForm({ hazard, what, name }, actions) {
  const field = (key, label, more) => el('label', { class: 'field' }, el('span', {}, label),
    el('input', { name: key, type: 'text', required: true, autocomplete: 'off', ...more }));
  return el('details', { class: 'plan-settle' },
    el('summary', { 'aria-label': `Settle ${what} at ${title(hazard, name)}` }, 'Settle'),
    el('form', {
      on: {
        submit: event => {
          event.preventDefault();
          const { by, date, agreed } = Object.fromEntries(new FormData(event.target));
          actions.settle({ hazard, what, by: by.trim(), date, agreed: agreed.trim() });
        },
      },
    },
    field('by', 'Settled by', { maxlength: 200 }),
    field('date', 'On (year-month-day)', { pattern: '\\d{4}-\\d{2}-\\d{2}', size: 10 }),
    field('agreed', 'What was agreed', { maxlength: 2000 }),
    el('button', { type: 'submit' }, 'Settled')));
}

/** The least left anywhere: share and length apart, for they may be at two places. */
export function leastLine({ plan: { data }, units }) {
  const { least } = data;
  if (!least) {
    return null;
  }
  const unknown = least.unknownAt.length > 0 && ` Unknown at ${least.unknownAt.join(', ')}.`;
  return el('p', { id: 'plan-least' }, 'Least reserve anywhere: ',
    least.share === null ? 'unknown.' : [
      el('strong', {}, percentDown(least.share)), ` of what is required or allowed, at ${least.shareAt}`,
      least.lengthM !== null && ['; in length ', el('strong', {}, clearance(least.lengthM, units)),
        ` beyond what is required, at ${least.lengthAt}`], '.'], unknown);
}

/** This way and dearer ones that leave more or need fewer conditions; nothing where there is no other. */
export function tradeTable({ report, plan: { data } }) {
  const trades = data.trades ?? [];
  const region = { id: 'plan-trades', tabindex: '0', role: 'region', 'aria-label': 'Trade' };
  return trades.length < 2 ? null : el('div', region,
    el('h3', {}, 'What more reserve or fewer conditions cost'),
    el('table', {},
      el('thead', {}, el('tr', {}, ['Changes and crawling', 'Changes', 'Conditions', 'Least reserve', 'Configurations']
        .map(words => el('th', { scope: 'col' }, words)))),
      el('tbody', {}, trades.map(({
        seconds, changes, conditions, leastReserve, leastAt, unknownAt, configurations,
      }) => el('tr', {},
        el('td', {}, duration(seconds)), el('td', {}, String(changes)), el('td', {}, String(conditions)),
        el('td', {}, leastReserve === null ? 'not known' : `${percentDown(leastReserve)} at ${leastAt}`,
          unknownAt?.length > 0 && `, unknown at ${unknownAt.join(', ')}`),
        el('td', {}, configurations.map(key => findConfiguration(report, key)?.label ?? key).join(', then ')))))),
    el('p', { class: 'fine-print' },
      'This way first. Reserve is a share of what is required or allowed at that place.',
      !data.options.fewestConditions && ' A condition counts as 20 min when ways are compared.'));
}

/** What blocks. The last of the buttons is always there: a place can be passed over undecided. */
export function blockingList({ report, plan: { data }, units }, actions) {
  if (data.blocking.length === 0) {
    return null;
  }
  const together = waitingTogether(report);
  const waits = ({ hazard, relaxations }) => together.has(hazard) && relaxations.every(({ kind }) => kind === 'survey');
  const waiting = data.blocking.filter(waits).length;
  return el('div', { id: 'plan-blocking' },
    el('h3', {}, 'What blocks'),
    el('p', { class: 'fine-print' }, 'The fewest places that must be resolved to open a way. A decision '
      + 'made here is a condition of the plan; it does not make a place clear.'),
    waiting > 0 && el('p', { class: 'on-paper' }, togetherWords(waiting)),
    el('ul', { class: 'plan-list' }, data.blocking.map(block => {
      const { hazard, kind, name, chainageM, why, relaxations } = block;
      const passage = findPassage(data, hazard);
      const spotter = acceptable(report, hazard);
      return el('li', { 'data-hazard': hazard, 'data-waits': waits(block) ? 'true' : null },
        el('p', { class: 'plan-block-head' },
          kindIcon(kind),
          hazard === WHOLE_ROUTE || passage === null ? el('strong', {}, title(hazard, name))
            : press(title(hazard, name), event => openPassage(actions, passage, event), { class: 'step-open' }),
          ` at ${chainage(chainageM, units)} `, passage && verdictTag(passage.verdict)),
        el('p', {}, sentence(why)),
        relaxations.length > 0 && [
          el('p', { class: 'plan-opens' }, 'What would open it:'),
          el('ul', { class: 'plan-relaxations' }, relaxations.map(({ kind: what, configuration, enough, text }) =>
            el('li', { 'data-kind': what, 'data-enough': String(enough) },
              el('strong', {}, what), `: ${text}`,
              configuration && ` (in ${findConfiguration(report, configuration)?.label ?? configuration})`,
              enough ? '. The check confirms it.' : '. To be found out; not confirmed by the check.')))],
        el('p', { class: 'plan-buttons' },
          spotter && press(`Accept as tight, with ${spotter}`, () => actions.acceptTight(hazard),
            { class: 'plan-accept', 'data-accept': hazard }),
          press('Set aside, undecided', () => actions.setAside(hazard),
            { class: 'plan-aside', 'data-aside': hazard })));
    })));
}

const title = (id, name) => (id === WHOLE_ROUTE ? name : `${id} ${name}`);

function sentence(text) {
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}
