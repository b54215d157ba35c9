/** The strip along the chainage: what runs where, with places and stops to choose. */
import { alongRow, el, makeTabStop, onWidth, replace, roving, set, svg } from '../dom.js';
import { chainage, chainageUnitM, chainageUnitName, room } from '../format.js';
import { atStop, stretches } from '../plan.js';
import { chainageTicks } from '../drawing/profile.js';
import { ROWS, strip } from '../drawing/strip.js';
import { stopSymbol, verdictSymbol } from '../drawing/symbols.js';
import { openPassage } from './plansteps.js';
import { raiseWords } from './hazards.js';
import { stopIcon, stopMark, verdictMark } from './symbol.js';
import { kindOf } from '../kinds.js';

const INSET = 16;
const ITEM = '.strip-item';

export function mountPlanStrip(root, { store, actions }) {
  const drawing = svg('svg', {
    id: 'plan-strip', class: 'drawing', role: 'group', 'aria-label': 'Configurations along the route',
    height: ROWS.height,
  });
  const frame = el('div', { class: 'strip-frame' }, drawing);
  const legend = el('ol', { class: 'strip-legend' });
  const facts = el('p', { id: 'stop-facts', role: 'status' });
  root.append(el('h3', {}, 'What runs where'), frame, legend, facts);
  roving(drawing, ITEM, alongRow(drawing, ITEM));
  drawing.addEventListener('click', choose);
  drawing.addEventListener('keydown', event => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      choose(event);
    }
  });

  function choose(event) {
    const item = event.target.closest(ITEM);
    if (item?.dataset.stop) {
      actions.selectStop(item.dataset.stop);
    } else if (item) {
      const step = store.get().plan.data.steps.find(({ passage }) => passage?.hazard === item.dataset.hazard);
      openPassage(actions, step.passage, event);
    }
  }

  function draw({ plan: { data }, line, units }) {
    const width = frame.clientWidth;
    if (data === null || width === 0) {
      return;
    }
    const focused = drawing.contains(document.activeElement) ? document.activeElement.dataset : null;
    set(drawing, { viewBox: `0 0 ${width} ${ROWS.height}`, width });
    const { bars, raised, places, stops } = strip(data, line?.stops ?? [], width, INSET);
    replace(drawing,
      svg('path', { class: 'axis', d: `M${INSET} ${ROWS.axis}H${width - INSET}` }),
      chainageTicks(data.route.lengthM, width, INSET, chainageUnitM(units)).map(({ value, x }) => [
        svg('path', { class: 'tick', d: `M${x} ${ROWS.axis - 3}v6` }),
        text(x, ROWS.axis + 15, value === 0 ? `0 ${chainageUnitName(units)}` : String(value))]),
      bars.map(bar => [
        svg('rect', { class: `strip-bar strip-bar-${bar.index % 3}`, x: bar.x, y: ROWS.bar, width: bar.width,
          height: ROWS.barEnd - ROWS.bar }),
        bar.width > 18 && text(bar.x + bar.width / 2, ROWS.bar + 16, letter(bar.index), 'strip-letter')]),
      raised.map(({ x, width: size }) => svg('path', {
        class: 'strip-raised', d: `M${x} ${ROWS.raisedEnd}V${ROWS.raised}H${x + size}V${ROWS.raisedEnd}`,
      })),
      places.map(place => placeItem(place, units)),
      stops.map(({ stop, x }) => stopItem(stop, x, data, units)));
    mark(store.get());
    if (focused) {
      const [key, id] = focused.stop ? ['stop', focused.stop] : ['hazard', focused.hazard];
      drawing.querySelector(`${ITEM}[data-${key}="${CSS.escape(id)}"]`)?.focus();
    }
    const pieces = stretches(data);
    replace(legend, pieces.map(({ set: setUp, fromM, toM }, index) =>
      el('li', { 'data-configuration': setUp.configuration },
        el('strong', {}, letter(bars[index].index)),
        ` ${setUp.label}, from ${chainage(fromM, units)} to ${chainage(toM, units)}`)));
  }

  function mark({ hazard, stop }) {
    const items = [...drawing.querySelectorAll(ITEM)];
    items.forEach(item => {
      const chosen = item.dataset.stop ? item.dataset.stop === stop : item.dataset.hazard === hazard;
      item.classList.toggle('chosen', chosen);
      item.setAttribute('aria-pressed', String(chosen));
    });
    const tab = items.find(item => item.classList.contains('chosen')) ?? items[0];
    if (tab) {
      makeTabStop(drawing, ITEM, tab);
    }
  }

  const stops = [
    store.watch(['plan', 'line', 'units'], draw),
    store.watch(['hazard', 'stop'], mark),
    store.watch(['stop', 'line', 'plan', 'units'], ({ stop: id, line, plan, units }) => {
      const stop = line?.stops?.find(other => other.id === id);
      replace(facts, stop ? stopFacts(stop, plan.data, units)
        : line?.stops?.length === 0 ? 'The route names no stopping places: nothing can be changed on the way.' : null);
    }),
    onWidth(frame, () => draw(store.get())),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}

