/** Choosing a stopping place where it is drawn. */
import { calm } from '../dom.js';

/** Selects a stop and brings what is told of it into sight; from the keyboard the focus stays where it is. */
export function openStop(actions, id, event) {
  actions.selectStop(id);
  if (event.detail !== 0) {
    document.getElementById('stop-facts').scrollIntoView({ behavior: calm() ? 'auto' : 'smooth', block: 'nearest' });
  }
}
