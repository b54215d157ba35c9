/**
 * The selection as an address fragment, so that a view can be linked:
 * #route=…&rig=…&stance=…&hazard=H03&configuration=down/none/3&line=left&levelling=held&raised=1&steer=-3.25
 * A file from disk has no address; the link names it (route=file:name), so that whoever follows it knows what is
 * missing.
 */

const FILE = 'file:';

/** The file's name when an address names a file from disk, else null. */
export function linkedFile(id) {
  return id?.startsWith(FILE) ? id.slice(FILE.length) : null;
}


/** The fragment, with its #, or '' when there is nothing to say. */
export function encode(state) {
  const data = state.passage.data;
  const steerM = data ? data.positions[state.position]?.steerM : undefined;
  const entries = [
    ['route', addressOf(state.inputs?.route)],
    ['rig', addressOf(state.inputs?.rig)],
    ['stance', state.inputs?.stance],
    ['ground', state.inputs?.margins?.ground],
    ['overhead', state.inputs?.margins?.overhead],
    ['configuration', state.configuration],
    ['hazard', state.hazard],
    ['line', state.view.line],
    ['levelling', state.view.levelling],
    ['raised', state.view.raised ? '1' : null],
    ['steer', steerM === undefined || state.position === data.tightest ? null : String(Number(steerM.toFixed(3)))],
  ].filter(([, value]) => value !== null && value !== undefined && value !== '');
  const fragment = entries
    .map(([key, value]) => `${key}=${encodeURIComponent(value).replaceAll('%2F', '/')}`)
    .join('&');
  return fragment === '' ? '' : `#${fragment}`;
}

/** What a fragment asks for; everything it does not say is null. A fragment that cannot be read asks for nothing. */
export function decode(fragment) {
  const parameters = new URLSearchParams(fragment.replace(/^#/, '').replaceAll('+', '%2B'));
  const text = key => parameters.get(key) || null;
  const steerM = Number(text('steer') ?? NaN);
  return {
    route: text('route'),
    rig: text('rig'),
    stance: text('stance'),
    margins: margins(text('ground'), text('overhead')),
    configuration: text('configuration'),
    hazard: text('hazard'),
    line: text('line'),
    levelling: text('levelling'),
    raised: text('raised') === '1',
    steerM: Number.isFinite(steerM) ? steerM : null,
  };
}

/** How an address names a file: a sample by its id, a file from disk by its name. */
export function addressOf(file) {
  return file && (file.id ?? FILE + file.name);
}

function margins(ground, overhead) {
  if (ground === null && overhead === null) {
    return null;
  }
  return { ...(ground && { ground }), ...(overhead && { overhead }) };
}
