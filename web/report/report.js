/**
 * Questions asked of a report. No DOM, no arithmetic beyond picking, counting and ordering what the check found.
 */

import { clearance, raise, SYSTEMS } from '../text/format.js';
import { kindOf } from './kinds.js';

/** Of a smaller need a share would say nothing, meters. */
const LEAST_NEED_M = 0.001;

/** From worst to best to read on a sheet. An unknown verdict ranks with the worst. */
const SEVERITY = ['contact', 'outside limits', 'loads not known', 'not surveyed', 'tight', 'clear'];

/** Two results nearer than this that also read alike, in inches and in millimeters, are one on a sheet; meters. */
const SAME_M = 0.0005;

export function findHazard(report, id) {
  return report?.hazards.find(hazard => hazard.id === id) ?? null;
}

export function findConfiguration(report, key) {
  return report?.configurations.find(configuration => configuration.key === key) ?? null;
}

export function findCell(hazard, key) {
  return hazard?.cells.find(cell => cell.configuration === key) ?? null;
}

/** How far a configuration's axle and booster state goes straight back, or null; the notch does not matter. */
export function reversingOf(report, configuration) {
  return report?.reversing?.states
    .find(state => state.lift === configuration?.lift && state.booster === configuration?.booster) ?? null;
}

/** Whether a hazard is judged from above. */
export const isCorner = hazard => Boolean(hazard) && kindOf(hazard.kind).judged === 'room';

/**
 * A cell's verdict in words: contact where something reaches into something; where every gap told is positive and yet
 * not shown to stay so, it cannot exclude contact.
 */
export function verdictWords(cell) {
  const gaps = ['ground', 'overhead', 'units', 'corner'].map(side => cell?.[side]?.valueM).filter(Number.isFinite);
  return cell?.verdict === 'contact' && gaps.length > 0 && gaps.every(valueM => valueM > 0)
    ? 'cannot exclude contact' : cell?.verdict ?? 'not surveyed';
}

/** Rank of a verdict: 0 is the worst. A word this page does not know is as bad as contact. */
export function severity(verdict) {
  return Math.max(0, SEVERITY.indexOf(verdict));
}

/** What a clearance leaves as a share of what it needs, where it decides or where another place does: the lesser. */
export function shareLeft(clearance) {
  const here = (clearance.valueM - clearance.requiredM) / Math.max(LEAST_NEED_M, clearance.requiredM);
  return clearance.deciding ? Math.min(here, shareLeft(clearance.deciding)) : here;
}

/** The clearance that governs a cell: the one with the least share left of what it needs; null when none is known. */
export function governing(cell) {
  // The gap between units is nothing to look for on the road: it is told where it is not clear.
  const known = ['ground', 'overhead', 'units', 'corner'].map(side => [side, cell?.[side]])
    .filter(([side, result]) => result && (side !== 'units' || result.verdict !== 'clear'));
  if (known.length === 0) {
    return null;
  }
  known.sort(([, a], [, b]) => shareLeft(a) - shareLeft(b));
  return { side: known[0][0], clearance: known[0][1] };
}

/**
 * Configurations from the best for this route to the worst: fewest hazards that stay other than clear even raised, then
 * fewest contacts in transport, then fewest not surveyed, then fewest tight; equal ones keep the report's order.
 */
export function ranked(report) {
  const badness = c => [
    c.contact + c.tight + c.notSurveyed + (c.outsideLimits ?? 0) + (c.loadsNotKnown ?? 0) - c.raisedOnly,
    c.contact, c.outsideLimits ?? 0, c.notSurveyed + (c.loadsNotKnown ?? 0), c.tight];
  return report.configurations
    .map((configuration, index) => ({ configuration, index, badness: badness(configuration) }))
    .sort((a, b) => a.badness.map((value, i) => value - b.badness[i]).find(d => d !== 0) ?? a.index - b.index)
    .map(({ configuration }) => configuration);
}

/** "3 axles"; "3 axles, axle 4 up" where several can be up and must be told apart. */
export const axlesWords = configuration =>
  `${configuration.axles} ${configuration.axles === 1 ? 'axle' : 'axles'}${raisedWords(configuration)}`;

/** Which trailer axles are up, after their number: ", axle 4 up"; nothing where there is one lift axle, or none. */
export const raisedWords = ({ axlesUp = [] }) => (axlesUp.length === 0 ? ''
  : `, ${axlesUp.length === 1 ? 'axle' : 'axles'} ${axlesUp.join(', ')} up`);

