/** Tracks, maps and heights from elsewhere: chosen or dropped anywhere on the page, previewed, and kept or not. */
import { el, replace, say } from '../../dom.js';
import { chainage } from '../../text/format.js';
import { progressWords } from '../../import/imported.js';
import { routeFileName } from '../../exchange/filenames.js';
import { candidateTable, facts, missingList, noteList, rasterList } from './importparts.js';
import { createImportMap } from './importmap.js';
import { problemBox } from '../parts/problem.js';
import { saveText } from '../parts/saving.js';

const KINDS = '.gpx,.kml,.kmz,.geojson,.json,.csv,.osm,.gz,.pbf,.tif,.tiff,.asc,.hgt,.zip';

const UNITS = { '': 'as their file says', m: 'meters', ft: 'feet', ftUS: 'US survey feet' };

export function mountImporting(root, { store, actions }) {
  const input = el('input', {
    id: 'import-files', type: 'file', multiple: true, accept: KINDS, on: { change: chosen },
  });
  const update = el('input', {
    id: 'import-update', type: 'checkbox', on: { change: () => actions.setImportUpdate(update.checked) },
  });
  const code = (id, key, placeholder) => el('input', {
    id, type: 'text', autocomplete: 'off', spellcheck: 'false', placeholder,
    on: { change: event => actions.sayOfImport({ [key]: event.target.value.trim() }) },
  });
  const crs = code('import-crs', 'crs', 'longitude and latitude');
  const rasterCrs = code('import-raster-crs', 'rasterCrs', 'as their file says');
  const rasterUnit = el('select', {
    id: 'import-raster-unit', on: { change: () => actions.sayOfImport({ rasterUnit: rasterUnit.value }) },
  }, Object.entries(UNITS).map(([value, words]) => el('option', { value }, words)));
  const gap = code('import-longest-gap', 'longestGap', '250 m');
  const byTime = el('input', {
    id: 'import-by-time', type: 'checkbox',
    on: { change: () => actions.sayOfImport({ order: byTime.checked ? 'time' : 'given' }) },
  });
  const updateName = el('span', {});
  const words = el('span', { id: 'import-status', role: 'status' });
  const buttons = el('span', { class: 'import-buttons' });
  const list = el('ul', { id: 'import-list', 'aria-label': 'Files to import' });
  const outcome = el('div', { id: 'import-outcome' });
  const details = el('details', { class: 'inputs' },
    el('summary', {}, el('span', { class: 'inputs-label' }, 'Import tracks and maps'),
      el('span', { class: 'inputs-hint' }, 'or drop files anywhere on the page')),
    el('div', { class: 'import-body' },
      el('div', { class: 'import-choice' },
        el('label', { class: 'field file-field' },
          el('span', {}, 'Tracks (GPX, KML, KMZ, GeoJSON, CSV), map extracts (.osm, .osm.gz, .osm.pbf) and elevation '
            + 'rasters (GeoTIFF, ASCII grid, HGT)'), input),
        el('label', { class: 'field' }, el('span', {}, 'Coordinates of CSV and GeoJSON, as an EPSG code'), crs),
        el('label', { class: 'field' }, el('span', {}, 'Coordinates of rasters, as an EPSG code'), rasterCrs),
        el('label', { class: 'field' }, el('span', {}, 'Heights of rasters'), rasterUnit),
        el('label', { class: 'field' }, el('span', {}, 'Longest gap between tracks that was driven straight'), gap),
        el('label', { class: 'import-check' }, byTime, 'Tracks as they were driven, where all say when'),
        el('label', { class: 'import-check' }, update, updateName)),
      list, el('p', { class: 'import-progress' }, words, buttons), outcome));
  root.append(details);
  let map = null;
  let drawn = {};

  function chosen() {
    const files = [...input.files];
    input.value = '';
    if (files.length > 0) {
      actions.takeFiles(files);
    }
  }

  function drawFiles({ importing: { files } }) {
    const move = (index, by, word) => {
      const other = index + by;
      return other >= 0 && other < files.length && el('button', {
        type: 'button', class: 'import-move', 'aria-label': `${files[index].name} ${word}`,
        on: {
          click: () => {
            actions.moveImportFile(index, by);
            list.children[other].querySelector('button').focus();
          },
        },
      }, word);
    };
    replace(list, files.map((file, index) => el('li', {}, `${file.name} `, move(index, -1, 'earlier'),
      move(index, 1, 'later'),
      el('button', {
        type: 'button', class: 'import-remove', 'aria-label': `Leave out ${file.name}`,
        on: { click: () => actions.removeImportFile(index) },
      }, 'Leave out'))));
  }

  /** Buttons stay what they are while the words beside them change, so that one can be pressed at any time. */
  function drawStatus({ importing }) {
    say(words, importing.status === 'reading' ? `${progressWords(importing.progress, importing.files)}…`
      : importing.status === 'stopped' ? 'Stopped. Nothing was kept.' : '');
    if (importing.status !== drawn.is) {
      replace(buttons,
        importing.status === 'reading' && button('import-stop', 'Stop', actions.stopImport),
        importing.status === 'stopped' && [button('import-again', 'Read them again', actions.importAgain),
          button('import-discard', 'Leave it', actions.discardImport)]);
    }
  }

  function drawOutcome({ importing: { status: is, data, problem }, units }) {
    map?.remove();
    map = null;
    root.dataset.status = is;
    if (problem !== null) {
      replace(outcome, problemBox(problem, null,
        problem.passing && button('import-again', 'Try again', actions.importAgain),
        button('import-discard', 'Leave it', actions.discardImport)));
      return;
    }
    if (data === null) {
      replace(outcome);
      return;
    }
    const { preview, line, route } = data;
    map = createImportMap(line.line, preview, data.baseMap ? JSON.parse(data.baseMap) : null);
    replace(outcome,
      el('h2', { id: 'import-title', tabindex: '-1' },
        `${preview.name}, ${chainage(preview.lengthM, units)}: a preview, not in force yet`),
      el('p', { class: 'import-caveat' }, 'Nothing here is surveyed, and nothing of it is clear.'),
      el('p', { class: 'import-buttons' },
        button('import-keep', 'Keep this route', actions.keepImport),
        button('import-save', 'Save as a file only', () => saveText(route, routeFileName(preview.name))),
        button('import-discard', 'Leave it', actions.discardImport)),
      el('div', { class: 'import-columns' }, map.node, facts(preview, units)),
      noteList(preview.notes),
      rasterList(preview.rasters, units), candidateTable(preview, units, map.show), missingList(preview));
    map.draw();
  }

  const stops = [
    store.watch(['importing'], ({ importing }) => {
      // The sheet is in sight again once nothing is left to decide here.
      details.open = importing.status !== 'none' || details.open && drawn.is === 'none';
      update.checked = importing.update;
      crs.value = importing.crs;
      rasterCrs.value = importing.rasterCrs;
      rasterUnit.value = importing.rasterUnit;
      gap.value = importing.longestGap;
      byTime.checked = importing.order === 'time';
    }),
    store.watch(['inputs'], ({ inputs }) => {
      update.disabled = inputs === null;
      updateName.textContent = inputs === null ? 'Bring the open route up to date'
        : `Bring the open route up to date: ${inputs.route.name}`;
    }),
    store.watch(['importing', 'units'], state => {
      const { importing: { files, status: is, data, problem }, units } = state;
      if (files !== drawn.files) {
        drawFiles(state);
      }
      drawStatus(state);
      // How far it has come says nothing about what is shown of the outcome.
      if (is !== drawn.is || data !== drawn.data || problem !== drawn.problem || units !== drawn.units) {
        drawOutcome(state);
      }
      drawn = { files, is, data, problem, units };
    }),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); map?.remove(); root.replaceChildren(); } };
}

const button = (id, words, click) => el('button', { id, type: 'button', on: { click: () => click() } }, words);
