import assert from 'node:assert/strict';
import test from 'node:test';
import { readFileSync } from 'node:fs';
import {
  draftOf, fieldsOf, isForm, LAYOUTS, lentBy, placed, readDraft, withBorrow, withCorner, withField, withLayout,
  withObstacle, withObstacleAdded, withoutItem,
} from '../../../web/corner/cornerform.js';
import { createCornerActions } from '../../../web/corner/corneractions.js';
import { templateDrawing } from '../../../web/drawing/cornerform.js';

const PROPERTIES = {
  hazard: 'corner', id: 'C1', name: 'Mill turn', survey: { accuracy: '3 in', source: 'measuring wheel', notes: ['a'] },
  template: {
    turn: 'left', angle: '82 deg', approach: { own: "12'", opposing: '12 ft', shoulder: '4 ft' },
    exit: { own: '12 ft', opposing: '12 ft' },
    curb: { radii: ['120 ft', '40 ft', '120 ft'], offset: '3 ft' }, apron: '2 ft', borrow: ['approach', 'exit'],
    islands: [{ height: '6 in', outline: [['40 ft', '1 ft'], ['60 ft', '1 ft'], ['60 ft', '-1 ft']] }],
    obstacles: [{ name: 'signal pole', at: ['-50 ft', '30 ft'], radius: '6 in' }],
  },
};
const TEXT = `{"features": [ {"type":"Feature","geometry":{"type":"Point","coordinates":[0,0]},
  "properties": ${JSON.stringify(PROPERTIES, null, 1)} } ]}`;
const near = (a, b, within = 1e-9) => assert.ok(Math.abs(a - b) <= within, `${a} is ${b} within ${within}`);
const draft = () => draftOf(PROPERTIES, 'ft');
const written = made => withCorner(TEXT, 0, PROPERTIES, readDraft(made));

test('every corner of the samples that has a template is a form, and reads back as it is', () => {
  let count = 0;
  for (const name of ['alder-county', 'heron-bend', 'sorrel-valley', 'tern-flats']) {
    const text = readFileSync(new URL(`../../../sample-routes/${name}.route.geojson`, import.meta.url), 'utf8');
    JSON.parse(text).features.forEach(({ properties }, index) => {
      if (properties.template) {
        count += 1;
        assert.ok(isForm(properties.template), `${name} ${properties.id}`);
        const read = readDraft(draftOf(properties, 'm'));
        assert.deepEqual(read.problems, []);
        assert.equal(withCorner(text, index, properties, read), text);
      }
    });
  }
  assert.ok(count >= 7, `${count}`);
});

test('what a form cannot say is none', () => {
  const more = key => ({ ...PROPERTIES.template, ...key });
  assert.ok(!isForm(more({ curb: undefined, crossing: { own: '9 m', opposing: '0 m', offset: '20 m', curb: {} } })));
  assert.ok(!isForm(more({ unheard: 'of' })));
});

test('a number changes, and its part alone is written', () => {
  const made = written(withField(draft(), 'curb.radii.1', '44'));
  assert.equal(made.replace('["120 ft","44 ft","120 ft"]', '["120 ft","40 ft","120 ft"]')
    .replace(/"curb": ?\{[^}]*\}/, ''), TEXT.replace(/"curb": ?\{[^}]*\}/, ''));
  assert.equal(JSON.parse(made).features[0].properties.template.curb.radii[1], '44 ft');
  assert.equal(JSON.parse(made).features[0].properties.template.approach.own, "12'");
  const moved = withObstacle(withObstacleAdded(draft()), 1, 'along', '-20');
  assert.deepEqual(readDraft(moved).problems.map(({ at }) => at), ['obstacles.1.left', 'obstacles.1.radius']);
  assert.equal(written(withoutItem(draft(), 'obstacles', 0)).includes('signal pole'), false);
  assert.deepEqual(readDraft(withBorrow(draft(), 'exit', false)).template.borrow, ['approach']);
});

test('what cannot be read is told at its field', () => {
  const wrong = withField(withField(withField(draft(), 'angle', 'right'), 'exit.own', ''), 'survey.accuracy', '');
  assert.deepEqual(readDraft(wrong).problems.map(({ at }) => at), ['angle', 'exit.own', 'survey.accuracy']);
  assert.equal(readDraft(withField(draft(), 'angle', '95°')).template.angle, '95°');
  assert.equal(readDraft(withField(draft(), 'angle', '95')).template.angle, '95 deg');
});

