import assert from 'node:assert/strict';
import test from 'node:test';
import { withMember } from '../../../web/text/jsontext.js';
import { hasDecimalCommas, lengthOf } from '../../../web/text/typedlength.js';
import { tableOf } from '../../../web/text/pasting.js';
import { createStore, initialState } from '../../../web/page/state.js';
import {
  draftOf, inOrder, placed, readDraft, withCell, withField, withoutRow, withPasted, withRowAt, withSurvey,
} from '../../../web/survey/survey.js';
import { createImportActions } from '../../../web/import/importing.js';
import { createUndoing } from '../../../web/project/undoing.js';
import { createSurveyActions } from '../../../web/survey/surveyactions.js';

const PROPERTIES = {
  hazard: 'rail-crossing', id: 'H1', name: 'Spur', tracks: ['0 ft', '14 ft'],
  survey: { accuracy: '10 mm', source: 'level, invented' },
  approachBefore: { grade: '1 %', accuracy: '0.2 %' },
  profile: [
    { line: 'left', points: [['-12 ft', '100.1 ft'], ['0 ft', '100.5 ft'], ['12 ft', '100.2 ft']] },
    { line: 'right', points: [['-12 ft', '100 ft'], ['3 m', '100 ft 6 in'], ['12 ft', '100.25 ft']] },
  ],
};
const route = properties => `{"cresthaul" : "route/1", "features": [
  {"type":"Feature", "properties" : ${JSON.stringify(properties, null, 1)} , "geometry":{"x":1e2}},\n {"b": 2} ] }`;
const same = text => JSON.parse(text).features[0].properties;

test('lengths as people write them', () => {
  // Meters by hand: a foot is 304.8 mm, an inch 25.4 mm.
  const cases = [
    ['12.5', 'm', 12.5, '12.5 m'],
    ['-3', 'ft', -0.9144, '-3 ft'],
    ['−3,25', 'm', -3.25, '-3.25 m'],
    ['0,125', 'm', 0.125, '0.125 m'],
    ['1,512.07', 'ft', 460.878936, '1512.07 ft'],
    ['1.512,07', 'm', 1512.07, '1512.07 m'],
    ['1,200 ft', 'm', 365.76, '1200 ft'],
    ['.5', 'm', 0.5, '0.5 m'],
    ['180mm', 'ft', 0.18, '180 mm'],
    ['12 feet', 'm', 3.6576, '12 ft'],
    ['13 ft 6 in', 'm', 4.1148, '13 ft 6 in'],
    ["13'6\"", 'm', 4.1148, '13 ft 6 in'],
    ['13′ 6½″', 'm', 4.1275, '13 ft 6 1/2 in'],
    ['13 ft 1/2 in', 'm', 3.9751, '13 ft 1/2 in'],
    ['-1 1/2 in', 'm', -0.0381, '-1 1/2 in'],
    ['3/4 in', 'm', 0.01905, '3/4 in'],
  ];
  for (const [text, unit, meters, spelled] of cases) {
    const read = lengthOf(text, unit);
    assert.equal(read.text, spelled, text);
    assert.ok(Math.abs(read.m - meters) < 1e-9, `${text}: ${read.m}`);
  }
  for (const text of ['', 'abc', '-', '1e2', '1/2', '12 ft 14 in', '12 furlong', '3 5', '3/2 in', '1..2']) {
    assert.match(lengthOf(text, 'm').problem, /no length/, text);
  }
  // 104,250 is one number in Paris and another in Boston.
  assert.match(lengthOf('104,250', 'm').problem, /104\.250 or 104250/);
  assert.equal(hasDecimalCommas(['104,250', '0,5']), true);
  assert.equal(hasDecimalCommas(['104,250', '103,125']), false);
  assert.equal(hasDecimalCommas(['1,5', '1.5']), false);
});

