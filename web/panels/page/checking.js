/** A check that runs: how far it has come, what was judged so far, and a way to stop it. */
import { el, replace, say } from '../../dom.js';
import { chainage } from '../../text/format.js';
import { checkingWords } from '../../exchange/underway.js';
import { kindIcon, verdictTag } from '../parts/symbol.js';

export function mountChecking(root, { store, actions }) {
  const busy = document.getElementById('busy');
  const words = el('p', { id: 'checking-words' });
  const bar = el('progress', { 'aria-label': 'Places judged, configuration by configuration', max: 1, value: 0 });
  const list = el('ul', { id: 'checking-found', 'aria-label': 'Places judged so far', tabindex: '0' });
  const caveat = el('p', { class: 'checking-caveat' },
    'Nothing is said of the route before every place is judged.');
  root.append(words, bar, caveat, list);
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

  function draw({ busy: runs, progress, units }) {
    root.hidden = !runs || progress === null || progress.state === 'waiting' && progress.found.length === 0;
    if (root.hidden) {
      replace(list);
      shown = [];
      return;
    }
    say(words, checkingWords(progress));
    bar.value = progress.places === 0 ? 0 : progress.cells / (progress.places * progress.configurations);
    show(progress.found, progress, units);
  }

  const stops = [
    store.watch(['busy'], state => {
      replace(busy, state.busy && ['Checking… ',
        el('button', { id: 'check-stop', type: 'button', on: { click: actions.stopCheck } }, 'Stop')]);
    }),
    store.watch(['busy', 'progress', 'units'], draw),
  ];
  return { unmount: () => { stops.forEach(stop => stop()); root.replaceChildren(); } };
}

function item({ hazard, kind, name, chainageM, clear, best }, { configurations }, units) {
  return el('li', { 'data-hazard': hazard, 'data-clear': clear },
    kindIcon(kind), ` ${chainage(chainageM, units)} ${hazard} ${name}: `,
    clear > 0 ? `clear in ${clear} of ${configurations} configurations`
      : ['clear in none, at best ', verdictTag(best)]);
}