/** What the three choosers offer, each in the report's order. */
export function choices(report) {
  const distinct = values => [...new Set(values)];
  return {
    lifts: distinct(report.configurations.map(c => c.lift))
      .map(lift => report.configurations.find(c => c.lift === lift))
      .map(({ lift, axles, axlesUp }) => ({ lift, axles, axlesUp })),
    boosters: distinct(report.configurations.map(c => c.booster)),
    notches: notches(report),
  };
}

/** Notches from the highest deck front to the lowest: {notch, offsetM}. */
export function notches(report) {
  const byName = new Map(report.configurations.map(c => [c.notch, c.notchOffsetM]));
  return [...byName].map(([notch, offsetM]) => ({ notch, offsetM })).sort((a, b) => b.offsetM - a.offsetM);
}

/** The configuration with these settings, or with the nearest lesser match when the rig has no such combination. */
export function closestConfiguration(report, { lift, booster, notch }) {
  const score = c => 4 * (c.lift === lift) + 2 * (c.booster === booster) + (c.notch === notch);
  return report.configurations.reduce((best, c) => (score(c) > score(best) ? c : best));
}

/**
 * Columns of a hazard's matrix, in the report's order: one for each axle state and booster state, those of one axle
 * state that give equal results at every notch made one: {lift, axles, axlesUp, boosters}.
 */
export function matrixColumns(report, hazard) {
  const columns = [];
  for (const { lift, axles, axlesUp } of choices(report).lifts) {
    for (const booster of choices(report).boosters) {
      if (!report.configurations.some(c => c.lift === lift && c.booster === booster)) {
        continue;
      }
      const twin = columns.find(column =>
        column.lift === lift && sameResults(report, hazard, lift, column.boosters[0], booster));
      if (twin) {
        twin.boosters.push(booster);
      } else {
        columns.push({ lift, axles, axlesUp, boosters: [booster] });
      }
    }
  }
  return columns;
}

function sameResults(report, hazard, lift, boosterA, boosterB) {
  const cellsOf = booster => new Map(report.configurations
    .filter(c => c.lift === lift && c.booster === booster)
    .map(c => [c.notch, findCell(hazard, c.key)]));
  const a = cellsOf(boosterA);
  const b = cellsOf(boosterB);
  return a.size === b.size && [...a].every(([notch, cell]) => b.has(notch) && sameCell(cell, b.get(notch)));
}

function sameCell(a, b) {
  return a !== null && b !== null
    && a.verdict === b.verdict
    && a.load?.rule === b.load?.rule && a.load?.marginKg === b.load?.marginKg
    && sameValue(a.ground?.valueM, b.ground?.valueM, clearance)
    && sameValue(a.overhead?.valueM, b.overhead?.valueM, clearance)
    && sameValue(a.units?.valueM, b.units?.valueM, clearance)
    && sameValue(a.corner?.valueM, b.corner?.valueM, clearance)
    && sameValue(a.raise?.frontM, b.raise?.frontM, raise)
    && sameValue(a.raise?.rearM, b.raise?.rearM, raise)
    && a.reasons.join('\n') === b.reasons.join('\n');
}

function sameValue(a, b, write) {
  if (a === undefined || b === undefined) {
    return a === b;
  }
  return Math.abs(a - b) < SAME_M && SYSTEMS.every(system => write(a, system) === write(b, system));
}

/** The cells a matrix position stands for: {configuration, cell}, one for each of the column's booster states. */
export function cellsAt(report, hazard, column, notch) {
  return column.boosters
    .map(booster => report.configurations.find(c =>
      c.lift === column.lift && c.booster === booster && c.notch === notch))
    .filter(configuration => configuration)
    .map(configuration => ({ configuration, cell: findCell(hazard, configuration.key) }));
}

/** Whether some notch clears in transport with this axle and booster state: the line the report has on it, or null. */
export function leastSetting(hazard, configuration) {
  return hazard?.least.find(l => l.lift === configuration?.lift && l.booster === configuration?.booster) ?? null;
}

/** Hazards whose cell for this configuration is missing or not surveyed, with what the report says about each. */
export function notChecked(report, key) {
  return report.hazards
    .filter(hazard => ['not surveyed', 'loads not known'].includes(findCell(hazard, key)?.verdict ?? 'not surveyed'))
    .map(hazard => ({
      hazard,
      why: [...hazard.notes.filter(note => note.startsWith('not surveyed')), ...(findCell(hazard, key)?.reasons ?? [])],
    }));
}

/** The cautions of a hazard that belong to one of its cells: none about what does not happen there. */
export function cautionsAt(hazard, cell) {
  const happens = { always: true, raised: Boolean(cell?.raise), escorts: Boolean(cell?.corner?.escorts) };
  return hazard.cautions.filter((caution, index) => happens[hazard.cautionsWhen[index]]);
}
