/** The truck passing the hazard: side view, enlarged detail, clearance along the way, and the slider that moves it. */
import { el, onWidth, replace, say } from '../../dom.js';
import { alongRoad, clearance, fine, raise } from '../../text/format.js';
import { findCell, findHazard, isCorner } from '../../report/report.js';
import { frame, nearestIndex, wheelWords } from '../../drawing/passage.js';
import { problemBox } from '../parts/problem.js';
import { createSideView } from './sideview.js';
import { createDetailView } from './detailview.js';
import { createCurve, strokeSample } from './curve.js';
import { kindOf } from '../../report/kinds.js';

/** How many positions Page Up and Page Down move by. */
const PAGE = 10;
/** The live region speaks when the truck has stood still this long, milliseconds. */
const SPEAK_AFTER = 500;

export function mountPassage(root, { store, actions }) {
  const sideView = createSideView();
  const detailView = createDetailView();
  const curve = createCurve(index => actions.moveTo(index));
  const line = chooser('passage-line', 'Line', value => actions.setView({ line: value }));
  const leveling = chooser('passage-leveling', 'Leveling', value => actions.setView({ leveling: value }));
  const exaggeration = chooser('passage-exaggeration', 'Vertical scale',
    value => store.set({ exaggeration: Number(value) }));
  exaggeration.select.append(...[1, 2, 5, 10].map(times =>
    el('option', { value: times }, times === 1 ? 'equal scales' : `exaggerated × ${times}`)));
  const stance = el('p', { class: 'passage-stance' });
  const readings = {
    ground: el('output', { id: 'passage-clearance' }),
    overhead: el('output', { id: 'passage-overhead' }),
    position: el('output', { id: 'passage-position' }),
    wheels: el('output', { id: 'passage-wheels' }),
  };
  const overheadRow = [el('dt', {}, strokeSample('overhead'), 'Over the load'), el('dd', {}, readings.overhead)];
  const slider = el('input', {
    id: 'passage-slider', type: 'range', step: 'any', 'aria-label': 'Position of the steer axle along the road',
    on: { input: () => moved(nearestIndex(positions(), Number(slider.value))), keydown: keyed },
  });
  const live = el('p', { id: 'passage-live', class: 'unseen', role: 'status' });
  const message = el('div', { class: 'passage-message' });
  const drawing = el('div', { class: 'passage-drawing' },
    el('div', { class: 'passage-choosers' }, line.field, leveling.field, exaggeration.field, stance),
    el('div', { class: 'passage-views' },
      el('div', { class: 'side-view-frame' }, sideView.node),
      el('div', { class: 'detail-view-frame' }, detailView.node),
      el('div', { class: 'curve-frame' }, curve.node, slider,
        el('p', { class: 'passage-buttons' },
          button('passage-back', '‹ Back', () => moved(store.get().position - 1)),
          button('passage-tightest', 'To the tightest', () => moved(store.get().passage.data.tightest)),
          button('passage-forward', 'Forward ›', () => moved(store.get().position + 1)))),
      el('dl', { class: 'readings' },
        el('dt', {}, 'Steer axle'), el('dd', {}, readings.position),
        el('dt', {}, strokeSample('ground'), 'Under the combination'), el('dd', {}, readings.ground),
        overheadRow,
        el('dt', {}, 'Wheels'), el('dd', {}, readings.wheels))));
  root.append(message, drawing, live);
  let speaking = 0;

  const over = state => kindOf(findHazard(state.report, state.hazard)?.kind).over ?? 'structure';
  const positions = () => store.get().passage.data?.positions ?? [];

  function moved(index) {
    if (positions().length > 0) {
      actions.moveTo(index);
      slider.value = positions()[store.get().position].steerM;
    }
  }

  function keyed(event) {
    const { position } = store.get();
    const to = {
      ArrowRight: position + 1, ArrowUp: position + 1, ArrowLeft: position - 1, ArrowDown: position - 1,
      PageUp: position + PAGE, PageDown: position - PAGE, Home: 0, End: positions().length - 1,
    }[event.key];
    if (to !== undefined && !event.altKey && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      moved(to);
    }
  }

  function draw(state) {
    const { status, data } = state.passage;
    // A corner is drawn from above, in a panel of its own.
    const corner = isCorner(findHazard(state.report, state.hazard));
    root.hidden = corner;
    root.dataset.status = corner ? 'none' : status;
    if (corner) {
      return;
    }
    root.setAttribute('aria-busy', String(status === 'loading'));
    drawing.hidden = status === 'none' || status === 'failed';
    drawing.classList.toggle('waiting', status === 'loading');
    replace(message, messageFor(state, actions));
    if (status !== 'ready') {
      clearTimeout(speaking);
      say(live, '');
      forget();
      return;
    }
    const cell = findCell(findHazard(state.report, state.hazard), state.configuration);
    options(line, data.lines, data.line);
    options(leveling, data.levelings, data.leveling);
    exaggeration.select.value = state.exaggeration;
    say(stance, stanceWords(data, state.units));
    Object.assign(slider, { min: data.positions[0].steerM, max: data.positions.at(-1).steerM });
    overheadRow.forEach(node => { node.hidden = data.soffit === null; });
    drawing.classList.toggle('under-wire', over(state) === 'wire');
    const settings = { passage: data, frame: frame(data), cell, units: state.units, exaggeration: state.exaggeration };
    sideView.draw(settings);
    detailView.draw(settings);
    curve.draw(settings);
    move(state);
  }

  /** Nothing of an earlier passage stays behind, not even where it cannot be seen. */
  function forget() {
    Object.values(readings).forEach(output => {
      output.replaceChildren();
      delete output.dataset.valueM;
      delete output.dataset.steerM;
    });
    delete slider.dataset.index;
    delete slider.dataset.steerM;
    slider.removeAttribute('aria-valuetext');
  }

  function move(state) {
    const { data, status } = state.passage;
    if (status !== 'ready' || isCorner(findHazard(state.report, state.hazard))) {
      return;
    }
    const position = data.positions[state.position];
    sideView.move(state.position);
    detailView.move(state.position);
    curve.move(state.position);
    read(readings.ground, position.groundM, state.units, 'unknown');
    read(readings.overhead, position.overheadM, state.units, `not under the ${over(state)}`);
    say(readings.position, alongRoad(position.steerM, state.units));
    readings.position.dataset.steerM = position.steerM;
    const wheels = wheelWords(position);
    say(readings.wheels, wheels.length > 0 ? wheels.join(', ') : 'all riding');
    slider.value = position.steerM;
    Object.assign(slider.dataset, { index: state.position, steerM: position.steerM });
    const words = spoken(data, position, state.units);
    slider.setAttribute('aria-valuetext', words);
    clearTimeout(speaking);
    speaking = setTimeout(() => say(live, words), SPEAK_AFTER);
  }

  const stops = [
    store.watch(['passage', 'report', 'hazard', 'configuration', 'units', 'exaggeration'], draw),
    store.watch(['position'], move),
    onWidth(sideView.node.parentElement, () => draw(store.get())),
  ];
  return {
    unmount: () => { clearTimeout(speaking); stops.forEach(stop => stop()); root.replaceChildren(); },
  };
}

