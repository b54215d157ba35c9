/** A corner's template drawn to scale while it is typed; every number in it leads to its field. */
import { replace, svg } from '../../dom.js';
import { axisUnitM, axisUnitName, round } from '../../text/format.js';
import { linePath, ringsPath } from '../../drawing/corner.js';
import { templateDrawing } from '../../drawing/cornerform.js';
import { scaleBar } from '../../drawing/scale.js';
import { text } from './cornermarks.js';

const TALLEST_PX = 460;

/**
 * @param corner the draft and what was read of it
 * @param view what the program made of these numbers, in the same frame, or null while it has not answered
 * @param look (path) → goes to the field of a number
 */
export function drawTemplate(frame, { draft, read, field }, view, units, look) {
  const width = frame.clientWidth;
  const obstacles = draft.obstacles.map((one, k) => ['along', 'left', 'radius']
    .map(key => read.numbers[`obstacles.${k}.${key}`])).filter(part => part.every(Number.isFinite))
    .map(([along, left, radius]) => ({ at: [along, left], radius }));
  const { lines, dims, box: [left, bottom, right, top] } = templateDrawing({
    layout: draft.layout, numbers: read.numbers, turn: draft.fields.turn === 'right' ? -1 : 1,
    drives: draft.fields.drives, obstacles,
  });
  if (width < 1) {
    replace(frame);
    return;
  }
  const scale = Math.min(width / (right - left), TALLEST_PX / (top - bottom));
  const px = 1 / scale;
  const bar = scaleBar(px, 120, axisUnitM(units));
  replace(frame, svg('svg', {
    id: 'corner-template', class: 'drawing', role: 'group', 'aria-label': 'The corner to scale, from above',
    viewBox: `${left} ${-top} ${right - left} ${top - bottom}`,
    width: Math.round((right - left) * scale), height: Math.round((top - bottom) * scale),
  },
    view && svg('path', { class: 'corner-pavement', d: ringsPath(view.pavement), 'fill-rule': 'evenodd' }),
    view && svg('path', { class: 'corner-obstacle', d: ringsPath(view.obstacles), 'fill-rule': 'evenodd' }),
    lines.map(({ name, points, closed }) => svg('path', {
      class: `template-${name}`, d: linePath(points) + (closed ? 'Z' : ''),
    })),
    // What nobody has typed yet has no number to carry.
    dims.filter(({ path }) => wordsOf(path, draft) !== '')
      .map(dim => dimension(dim, draft, dim.path === field, px, look)),
    svg('path', { class: 'scale-bar', d: `M${left + 1} ${-bottom - 1.2}v0.6h${bar.pixels * px}v-0.6` }),
    text(left + 1 + bar.pixels * px / 2, -bottom - 1.6, px, round(bar.length, axisUnitName(units)), '')));
}

/** A number where it is measured: pressed, or by Enter, it leads to its field. */
function dimension({ path, points, at: [x, y] }, draft, chosen, px, look) {
  const words = wordsOf(path, draft);
  const label = text(x, -y + 4 * px, px, words, 'template-number');
  return svg('g', {
    class: chosen ? 'template-dim chosen' : 'template-dim', 'data-path': path, role: 'button', tabindex: '0',
    'aria-label': `${words}: to its field`,
    on: {
      click: () => look(path),
      keydown: event => {
        if (event.key === 'Enter' || event.key === ' ') {
          event.preventDefault();
          look(path);
        }
      },
    },
  }, points.length > 1 && svg('path', { class: 'template-measure', d: linePath(points) }), label);
}

/** What was typed, as it was typed. */
function wordsOf(path, draft) {
  const [list, k] = path.split('.');
  if (list === 'obstacles') {
    return draft.obstacles[k].name || `obstacle ${Number(k) + 1}`;
  }
  const said = String(draft.fields[path]).trim();
  if (said === '') {
    return '';
  }
  const bare = /^[\d.]+$/.test(said);
  return path === 'angle' ? said.replace(/\s*deg$/, '°').replace(/^([\d.]+)$/, '$1°')
    : `${/radi|curb|outer|island|near/.test(path) && !path.endsWith('offset') ? 'R ' : ''}${said}`
      + (bare ? ` ${draft.unit}` : '');
}