test('what a spreadsheet copies', () => {
  const head = tableOf('Station [m]\tLeft (m)\tRight\r\n-12\t104,250\t104,2\r\n\r\n0\t103,125\t\r\n');
  assert.deepEqual(head.rows, [['-12', '104.250', '104.2'], ['0', '103.125', '']]);
  assert.deepEqual([head.units, head.names], [['m', 'm', null], ['distance', 'left', 'right']]);
  assert.deepEqual([head.heads, head.comma], [1, true]);
  assert.deepEqual(tableOf('1;2,5\n3;4').rows, [['1', '2.5'], ['3', '4']]);
  assert.deepEqual(tableOf('1.5, 2.3\n2.5, x').rows, [['1.5', '2.3'], ['2.5', 'x']]);
  assert.deepEqual(tableOf('1 2.5 3\n4 5 6').rows, [['1', '2.5', '3'], ['4', '5', '6']]);
  assert.deepEqual(tableOf('12 ft 6 in   100 ft').rows, [['12 ft 6 in', '100 ft']]);
  assert.deepEqual(tableOf('"13\'6"""\t2').rows, [['13\'6"', '2']]);
  assert.deepEqual(tableOf('12 ft 6 in').rows, [['12 ft 6 in']]);
  assert.deepEqual(tableOf('x\ty').rows, []);
  assert.deepEqual(tableOf('').rows, []);
});

test('a survey is a table and the table the same survey', () => {
  const draft = draftOf(PROPERTIES, 'm');
  assert.deepEqual(draft.units, { distance: 'ft', height: 'ft' });
  // 3 m is 9.84 ft: between 0 and 12.
  assert.deepEqual(draft.rows, [
    ['-12', '100.1', '100'], ['0', '100.5', ''], ['3 m', '', '100 ft 6 in'], ['12', '100.2', '100.25'],
  ]);
  const read = readDraft(draft);
  assert.deepEqual(read.problems, []);
  const text = route(PROPERTIES);
  assert.equal(withSurvey(text, 0, PROPERTIES, read), text);
  assert.deepEqual(read.drawn[0].points.map(([, , row]) => row), [0, 1, 3]);
});

test('only what was changed is written', () => {
  const text = route(PROPERTIES);
  const made = withSurvey(text, 0, PROPERTIES, readDraft(withCell(draftOf(PROPERTIES, 'm'), 1, 1, '100,4')));
  assert.deepEqual(same(made), {
    ...PROPERTIES,
    profile: [{ line: 'left', points: [['-12 ft', '100.1 ft'], ['0 ft', '100.4 ft'], ['12 ft', '100.2 ft']] },
      PROPERTIES.profile[1]],
  });
  const [before, after] = [text.indexOf('"profile"'), text.length - text.indexOf(' , "geometry"')];
  assert.equal(made.slice(0, before), text.slice(0, before));
  assert.equal(made.slice(-after), text.slice(-after));
});

test('members of an object are set, added and taken out, and nothing else', () => {
  const text = '{"a" : { "x":1 , "y" : [1,2] } ,"b":{}}';
  assert.equal(withMember(text, ['a'], 'y', '3'), '{"a" : { "x":1 , "y" : 3 } ,"b":{}}');
  assert.equal(withMember(text, ['a'], 'x', undefined), '{"a" : { "y" : [1,2] } ,"b":{}}');
  assert.equal(withMember(text, ['a'], 'y', undefined), '{"a" : { "x":1 } ,"b":{}}');
  assert.equal(withMember(text, ['a'], 'z', '"q"'), '{"a" : { "x":1 , "y" : [1,2], "z": "q" } ,"b":{}}');
  assert.equal(withMember(text, ['b'], 'z', '0'), '{"a" : { "x":1 , "y" : [1,2] } ,"b":{"z": 0}}');
  assert.equal(withMember(text, ['b'], 'z', undefined), text);
  assert.equal(withMember('{"a":{"x":1}}', ['a'], 'x', undefined), '{"a":{}}');
});

