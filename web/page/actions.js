/**
 * What a user can do, as functions on the store. Panels call these and watch the state; none talks to the server.
 */
import { lastOnly, PLAIN_PLAN } from './state.js';
import { Problem, wasAborted } from '../exchange/api.js';
import { addressOf, addressOfLimits, linkedFile } from './address.js';
import { asQuantity } from '../text/format.js';
import { closestConfiguration, findCell, findConfiguration, findHazard, ranked } from '../report/report.js';
import { fileFromDisk, fromDisk, pick, readFile } from '../exchange/files.js';
import { stanceIn } from '../rig/leftoff.js';
import { hasLimits, limitsOf, NO_LIMITS } from '../limits/limits.js';
import { isBaseMap } from '../drawing/basemap.js';
import { ALL } from '../report/listing.js';
import { nearestIndex } from '../drawing/passage.js';
import { followed, joined, newId } from '../exchange/underway.js';

/** How often is asked how far a check has come, milliseconds. */
const ASKED_EACH = 500;
const TIGHTEST = { line: null, leveling: null, raised: false };

export function createActions(store, api) {
  const checks = lastOnly();
  const passages = lastOnly();
  let retry = null;

  /** Checks `inputs`; they come into force only when the server accepts them. `wanted` is a decoded address. */
  async function check(inputs, wanted = {}) {
    const turn = checks.begin();
    retry = () => check(inputs, wanted);
    store.set({ busy: true, problem: null, progress: null });
    const id = newId();
    let running = true;
    followed(
      () => api.checkProgress(id, store.get().progress?.found.length ?? 0, turn.signal),
      () => running && turn.isCurrent(),
      told => store.set({ progress: joined(store.get().progress, told) }),
      ASKED_EACH,
    );
    try {
      const outcomes = await Promise.allSettled([api.check(inputs, turn.signal, id), api.route(inputs, turn.signal)]);
      running = false;
      if (!turn.isCurrent()) {
        return;
      }
      // The check looks at both files, so when both refuse, its list of problems is the complete one.
      const [report, line] = outcomes.map(outcome => {
        if (outcome.status === 'rejected') {
          throw outcome.reason;
        }
        return outcome.value;
      });
      passages.cancel();
      // Another route is another question: nothing that was chosen for the one before stands for it.
      const before = store.get().inputs?.route.text === inputs.route.text ? store.get() : OTHER_ROUTE;
      const kept = { configuration: before.configuration, hazard: before.hazard, ...definedOnly(wanted) };
      store.set({
        inputs, line, report,
        candidate: null,
        busy: false,
        notice: unmet(wanted, report),
        hazard: findHazard(report, kept.hazard)?.id ?? null,
        configuration: (findConfiguration(report, kept.configuration)
          ?? startingConfiguration(report, before)).key,
        chosen: before.chosen || Boolean(findConfiguration(report, wanted.configuration)),
        view: { line: wanted.line ?? null, leveling: wanted.leveling ?? null, raised: wanted.raised ?? false },
        passage: NO_PASSAGE,
        position: 0,
        ...planOf(wanted, sameFiles(inputs, store.get().inputs) ? store.get() : null),
        listing: listingOf(report, wanted.listing ?? (before === OTHER_ROUTE ? ALL : store.get().listing)),
      });
      if (before === OTHER_ROUTE) {
        drawBaseMap(inputs.route, store.get().samples);
      }
      await drawPassage(wanted.steerM);
    } catch (error) {
      if (wasAborted(error) || !turn.isCurrent()) {
        return;
      }
      checks.cancel();
      store.set({ busy: false, problem: asProblem(error), candidate: inputs });
    }
  }

  /** Opens samples and checks them; what `wanted` leaves open is the first of its kind. */
  async function openSamples(wanted = {}) {
    const turn = checks.begin();
    retry = () => openSamples(wanted);
    store.set({ busy: true, problem: null });
    try {
      const samples = store.get().samples ?? await api.samples();
      store.set({ samples });
      const [route, rig] = await Promise.all([
        linkedFile(wanted.route) ? null : sampleFile('routes', pick(samples.routes, wanted.route), turn.signal),
        linkedFile(wanted.rig) ? null : sampleFile('rigs', pick(samples.rigs, wanted.rig), turn.signal),
      ]);
      if (!turn.isCurrent()) {
        return;
      }
      const inputs = {
        route, rig, limits: NO_LIMITS, stance: stanceIn(rig, wanted.stance), margins: wanted.margins ?? null,
      };
      const missing = linkedFile(wanted.route) ?? linkedFile(wanted.rig) ?? linkedFile(wanted.limits);
      if (missing !== null) {
        store.set({ candidate: inputs });
        throw fromDisk(missing);
      }
      await check(inputs, wanted);
    } catch (error) {
      if (!wasAborted(error) && turn.isCurrent()) {
        store.set({ busy: false, problem: asProblem(error) });
      }
    }
  }

  /** The base map that a route came with, or that the server offers for it. Without it the route stands alone. */
  async function drawBaseMap(route, samples) {
    const entry = samples?.routes.find(({ id }) => id === route.id);
    store.set({ baseMap: route.baseMap ?? null });
    if (route.baseMap !== undefined || !entry?.map) {
      return;
    }
    try {
      const baseMap = await api.sampleMap(route.id);
      if (store.get().inputs?.route.id === route.id) {
        store.set({ baseMap });
      }
    } catch {
      store.set({ notice: 'The base map did not load; the route is drawn alone.' });
    }
  }

  async function sampleFile(kind, { id, name }, signal) {
    return readFile(await api.sample(kind, id, signal), name, id);
  }

  /**
   * Puts one sample or file in the place of the route, the rig or the limits in force. Limits go with the route that
   * they were opened for: they are another's business, and may allow what nobody has allowed there.
   *
   * @param kind 'route', 'rig' or 'limits'
   * @param wanted what to show of it, as a decoded address; sameRoute where it is another text of the same route
   */
  async function replace(kind, read, wanted = {}) {
    const turn = checks.begin();
    retry = () => replace(kind, read, wanted);
    store.set({ busy: true, problem: null });
    try {
      const file = await read(turn.signal);
      if (!turn.isCurrent()) {
        return;
      }
      if (isBaseMap(file.json)) {
        // Drawn beneath the route on show; nothing is checked anew.
        store.set({ busy: false, baseMap: file.json });
        return;
      }
      const before = store.get().candidate ?? store.get().inputs ?? {};
      const limits = kind !== 'route' || wanted.sameRoute ? limitsOf(before) : file.limits ?? NO_LIMITS;
      const inputs = { stance: null, margins: null, ...before, limits, [kind]: file };
      if (!inputs.route || !inputs.rig) {
        store.set({ candidate: inputs });
        throw new Problem({
          title: `${file.name} is read; a check needs a ${inputs.route ? 'rig' : 'route'} too`,
          remedy: `Open or choose a ${inputs.route ? 'rig' : 'route'}.`,
        });
      }
      await check({ ...inputs, stance: stanceIn(inputs.rig, inputs.stance) }, wanted);
      if (hasLimits(before) && !hasLimits(inputs) && kind === 'route' && store.get().inputs?.route === file) {
        store.set({ notice: `${limitsOf(before).name} is no longer in force: it was opened for another route.` });
      }
    } catch (error) {
      if (!wasAborted(error) && turn.isCurrent()) {
        store.set({ busy: false, problem: asProblem(error) });
      }
    }
  }

  /** Fetches the passage of the hazard and configuration on show. The drawing before it is gone at once. */
  async function drawPassage(steerM = null) {
    const { inputs, report, hazard, configuration, view } = store.get();
    const cell = findCell(findHazard(report, hazard), configuration);
    if (cell === null || (cell.ground === null && cell.overhead === null && !cell.corner)) {
      passages.cancel();
      store.set({ passage: NO_PASSAGE, position: 0 });
      return;
    }
    const turn = passages.begin();
    store.set({ passage: { status: 'loading', data: null, problem: null }, position: 0 });
    try {
      if (cell.corner) {
        const data = await api.corner(inputs, { hazard, configuration }, turn.signal);
        if (turn.isCurrent()) {
          store.set({ passage: { status: 'ready', data, problem: null }, position: data.tightest });
        }
        return;
      }
      const raise = view.raised ? cell.raise : null;
      const data = await api.passage(inputs, {
        hazard,
        configuration,
        line: view.line,
        leveling: view.leveling,
        frontRaise: raise && asQuantity(raise.frontM),
        rearRaise: raise && asQuantity(raise.rearM),
      }, turn.signal);
      if (turn.isCurrent()) {
        const position = steerM === null ? data.tightest : nearestIndex(data.positions, steerM);
        store.set({ passage: { status: 'ready', data, problem: null }, position });
      }
    } catch (error) {
      if (!wasAborted(error) && turn.isCurrent()) {
        store.set({ passage: { status: 'failed', data: null, problem: asProblem(error) }, position: 0 });
      }
    }
  }

  function select(patch) {
    store.set({ ...patch, notice: null, view: TIGHTEST, passage: NO_PASSAGE, position: 0 });
    return drawPassage();
  }

  /** Version and settings; the sheet does without either when the server does not tell. */
  async function loadAbout() {
    const [version, settings] = await Promise.allSettled([api.version(), api.settings()]);
    store.set({
      version: version.value?.version ?? null,
      settings: settings.value ?? { tiles: null },
    });
  }

  /** Goes where an address points: within the inputs in force when they are the ones it names, else by opening them. */
  function follow(wanted) {
    const { inputs, report } = store.get();
    const same = inputs !== null
      && (wanted.route ?? addressOf(inputs.route)) === addressOf(inputs.route)
      && (wanted.rig ?? addressOf(inputs.rig)) === addressOf(inputs.rig)
      && (wanted.limits ?? addressOfLimits(inputs)) === addressOfLimits(inputs)
      && wanted.stance === inputs.stance
      && JSON.stringify(wanted.margins) === JSON.stringify(inputs.margins);
    if (!same) {
      return openSamples(wanted);
    }
    store.set({
      notice: unmet(wanted, report),
      hazard: findHazard(report, wanted.hazard)?.id ?? null,
      configuration: findConfiguration(report, wanted.configuration)?.key ?? store.get().configuration,
      chosen: store.get().chosen || Boolean(findConfiguration(report, wanted.configuration)),
      view: { line: wanted.line, leveling: wanted.leveling, raised: wanted.raised },
      ...planOf(wanted, null, store.get().planAsked),
      listing: listingOf(report, wanted.listing ?? ALL),
    });
    return drawPassage(wanted.steerM);
  }

  return {
    loadAbout,
    follow,
    openSamples,
    check,
    drawPassage,
    retry: () => retry?.(),
    /** Gives up a check that runs; its answer, should it still come, is shown to nobody. */
    stopCheck: () => {
      if (!store.get().busy) {
        return;
      }
      checks.cancel();
      store.set(store.get().report === null
        ? { busy: false, problem: new Problem({ title: 'Stopped before anything was checked', passing: true }) }
        : { busy: false, notice: 'Stopped. The sheet is as it was.' });
    },
    /** Shows other hazards, or in another order. */
    list: patch => store.set({ listing: listingOf(store.get().report, { ...store.get().listing, ...patch }) }),
    /** Shows a stopping place, or none. */
    selectStop: id => store.set({ stop: id === store.get().stop ? null : id }),
    /** Shows a hazard the way a plan passes it. */
    selectPassage: ({ hazard, set, raise }) => {
      const { report } = store.get();
      const cell = findCell(findHazard(report, hazard), set.configuration);
      store.set({
        hazard, configuration: set.configuration, chosen: true, notice: null, passage: NO_PASSAGE, position: 0,
        view: { ...TIGHTEST, raised: raise !== null && Boolean(cell?.raise) },
      });
      return drawPassage();
    },
    /** Gives up the refused inputs; those in force were never touched. */
    dismissProblem: () => store.set({ problem: null, candidate: null }),
    openSample: (kind, id) => replace(kind, signal =>
      sampleFile(`${kind}s`, pick(store.get().samples[`${kind}s`], id), signal)),
    openFile: (kind, file) => replace(kind, () => fileFromDisk(file, kind)),
    /** Puts a file that the page has read or made in the place of the one in force; with what was shown of it. */
    openRead: (kind, file, wanted) => replace(kind, async () => file, wanted),
    setStance: stance => check({ ...store.get().inputs, stance }),
    setMargins: margins => check({ ...store.get().inputs, margins }),
    selectHazard: id => (id === store.get().hazard ? undefined : select({ hazard: id })),
    chooseConfiguration: key => {
      const other = key !== store.get().configuration;
      store.set({ chosen: true });
      return other ? select({ configuration: key }) : undefined;
    },
    /** The sheet opens on the plan: until somebody chooses a configuration, it is the one the plan departs with. */
    openOnPlan: ({ status, data }) => {
      const { report, configuration, chosen } = store.get();
      const key = data?.steps.find(({ step }) => step === 'depart')?.set?.configuration;
      if (status === 'ready' && !chosen && key !== configuration && findConfiguration(report, key)) {
        store.set({ configuration: key, view: TIGHTEST, passage: NO_PASSAGE, position: 0 });
        drawPassage();
      }
    },
    chooseSetting: setting => {
      const { report, configuration } = store.get();
      const now = findConfiguration(report, configuration);
      return select({ configuration: closestConfiguration(report, { ...now, ...setting }).key, chosen: true });
    },
    setView: view => {
      store.set({ view: { ...store.get().view, ...view } });
      return drawPassage();
    },
    moveTo: index => {
      const count = store.get().passage.data?.positions.length ?? 0;
      store.set({ position: Math.max(0, Math.min(count - 1, index)) });
    },
  };
}

