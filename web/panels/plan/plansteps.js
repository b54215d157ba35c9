/** The steps of a plan in driving order. */
import { el } from '../../dom.js';
import {
  against, alongRoad, chainage, clearance, dimension, duration, pressure, raise, raiseWords, room, spareLeft, speed,
  speedDown, weight,
} from '../../text/format.js';
import { spareWord, WHOLE_ROUTE } from '../../report/plan.js';
import { waitingTogether } from '../../report/surveyfirst.js';
import { openHazard } from '../parts/opening.js';
import { kindIcon, stopIcon, verdictTag } from '../parts/symbol.js';
import { kindOf } from '../../report/kinds.js';

/** Shows a hazard as the plan passes it, and goes there. */
export function openPassage(actions, passage, event) {
  openHazard({ selectHazard: () => actions.selectPassage(passage) }, passage.hazard, event);
}

export function stepList({ report, plan: { data }, units }, actions) {
  const together = waitingTogether(report);
  return [
    el('h3', {}, data.stopsAtBlocks
      ? 'Steps if the blocked places were resolved (NOT FOR DRIVING)'
      : 'Steps in driving order'),
    el('p', { class: 'fine-print' }, 'Pressing a place shows it in the configuration the plan has there.'),
    el('ol', { id: 'plan-steps' }, data.steps.map(step => {
      const [head, ...lines] = contents(step, data, units, actions);
      return el('li', {
        'data-step': step.step, 'data-hazard': step.passage?.hazard, 'data-stop': step.change?.stop,
        'data-chainage-m': step.chainageM, 'data-blocked': step.passage?.blocked ? 'true' : null,
        'data-verdict': step.passage?.verdict,
        'data-waits': step.passage?.blocked && together.has(step.passage.hazard) ? 'true' : null,
      },
      el('span', { class: 'step-at' }, chainage(pointOf(step), units)),
      el('div', { class: 'step-body' }, head,
        lines.flat().filter(Boolean).map(line => (typeof line === 'string' ? el('p', {}, line) : line))));
    })),
  ];
}

const BRIDGE_TERMS = 'permit\'s terms at a bridge';

/** A place has one milepost everywhere, its point's; limits along the road the one where they begin. */
const pointOf = ({ chainageM, passage }) => (passage && kindOf(passage.kind).atPoint ? passage.chainageM : chainageM);

function contents(step, plan, units, actions) {
  if (step.passage) {
    return passageStep(step, plan, units, actions);
  }
  if (step.step === 'change') {
    return changeStep(step, units, actions);
  }
  if (step.lift) {
    return liftStep(step, units);
  }
  return [
    el('p', { class: 'step-head' }, el('strong', {}, step.step === 'depart' ? 'Depart' : 'Arrive'),
      ` ${step.place}, `, el('span', { 'data-configuration': step.set.configuration }, step.set.label)),
    step.change
      && `Before: ${step.change.actions.map(({ text }) => text).join('; ')}, ${duration(step.change.seconds)}.`,
    setUpWords(step.set, units),
    regulatorWords(step, units),
  ];
}

/** What the regulator may stand at until the next change, to the side that allows less; nothing where none trails. */
function regulatorWords({ regulator }, units) {
  if (!regulator) {
    return null;
  }
  return regulator.leastPa === null
    ? `Booster regulator: ${regulator.note}.`
    : `Until the next change the booster regulator may stand from ${pressure(regulator.leastPa, units, 'up')} to `
      + `${pressure(regulator.mostPa, units, 'down')}.`;
}

/** "65 ft long; regulator 32 psi; shim: 3/8 in plate" */
function setUpWords({ lengthM, regulatorPa, shim }, units) {
  return [
    `${room(lengthM, units, 'up')} long`,
    regulatorPa !== null && `booster regulator ${pressure(regulatorPa, units)}`,
    shim !== null && `shim: ${shim.name}`,
  ].filter(Boolean).join('; ').concat('.');
}

function changeStep({ place, landmark, change, regulator }, units, actions) {
  return [
    el('p', { class: 'step-head' },
      el('strong', {}, 'Stop and change '),
      stopIcon(change.setUpArea ? 'set-up-area' : 'stopping-place'),
      change.stop
        ? el('button', { type: 'button', class: 'step-open', on: { click: () => actions.selectStop(change.stop) } },
          `${change.stop} ${place}`)
        : ` ${place}`,
      landmark && ` · ${landmark}`, ` · ${duration(change.seconds)}`),
    el('p', {}, `From ${change.from.label} to `,
      el('strong', { 'data-configuration': change.to.configuration }, change.to.label), ':'),
    el('ul', { class: 'step-actions' }, change.actions.map(({ action, text, seconds }) =>
      el('li', { 'data-action': action, 'data-seconds': seconds }, `${action}: ${text} (${duration(seconds)})`))),
    `Then ${setUpWords(change.to, units)}`,
    regulatorWords({ regulator }, units),
  ];
}

