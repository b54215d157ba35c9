/**
 * The run sheet and the statement: opened in a window of their own, put on disk, or kept for the cab. The file goes
 * into the window as a blob, so that nothing is kept by the server and nothing has to be allowed beyond what the page
 * itself may do.
 */
import { el, replace } from '../../dom.js';
import { asProblem, wasAborted } from '../../exchange/api.js';
import { lastOnly } from '../../page/state.js';
import { LANGUAGES, recallLanguage, rememberLanguage } from '../../page/preferences.js';
import { createKeeping, storageOf } from '../../cab/keeping.js';
import { kept } from '../../cab/sheet.js';
import { problemBox } from '../parts/problem.js';

const PAPERS = [
  {
    kind: 'runsheet', name: 'Run sheet', file: 'run-sheet',
    whom: 'for the driver: what to set, where to stop, in driving order',
  },
  {
    kind: 'statement', name: 'Statement', file: 'statement',
    whom: 'for the permit office: what was found, on what conditions',
  },
];
const CAVEATS = {
  'way through': 'The plan has no conditions.',
  'way through under conditions': 'These papers are conditional: they list what must be resolved first.',
  'no way through': 'The plan is blocked. The papers say NOT FOR DRIVING on every page.',
};

export function mountPapers(root, { store, actions }) {
  const caveat = el('p', { id: 'papers-caveat' });
  const whatIfNote = el('p', { id: 'papers-what-if', hidden: true },
    'The load is moved as a what-if. Keep it or drop it, then make papers.');
  const size = el('select', { id: 'paper-size' },
    [['letter', 'Letter'], ['a4', 'A4']].map(([value, name]) => el('option', { value }, name)));
  const language = el('select', { id: 'sheet-language' },
    LANGUAGES.map(([value, name]) => el('option', { value, lang: value }, name)));
  language.value = recallLanguage(window);
  language.addEventListener('change', () => rememberLanguage(window, language.value));
  const status = el('div', { id: 'papers-status', role: 'status' });
  const trouble = el('div', {});
  const requests = lastOnly();
  let urls = [];
  let sizeChosen = false;
  size.addEventListener('change', () => { sizeChosen = true; });
  root.append(
    el('h3', {}, 'Papers'), caveat, whatIfNote,
    el('div', { class: 'choosers papers-buttons' }, PAPERS.map(paper => el('fieldset', { class: 'paper' },
      el('legend', {}, `${paper.name} `, el('span', { class: 'fine-print' }, paper.whom)),
      button(`${paper.kind}-open`, `Open the ${paper.name.toLowerCase()}`, () => open(paper)),
      button(`${paper.kind}-pdf`, 'PDF to disk', () => download(paper)),
      paper.kind === 'runsheet' && button('runsheet-cab', 'Keep it for the cab', () => toCab(paper)))),
    el('label', { class: 'field' }, el('span', {}, 'Paper size of the PDF'), size),
    el('label', { class: 'field' }, el('span', {}, 'Language of the run sheet'), language)),
    status, trouble);

  /** The window is opened by the press itself, so that no browser takes it for a pop-up; the paper follows. */
  function open(paper) {
    const view = window.open('', '_blank');
    if (view) {
      view.document.title = paper.name;
      view.document.body.append(`Making the ${paper.name.toLowerCase()}…`);
    }
    return make(paper, { form: 'html' }, (url, name) => {
      if (view && !view.closed) {
        view.location.replace(url);
      }
      replace(status, `${paper.name} made. `,
        el('a', { id: `${paper.kind}-link`, href: url, target: '_blank' },
          `Open the ${paper.name.toLowerCase()} again`), ' ',
        el('a', { href: url, download: `${name}.html` }, 'Keep it as a file'));
    }, () => view?.close());
  }

  function download(paper) {
    return make(paper, { form: 'pdf', paper: size.value }, (url, name) => {
      const link = el('a', { id: `${paper.kind}-link`, href: url, download: `${name}.pdf` }, `${name}.pdf`);
      replace(status, `${paper.name} made: `, link);
      link.click();
    }, () => {});
  }

  /** On the phone's own page, kept by this browser; and as a file, for a phone that is not this one. */
  function toCab(paper) {
    const spoken = language.value;
    return make(paper, { form: 'json' }, async (url, name, blob) => {
      const file = kept(JSON.parse(await blob.text()), spoken, store.get().line?.line ?? null);
      const { id, kept: stays } = createKeeping(storageOf(window)).keep(file);
      const own = URL.createObjectURL(new Blob([JSON.stringify(file)], { type: 'application/json' }));
      urls.push(own);
      replace(status, stays ? 'Run sheet kept in this browser. ' : 'This browser has no room to keep the sheet. ',
        stays && el('a', { id: 'runsheet-cab-link', href: `cab/cab.html#sheet=${id}`, target: '_blank' },
          'Open the cab page'), ' ',
        el('a', { id: 'runsheet-cab-file', href: own, download: `${name}.cab.json` },
          'Keep it as a file for another phone'));
    }, () => {});
  }

  async function make(paper, how, done, failed) {
    const turn = requests.begin();
    replace(trouble);
    replace(status, `Making the ${paper.name.toLowerCase()}… `, button('papers-stop', 'Stop', () => {
      requests.cancel();
      replace(status, 'Stopped.');
      failed();
    }));
    try {
      const spoken = paper.kind === 'runsheet' ? { ...how, language: language.value } : how;
      const blob = await actions.paper(paper.kind, spoken, turn.signal);
      if (turn.isCurrent()) {
        const url = URL.createObjectURL(blob);
        urls.push(url);
        done(url, `${paper.file}-${fileName(store.get().report.route.name)}`, blob);
        return;
      }
      failed();
    } catch (error) {
      failed();
      if (!wasAborted(error) && turn.isCurrent()) {
        replace(status);
        replace(trouble, problemBox(asProblem(error), null));
      }
    }
  }

  const stops = [
    store.watch(['plan', 'inputs'], ({ plan: { data } }) => {
      // Papers of another plan must not be opened again as if they were this one's.
      requests.cancel();
      urls.forEach(url => URL.revokeObjectURL(url));
      urls = [];
      replace(status);
      replace(trouble);
      root.hidden = data === null;
      if (data !== null) {
        root.dataset.outcome = data.outcome;
        caveat.textContent = CAVEATS[data.outcome] ?? CAVEATS['no way through'];
      }
    }),
    store.watch(['whatIf'], ({ whatIf }) => {
      root.querySelectorAll('fieldset').forEach(set => { set.disabled = whatIf !== null; });
      whatIfNote.hidden = whatIf === null;
    }),
    store.watch(['units'], ({ units }) => {
      if (!sizeChosen) {
        size.value = units === 'us' ? 'letter' : 'a4';
      }
    }),
  ];
  return { unmount: () => { requests.cancel(); stops.forEach(stop => stop()); root.replaceChildren(); } };
}

const button = (id, words, click) => el('button', { id, type: 'button', on: { click } }, words);

/** A route's name as part of a file's name. */
const fileName = name => name.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 60) || 'route';