test('of every layout the form asks for what the file needs', () => {
  const given = { turn: 'left', angle: '180', drives: 'right', 'fork.third.turn': 'right', 'fork.third.angle': '40' };
  for (const { key } of LAYOUTS) {
    const asked = withLayout(draftOf({}, 'm'), key);
    const filled = fieldsOf(asked).reduce((made, { path, optional }) =>
      withField(made, path, optional ? '' : given[path] ?? (path === 'survey.source' ? 'tape' : '3')), asked);
    const { template, problems } = readDraft(filled);
    assert.deepEqual(problems, [], key);
    assert.equal(template.drives, undefined, 'right is what is meant where nothing is said');
    assert.equal('exit' in template, key !== 'gate');
    assert.ok(key.startsWith('radi') ? template.curb : template[key], key);
    assert.ok(isForm(template), key);
  }
  assert.deepEqual(lentBy({ layout: 'fork' }), ['approach', 'exit', 'third']);
  assert.deepEqual(lentBy({ layout: 'gate' }), ['approach']);
});

test('the program says what is wrong at the field it is about', () => {
  const of = pointer => placed([{ pointer, message: 'No.', remedy: 'Mend it.' }], 0, draft());
  const where = pointer => of(pointer).here[0]?.at;
  const root = '/route/features/0/properties';
  assert.equal(where(`${root}/template/exit/own`), 'exit.own');
  assert.equal(where(`${root}/template/curb/radii`), 'curb.radii.0');
  assert.equal(where(`${root}/template/obstacles/0/at/1`), 'obstacles.0.left');
  assert.equal(where(`${root}/survey/accuracy`), 'survey.accuracy');
  assert.equal(where(`${root}/template`), 'all');
  assert.equal(of('/route/features/1/properties').elsewhere.length, 1);
});

const drawing = (layout, numbers, more = {}) => templateDrawing({
  layout, turn: 1, drives: 'right', obstacles: [], ...more,
  numbers: { 'approach.own': 4, 'approach.opposing': 5, 'exit.own': 6, 'exit.opposing': 7, ...numbers },
});
const curb = made => made.lines.find(({ name }) => name === 'curb').points;

test('a curb of one radius touches both edges where it must', () => {
  // Square to the left: the edges are y = 5 and x = -7; the arc of 15 ends 15 before and beyond where they meet.
  const square = curb(drawing('radius', { angle: Math.PI / 2, 'curb.radius': 15 }));
  near(square[0][0], -22);
  near(square[0][1], 5);
  near(square.at(-1)[0], -7);
  near(square.at(-1)[1], 20);
  // To the right the edges are y = -4 and x = -6, where one drives on the left they are those of the opposing lanes.
  const right = curb(drawing('radius', { angle: Math.PI / 2, 'curb.radius': 15 }, { turn: -1 }));
  assert.deepEqual(right.at(0).map(Math.round), [-21, -4]);
  const left = curb(drawing('radius', { angle: Math.PI / 2, 'curb.radius': 15 }, { drives: 'left' }));
  assert.deepEqual(left.at(0).map(Math.round), [-21, 4]);
  // Turning by 120 degrees an arc of R takes R tan(60°) of either edge.
  const sharp = curb(drawing('radius', { angle: 2 * Math.PI / 3, 'curb.radius': 10, 'exit.opposing': 5 }));
  const meet = [(5 * Math.cos(2 * Math.PI / 3) - 5) / Math.sin(2 * Math.PI / 3), 5];
  near(Math.hypot(sharp[0][0] - meet[0], sharp[0][1] - meet[1]), 10 * Math.tan(Math.PI / 3));
  near(Math.hypot(sharp.at(-1)[0] - meet[0], sharp.at(-1)[1] - meet[1]), 10 * Math.tan(Math.PI / 3));
});

