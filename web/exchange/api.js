/** Talks to the server. Every failure is a Problem with words fit to show; nothing fails in silence. */

export class Problem extends Error {
  /**
   * @param title what went wrong, one line
   * @param problems places to mend: {pointer, code, message, remedy}
   * @param remedy what to do about the whole, when no place is named
   * @param passing whether the same request may fare better later
   */
  constructor({ title, detail = '', status = 0, problems = [], remedy = '', passing = status >= 500 }) {
    super(title);
    this.name = 'Problem';
    this.title = title;
    this.detail = detail;
    this.status = status;
    this.problems = problems;
    this.remedy = remedy;
    this.passing = passing;
  }
}

/** True for the error of a request that was given up on purpose. */
export const wasAborted = error => error?.name === 'AbortError';

/** Any error as what can be shown: one of the page's own says to reload it. */
export function asProblem(error) {
  return error instanceof Problem
    ? error
    : new Problem({ title: 'The page met an error of its own', detail: String(error), remedy: 'Reload the page.' });
}

/** @param fetch the browser's, or a stand-in in tests */
export function createApi(fetch) {
  async function send(path, {
    body, signal, more = {}, as = 'json', method = body === undefined ? 'GET' : 'POST',
  } = {}) {
    let response;
    let text;
    let blob;
    try {
      response = await fetch(path, {
        method,
        // A form says itself where its parts begin.
        headers: typeof body === 'string' ? { 'Content-Type': 'application/json', ...more } : more,
        body,
        signal,
      });
      if (response.ok && as === 'blob') {
        blob = await response.blob();
      } else {
        text = await response.text();
      }
    } catch (error) {
      if (wasAborted(error)) {
        throw error;
      }
      throw new Problem({
        title: 'The server does not answer',
        detail: 'What is on the sheet is from before.',
        remedy: 'See that the program is still running, then try again.',
        passing: true,
      });
    }
    if (!response.ok) {
      throw problemFrom(response.status, text);
    }
    if (as === 'blob') {
      return blob;
    }
    return as === 'text' ? text : parsed(text, path);
  }

  return {
    version: () => send('/api/version'),
    settings: () => send('/api/settings'),
    samples: () => send('/api/samples'),
    /** @param kind 'routes' or 'rigs'; answers the file's own text */
    sample: (kind, id, signal) => send(`/api/samples/${kind}/${encodeURIComponent(id)}`, { as: 'text', signal }),
    /** The base map beneath a sample's route. */
    sampleMap: id => send(`/api/samples/maps/${encodeURIComponent(id)}`),
    route: (inputs, signal) => send('/api/route', { body: inputs.route.text, signal }),
    /** Followed by an id of one's own. */
    check: (inputs, signal, id) =>
      send(`/api/check?id=${encodeURIComponent(id)}`, { body: checkRequest(inputs), signal }),
    /** @param from how many of the places judged are known already */
    checkProgress: (id, from, signal) => send(`/api/check/${encodeURIComponent(id)}?from=${from}`, { signal }),
    corner: (inputs, corner, signal) => send('/api/corner', { body: checkRequest(inputs, corner), signal }),
    loads: (inputs, question, signal) => send('/api/loads', { body: checkRequest(inputs, question), signal }),
    /** @param id by which it can be followed while it is made */
    plan: (inputs, plan, signal, id) =>
      send(`/api/plan?id=${encodeURIComponent(id)}`, { body: checkRequest(inputs, { plan }), signal }),
    comparison: (inputs, plan, signal) => send('/api/comparison', { body: checkRequest(inputs, { plan }), signal }),
    combinations: (inputs, plan, signal) => send('/api/combinations', { body: checkRequest(inputs, { plan }), signal }),
    /** The papers that were issued of a project. */
    projectPapers: id => send(`/api/projects/${encodeURIComponent(id)}/papers`),
    /** A paper as a file, kept where a project is named. @param kind 'runsheet' or 'statement'; how {form: 'html' |
     'pdf', paper: 'letter' | 'a4', language: 'en' | 'es', of a run sheet} */
    paper: (kind, inputs, { plan, project, ...how }, signal) =>
      send(`/api/${kind}${project ? `?project=${encodeURIComponent(project)}` : ''}`, {
        body: checkRequest(inputs, { plan, ...how }), signal, as: 'blob',
      }),
    /** Files as a form; followed and stopped by an id of one's own. */
    importRoute: (form, id, signal) => send(`/api/import?id=${encodeURIComponent(id)}`, { body: form, signal }),
    importProgress: (id, signal) => send(`/api/import/${encodeURIComponent(id)}`, { signal }),
    stopImport: id => send(`/api/import/${encodeURIComponent(id)}`, { method: 'DELETE' }),
    /** Makes a paper again. @param record as its text */
    verify: (record, signal) => send('/api/verify', { body: record, signal }),
    paperRecord: (id, signal) => send(`/api/papers/${encodeURIComponent(id)}/record`, { as: 'text', signal }),
    projects: () => send('/api/projects'),
    project: id => send(`/api/projects/${encodeURIComponent(id)}`),
    projectRevisions: id => send(`/api/projects/${encodeURIComponent(id)}/revisions`),
    projectRevision: (id, number) => send(`/api/projects/${encodeURIComponent(id)}/revisions/${number}`),
    /** The text of a file that a project has. */
    keptFile: sha256 => send(`/api/files/${sha256}`, { as: 'text' }),
    beginProject: body => send('/api/projects', { body }),
    /** @param revision that the change was made from; the server refuses when somebody has saved since */
    saveProject: (id, revision, body) => send(`/api/projects/${encodeURIComponent(id)}`, {
      method: 'PUT', body, more: { 'If-Match': `"${revision}"` },
    }),
    /** @param revision that was looked at; nothing of it is deleted */
    removeProject: (id, revision, author) => send(`/api/projects/${encodeURIComponent(id)}${by(author)}`, {
      method: 'DELETE', more: { 'If-Match': `"${revision}"` },
    }),
    removedProjects: () => send('/api/removed'),
    bringBackProject: (id, author) => send(`/api/removed/${encodeURIComponent(id)}${by(author)}`, { method: 'POST' }),
    passage: (inputs, passage, signal) => send('/api/passage', { body: checkRequest(inputs, passage), signal }),
  };
}