test('a place that nobody surveyed becomes surveyed, and back', () => {
  const candidate = { source: 'map', object: 'way 1', state: 'open' };
  const bare = { hazard: 'dip', id: 'H1', name: 'Ford', candidate };
  const empty = draftOf(bare, 'ft');
  assert.equal(withSurvey(route(bare), 0, bare, readDraft(empty)), route(bare));
  let { draft } = withPasted(empty, 0, 0, tableOf('-10\t5\n0\t4\n10\t5'));
  assert.deepEqual(readDraft(draft).problems.map(({ at }) => at), ['accuracy', 'source']);
  draft = withField(withField(draft, 'accuracy', '20 mm'), 'source', 'rod');
  const made = same(withSurvey(route(bare), 0, bare, readDraft(draft)));
  assert.deepEqual(made, {
    ...bare, candidate: { ...candidate, state: 'surveyed' },
    survey: { accuracy: '20 mm', source: 'rod' },
    profile: [{ line: 'left', points: [['-10 ft', '5 ft'], ['0 ft', '4 ft'], ['10 ft', '5 ft']] }],
  });
  const none = [2, 1, 0].reduce(withoutRow, draftOf(made, 'ft'));
  assert.deepEqual(same(withSurvey(route(made), 0, made, readDraft(none))), bare);
});

test('what cannot be read is told at its cell', () => {
  const draft = draftOf(PROPERTIES, 'm');
  const at = changed => readDraft(changed).problems.map(problem => problem.at);
  assert.deepEqual(at(withCell(draft, 1, 1, 'high')), ['1,1']);
  assert.deepEqual(at(withCell(draft, 3, 0, '')), ['3,0']);
  assert.deepEqual(at(withoutRow(withoutRow(withoutRow(draft, 3), 2), 1)), ['0,1', '0,2']);
  assert.deepEqual(at(withField(draft, 'tracks', '0 ft; here')), ['tracks']);
  assert.deepEqual(at(withRowAt(draft, 0)), []);
});

test('pasting says what it left out and where heads put columns', () => {
  const empty = draftOf({ hazard: 'dip' }, 'ft');
  const swapped = withPasted(empty, 0, 0, tableOf('right (m)\tremark\tdistance (m)\n1\ta\t-5\n2\tb\t5'));
  assert.deepEqual(swapped.draft.rows.slice(0, 2), [['-5', '', '', '1'], ['5', '', '', '2']]);
  assert.deepEqual(swapped.draft.units, { distance: 'm', height: 'm' });
  assert.match(swapped.said, /2 rows pasted.*column 2 of/s);
  // Where other numbers stand already, only those that come are in the head's unit.
  const mixed = withPasted(draftOf(PROPERTIES, 'ft'), 3, 0, tableOf('distance (m)\tleft (m)\n4\t30.5'));
  assert.deepEqual(mixed.draft.rows[3], ['4 m', '30.5 m', '100.25']);
  assert.match(withPasted(empty, 0, 0, tableOf('x\ty')).said, /Nothing was pasted/);
  const two = withPasted(empty, 1, 1, tableOf('1\t2\t3\t4'));
  assert.deepEqual(two.draft.rows[1], ['', '1', '2', '3']);
  assert.match(two.said, /column 4 of/);
});

test('rows in order keep what cannot be read', () => {
  const draft = { ...draftOf({ hazard: 'dip' }, 'ft'), rows: [['x', '1'], ['2', '2'], ['-1', '3'], ['1 m', '4']] };
  assert.deepEqual(inOrder(draft).rows.map(([at]) => at), ['-1', '2', '1 m', 'x']);
});

