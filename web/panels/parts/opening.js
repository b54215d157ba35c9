/** Choosing a hazard or a stopping place where it is drawn or listed. */
import { calm } from '../../dom.js';

/**
 * Selects a hazard and brings its detail into sight. From the keyboard the focus goes along to its heading; with a
 * pointer it stays, so that one hazard after the other can be looked at.
 */
export function openHazard(actions, id, event) {
  actions.selectHazard(id);
  const detail = document.getElementById('detail');
  const byKeyboard = event.detail === 0;
  if (byKeyboard) {
    document.getElementById('detail-title').focus({ preventScroll: true });
  }
  const wide = window.matchMedia('(min-width: 60rem)').matches;
  detail.scrollIntoView({ behavior: calm() ? 'auto' : 'smooth', block: wide ? 'nearest' : 'start' });
}

/** Selects a stop and brings what is told of it into sight; from the keyboard the focus stays where it is. */
export function openStop(actions, id, event) {
  actions.selectStop(id);
  if (event.detail !== 0) {
    document.getElementById('stop-facts').scrollIntoView({ behavior: calm() ? 'auto' : 'smooth', block: 'nearest' });
  }
}
