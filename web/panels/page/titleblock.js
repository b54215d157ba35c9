/** The title block: what this sheet shows, of which inputs, by which version. */
import { el, replace } from '../../dom.js';
import { MARGINS, marginsOf } from '../../page/margins.js';
import { chainage, required } from '../../text/format.js';
import { findConfiguration } from '../../report/report.js';

export function mountTitleBlock(root, { store }) {
  const list = el('dl', { class: 'title-block' });
  root.append(list);
  const stop = store.watch(['report', 'configuration', 'units', 'version'], state => {
    if (state.report !== null) {
      const chosen = findConfiguration(state.report, state.configuration);
      replace(list, fields(state).map(([field, label, ...content]) =>
        el('div', { class: `title-${field}` }, el('dt', {}, label), el('dd', { 'data-field': field }, content))));
    }
  });
  return { unmount: () => { stop(); list.remove(); } };
}

function fields({ report, configuration, units }) {
  const { route, rig } = report;
  return [
    ['route', 'Route', el('strong', {}, route.name), ` ${chainage(route.lengthM, units)}, `
      + `${report.hazards.length} hazards`, note(route.note)],
    ['rig', 'Rig', el('strong', {}, rig.name), note(rig.note)],
    ['stance', 'Stance', rig.stance],
    ['version', 'Cresthaul', report.version],
    ['configuration', 'Configuration', findConfiguration(report, configuration).label],
    ['margins', 'Margins',
      MARGINS.map(({ key, kept }) => kept(required(marginsOf(report)[key], units))).join(', ')],
    ['route-sha256', 'Route file SHA-256', el('code', {}, route.sha256)],
    ...(route.limitsSha256
      ? [['limits-sha256', 'Limits file SHA-256', el('code', {}, route.limitsSha256)]] : []),
    ['rig-sha256', 'Rig file SHA-256', el('code', {}, rig.sha256)],
  ];
}

function note(text) {
  return text && el('span', { class: 'title-note' }, text);
}
