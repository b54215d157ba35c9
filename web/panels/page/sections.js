/** The parts of the sheet, to go to: links that move the focus and leave the address to the selection. */
import { candidatesOf } from '../../import/candidates.js';
import { el, replace } from '../../dom.js';

/** Part and its name, in the order of the sheet; the detail is there only while a hazard is on show, what to survey
    first only where something waits. */
const PARTS = [
  ['plan', 'Map'], ['profile', 'Profile'], ['hazards', 'Hazards'], ['detail', 'Detail'],
  ['survey-first', 'Survey first'], ['route-plan', 'Route plan'],
  ['loads', 'Axle loads'], ['comparison', 'Side by side'], ['candidates', 'Candidates'],
  ['line', 'Line'], ['places', 'Places'], ['rig', 'Rig'], ['notes', 'Notes'],
];

export function mountSections(root, { store }) {
  const stop = store.watch(['report', 'hazard'], ({ report, hazard, inputs }) => {
    const candidates = candidatesOf(inputs?.route).length > 0;
    replace(root, report && el('ul', {}, PARTS
      .filter(([part]) => part !== 'detail' || hazard !== null)
      .filter(([part]) => part !== 'survey-first' || report.surveyFirst.places.length > 0)
      .filter(([part]) => part !== 'candidates' || candidates)
      .map(([part, name]) => el('li', {}, el('a', { href: `#${part}`, 'data-part': part, on: { click: go } },
        part === 'detail' ? `Detail of ${hazard}` : name)))));
  });
  return { unmount: () => { stop(); root.replaceChildren(); } };
}

function go(event) {
  event.preventDefault();
  const part = document.getElementById(event.currentTarget.dataset.part);
  part.setAttribute('tabindex', '-1');
  part.focus({ preventScroll: true });
  part.scrollIntoView();
}