test("the server's problems stand at their cells", () => {
  const read = readDraft(draftOf(PROPERTIES, 'm'));
  const problem = pointer => ({ pointer, message: 'No.', remedy: 'Mend it.' });
  const { here, elsewhere } = placed([
    problem('/features/0/properties/profile/1/points/1/0'), problem('/route/features/0/properties/profile/1/points/2'),
    problem('/features/0/properties/survey/accuracy'), problem('/features/0/properties/profile/0/offset'),
    problem('/features/1/properties/profile/0/points/0'), problem(''),
  ], 0, read);
  assert.deepEqual(here.map(({ at }) => at), ['2,0', '3,2', 'accuracy', 'offset0']);
  assert.equal(here[0].text, 'No. Mend it.');
  assert.equal(elsewhere.length, 2);
});

/** A page without a server: a change is accepted or refused as the test says. */
function page(properties, accepts = () => true) {
  const read = text => ({ id: null, name: 'r', text, json: JSON.parse(text) });
  const store = createStore({ ...initialState(), inputs: { route: read(route(properties)) }, hazard: 'H1' });
  const due = [];
  const sent = [];
  const change = async (what, text) => {
    sent.push(what);
    const answer = accepts(text);
    if (answer === true) {
      store.set({ inputs: { route: read(text) } });
    } else {
      store.set({ problem: answer });
    }
    return answer === true;
  };
  const actions = createSurveyActions(store, change, { set: call => due.push(call), clear: () => { due.length = 0; } });
  return { store, actions, sent, read, wait: async () => { await due.splice(0).at(-1)?.(); } };
}

test('what is typed goes into the route after a moment, and what others change comes into the table', async () => {
  const { store, actions, sent, read, wait } = page(PROPERTIES);
  actions.surveyCell(1, 1, '100.3');
  actions.surveyCell(1, 1, '100.35');
  assert.equal(store.get().survey.status, 'changed');
  await wait();
  assert.deepEqual(sent, ['surveying H1 Spur']);
  assert.equal(store.get().survey.status, 'same');
  assert.equal(same(store.get().inputs.route.text).profile[0].points[1][1], '100.35 ft');
  // An undo is a route from elsewhere.
  store.set({ inputs: { route: read(route(PROPERTIES)) } });
  assert.equal(store.get().survey.draft.rows[1][1], '100.5');
});

test('while what was typed is not in the route, its place is outdated, on show or not', async () => {
  const { store, actions, wait } = page(PROPERTIES, text => text.includes('100.3 ft') || new Error('no'));
  const outdated = () => [...store.get().drafts.survey];
  assert.deepEqual(outdated(), []);
  actions.surveyCell(1, 1, 'high');
  assert.deepEqual(outdated(), ['H1']);
  await wait();
  assert.equal(store.get().survey.status, 'unread');
  assert.deepEqual(outdated(), ['H1']);
  store.set({ hazard: null });
  assert.deepEqual(outdated(), ['H1'], 'nobody looks at it');
  store.set({ hazard: 'H1' });
  assert.deepEqual(outdated(), ['H1']);
  actions.surveyCell(1, 1, '100.9');
  await wait();
  assert.deepEqual(outdated(), ['H1'], 'refused');
  actions.surveyCell(1, 1, '100.3');
  await wait();
  assert.deepEqual(outdated(), []);
  actions.surveyCell(1, 1, 'high');
  actions.resetSurvey();
  assert.deepEqual(outdated(), [], 'given up');
});

