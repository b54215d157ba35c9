/** The projects that are kept, to be found, opened and removed; and those that were removed, to be brought back. */
import { el, replace, say } from '../../dom.js';
import { FEW, ORDERS, orderedProjects } from '../../project/projectorder.js';
import { button, field, when } from './projectparts.js';

export function createProjectList(actions) {
  const find = field('project-find', 'Find', { maxlength: 100 });
  const order = el('select', { id: 'project-order' }, ORDERS.map(([value, words]) => el('option', { value }, words)));
  const choosers = el('div', { class: 'inputs-choice' }, find,
    el('label', { class: 'field' }, el('span', {}, 'Order'), order));
  const shown = el('p', { id: 'project-shown', role: 'status' });
  const list = el('ul', { id: 'project-list' });
  const gone = el('details', { id: 'project-removed' }, el('summary', {}));
  const node = el('div', { class: 'projects-list' }, choosers, shown, list, gone);
  let all = [];
  find.addEventListener('input', fill);
  order.addEventListener('change', fill);

  function fill() {
    const text = find.querySelector('input').value;
    const found = orderedProjects(all, { find: text, order: order.value });
    say(shown, text.trim() === '' ? '' : `${found.length} of ${all.length} projects`);
    replace(list, found.map(one => el('li', { 'data-project': one.id },
      el('button', { type: 'button', class: 'project-open', on: { click: () => actions.openProject(one.id) } },
        `Open ${one.name}`),
      el('span', {}, ` revision ${one.revision}, ${when(one.saved)}${one.author && ` by ${one.author}`}: `
        + `${one.reason} `),
      el('button', {
        type: 'button', class: 'project-remove', 'aria-label': `Remove ${one.name}`,
        on: { click: () => remove(one) },
      }, 'Remove'))));
  }

  /** What was pressed goes with its row: the focus goes to where the project is now. */
  async function remove(one) {
    await actions.removeProject(one);
    gone.querySelector('summary').focus();
  }

  async function bringBack(one) {
    await actions.bringBackProject(one);
    list.querySelector('.project-open')?.focus();
  }

  /** @returns the node, which keeps what was typed */
  function draw(projects, removed) {
    all = projects;
    choosers.hidden = projects.length <= FEW;
    list.hidden = projects.length === 0;
    fill();
    gone.hidden = removed.length === 0;
    replace(gone,
      el('summary', {}, `Removed projects: ${removed.length}`),
      el('ul', {}, removed.map(({ project, removed: at, author }) => el('li', { 'data-project': project.id },
        button(null, `Bring back ${project.name}`, () => bringBack(project)),
        el('span', {}, ` removed ${when(at)}${author && ` by ${author}`}, revision ${project.revision}`)))),
      el('p', { class: 'fine-print' }, 'Nothing of them is deleted: they can be brought back without an end.'));
    return node;
  }

  return { draw };
}