/** What stands of another route's sheet. */
const OTHER_ROUTE = { report: null, configuration: null, hazard: null, chosen: false };

const NO_PASSAGE = { status: 'none', data: null, problem: null };

const sameFiles = (a, b) => b !== null && a.route.text === b.route.text && a.rig.text === b.rig.text;

/**
 * What is asked of a plan: what an address says; else what was asked before of the same files; else nothing.
 *
 * @param before state whose question is kept when the address says nothing, or null
 * @param now the question in force: kept as it is where it is the same, so that nobody is asked twice
 */
function planOf(wanted, before, now = null) {
  const planAsked = wanted.plan ?? before?.planAsked ?? PLAIN_PLAN;
  return {
    planAsked: JSON.stringify(planAsked) === JSON.stringify(now) ? now : planAsked,
    picks: (wanted.picks ?? before?.picks ?? []).slice(0, 3),
    stop: wanted.stop ?? before?.stop ?? null,
  };
}

/** Of a kind that the report does not have nothing could be shown: every kind is. */
function listingOf(report, listing) {
  return report.hazards.some(({ kind }) => kind === listing.kind) ? listing : { ...listing, kind: null };
}

/** What an address asked for that the report does not have, in words; null when all is met. */
function unmet(wanted, report) {
  const missing = [
    wanted.hazard && !findHazard(report, wanted.hazard) && `hazard ${wanted.hazard}`,
    wanted.configuration && !findConfiguration(report, wanted.configuration) && `configuration ${wanted.configuration}`,
  ].filter(Boolean);
  return missing.length === 0 ? null : `The link asks for ${missing.join(' and ')}, which this check does not have.`;
}

/** With the settings chosen before where the new rig has them, else the best for this route. */
function startingConfiguration(report, { report: earlier, configuration }) {
  const before = findConfiguration(earlier, configuration);
  return before ? closestConfiguration(report, before) : ranked(report)[0];
}

function definedOnly(wanted) {
  return Object.fromEntries(Object.entries({ configuration: wanted.configuration, hazard: wanted.hazard })
    .filter(([, value]) => value));
}

function asProblem(error) {
  if (error instanceof Problem) {
    return error;
  }
  console.error(error);
  return new Problem({ title: 'The page met an error of its own', detail: String(error), remedy: 'Reload the page.' });
}