test('a half-typed survey comes back on another page, where the route still says what it was begun on', async () => {
  const first = page(PROPERTIES);
  first.actions.surveyCell(1, 1, 'high');
  const drafts = JSON.parse(JSON.stringify(first.actions.surveyDrafts()));
  assert.deepEqual(drafts.map(({ id }) => id), ['H1']);

  const again = page(PROPERTIES);
  assert.deepEqual(again.actions.surveyDrafts(), []);
  again.actions.restoreSurveyDrafts(drafts);
  assert.equal(again.store.get().survey.status, 'unread');
  assert.equal(again.store.get().survey.draft.rows[1][1], 'high');
  assert.equal(again.store.get().survey.name, 'Spur');
  again.actions.surveyCell(1, 1, '100.3');
  await again.wait();
  assert.deepEqual(again.sent, ['surveying H1 Spur']);

  // What can be read goes into the route at once; on another route the draft says nothing.
  first.actions.surveyCell(1, 1, '100.3');
  const sound = first.actions.surveyDrafts();
  const third = page(PROPERTIES);
  third.actions.restoreSurveyDrafts(sound);
  await third.wait();
  assert.deepEqual(third.sent, ['surveying H1 Spur']);
  const other = page({ ...PROPERTIES, name: 'Other spur' });
  other.actions.restoreSurveyDrafts(sound);
  assert.equal(other.store.get().survey.status, 'same');
});

test('what cannot be read stays a draft, here and after another hazard was looked at', async () => {
  const { store, actions, sent, wait } = page(PROPERTIES);
  actions.surveyCell(1, 1, 'high');
  await wait();
  assert.equal(store.get().survey.status, 'unread');
  store.set({ hazard: null });
  assert.equal(store.get().survey, null);
  store.set({ hazard: 'H1' });
  assert.equal(store.get().survey.draft.rows[1][1], 'high');
  assert.equal(store.get().survey.status, 'unread');
  actions.resetSurvey();
  assert.equal(store.get().survey.draft.rows[1][1], '100.5');
  assert.deepEqual(sent, []);
});

test('a refusal is told at the cell and leaves the route', async () => {
  const refusal = { problems: [{ pointer: '/features/0/properties/profile/0/points/1', message: 'Steep.' }] };
  const { store, actions, wait } = page(PROPERTIES, () => refusal);
  actions.surveyCell(1, 1, '900');
  await wait();
  const { survey, problem, inputs } = store.get();
  assert.equal(survey.status, 'refused');
  assert.deepEqual(survey.refused, [{ at: '1,1', text: 'Steep.' }]);
  assert.equal(problem, null);
  assert.equal(inputs.route.text, route(PROPERTIES));
});

test('120 changes of a table are undone and made again, each to the byte', async () => {
  const read = text => ({ id: null, name: 'r', text, json: JSON.parse(text) });
  const store = createStore({
    ...initialState(), inputs: { route: read(route(PROPERTIES)) }, hazard: 'H1',
  });
  const open = async (kind, file) => { store.set({ inputs: { route: file } }); };
  const undoing = createUndoing(store, open);
  const importing = { ...createImportActions(store, {}, open, undoing), ...undoing.actions };
  const due = [];
  const actions = createSurveyActions(store, importing.changeRoute,
    { set: call => due.push(call), clear: () => { due.length = 0; } });
  const texts = [store.get().inputs.route.text];
  for (let k = 0; k < 120; k++) {
    const count = store.get().survey.draft.rows.length;
    if (k % 10 === 3) {
      actions.addSurveyRow(count);
      actions.pasteSurvey(count, 0, `${100 + k}\t1${k}\t1${k}.5`);
    } else if (k % 10 === 7) {
      actions.removeSurveyRow(count - 1);
    } else {
      actions.surveyCell(k % count, 1, `100.9${k}`);
    }
    await due.splice(0).at(-1)();
    texts.push(store.get().inputs.route.text);
  }
  assert.equal(new Set(texts).size, 121);
  assert.equal(store.get().revisions.length, 120);
  for (let k = 119; k >= 0; k--) {
    await importing.undoRevision();
    assert.equal(store.get().inputs.route.text, texts[k]);
    assert.equal(store.get().survey.status, 'same');
    assert.deepEqual(store.get().survey.draft, draftOf(same(texts[k]), 'ft'));
  }
  for (let k = 1; k <= 120; k++) {
    await importing.redoRevision();
    assert.equal(store.get().inputs.route.text, texts[k]);
  }
});