test('three radii meet each other, the middle one set in', () => {
  const made = curb(drawing('radii', {
    angle: Math.PI / 2, 'curb.radii.0': 36, 'curb.radii.1': 12, 'curb.radii.2': 30, 'curb.offset': 1,
  }));
  // Of the first: sqrt(24^2 - 23^2) before the middle's center, which is 13 before where the edges meet.
  near(made[0][0], -7 - 13 - Math.sqrt(24 ** 2 - 23 ** 2));
  near(made.at(-1)[1], 5 + 13 + Math.sqrt(18 ** 2 - 17 ** 2));
  // Nowhere nearer to the middle's center than its radius, and there in the middle.
  const away = made.map(([x, y]) => Math.hypot(x + 20, y - 18));
  near(Math.min(...away), 12, 1e-6);
  // No corner where arcs meet.
  const steps = made.slice(1).map(([x, y], k) => Math.atan2(y - made[k][1], x - made[k][0]));
  steps.slice(1).forEach((step, k) => assert.ok(Math.abs(step - steps[k]) < 0.1, `${k}`));
});

test('every number that is known has its dimension', () => {
  const { dims } = drawing('radii', {
    angle: 1.4, 'approach.shoulder': 2, 'curb.radii.0': 36, 'curb.radii.1': 12, 'curb.radii.2': 30, 'curb.offset': 1,
  });
  assert.deepEqual(dims.map(({ path }) => path).sort(), [
    'angle', 'approach.opposing', 'approach.own', 'approach.shoulder', 'curb.offset', 'curb.radii.0', 'curb.radii.1',
    'curb.radii.2', 'exit.opposing', 'exit.own']);
  const round = drawing('roundabout', { angle: 1.4, 'roundabout.outer': 20, 'roundabout.island': 9 });
  assert.ok(round.dims.some(({ path }) => path === 'roundabout.island'));
  LAYOUTS.forEach(({ key }) => assert.ok(drawing(key, {}).box.every(Number.isFinite), key));
});

test('a draft goes into the route when it can be read, and stays when it is refused', async () => {
  let later = null;
  let accepts = true;
  const sent = [];
  const file = text => ({ text, json: JSON.parse(text) });
  let state = {
    inputs: { route: file(TEXT) }, hazard: 'C1', units: 'us', corner: null, problem: null, candidate: null,
    drafts: { survey: [], corner: [] },
  };
  const watchers = [];
  const store = {
    get: () => state,
    set: part => {
      state = { ...state, ...part };
      watchers.filter(({ keys }) => keys.some(key => key in part)).forEach(({ call }) => call(state));
    },
    watch: (keys, call) => { watchers.push({ keys, call }); call(state); },
  };
  const actions = createCornerActions(store, async (what, text) => {
    sent.push(what);
    store.set(accepts ? { inputs: { route: file(text) } }
      : { problem: { problems: [{ pointer: '/route/features/0/properties/template/exit/own', message: 'Too wide.' }] } });
    return accepts;
  }, { set: call => { later = call; return 1; }, clear: () => { later = null; } });
  actions.cornerField('exit.own', '15');
  assert.equal(state.corner.status, 'changed');
  await later();
  assert.deepEqual([state.corner.status, sent], ['same', ['measuring C1 Mill turn']]);
  actions.cornerField('exit.own', 'wide');
  await later();
  assert.deepEqual([state.corner.status, sent.length], ['unread', 1]);
  accepts = false;
  actions.cornerField('exit.own', '900');
  await later();
  assert.deepEqual([state.corner.status, state.corner.refused, state.problem],
    ['refused', [{ at: 'exit.own', text: 'Too wide.' }], null]);
  // It is there again when the corner is on show again.
  store.set({ hazard: null });
  store.set({ hazard: 'C1' });
  assert.equal(state.corner.draft.fields['exit.own'], '900');
  actions.resetCorner();
  assert.equal(state.corner.draft.fields['exit.own'], '15 ft');
});

test('on the outside of the turn the edges meet', () => {
  // Square to the left: y = -4 and x = 6 meet in [6, -4].
  const { lines } = drawing('radius', { angle: Math.PI / 2, 'curb.radius': 15 });
  const ends = lines.filter(({ name }) => name === 'edge' || name === 'lane')
    .flatMap(({ points }) => [points[0], points.at(-1)]);
  assert.equal(ends.filter(([x, y]) => Math.hypot(x - 6, y + 4) < 1e-9).length, 4, 'two lanes and two shoulders of none');
});
