/** Axle loads of the configuration on show: side view, tables, gauges, where the load may sit, and advice by place. */
import { el, onWidth, replace } from '../dom.js';
import { angle, chainage, dimension, pressure, weight, weightLeft } from '../format.js';
import { createLoadView } from './loadview.js';
import { createLoadPlot } from './loadplot.js';
import { findConfiguration } from '../report.js';
import { verdictTag } from './symbol.js';
import { BOOSTER_WORDS } from '../drawing/symbols.js';

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
  const view = createLoadView();
  const position = createLoadPlot('load-position');
  const regulator = createLoadPlot('load-regulator');
  const tables = el('div', { class: 'loads-tables' });
  const facts = el('div', { class: 'loads-facts' });
  const readings = readingForm(store, actions);
  const pieceForm = moveForm(store, actions);
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

  function draw() {
    const { loads, units } = store.get();
    if (loads.data?.sheet) {
      view.draw(loads.data, units);
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
    store.watch(['loads', 'units'], ({ loads, units, report }) => {
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
        pieceForm.fill(loads.data, units);
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

/** The booster state in force first; the others on demand. */
function adviceTable(report, booster, units) {
  const { advice } = report.loads ?? { advice: [] };
  const others = advice.filter(a => a.booster !== booster);
  return [
    el('h3', {}, 'How many axles must be down, by loads alone'),
    adviceRows(report, advice.filter(a => a.booster === booster), 'load-advice', units),
    others.length > 0 && el('details', {}, el('summary', {}, 'With the booster used otherwise'),
      adviceRows(report, others, 'load-advice-others', units)),
  ];
}

function adviceRows(report, advice, id, units) {
  const name = place => report.hazards.find(h => h.id === place)?.name ?? '';
  return framed(id === 'load-advice' ? 'Axles down, place by place' : 'The same with the booster used otherwise',
    el('table', { id, class: 'load-advice' },
    el('caption', { class: 'unseen' }, 'From place to place'),
    el('thead', {}, el('tr', {}, heads(['From', 2, 'To', 2, 'Limits of', 0, 'Booster', 0, 'Axles', 0, 'Why', 0]))),
    el('tbody', {}, advice.map(a => el('tr', {
      'data-from': a.fromChainageM, 'data-booster': a.booster, 'data-text': a.text,
    },
      el('td', { class: 'figure' }, chainage(a.fromChainageM, units)),
      el('td', { class: 'figure' },
        a.fromChainageM === a.toChainageM ? 'at the place' : chainage(a.toChainageM, units)),
      el('th', { scope: 'row' },
        a.places.length === 0 ? 'whole route' : a.places.map(place => `${place} ${name(place)}`).join(', ')),
      el('td', {}, BOOSTER_WORDS[a.booster] ?? a.booster),
      el('td', {}, el('strong', {}, a.text)),
      el('td', { class: 'load-why' }, [...new Set(a.reasons)].slice(0, 2).join('; ')))))));
}

/** A table in a frame that scrolls sideways where it must, by keyboard as well. */
const framed = (label, table) =>
  el('div', { class: 'table-frame', tabindex: '0', role: 'region', 'aria-label': label }, table);

/** Column heads: [text, 2 for figures and 0 for words, ...]. */
function heads(list) {
  return list.flatMap((text, index) => (index % 2 === 0 && text
    ? [el('th', { scope: 'col', class: list[index + 1] === 2 ? 'figure' : null }, text)] : []));
}

/** Gauge readings, to be held against the declared load. */
function readingForm(store, actions) {
  const field = gauge => el('input', {
    id: `reading-${gauge}`, type: 'text', inputmode: 'decimal', size: 8, autocomplete: 'off',
  });
  const trailer = field('trailer');
  const booster = field('booster');
  const list = el('ul', { id: 'load-readings' });
  const boosterField = el('label', { class: 'field' }, el('span', {}, 'Booster gauge shows'), booster);
  const form = el('form', {},
    el('div', { class: 'choosers' },
      el('label', { class: 'field' }, el('span', {}, 'Trailer gauge shows'), trailer), boosterField,
      el('button', { id: 'readings-apply', type: 'submit' }, 'Compare with the declared load')));
  form.addEventListener('submit', event => {
    event.preventDefault();
    const shown = {
      trailer: withUnit(trailer.value, store),
      booster: boosterField.hidden ? null : withUnit(booster.value, store),
    };
    const readings = Object.fromEntries(Object.entries(shown).filter(([, value]) => value !== null));
    actions.askLoads({ readings: Object.keys(readings).length === 0 ? null : readings });
  });
  return {
    node: el('div', { class: 'loads-readings' },
      el('h3', {}, 'Does the gauge agree with the declared load?'), form,
      el('div', { role: 'status' }, list)),
    fill(data, units) {
      boosterField.hidden = !data.sheet.gauges.some(g => g.gauge === 'booster');
      trailer.placeholder = units === 'us' ? '55 psi' : '4.1 bar';
      booster.placeholder = trailer.placeholder;
      replace(list, data.readings.map(r => el('li', { 'data-gauge': r.gauge, 'data-agrees': String(r.agrees) },
        el('strong', {}, `${r.gauge} gauge at ${pressure(r.pressurePa, units)}: `), r.note, '. ',
        r.readKg !== null && `It stands for ${weight(r.readKg, units)} on each axle, `
          + `${weight(r.declaredKg, units)} is declared, within ${weight(r.toleranceKg, units)} they agree. `,
        r.pieceOffKg !== null && `If only the piece is mis-declared, it is ${weight(Math.abs(r.pieceOffKg), units)} `
          + `${r.pieceOffKg > 0 ? 'heavier' : 'lighter'} than declared.`)));
    },
  };
}

/** A bare number gets the unit on show. */
function withUnit(text, store) {
  const plain = text.trim();
  if (plain === '') {
    return null;
  }
  return /^[\d.]+$/.test(plain) ? `${plain} ${store.get().units === 'us' ? 'psi' : 'bar'}` : plain;
}

/** Moves the piece along the deck. */
function moveForm(store, actions) {
  const slider = el('input', { id: 'piece-at', type: 'range', step: 0.01 });
  const label = el('span', { class: 'piece-label' });
  const back = el('button', {
    id: 'piece-back', type: 'button', on: { click: () => actions.askLoads({ pieceAt: null }) },
  }, 'As declared');
  slider.addEventListener('change', () => actions.askLoads({ pieceAt: `${Number(slider.value).toFixed(3)} m` }));
  return {
    node: el('div', { class: 'choosers' }, el('label', { class: 'field' }, label, slider), back),
    fill({ position }, units) {
      if (position === null) {
        return;
      }
      // Inward to the step, so that no stop of the slider is off the deck.
      slider.min = Math.ceil(position.from * 100) / 100;
      slider.max = Math.floor(position.to * 100) / 100;
      slider.value = position.at;
      label.textContent = `${position.piece}: center of gravity ${dimension(position.at, units)} behind the deck front`;
      slider.setAttribute('aria-valuetext', dimension(position.at, units));
      back.disabled = store.get().loadsAsked.pieceAt === undefined;
    },
  };
}

/** Sets the regulator to another pressure. */
function setForm(store, actions) {
  const field = el('input', { id: 'regulator-set', type: 'text', inputmode: 'decimal', size: 8, autocomplete: 'off' });
  const form = el('form', { class: 'choosers' },
    el('label', { class: 'field' }, el('span', {}, 'Set the regulator to'), field),
    el('button', { type: 'submit' }, 'See what it does'));
  form.addEventListener('submit', event => {
    event.preventDefault();
    actions.askLoads({ regulator: withUnit(field.value, store) });
  });
  return {
    node: form,
    fill({ regulator }, units) {
      if (regulator !== null) {
        field.placeholder = pressure(regulator.at, units);
      }
    },
  };
}