const WIRE = {
  hazard: 'overhead-wire', id: 'H1', name: 'Feeder', measured: 'surveyed', carries: 'power', lowering: '18 in',
  survey: { accuracy: '2 in', source: 'measuring stick, invented' },
  wire: { supports: [['-4 m', '30 ft'], ['9 m', '31 ft']], midSpan: '24 ft', span: '140 ft' },
};
const PIPE = {
  hazard: 'low-structure', id: 'H1', name: 'Pipe', measured: 'surveyed', survey: { accuracy: '10 mm', source: 'level' },
  profile: [{ line: 'center', points: [['-30 m', '100 m'], ['0 m', '99.6 m'], ['30 m', '100 m']] }],
  soffit: [['-3 m', '104.2 m'], ['5 m', '104.1 m']],
};
const after = (properties, change) => same(withSurvey(route(properties), 0, properties,
  readDraft(change(draftOf(properties, 'ft')))));

test('structures and wires come back as they were', () => {
  for (const properties of [WIRE, PIPE]) {
    const draft = draftOf(properties, 'ft');
    assert.deepEqual(readDraft(draft).problems, []);
    assert.equal(withSurvey(route(properties), 0, properties, readDraft(draft)), route(properties));
  }
  assert.deepEqual(draftOf(PIPE, 'ft').rows,
    [['-30', '100', ''], ['-3', '', '104.2'], ['0', '99.6', ''], ['5', '', '104.1'], ['30', '100', '']]);
});

test('the sign of a structure is read', () => {
  const bare = { hazard: 'low-structure', id: 'H1', name: 'Pipe', measured: 'surveyed',
    candidate: { source: 'map', object: 'way 1', state: 'open' } };
  const signed = draft => [['measured', 'posted'], ['clearance', "14'2"], ['clearance', '14 ft 2 in'], ['from', '-10'],
    ['to', '16']].reduce((made, [key, text]) => withField(made, key, text), draft);
  assert.deepEqual(after(bare, signed), { ...bare, measured: 'posted', clearance: '14 ft 2 in',
    extent: ['-10 ft', '16 ft'], candidate: { ...bare.candidate, state: 'surveyed' } });
  // What somebody else reports stays open.
  assert.equal(after(bare, draft => withField(signed(draft), 'measured', 'reported')).candidate.state, 'open');
});

test('the underside is a column of its own', () => {
  const made = after(PIPE, draft => withCell(draft, 1, 2, '104.15'));
  assert.deepEqual(made, { ...PIPE, soffit: [['-3 m', '104.15 m'], ['5 m', '104.1 m']] });
  const { soffit, ...road } = PIPE;
  assert.deepEqual(after(PIPE, draft => withCell(withCell(draft, 1, 2, ''), 3, 2, '')), road);
  const read = readDraft(draftOf(PIPE, 'ft'));
  assert.deepEqual(placed([{ pointer: '/features/0/properties/soffit/1/1', message: 'No.' }], 0, read).here,
    [{ at: '3,2', text: 'No.' }]);
});

test('half a wire is told at what is left out', () => {
  const ends = readDraft(withField(draftOf(WIRE, 'ft'), 'midSpan', '')).problems;
  assert.deepEqual(ends.map(({ at }) => at), ['midSpan']);
  const height = after(WIRE, draft => withField(draft, 'firstHeight', '32'));
  assert.deepEqual(height.wire.supports[0], ['-4 m', '32 ft']);
  const { here } = placed([
    { pointer: '/features/0/properties/wire/supports/1/1', message: 'a' },
    { pointer: '/features/0/properties/extent', message: 'b' }, { pointer: '/features/0/properties/wire', message: 'c' },
  ], 0, readDraft(draftOf(WIRE, 'ft')));
  assert.deepEqual(here.map(({ at }) => at), ['secondHeight', 'from', 'firstAt']);
});
