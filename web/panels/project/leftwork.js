/** Changes in no project that this browser kept from before: to go on with, or to forget. */
import { el, replace } from '../../dom.js';

export function mountLeftWork(root, { store, actions }) {
  const stop = store.watch(['leftWork', 'project', 'busy'], ({ leftWork, project, busy }) => {
    root.hidden = leftWork === null || project !== null;
    replace(root, !root.hidden && [
      el('span', {}, `Kept in this browser, in no project: ${leftWork.name}${leftWork.what
        && `; last change: ${leftWork.what}`}.`),
      button('left-work-take', 'Go on with it', () => actions.takeUp(leftWork.id)),
      button('left-work-forget', 'Forget it', () => actions.forgetLeft()),
    ]);

    function button(id, label, click) {
      return el('button', { id, type: 'button', disabled: busy, on: { click } }, label);
    }
  });
  return { unmount: () => { stop(); root.replaceChildren(); } };
}