function passageStep({ place, landmark, passage }, plan, units, actions) {
  const whole = passage.hazard === WHOLE_ROUTE;
  const raised = passage.raise && raiseWords(passage.raise, units);
  return [
    el('p', { class: 'step-head' },
      kindIcon(passage.kind),
      whole ? el('strong', {}, place)
        : el('button', {
          type: 'button', class: 'step-open', on: { click: event => openPassage(actions, passage, event) },
        }, el('span', { class: 'hazard-id' }, passage.hazard), ` ${place}`),
      ' ', verdictTag(passage.verdict),
      el('span', { class: 'step-what' },
        [!whole && kindOf(passage.kind).word, landmark].filter(Boolean).join(' · '))),
    kindOf(passage.kind).atPoint
      && `Front from ${alongRoad(passage.frontFromM, units, 'the point')} `
        + `to ${alongRoad(passage.frontToM, units, 'the point')}.`,
    passage.blocked && el('p', { class: 'step-blocked' }, 'Blocks: ', passage.reasons.join('; ')),
    passage.condition && el('p', { class: 'step-condition' }, `Condition: ${passage.condition}.`),
    raised && el('p', { class: 'step-do' }, 'Passed raised: ', raised, '.'),
    plan.conditions.filter(c => c.hazard === passage.hazard && c.what === BRIDGE_TERMS)
      .map(c => el('p', { class: 'step-condition' }, c.text)),
    passage.crawls && `At crawling speed, no more than ${speed(plan.options.times.crawlMps, units)}; `
      + `${duration(passage.seconds)} with all that belongs to it.`,
    passage.mostMps && `No more than ${speedDown(passage.mostMps, units)}: faster, a bounce may take what is left.`,
    spareWords(passage.spare, units),
    passage.gaps.filter(gap => gap.kind !== passage.spare?.kind).map(gap => spareWords(gap, units, 'step-gap')),
  ];
}

/** Where the deck goes up or down, and for what. */
function liftStep({ step, place, lift }, units) {
  const up = step === 'raise';
  return [
    el('p', { class: 'step-head' }, el('strong', {}, up ? 'Stop and raise the deck' : 'Stop and lower the deck'),
      ` ${place} · ${duration(lift.seconds)}`),
    el('p', { class: 'step-do' }, up
      ? [el('strong', {}, raiseWords(lift.raise, units)), ` for ${lift.hazards.join(', ')}, and stay up.`]
      : `The rear has left ${lift.lastLeft}: back on the transport stops, leveling in auto, before road speed.`),
    up && bandWords(lift.band, units),
    lift.lacks
      ? el('p', { class: 'step-condition' }, `Condition: no place shown. ${lift.lacks}`)
      : `Front between ${chainage(lift.fromChainageM, units)} and ${chainage(lift.toChainageM, units)}.`,
  ];
}

/** What keeps a raise from going farther up, by the word of it. */
const ENDS = {
  hydraulics: () => 'where the hydraulics end',
  ground: place => `where the ground at ${place} comes too close, behind`,
  structure: place => `where the structure of ${place} comes too close`,
  units: place => `where the gap between the units at ${place} closes`,
  'not shown': place => `where no more is shown to be clear at ${place}`,
};

/** From which to which raise all is clear, what ends it, and what aiming at the middle leaves. */
function bandWords(band, units) {
  if (!band?.wide) {
    return null;
  }
  const end = ENDS[band.endsAt](band.endsWhere);
  const { gap, need } = against(band.gapM, band.requiredM, units);
  return el('p', { class: 'step-band', 'data-from-m': band.fromM, 'data-to-m': band.toM },
    `Front anywhere from ${raise(band.fromM, units)} to ${clearance(band.toM, units)}, ${end}. `,
    el('strong', {}, `Aim at ${dimension(band.aimM, units)}`), `: leaves ${gap}, ${need} required.`);
}

/** "2 5/8 in under, 1/8 in beyond the 2 1/2 in required: trailer, deck" */
function spareWords(spare, units, name = 'step-spare') {
  if (spare === null) {
    return 'What is left here is unknown.';
  }
  const load = spare.kind === 'load';
  const { gap: value, need: limit } = load
    ? { gap: weight(spare.value, units), need: weight(spare.required, units) }
    : against(spare.value, spare.required, units);
  return el('p', { class: name, 'data-left': spare.left, 'data-kind': spare.kind },
    load ? `Carries ${value} of ${limit}: ` : `${value} ${spareWord(spare.kind)}, ${limit} required: `,
    el('strong', {}, `${spareLeft(spare.kind, spare.left, units)} left`), `; ${spare.at}.`);
}
