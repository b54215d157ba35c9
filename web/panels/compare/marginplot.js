/** Margin along the route for the configurations picked: a plot, and the same as a table. */
import { el, onWidth, replace, set, svg } from '../../dom.js';
import {
  chainage, chainageUnitM, chainageUnitName, clearance, raiseWords, spareLeft, weight,
} from '../../text/format.js';
import { spareWord, WHOLE_ROUTE } from '../../report/plan.js';
import { chainageTicks, marginPlot, PICK_DASHES, PICK_MARKS } from '../../drawing/margins.js';
import { framed } from '../parts/framed.js';
import { verdictTag } from '../parts/symbol.js';

const INSET = 46;

export function mountMarginPlot(root, { store, actions }) {
  const node = svg('svg', { id: 'margin-plot', class: 'drawing', role: 'img' });
  const frame = el('div', { class: 'profile-frame' }, node);
  const legend = el('ul', { class: 'margin-legend' });
  const table = el('div', { id: 'margin-table-frame' });
  const details = el('details', {}, el('summary', {}, 'The same as a table'), table);
  const nothing = el('p', { class: 'fine-print' },
    'Nothing is picked to be plotted: tick up to three in the column Plot.');
  const key = el('p', { class: 'fine-print' },
    'Above zero: reserve left. Filled: short, or a place that blocks. Dashed box: unknown.');
  const shown = el('div', {}, legend, frame, key, details);
  root.append(el('h3', {}, 'Margin along the route'), nothing, shown);

  const picked = ({ comparison, picks }) => picks
    .map(key => comparison.data?.configurations.find(c => c.configuration === key)).filter(Boolean);

  function draw(state) {
    const list = picked(state);
    const width = frame.clientWidth;
    if (list.length === 0 || width === 0) {
      return;
    }
    const { units, comparison } = state;
    const lengthM = comparison.data.route.lengthM;
    const plot = marginPlot(list, lengthM, width, INSET);
    const labels = list.map(({ label }) => label).join(', ');
    set(node, { viewBox: `0 0 ${width} ${plot.height}`, width, height: plot.height,
      'aria-label': `Spare at each place for ${labels}; the table below tells the same` });
    const bottom = plot.height - 24;
    replace(node,
      plot.bands.map(band => bandGrid(band, width, units)),
      plot.unknown && [
        svg('rect', { class: 'margin-unknown', x: INSET, y: plot.unknown.top, width: width - INSET,
          height: plot.unknown.bottom - plot.unknown.top }),
        text(INSET + 2, plot.unknown.top - 3, 'unknown: no number', 'start')],
      svg('path', { class: 'axis', d: `M${INSET} ${bottom}H${width}` }),
      chainageTicks(lengthM, width - INSET, 0, chainageUnitM(units)).map(({ value }) => {
        const x = plot.toX(value * chainageUnitM(units));
        return [svg('path', { class: 'tick', d: `M${x} ${bottom - 3}v6` }),
          text(x, bottom + 16, value === 0 ? `0 ${chainageUnitName(units)}` : String(value), 'middle')];
      }),
      plot.marks.map(mark => markAt(mark)));
  }

  const stops = [
    store.watch(['comparison', 'picks', 'units'], state => {
      const list = picked(state);
      shown.hidden = list.length === 0;
      nothing.hidden = state.picks.length > 0;
      root.dataset.picks = list.length;
      replace(legend, list.map((c, index) => el('li', { 'data-configuration': c.configuration },
        svg('svg', { class: 'verdict-icon', viewBox: '-6 -6 12 12', width: 14, height: 14, 'aria-hidden': 'true' },
          svg('path', { class: 'margin-mark', d: PICK_MARKS[index] })), ` ${c.label} `,
        el('button', { type: 'button', 'aria-label': `Plot ${c.label} no longer`,
          on: { click: () => actions.pick(c.configuration, false) } }, 'Remove'))));
      replace(table, list.length > 0 && marginTable(list, state.units));
      draw(state);
    }),
    onWidth(frame, () => draw(store.get())),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}

function bandGrid({ kind, word, top, zero, bottom, high, low }, width, units) {
  const shown = value => (kind === 'load' ? weight(value, units) : clearance(value, units));
  return [
    svg('rect', { class: 'margin-short', x: INSET, y: zero, width: width - INSET, height: bottom - zero }),
    svg('path', { class: 'grid', d: `M${INSET} ${top}H${width}M${INSET} ${bottom}H${width}` }),
    svg('path', { class: 'axis', d: `M${INSET} ${zero}H${width}` }),
    text(INSET - 4, zero + 4, '0', 'end'),
    text(INSET - 4, bottom, 'short', 'end'),
    text(INSET + 2, top - 4, `${word}: drawn from ${shown(low)} to ${shown(high)}`, 'start', 'margin-label'),
  ];
}

function markAt({ index, place, kind, x, y, zero, cut }) {
  const named = { 'data-hazard': place.hazard, 'data-kind': kind ?? 'not known', 'data-pick': index,
    'data-left': place.spare?.left };
  if (kind === null) {
    return svg('g', { class: 'margin-place unknown', ...named },
      svg('path', { class: 'margin-mark', d: PICK_MARKS[index], transform: `translate(${x} ${y})` }),
      text(x, y - 6, '?', 'middle'));
  }
  return svg('g', { class: place.spare.left < 0 || place.blocked ? 'margin-place short' : 'margin-place', ...named },
    svg('path', { class: 'margin-stem', d: `M${x} ${zero}V${y}`, 'stroke-dasharray': PICK_DASHES[index] || null }),
    svg('path', { class: 'margin-mark', d: PICK_MARKS[index], transform: `translate(${x} ${y})` }),
    cut && svg('path', { class: 'cut', d: `M${x - 5} ${(y + zero) / 2 + 2}l10 -4` }));
}

function marginTable(list, units) {
  const places = new Map(list.flatMap(({ along }) => along.map(place => [place.hazard, place])));
  const sorted = [...places.values()].sort((a, b) => a.chainageM - b.chainageM);
  return framed('Margin along the route, as a table',
    el('table', { id: 'margin-table' },
      el('caption', { class: 'unseen' }, 'What is left at each place beyond what is required'),
      el('thead', {}, el('tr', {},
        el('th', { scope: 'col', class: 'figure' }, 'At'), el('th', { scope: 'col' }, 'Place'),
        list.map(({ label }) => el('th', { scope: 'col' }, label)))),
      el('tbody', {}, sorted.map(({ hazard, name, chainageM }) =>
        el('tr', { 'data-hazard': hazard },
          el('td', { class: 'figure' }, chainage(chainageM, units)),
          el('th', { scope: 'row' }, hazard === WHOLE_ROUTE ? name : `${hazard} ${name}`),
          list.map(({ along }) => el('td', {}, placeWords(along.find(p => p.hazard === hazard), units))))))));
}

/** "clear, 1/8 in left under, raise front 2 in"; what is not known is said, never a figure. */
export function placeWords(place, units) {
  if (!place) {
    return 'not passed';
  }
  const { verdict, spare, raise, blocked } = place;
  return [
    verdictTag(verdict),
    ' ',
    spare ? `${spareLeft(spare.kind, spare.left, units)} left ${spareWord(spare.kind)}` : 'what is left is unknown',
    raise && `, ${raiseWords(raise, units)}`,
    blocked && el('strong', {}, ', blocks'),
  ].filter(Boolean);
}

const text = (x, y, content, anchor, name = '') =>
  svg('text', { class: `label ${name}`, x, y, 'text-anchor': anchor }, content);
