/** A check that runs: how far it has come, what was judged so far, and a way to stop it. */
import { el, replace, say } from '../../dom.js';
import { chainage } from '../../text/format.js';
import { checkingWords } from '../../exchange/underway.js';
import { kindIcon, verdictTag } from '../parts/symbol.js';

/** More are counted. */
const MOST_NAMED = 5;

export function mountChecking(root, { store, actions }) {
  const busy = document.getElementById('busy');
  const words = el('p', { id: 'checking-words' });
  const bar = el('progress', { 'aria-label': 'Places judged, configuration by configuration', max: 1, value: 0 });
  const list = el('ul', { id: 'checking-found', 'aria-label': 'Places judged so far', tabindex: '0' });
  const caveat = el('p', { class: 'checking-caveat' },
    'Nothing more is said of the route before every place is judged.');
  const refused = el('p', { id: 'checking-refused' });
  root.append(words, bar, refused, caveat, list);
  let shown = [];
  let shownIn = null;

  /** Places that are new go where they lie along the route; those that are there stay. */
  function show(found, progress, units) {
    if (units !== shownIn || found[0] !== shown[0] || found.length < shown.length) {
      replace(list);
      shown = [];
      shownIn = units;
    }
    const along = [...shown].sort((a, b) => a.chainageM - b.chainageM);
    for (const place of found.slice(shown.length)) {
      const behind = along.findIndex(other => other.chainageM > place.chainageM);
      const at = behind < 0 ? along.length : behind;
      list.insertBefore(item(place, progress, units), list.children[at] ?? null);
      along.splice(at, 0, place);
    }
    shown = found;
  }

  function draw({ busy: runs, progress, planAsked, units }) {
    root.hidden = !runs || progress === null || progress.state === 'waiting' && progress.found.length === 0;
    if (root.hidden) {
      replace(list);
      shown = [];
      return;
    }
    say(words, checkingWords(progress));
    bar.value = progress.places === 0 ? 0 : progress.cells / (progress.places * progress.configurations);
    say(refused, refusedWords(progress.passedByNone, planAsked, units));
    show(progress.found, progress, units);
  }

  const stops = [
    store.watch(['busy'], state => {
      replace(busy, state.busy && ['Checking… ',
        el('button', { id: 'check-stop', type: 'button', on: { click: actions.stopCheck } }, 'Stop')]);
    }),
    store.watch(['busy', 'progress', 'planAsked', 'units'], draw),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}

/** Places that no configuration passes. What is planned past is no news. */
function refusedWords(places, { acceptTight, setAside }, units) {
  const open = places.filter(({ hazard }) => !acceptTight.includes(hazard) && !setAside.includes(hazard))
    .sort((a, b) => a.chainageM - b.chainageM);
  const named = open.slice(0, MOST_NAMED)
    .map(({ hazard, name, chainageM }) => `${hazard} ${name} (${chainage(chainageM, units)})`).join(', ');
  const more = open.length > MOST_NAMED ? ` and ${open.length - MOST_NAMED} more` : '';
  const count = open.length === 1 ? '1 place' : `${open.length} places`;
  return open.length === 0 ? '' : `No configuration passes ${count} so far: ${named}${more}. `
    + `There is no way through unless ${open.length === 1 ? 'it is' : 'they are'} resolved.`;
}

function item({ hazard, kind, name, chainageM, clear, best }, { configurations }, units) {
  return el('li', { 'data-hazard': hazard, 'data-clear': clear },
    kindIcon(kind), ` ${chainage(chainageM, units)} ${hazard} ${name}: `,
    clear > 0 ? `clear in ${clear} of ${configurations} configurations`
      : ['clear in none, at best ', verdictTag(best)]);
}
