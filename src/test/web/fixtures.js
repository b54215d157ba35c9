/** A small invented report and passage: round numbers, so that what a test expects can be worked out by hand. */

const CONFIGURATIONS = [
  ['down', 3, 'none', 'low', -0.02], ['down', 3, 'none', 'high', 0.02],
  ['down', 3, 'trailing', 'low', -0.02], ['down', 3, 'trailing', 'high', 0.02],
  ['up', 2, 'none', 'low', -0.02], ['up', 2, 'none', 'high', 0.02],
  ['up', 2, 'trailing', 'low', -0.02], ['up', 2, 'trailing', 'high', 0.02],
];

export function clearance(valueM, requiredM, verdict, more = {}) {
  return {
    valueM, requiredM, marginM: 0.05, uncertaintyM: requiredM - 0.05, verdict, unit: 'trailer', xM: -6, hM: 0.25,
    part: 'deck', distanceM: 0.5, chainageM: 1000.5, steerM: 7, line: 'left', leveling: 'held', beyondSurveyM: 0,
    gradeDeclared: true, provenWithinM: 0.0005, besideM: null, drivenM: null, deciding: null, ...more,
  };
}

export function cell(key, verdict, more = {}) {
  return {
    configuration: key, verdict, ground: null, overhead: null, units: null, raise: null, raiseNote: null, reasons: [], mostMps: null, ...more,
  };
}

/**
 * Three hazards on 10 km: a crossing that clears on two axles and is passable only raised on three, a low structure
 * that clears at the low notch, and one nobody surveyed.
 */
export function report() {
  const configurations = CONFIGURATIONS.map(([lift, axles, booster, notch, notchOffsetM]) => ({
    key: `${lift}/${booster}/${notch}`, lift, axles, booster, notch, notchOffsetM,
    label: `${axles} axles · ${booster} · notch ${notch}`,
  }));
  const crossing = configurations.map(c => (c.lift === 'up'
    ? cell(c.key, 'clear', { ground: clearance(0.12, 0.07, 'clear') })
    : cell(c.key, 'contact', {
      ground: clearance(-0.01, 0.07, 'contact'), raise: { frontM: 0.09, rearM: 0, clearanceM: 0.071, requiredM: 0.07 },
      reasons: ['The underside meets the road.'],
    })));
  const structure = configurations.map(c => cell(c.key, c.notch === 'low' ? 'clear' : 'contact', {
    ground: clearance(0.2, 0.07, 'clear'),
    overhead: clearance(c.notch === 'low' ? 0.1 : 0.01, 0.09, c.notch === 'low' ? 'clear' : 'contact'),
  }));
  const unsurveyed = configurations.map(c => cell(c.key, 'not surveyed', { reasons: ['No profile.'] }));
  const hazards = [
    hazard('H1', 'rail-crossing', 'First crossing', 1000, crossing, { notes: ['W10-5 sign posted'] }),
    hazard('H2', 'low-structure', 'Bridge', 6000, structure),
    hazard('H3', 'dip', 'Wash', 6100, unsurveyed, { surveyed: false, notes: ['not surveyed: no profile in the file'] }),
  ];
  return {
    cresthaul: 'report/1', version: '0.1.0',
    route: {
      name: 'Invented route', note: 'Invented.', sha256: 'a'.repeat(64), limitsSha256: null, lengthM: 10000,
      legs: [
        { name: 'One', startChainageM: 0, endChainageM: 4000 },
        { name: 'Two', startChainageM: 4000, endChainageM: 10000 },
      ],
    },
    rig: { name: 'Invented rig', note: 'Invented.', sha256: 'b'.repeat(64), stance: 'loaded' },
    margins: { groundM: 0.05, overheadM: 0.07 },
    surveyFirst: { places: [], humps: [] },
    tape: [{ what: 'kingpin to trailer axle 1', valueM: 9 }],
    uncertainties: [{ term: 'survey', valueM: 0.01, source: 'invented' }],
    configurations: configurations.map(c => ({ ...c, ...counts(hazards, c.key) })),
    hazards, cautions: ['Invented caution.'],
    reversing: {
      bendRad: 0.02, mostM: 90, cautions: ['Invented caution.'],
      states: configurations.filter(c => c.notch === 'low').map(({ lift, booster, axles }) => ({
        lift, booster, axles, label: `${axles} axles · ${booster}`, unknown: null,
        free: { limitMetM: axles, coupling: 'kingpin', limitRad: 1 }, locked: null, lockedLight: null,
      })),
    },
  };
}

function hazard(id, kind, name, chainageM, cells, more = {}) {
  return {
    id, kind, name, landmark: null, chainageM, offsetM: 1, lonLat: [-97, 41], notes: [], cautions: [], cautionsWhen: [], surveyed: true,
    lines: ['left', 'right'], extentM: [-5, 5], cells, least: [
      { lift: 'down', booster: 'none', notch: null, text: 'no notch clears' },
      { lift: 'up', booster: 'none', notch: 'low', text: 'lowest notch that clears: low' },
    ], ...more,
  };
}

function counts(hazards, key) {
  const cells = hazards.map(h => h.cells.find(c => c.configuration === key));
  const count = verdict => cells.filter(c => c.verdict === verdict).length;
  return {
    clear: count('clear'), tight: count('tight'), contact: count('contact'), notSurveyed: count('not surveyed'),
    raisedOnly: cells.filter(c => c.verdict === 'contact' && c.raise).length,
    verdict: count('contact') > 0 ? 'contact' : 'not surveyed',
  };
}

/** A level road with a 0.1 m step-like hump, and a two-unit combination that is never pitched. */
export function passage({ positions = [0, 1, 2, 3, 4] } = {}) {
  const groundM = [0.2, 0.1, -0.01, 0.1, 0.2];
  return {
    hazard: 'H1', configuration: 'down/none/low', line: 'left', leveling: 'held', frontRaiseM: 0, rearRaiseM: 0,
    lines: ['left', 'right'], levelings: ['held', 'settled'],
    ground: {
      points: [[-5, 0], [-1, 0], [0, 0.1], [1, 0], [5, 0]],
      before: { slope: 0.01, declared: true }, after: { slope: -0.02, declared: false },
    },
    soffit: null, tracks: [0],
    units: [
      { unit: 'tractor', underside: [[-3, 0.5], [1, 0.5]], topside: [[-3, 1], [-1, 3], [1, 2]], load: [] },
      {
        unit: 'trailer', underside: [[-10, 0.25], [0, 0.25]], topside: [[-10, 0.6], [0, 0.6]],
        load: [[[-6, 0.6], [-6, 3.8], [-3, 0.6]]],
      },
    ],
    positions: positions.map((steerM, i) => ({
      steerM, groundM: groundM[i % 5], groundAt: { unit: 'trailer', xM: -6, hM: 0.25, distanceM: steerM - 8 },
      overheadM: null, overheadAt: null,
      poses: { tractor: [steerM, 0, 0], trailer: [steerM - 2, 0, 0] },
      wheels: [[steerM, 0.5, 0.5, 'steer', 'riding'], [steerM - 10, 0.5, 0.5, 'trailer', 'solid'],
        [steerM - 11, 0.52, 0.5, 'trailer', 'hanging']],
    })),
    tightest: 2,
  };
}