const by = author => (author ? `?author=${encodeURIComponent(author)}` : '');

/**
 * The request body. The files' own text is set in as it stands (it has been parsed once, so it is one JSON value):
 * the server hashes and reads what the user wrote, not a copy spelled anew.
 */
export function checkRequest({ route, rig, limits, stance, margins }, more = {}) {
  const rest = { ...more };
  if (stance) {
    rest.stance = stance;
  }
  if (margins) {
    rest.margins = margins;
  }
  const members = Object.entries(rest)
    .filter(([, value]) => value !== undefined && value !== null)
    .map(([key, value]) => `,${JSON.stringify(key)}:${JSON.stringify(value)}`);
  const further = limits?.json ? `,"limits":${limits.text}` : '';
  return `{"route":${route.text},"rig":${rig.text}${further}${members.join('')}}`;
}

function problemFrom(status, text) {
  let details = null;
  try {
    details = JSON.parse(text);
  } catch {
    // Not problem details (a proxy's page, say): the status is all there is to tell.
  }
  if (details === null || typeof details !== 'object' || typeof details.title !== 'string') {
    return new Problem({
      title: `The server refused with status ${status}`,
      status,
      remedy: status === 413
        ? 'The file is too large; check a shorter route.'
        : 'Try again; if it stays, restart the program.',
    });
  }
  return new Problem({
    title: details.title,
    detail: details.detail ?? '',
    status,
    problems: Array.isArray(details.problems) ? details.problems : [],
  });
}

function parsed(text, path) {
  try {
    return JSON.parse(text);
  } catch {
    throw new Problem({
      title: 'The answer could not be read',
      detail: `${path} did not send JSON.`,
      remedy: 'Is this address really the program of this page? Reload it.',
    });
  }
}
