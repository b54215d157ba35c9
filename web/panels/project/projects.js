/** Projects: what is kept, the one that is open with how it is saved, and its revisions. */
import { el, replace } from '../../dom.js';
import { button, field, when } from './projectparts.js';
import { createProjectList } from './projectlist.js';

export function mountProjects(root, { store, actions }) {
  const status = el('span', { id: 'project-status', role: 'status' });
  const title = el('span', { class: 'inputs-label', id: 'project-name' });
  const body = el('div', { class: 'projects-body' });
  const list = createProjectList(actions);
  const details = el('details', { class: 'inputs projects' },
    el('summary', {}, title, status, el('span', { class: 'inputs-hint' }, 'open, keep, look back')), body);

  function draw(state) {
    root.hidden = !state.settings?.projects;
    if (root.hidden) {
      replace(root);
      return;
    }
    if (!details.isConnected) {
      root.append(details);
    }
    const { project } = state;
    title.textContent = project ? `Project ${project.name}` : 'Projects';
    root.dataset.status = project?.status ?? 'none';
    const words = project ? statusWords(project) : unopenedWords(state);
    if (status.textContent !== words) {
      status.textContent = words;
    }
    const focused = body.contains(document.activeElement) ? document.activeElement : null;
    replace(body, project ? opened(state) : choice(state));
    if (focused && !body.contains(document.activeElement)) {
      refocus(focused);
    }
  }

  /** What had the focus is drawn anew, or is gone with what was pressed: then its heading says how it stands. */
  function refocus({ id, value, defaultValue }) {
    const again = id ? document.getElementById(id) : null;
    // Whoever is typing goes on typing, though something was saved meanwhile.
    if (again?.matches('input') && value !== defaultValue) {
      again.value = value;
    }
    (again ?? details.querySelector('summary')).focus({ preventScroll: true });
  }

  function choice({ projects, removed, inputs, author }) {
    return [
      list.draw(projects ?? [], removed ?? []),
      inputs && el('form', { id: 'project-begin', class: 'inputs-choice', on: { submit: begin } },
        field('project-new', 'Keep what is open as a project named', {
          name: 'name', required: true, maxlength: 200, value: inputs.route.json?.name ?? inputs.route.name,
        }),
        authorField(author),
        el('button', { type: 'submit' }, 'Keep it')),
      el('p', { class: 'fine-print' }, 'A project is kept by the program, on the machine it runs on: route, rig, base '
        + 'map, margins and what is asked of the plan. From then on every change is saved by itself.'),
    ];
  }

  function begin(event) {
    event.preventDefault();
    const given = new FormData(event.target);
    actions.setAuthor(given.get('author').trim());
    if (given.get('name').trim()) {
      actions.beginProject(given.get('name').trim());
    }
  }

  function rename(event) {
    event.preventDefault();
    actions.renameProject(new FormData(event.target).get('name'));
  }

  function opened({ project, author }) {
    const looking = project.revision !== project.latest;
    const who = authorField(author);
    who.querySelector('input').addEventListener('change', event => actions.setAuthor(event.target.value.trim()));
    return [
      project.problem && el('p', { class: 'problem-detail' }, [project.problem.title, project.problem.detail]
        .filter(Boolean).join('. ')),
      project.status === 'saved since' && el('p', { class: 'import-buttons' },
        button('project-theirs', 'Open what was saved', () => actions.openProject(project.id)),
        button('project-on-top', 'Save mine on top of it', actions.saveOnTop),
        button('project-copy', 'Keep mine as a project of its own',
          () => actions.beginProject(`${project.name} (mine)`))),
      looking && el('p', { class: 'import-buttons' },
        button('project-restore', `Restore revision ${project.revision}`, actions.restoreRevision),
        button('project-latest', 'Back to the latest', () => actions.openProject(project.id))),
      el('div', { class: 'inputs-choice' }, who,
        button('project-revisions', 'Show its revisions', actions.listRevisions),
        button('project-papers', 'Show its papers', actions.listPapers),
        button('project-close', 'Close the project', actions.closeProject)),
      !looking && project.status === 'saved' && el('form', { class: 'inputs-choice', on: { submit: rename } },
        field('project-rename', 'Name of the project', {
          name: 'name', required: true, maxlength: 200, value: project.name,
        }),
        el('button', { type: 'submit' }, 'Name it so'),
        button('project-remove', 'Remove the project', () => actions.removeProject(
          { id: project.id, revision: project.revision, name: project.name }))),
      project.papers && papers(project.papers, actions),
      project.revisions && el('ol', { id: 'revision-list' }, project.revisions.map(one =>
        el('li', { 'data-revision': one.revision },
          el('span', {}, `Revision ${one.revision}, ${when(one.saved)}${one.author && ` by ${one.author}`}: `
            + `${one.reason} `),
          one.revision === project.revision ? el('strong', {}, 'on the page')
            : el('button', {
              type: 'button', class: 'revision-look',
              on: { click: () => actions.openProject(project.id, one.revision) },
            }, `Look at revision ${one.revision}`)))),
      el('p', { class: 'fine-print' }, 'Whatever you open, keep or decide while a project is open goes into it. Close '
        + 'it to work on something else.'),
    ];
  }

  const stop = store.watch(['settings', 'projects', 'removed', 'project', 'inputs', 'author'], draw);
  return { unmount: () => { stop(); replace(root); } };
}

function papers(all, actions) {
  if (all.length === 0) {
    return el('p', { id: 'paper-list' }, 'No paper was issued of it. One that is made while it is open is kept here.');
  }
  return el('ul', { id: 'paper-list' }, all.map(({ id, paper, mediaType, revision, issued, version }) =>
    el('li', { 'data-paper': id },
      el('a', { href: `api/papers/${id}`, target: '_blank', rel: 'noopener' },
        `${PAPERS[paper]}, ${mediaType.includes('pdf') ? 'PDF' : 'page'}`),
      ` issued ${when(issued)} on revision ${revision} by version ${version}; `,
      el('a', { href: `api/papers/${id}/record`, download: `${paper}.record.json` }, 'its record'), ' ',
      el('button', {
        type: 'button', class: 'paper-verify',
        on: { click: () => actions.verifyPaper(id, `${PAPERS[paper]} of revision ${revision}`) },
      }, 'Make it again and compare'))));
}

const PAPERS = { runsheet: 'Run sheet', statement: 'Statement' };

const authorField = author => field('project-author', 'Your name', { name: 'author', maxlength: 100, value: author });

function statusWords({ status, revision, latest, saved }) {
  if (revision !== latest && status !== 'opening') {
    return `looking at revision ${revision} of ${latest}; nothing is saved`;
  }
  switch (status) {
    case 'saving': return 'saving…';
    case 'offline': return 'offline: the last change is on this page only';
    case 'saved since': return 'somebody has saved since: your last change is on this page only';
    case 'failed': return 'not saved: the last change is on this page only';
    case 'opening': return 'opening…';
    default: return `saved, revision ${revision}, ${when(saved)}`;
  }
}

/** Before a project is open: what is kept, and that files of one's own on the page are not. */
function unopenedWords({ projects, inputs }) {
  const own = [inputs?.route, inputs?.rig].some(file => file && file.id === null);
  return [projects?.length > 0 && `${projects.length} kept`, own && 'what is open is on this page only']
    .filter(Boolean).join('; ');
}
