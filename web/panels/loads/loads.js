/** Axle loads of the configuration on show: side view, tables, gauges, where the load may sit, and advice by place. */
import { el, onWidth, replace } from '../../dom.js';
import { angle, pressure, weight, weightLeft } from '../../text/format.js';
import { createLoadView } from './loadview.js';
import { createLoadMove, piecesOnPage } from './loadmove.js';
import { createLoadPlot } from './loadplot.js';
import { readingForm, setForm } from './loadforms.js';
import { adviceTable, heads } from './loadtables.js';
import { framed } from '../parts/framed.js';
import { findConfiguration } from '../../report/report.js';
import { shownInputs } from '../../rig/moving.js';
import { verdictTag } from '../parts/symbol.js';

/** The load on the only fifth wheel, or on each with its unit. */
function fifthWheels(wheels, units) {
  return wheels.length === 1
    ? ` ${weight(wheels[0].loadKg, units)}`
    : `s: ${wheels.map(w => `${w.unit} ${weight(w.loadKg, units)}`).join(', ')}`;
}

export function mountLoads(root, { store, actions }) {
  const head = el('div', { class: 'loads-head', role: 'status' });
  const chooser = el('select', {
    id: 'loads-hazard', on: { change: () => actions.askLoads({ hazard: chooser.value || null }) },
  });
  let chosen = null;
  const piece = { chosen: () => chosen, choose: choosePiece };
  const view = createLoadView({
    move: (one, shift) => actions.movePiece(one.stance, one.index, shift), choose: choosePiece,
  });
  const position = createLoadPlot('load-position');
  const regulator = createLoadPlot('load-regulator');
  const tables = el('div', { class: 'loads-tables' });
  const facts = el('div', { class: 'loads-facts' });
  const readings = readingForm(store, actions);
  const pieceForm = createLoadMove(store, actions, piece);
  const regulatorForm = setForm(store, actions);
  const advice = el('div', { class: 'loads-advice' });
  const positionBox = el('div', { class: 'plot-box' }, el('h3', {}, 'Where the load may sit'),
    position.node, position.words, pieceForm.node);
  const regulatorBox = el('div', { class: 'plot-box' }, el('h3', {}, 'What the booster\'s regulator may be set to'),
    regulator.node, regulator.words, regulatorForm.node);
  const known = el('div', {},
    el('div', { class: 'loads-drawing' }, view.node), tables,
    el('div', { class: 'loads-columns' }, positionBox, regulatorBox, facts, readings.node));
  const frame = el('div', {},
    el('label', { class: 'field loads-limits' }, el('span', {}, 'Limit applied'), chooser),
    head, known, advice);
  root.append(frame);

  function choosePiece(index) {
    const { name } = piecesOnPage(store.get()).find(one => one.index === index);
    if (chosen !== index) {
      chosen = index;
      actions.askLoads({ piece: name });
    }
    draw();
  }

  /** The heaviest, as the answer has it, until somebody chooses another. */
  function choosing({ loads: { data } }) {
    const pieces = piecesOnPage(store.get());
    chosen = pieces.find(({ name }) => name === data?.position?.piece)?.index ?? pieces[0]?.index ?? null;
  }

  function draw() {
    const { loads, units } = store.get();
    if (loads.data?.sheet) {
      view.draw(loads, piecesOnPage(store.get()), chosen, units);
      pieceForm.draw();
      position.draw(loads.data.position, units);
      regulator.draw(loads.data.regulator, units);
    }
  }

  const stops = [
    store.watch(['report'], ({ report }) => {
      if (report !== null) {
        actions.freshLoads();
      }
    }),
    store.watch(['configuration'], ({ report }) => report !== null && actions.drawLoads()),
    store.watch(['report', 'loadsAsked'], ({ report, loadsAsked }) =>
      report !== null && fillChooser(report, loadsAsked)),
    store.watch(['report', 'configuration', 'units'], ({ report, configuration, units }) =>
      report !== null
        && replace(advice, adviceTable(report, findConfiguration(report, configuration)?.booster, units))),
    store.watch(['whatIf'], draw),
    store.watch(['loads', 'whatIf'], state => {
      // An answer for the place before never stands beside the new one.
      root.toggleAttribute('data-outdated', state.whatIf !== null
        && (state.loads.status !== 'ready' || state.loads.rig !== shownInputs(state).rig));
    }),
    store.watch(['loads', 'units'], ({ loads, units, report }) => {
      choosing(store.get());
      root.dataset.status = loads.status;
      root.setAttribute('aria-busy', String(loads.status === 'loading'));
      root.dataset.verdict = loads.data?.verdict ?? '';
      replace(head, heading(loads, report));
      const sheet = loads.data?.sheet ?? null;
      known.hidden = sheet === null;
      if (sheet !== null) {
        replace(tables, groupTable(sheet, units), axleTable(sheet, units));
        replace(facts, gaugeFacts(sheet, units), shimTable(sheet, units));
        positionBox.hidden = loads.data.position === null;
        regulatorBox.hidden = loads.data.regulator === null;
        readings.fill(loads.data, units);
        regulatorForm.fill(loads.data, units);
        draw();
      }
    }),
    onWidth(frame, draw),
  ];

  function fillChooser(report, { hazard }) {
    const limited = (report.loads?.limits ?? []).filter(set => set.place !== null);
    replace(chooser, el('option', { value: '' }, 'the whole route'),
      limited.map(set => el('option', { value: set.place }, `${set.place} ${set.name}`)));
    chooser.value = hazard ?? '';
  }

  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(root.firstElementChild); } };
}