function read(output, valueM, units, otherwise) {
  replace(output, typeof valueM === 'number'
    ? [el('strong', {}, clearance(valueM, units)), ` (${fine(valueM, units, 'down')})`]
    : otherwise);
  if (typeof valueM === 'number') {
    output.dataset.valueM = valueM;
  } else {
    delete output.dataset.valueM;
  }
}

function spoken(data, position, units) {
  const at = data.positions.indexOf(position) === data.tightest ? ', the tightest point' : '';
  return [
    `Steer axle ${alongRoad(position.steerM, units)}${at}`,
    typeof position.groundM === 'number'
      && `clearance under the ${position.groundAt?.unit ?? 'combination'} ${clearance(position.groundM, units)}`,
    typeof position.overheadM === 'number' && `over the load ${clearance(position.overheadM, units)}`,
    ...wheelWords(position),
  ].filter(Boolean).join('; ');
}

function stanceWords({ frontRaiseM, rearRaiseM }, units) {
  return frontRaiseM > 0 || rearRaiseM > 0
    ? `Drawn raised: front ${raise(frontRaiseM, units)}, rear ${raise(rearRaiseM, units)}. Crawling speed only.`
    : 'Drawn in transport, on the stops.';
}

function messageFor({ passage, report, hazard: id, configuration }, actions) {
  if (passage.status === 'failed') {
    return problemBox(passage.problem, null, button('passage-retry', 'Try again', () => actions.drawPassage()));
  }
  if (passage.status === 'none') {
    const hazard = findHazard(report, id);
    const cell = findCell(hazard, configuration);
    if (hazard && kindOf(hazard.kind).judged === 'loads') {
      return el('p', { class: 'nothing' }, 'Judged by loads, not by gaps: see the axle loads below.');
    }
    return cell && el('p', { class: 'nothing' }, 'There is nothing to draw: this hazard is not surveyed. ',
      cell.reasons[0]);
  }
  return null;
}

function button(id, label, click) {
  return el('button', { id, type: 'button', on: { click } }, label);
}

function chooser(id, label, choose) {
  const select = el('select', { id, on: { change: () => choose(select.value) } });
  return { select, field: el('label', { class: 'field' }, el('span', {}, label), select) };
}

function options({ select }, values, chosen) {
  replace(select, values.map(value => el('option', { value }, value)));
  select.value = chosen;
}
