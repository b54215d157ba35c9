/**
 * A small invented plan over the route of fixtures.js, made by hand from the records of the program: H1 is passed raised,
 * then the notch is changed at P1, H2 passes, H3 blocks.
 */
export const set = (configuration, label, more = {}) => ({
  configuration, label, lift: 'down', axles: 3, booster: 'none', notch: 'low', lengthM: 22, regulatorPa: null, shim: null,
  ...more,
});
export const LOW = set('down/none/low', '3 axles · none · notch low');
export const HIGH = set('down/none/high', '3 axles · none · notch high', { notch: 'high' });

const step = (kind, chainageM, place, more) => ({
  step: kind, chainageM, place, landmark: null, set: null, change: null, lift: null, passage: null, ...more,
});

export function passageOf(hazard, kind, name, fromChainageM, toChainageM, set, more = {}) {
  return step('passage', fromChainageM, name, {
    passage: {
      hazard, kind, name, fromChainageM, toChainageM, set, verdict: 'clear', raise: null, raises: false, lowers: false,
      condition: null, blocked: false, crawls: false, seconds: 0,
      spare: { kind: 'ground', value: 0.12, required: 0.07, left: 0.05, at: 'trailer, deck' }, gaps: [], reasons: [], cautions: [],
      ...more,
    },
  });
}

export function liftOf(kind, chainageM, hazards, more = {}) {
  return step(kind, chainageM, `${kind} ${hazards}`, {
    lift: {
      raise: { frontM: 0.09, rearM: 0, clearanceM: 0.071, requiredM: 0.07 }, hazards, lastLeft: hazards.at(-1),
      fromChainageM: chainageM, toChainageM: chainageM, lacks: null, seconds: 420, ...more,
    },
  });
}

export function plan() {
  return {
    cresthaul: 'plan/1', version: '0.1.0',
    route: { name: 'Invented route', lengthM: 10000, legs: [] }, rig: {}, margins: {},
    outcome: 'no way through', stopsAtBlocks: true, conditions: [],
    options: { times: TIMES, forbid: [], fix: null, avoidRaising: false, acceptTight: [], setAside: [] },
    seconds: 1800, changes: 1,
    steps: [
      step('depart', 0, 'start of the route', { set: LOW }),
      passageOf('whole route', 'limits', 'limits of the whole route', 0, 10000, LOW, { spare: null }),
      liftOf('raise', 990, ['H1'], { fromChainageM: 0 }),
      passageOf('H1', 'rail-crossing', 'First crossing', 990, 1030, LOW, {
        raise: { frontM: 0.09, rearM: 0, clearanceM: 0.071, requiredM: 0.07 }, raises: true, lowers: true, crawls: true, seconds: 500,
      }),
      liftOf('lower', 1030, ['H1'], { toChainageM: 3000 }),
      step('change', 3000, 'Gravel pit', {
        change: {
          stop: 'P1', setUpArea: true, roomM: 60, from: LOW, to: HIGH,
          actions: [{ action: 'notch', text: 'notch low to notch high', seconds: 900 }], seconds: 1080,
        },
      }),
      passageOf('H2', 'low-structure', 'Bridge', 5990, 6030, HIGH),
      passageOf('H3', 'dip', 'Wash', 6090, 6130, HIGH, { verdict: 'not surveyed', blocked: true, spare: null }),
      step('arrive', 10000, 'end of the route', { set: HIGH }),
    ],
    blocking: [{ hazard: 'H3', kind: 'dip', name: 'Wash', chainageM: 6100, why: 'no profile', relaxations: [] }],
    crossings: [], robustness: null,
    cautions: ['Invented.', 'P2 Lay-by cannot be used: the combination is still held by H2 there.', 'P1 Gravel pit is wide.'],
  };
}

const TIMES = {
  stop: 180, notch: 900, liftAxle: 180, regulator: 120, shim: 600, raise: 240, lower: 240, coupleBooster: 2700,
  uncoupleBooster: 1800, closeCouple: 2400, openCloseCoupling: 2400, loadBooster: 1800, unloadBooster: 1800,
  crawlMps: 1.34112,
};

export const along = (hazard, chainageM, spare, more = {}) => ({
  hazard, kind: 'dip', name: hazard, chainageM, verdict: 'clear', raise: null, blocked: false, spare, ...more,
});
export const spare = (kind, left) => ({ kind, value: 1, required: 1 - left, left, at: 'invented' });
export const compared = (configuration, places, more = {}) => ({
  configuration, label: configuration, outcome: 'way through', blocking: [], seconds: 60, raised: 0, grossKg: null, lengthM: 20,
  groups: [], worst: [], along: places, ...more,
});
