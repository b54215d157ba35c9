/**
 * The selection as an address fragment, so that a view can be linked:
 * #route=…&rig=…&stance=…&hazard=H03&configuration=down/none/3&line=left&leveling=held&raised=1&steer=-3.25
 * and of the route plan: &time=notch:20 min&forbid=up/none/1&keep=…&raising=no&accept=H13&aside=H06&compare=…
 * &stop=P02, and which hazards are shown: &only=open&kind=dip&sort=clearance&down=1; what may be there several times
 * stands each time with its key.
 * An open project stands for its route and rig: #project=…
 * A file from disk has no address; the link names it (route=file:name), so that whoever follows it knows what is
 * missing.
 */
import { hasLimits, limitsOf } from '../limits/limits.js';
import { ALL, ONLY, SORTS } from '../report/listing.js';
import { MARGINS, saidMargins } from './margins.js';

const FILE = 'file:';

/** The file's name when an address names a file from disk, else null. */
export function linkedFile(id) {
  return id?.startsWith(FILE) ? id.slice(FILE.length) : null;
}


/** The fragment, with its #, or '' when there is nothing to say. */
export function encode(state) {
  const data = state.passage.data;
  const steerM = data ? data.positions[state.position]?.steerM : undefined;
  const entries = [
    ['project', state.project?.id],
    ['route', state.project ? null : addressOf(state.inputs?.route)],
    ['rig', state.project ? null : addressOf(state.inputs?.rig)],
    ['work', state.project ? null : state.work],
    ['limits', state.project ? null : addressOfLimits(state.inputs)],
    ['stance', state.inputs?.stance],
    ...MARGINS.map(({ key, address }) => [address, state.inputs?.margins?.[key]]),
    ['configuration', state.configuration],
    ['hazard', state.hazard],
    ['line', state.view.line],
    ['leveling', state.view.leveling],
    ['raised', state.view.raised ? '1' : null],
    ['steer', steerM === undefined || state.position === data.tightest ? null : String(Number(steerM.toFixed(3)))],
    ...planEntries(state.planAsked),
    ...state.picks.map(key => ['compare', key]),
    ['stop', state.stop],
    ['only', state.listing.only === 'all' ? null : state.listing.only],
    ['kind', state.listing.kind],
    ['sort', state.listing.sort === 'chainage' ? null : state.listing.sort],
    ['down', state.listing.descending ? '1' : null],
  ].filter(([, value]) => value !== null && value !== undefined && value !== '');
  const fragment = entries
    .map(([key, value]) => `${key}=${encodeURIComponent(value).replaceAll('%2F', '/')}`)
    .join('&');
  return fragment === '' ? '' : `#${fragment}`;
}

/** What a fragment asks for; everything it does not say is null. A fragment that cannot be read asks for nothing. */
export function decode(fragment) {
  const parameters = new URLSearchParams(fragment.replace(/^#/, '').replaceAll('+', '%2B'));
  const text = key => parameters.get(key) || null;
  const steerM = Number(text('steer') ?? NaN);
  return {
    project: text('project'),
    route: text('route'),
    rig: text('rig'),
    limits: text('limits'),
    work: text('work'),
    stance: text('stance'),
    margins: saidMargins(Object.fromEntries(MARGINS.map(({ key, address }) => [key, text(address)]))),
    configuration: text('configuration'),
    hazard: text('hazard'),
    line: text('line'),
    leveling: text('leveling'),
    raised: text('raised') === '1',
    steerM: Number.isFinite(steerM) ? steerM : null,
    plan: plan(parameters),
    picks: every(parameters, 'compare'),
    stop: text('stop'),
    listing: listing(text),
  };
}

function planEntries({
  times, forbid, fix, avoidRaising, acceptTight, setAside, leastReserve, fewestConditions, settled,
}) {
  return [
    ...Object.entries(times).map(([key, value]) => ['time', `${key}:${value}`]),
    ...forbid.map(key => ['forbid', key]),
    ['keep', fix],
    ['raising', avoidRaising ? 'no' : null],
    ...acceptTight.map(id => ['accept', id]),
    ...setAside.map(id => ['aside', id]),
    ['reserve', leastReserve],
    ['conditions', fewestConditions ? 'fewest' : null],
    ...settled.map(({ hazard, what, by, date, agreed }) => [
      'settled', JSON.stringify([hazard, what, by, date, agreed]),
    ]),
  ];
}

function plan(parameters) {
  const times = every(parameters, 'time').filter(entry => entry.includes(':'))
    .map(entry => [entry.slice(0, entry.indexOf(':')), entry.slice(entry.indexOf(':') + 1)])
    .filter(([key, value]) => key !== '' && value !== '');
  return {
    times: Object.fromEntries(times),
    forbid: every(parameters, 'forbid'),
    fix: parameters.get('keep') || null,
    avoidRaising: parameters.get('raising') === 'no',
    acceptTight: every(parameters, 'accept'),
    setAside: every(parameters, 'aside'),
    leastReserve: parameters.get('reserve') || null,
    fewestConditions: parameters.get('conditions') === 'fewest',
    settled: every(parameters, 'settled').map(asSettled).filter(Boolean),
  };
}

/** What an address says was settled; null where it says nothing that makes sense. */
function asSettled(text) {
  try {
    const entry = JSON.parse(text);
    const sound = Array.isArray(entry) && entry.length === 5
      && entry.every(part => typeof part === 'string' && part !== '');
    const [hazard, what, by, date, agreed] = sound ? entry : [];
    return sound ? { hazard, what, by, date, agreed } : null;
  } catch {
    return null;
  }
}

const every = (parameters, key) => [...new Set(parameters.getAll(key).filter(value => value !== ''))];

/** Which hazards are shown; what makes no sense asks for nothing. */
function listing(text) {
  return {
    only: ONLY.some(([value]) => value === text('only')) ? text('only') : ALL.only,
    kind: text('kind'),
    sort: SORTS.includes(text('sort')) ? text('sort') : ALL.sort,
    descending: text('down') === '1',
  };
}

/** How an address names a limits file, which is always one from disk; null where there is none. */
export const addressOfLimits = inputs => (hasLimits(inputs) ? addressOf(limitsOf(inputs)) : null);

/** How an address names a file: a sample by its id, a file from disk by its name. */
export function addressOf(file) {
  return file && (file.id ?? FILE + file.name);
}