/** Configurations are lettered in the order they come in. */
const letter = index => String.fromCharCode(65 + (index % 26));

function placeItem({ passage, x, labelX, labeled }, units) {
  const { hazard, name, kind, verdict, blocked, raise, condition } = passage;
  return svg('g', {
    class: 'strip-item', role: 'button', tabindex: '-1', 'data-hazard': hazard, 'data-verdict': verdict,
    'data-blocked': blocked ? 'true' : null,
    'aria-label': [`${hazard} ${name}`, kindOf(kind).word, `at ${chainage(passage.chainageM, units)}`,
      verdictSymbol(verdict).word, raise && raiseWords(raise, units), condition, blocked && 'blocks']
      .filter(Boolean).join(', '),
  },
  svg('rect', { class: 'hit', x: x - 9, y: ROWS.places - 20, width: 18, height: ROWS.barEnd - ROWS.places + 20 }),
  labeled && svg('rect', { class: 'hit', x: labelX - 14, y: 0, width: 28, height: 17 }),
  svg('path', { class: 'leader', d: `M${x} ${ROWS.bar}V${ROWS.places}${labeled ? `L${labelX} 15` : ''}` }),
  blocked && svg('path', { class: 'strip-blocked', d: `M${x} ${ROWS.bar - 3}V${ROWS.barEnd + 3}` }),
  svg('g', { transform: `translate(${x - 6} ${ROWS.places - 6}) scale(0.75)` }, verdictMark(verdict)),
  labeled && text(labelX, 12, hazard, 'hazard-id'));
}

function stopItem(stop, x, data, units) {
  const { change, held } = atStop(data, stop);
  return svg('g', {
    class: change ? 'strip-item strip-stop used' : 'strip-item strip-stop', role: 'button', tabindex: '-1',
    'data-stop': stop.id, 'data-kind': stop.kind,
    'aria-label': [`${stop.id} ${stop.name}`, stopSymbol(stop.kind).word, `at ${chainage(stop.chainageM, units)}`,
      change ? `change to ${change.to.label}` : held ? 'cannot be used' : 'nothing is changed here'].join(', '),
  },
  svg('rect', { class: 'hit', x: x - 12, y: ROWS.stops - 12, width: 24, height: 24 }),
  change && svg('path', { class: 'leader', d: `M${x} ${ROWS.barEnd}V${ROWS.stops - 7}` }),
  stopMark(stop.kind, x, ROWS.stops));
}

/** One stopping place in words, and what the plan does there. */
function stopFacts(stop, data, units) {
  const { change, held } = data === null ? {} : atStop(data, stop);
  return [
    stopIcon(stop.kind), el('strong', {}, ` ${stop.id} ${stop.name}`),
    `, ${[stopSymbol(stop.kind).word, `at ${chainage(stop.chainageM, units)}`, stop.landmark,
      `room ${room(stop.roomM, units, 'down')}`].filter(Boolean).join(', ')}. `,
    data && (change ? `The plan changes here to ${change.to.label}.` : held ?? 'The plan changes nothing here.'),
  ];
}

function text(x, y, content, name = '') {
  return svg('text', { class: `label ${name}`, x, y, 'text-anchor': 'middle' }, content);
}
