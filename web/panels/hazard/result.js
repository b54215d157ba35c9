/** The result of one cell: each clearance with what it needs and where, why the verdict, the raise, the cautions. */
import { el, replace } from '../../dom.js';
import { against, alongRoad, chainage, dimension, fine, raise, weight, weightLeft } from '../../text/format.js';
import { cautionsAt, findCell, findConfiguration, findHazard, verdictWords } from '../../report/report.js';
import { bridgeResult } from './bridge.js';
import { SIDE_WORDS } from '../../drawing/symbols.js';
import { verdictTag } from '../parts/symbol.js';
import { speedWords } from '../../report/speed.js';
import { kindOf } from '../../report/kinds.js';

export function mountResult(root, { store, actions }) {
  const stop = store.watch(['report', 'hazard', 'configuration', 'units', 'passage'], state => {
    const hazard = findHazard(state.report, state.hazard);
    if (hazard === null) {
      root.replaceChildren();
      return;
    }
    const cell = findCell(hazard, state.configuration);
    const focused = root.contains(document.activeElement) ? document.activeElement.id : null;
    root.dataset.verdict = cell?.verdict ?? 'not surveyed';
    replace(root,
      el('h3', {}, 'This setting'),
      el('p', { class: 'result-head' }, verdictTag(root.dataset.verdict, verdictWords(cell)),
        el('span', {}, findConfiguration(state.report, state.configuration).label)),
      reasons(cell),
      cell?.load && loadResult(cell.load, state.units),
      bridgeResult(hazard, findConfiguration(state.report, state.configuration), state.units),
      limits(hazard, cell),
      cell?.corner && cornerResult(cell.corner, state.units),
      ['ground', 'overhead', 'units'].map(side => cell?.[side] && sideResult(side, cell[side], state.units)),
      cell?.verdict === 'clear' && kindOf(hazard.kind).sped && el('p', { class: 'result-speed' },
        'Speed: ', el('strong', {}, speedWords(cell, state.units)), '. Faster, a bounce may take what is left.'),
      raiseResult(cell, state, actions),
      uncertainty(hazard, cell, state),
      cautions(cautionsAt(hazard, cell)));
    if (focused) {
      document.getElementById(focused)?.focus();
    }
  });
  return { unmount: () => { stop(); root.replaceChildren(); } };
}

function reasons(cell) {
  return cell && cell.reasons.length > 0
    ? el('ul', { class: 'reasons' }, cell.reasons.map(reason => el('li', {}, reason)))
    : null;
}

/** The weight rule that leaves the least here. */
function loadResult(load, units) {
  return el('div', { class: 'result-side', 'data-side': 'load' },
    el('h4', {}, 'Load ', verdictTag(load.verdict)),
    el('dl', { class: 'facts' }, [
      ['Rule', load.rule],
      ['Set by', load.source],
      ['On', load.axles],
      ['Carries', el('strong', { class: 'result-value', 'data-value-kg': load.loadKg }, weight(load.loadKg, units))],
      [load.least ? 'Needs at least' : 'Allowed', weight(load.limitKg, units)],
      ['Left', weightLeft(load.marginKg, units)],
    ].map(([label, content]) => [el('dt', {}, label), el('dd', {}, content)])));
}

/** What the survey cannot settle, where the reasons do not say it already. */
function limits(hazard, cell) {
  const more = (hazard.limits ?? []).filter(limit => !cell?.reasons.includes(limit));
  return more.length > 0 ? el('ul', { class: 'reasons leans' }, more.map(limit => el('li', {}, limit))) : null;
}

/** The terms behind this hazard's uncertainty: its own survey's first, then the rig's. */
function uncertainty(hazard, cell, { report, units }) {
  const terms = [...(hazard.uncertainties ?? []), ...report.uncertainties];
  if (!cell?.ground && !cell?.overhead) {
    return null;
  }
  return el('div', { class: 'uncertainty' },
    el('h4', {}, 'Uncertainty behind it, 95 %'),
    el('ul', {}, terms.map(({ term, valueM, source }) =>
      el('li', {}, `${term} ± ${fine(valueM, units, 'up')}`,
        source && el('span', { class: 'fine-print' }, ` ${source}`)))));
}