function heading({ status, data, problem }, report) {
  if (status === 'failed') {
    return [el('p', { class: 'loads-problem' }, 'The loads could not be had: ',
      [problem.title, ...problem.problems.map(p => `${p.message} ${p.remedy}`)].join('. '))];
  }
  if (data === null) {
    return [el('p', {}, status === 'loading' ? 'Computing the loads' : '')];
  }
  const limits = report?.loads?.limits.find(set => set.place === data.hazard);
  return [
    el('p', { class: 'result-head' }, verdictTag(data.verdict), el('span', {}, data.label)),
    limits && el('p', {}, `${limits.name} (${limits.source}, ${limits.date}), and the rig's own ratings.`),
    data.unknown && el('p', {}, `Loads are unknown: ${data.unknown}. Nothing here is within limits.`),
    data.sheet && el('p', { class: 'loads-governing' }, 'Governed by: ', finding(data.sheet.governing)),
    data.sheet?.broken.length > 0 && el('ul', { class: 'reasons' },
      data.sheet.broken.slice(0, 6).map(f => el('li', {}, `${f.least ? 'too light' : 'over'}: `, finding(f)))),
    el('ul', { class: 'fine-print loads-cautions' }, data.cautions.map(caution => el('li', {}, caution))),
  ];
}

const finding = ({ rule, axles, source }) => `${rule}, ${axles} (${source})`;

/** "22,600 lb of 25,000 lb" */
function against(f, units) {
  return f === null
    ? 'no rule'
    : `${weight(f.loadKg, units)} ${f.least ? 'of at least' : 'of'} ${weight(f.limitKg, units)}`;
}