function sideResult(side, c, units) {
  const { gap, need } = against(c.valueM, c.requiredM, units);
  const rows = [
    ['Clearance', el('strong', { class: 'result-value', 'data-value-m': c.valueM, 'data-required-m': c.requiredM },
      gap), exactly(c.valueM, units, 'down')],
    ['Needs', need, ` = margin ${fine(c.marginM, units, 'up')} + uncertainty `
      + `${fine(c.uncertaintyM, units, 'up')} = ${fine(c.requiredM, units, 'up')}`],
    [c.against ? 'Behind' : 'On the combination', [c.unit, c.part].filter(Boolean).join(', '),
      ` (x ${dimension(c.xM, units)}, h ${dimension(c.hM, units)} in its level stance)`],
    ...(c.against ? [['Ahead', [c.against.unit, c.against.part].filter(Boolean).join(', '),
      ` (x ${dimension(c.against.xM, units)}, h ${dimension(c.against.hM, units)} in its level stance)`]] : []),
    ['On the road', `${alongRoad(c.distanceM, units)}, chainage ${chainage(c.chainageM, units)}`],
    ['Steer axle then', alongRoad(c.steerM, units)],
    ['Decided by', `${across(c, units)}, leveling ${c.leveling}`],
  ];
  return el('div', { class: 'result-side', 'data-side': side },
    el('h4', {}, `Clearance ${SIDE_WORDS[side]}`,
      ' ', verdictTag(c.verdict)),
    el('dl', { class: 'facts' }, rows.map(([label, ...content]) => [el('dt', {}, label), el('dd', {}, content)])),
    c.beyondSurveyM > 0 && el('p', { class: 'leans' },
      `Stands on ground up to ${dimension(c.beyondSurveyM, units)} beyond the survey, `
        + (c.gradeDeclared ? 'at its declared grade.' : 'whose grade nobody declared: at best tight.')),
    c.deciding && elsewhere(c.deciding, units),
    el('p', { class: 'fine-print' },
      `The least over every position is within ${fine(c.provenWithinM, units, 'up')} of this value.`));
}

/** The line, or the place across the road: how far beside the combination's middle it is. */
function across(c, units) {
  return c.besideM === null
    ? `line ${c.line}`
    : `${c.line} (${dimension(Math.abs(c.besideM), units)} ${c.besideM < 0 ? 'left' : 'right'} of the middle)`;
}

/** Where another place than that of the least gap decides: its own gap and need. */
function elsewhere(d, units) {
  const { gap, need } = against(d.valueM, d.requiredM, units);
  return el('p', { class: 'elsewhere', 'data-value-m': d.valueM, 'data-required-m': d.requiredM },
    `Decided elsewhere: ${gap} where ${need} is needed; ${[d.unit, d.part].filter(Boolean).join(', ')}`
      + (d.against ? ` to ${[d.against.unit, d.against.part].filter(Boolean).join(', ')}, ` : ', ')
      + `${alongRoad(d.distanceM, units)}; ${across(d, units)}, leveling ${d.leveling}, `
      + `steer axle ${alongRoad(d.steerM, units)}.`);
}

function cornerResult(c, units) {
  const { gap, need } = against(c.valueM, c.requiredM, units);
  return el('div', { class: 'result-side', 'data-side': 'corner' },
    el('h4', {}, 'Room in the corner ', verdictTag(c.verdict)),
    el('dl', { class: 'facts' },
      el('dt', {}, 'Least room'),
      el('dd', {}, el('strong', { class: 'result-value', 'data-value-m': c.valueM, 'data-required-m': c.requiredM },
        gap), exactly(c.valueM, units, 'down')),
      el('dt', {}, 'Needs'), el('dd', {}, need),
      el('dt', {}, 'On its own lanes'), el('dd', {}, c.ownLanes),
      c.escorts && [el('dt', {}, 'Escorts'), el('dd', {}, 'needed: the line uses the opposing lane')]));
}

/** The decimals behind a rounded clearance, where they tell more. */
function exactly(valueM, units, rounding) {
  return ` (${fine(valueM, units, rounding)})`;
}

function raiseResult(cell, { units, passage, view }, actions) {
  if (!cell?.raise) {
    return cell?.raiseNote ? el('p', { class: 'raise-note' }, cell.raiseNote) : null;
  }
  const { frontM, rearM, clearanceM, requiredM, frontEndM, rearEndM } = cell.raise;
  const { gap, need } = against(clearanceM, requiredM, units);
  const shown = view.raised && passage.status !== 'none';
  return el('div', { id: 'raise', class: 'raise', 'data-front-m': frontM, 'data-rear-m': rearM },
    el('h4', {}, 'Passes raised off the stops'),
    el('dl', { class: 'facts' },
      el('dt', {}, 'Raise front'), el('dd', {}, el('strong', {}, raise(frontM, units, frontEndM))),
      el('dt', {}, 'Raise rear'),
      el('dd', {}, el('strong', {}, raise(rearM, units, rearEndM)), rearM > 0 && ', leveling on manual'),
      el('dt', {}, 'Clearance then'), el('dd', {}, gap), el('dt', {}, 'Needs then'), el('dd', {}, need)),
    el('p', {}, 'The verdict stays as it is: transport is on the stops. ',
      el('button', {
        id: 'passage-raise', type: 'button', 'aria-pressed': String(shown),
        on: { click: () => actions.setView({ raised: !shown, leveling: null }) },
      }, 'Draw the passage with this raise')));
}

function cautions(texts) {
  return texts.length > 0
    ? el('div', { class: 'cautions' }, el('h4', {}, 'Caution'),
      el('ul', {}, texts.map(caution => el('li', {}, caution))))
    : null;
}