function groupTable(sheet, units) {
  return framed('Loads of the groups', el('table', { id: 'load-groups' },
    el('caption', {}, 'Groups that share a suspension, with the rule that leaves each the least'),
    el('thead', {}, el('tr', {},
      heads(['Group', 0, 'Load', 2, 'Each axle', 2, 'Limit applied', 0, 'Left', 2, 'Verdict', 0]))),
    el('tbody', {}, sheet.groups.map(g => el('tr', { 'data-group': g.group, 'data-verdict': g.verdict },
      el('th', { scope: 'row' }, g.label),
      el('td', { class: 'figure' }, weight(g.loadKg, units)),
      el('td', { class: 'figure' }, weight(g.perAxleKg, units)),
      el('td', {}, against(g.finding, units), g.finding && el('span', { class: 'load-rule' }, finding(g.finding))),
      el('td', { class: 'figure' }, g.finding ? weightLeft(g.finding.marginKg, units) : ''),
      el('td', {}, verdictTag(g.verdict)))),
    el('tr', { 'data-group': 'gross' }, el('th', { scope: 'row' }, 'whole combination'),
      el('td', { class: 'figure' }, weight(sheet.grossKg, units)), el('td'),
      el('td', {}, `on the fifth wheel${fifthWheels(sheet.fifthWheels, units)}`), el('td'), el('td')))));
}

function axleTable(sheet, units) {
  const sides = sheet.axles.some(a => a.rightKg !== null);
  const grade = Math.round(sheet.gradeShown * 100);
  return framed('Loads of the axles', el('table', { id: 'load-axles' },
    el('caption', {}, `Every axle on the road; what a grade of ${grade} % shifts is extra`),
    el('thead', {}, el('tr', {}, heads(['Axle', 0, 'Load', 2, sides && 'Left', 2, sides && 'Right', 2,
      `Climbing ${grade} %`, 2, `Descending ${grade} %`, 2]))),
    el('tbody', {}, sheet.axles.map((a, index) => el('tr', { 'data-axle': index, 'data-load-kg': a.loadKg },
      el('th', { scope: 'row' }, a.label),
      el('td', { class: 'figure' }, weight(a.loadKg, units)),
      sides && el('td', { class: 'figure' }, a.rightKg === null ? 'unknown' : weight(a.loadKg - a.rightKg, units)),
      sides && el('td', { class: 'figure' }, a.rightKg === null ? 'unknown' : weight(a.rightKg, units)),
      el('td', { class: 'figure' }, shift(a.uphillKg - a.loadKg, units)),
      el('td', { class: 'figure' }, shift(a.downhillKg - a.loadKg, units)))))));
}

const shift = (kg, units) => `${kg > 0 ? '+' : ''}${weight(kg, units)}`;

function gaugeFacts(sheet, units) {
  const rows = sheet.gauges.map(g => [`${g.gauge} gauge`, g.pressurePa === null
    ? `no reading: ${g.note}`
    : `read ${pressure(g.pressurePa, units)} (${weight(g.loadKg, units)} on each axle)`]);
  if (sheet.lift) {
    rows.push(['Raise the front', `${weight(sheet.lift.frontKg, units)} needs ${pressure(sheet.lift.neededPa, units)}; `
      + `the power take-off gives ${pressure(sheet.lift.takeOffPa, units)}${sheet.lift.enough ? '' : ': not enough'}`]);
  }
  return rows.length === 0 ? null : el('div', {}, el('h3', {}, 'Gauges and hydraulics'),
    el('dl', { class: 'facts' }, rows.map(([label, text]) => [el('dt', {}, label), el('dd', {}, text)])));
}

function shimTable(sheet, units) {
  return sheet.shims.length === 0 ? null : el('div', {}, el('h3', {}, 'Shim at the booster joint'),
    framed('Shims', el('table', { id: 'load-shims' },
      el('caption', { class: 'unseen' }, 'Shims with the loads they are for and the beam angle each gives'),
      el('thead', {}, el('tr', {}, heads(['Shim', 0, 'For', 0, 'Tail up', 2, 'At this load', 0]))),
      el('tbody', {}, sheet.shims.map(s => el('tr', { 'data-shim': s.shim, 'data-allowed': String(s.allowed) },
        el('th', { scope: 'row' }, s.shim, s.fitted && el('strong', {}, ' (fitted)')),
        el('td', {}, `${weight(s.leastKg, units)} to ${weight(s.mostKg, units)}`),
        el('td', { class: 'figure' }, angle(s.angleRad)),
        el('td', {}, s.allowed ? 'right' : `wrong: ${s.trouble}`)))))));
}
