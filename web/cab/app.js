/**
 * Starts the cab page: a kept run sheet, one view at a time. The address says which: #sheet=ID&view=place&at=7.
 *
 * Ids and data attributes that stay put, for tests and for linking:
 *   #cab-head      #cab-name, #cab-banner[data-drivable], nav button[data-view]
 *   #cab           [data-view][data-sheet]; #cab-next[data-step][data-hazard], #cab-position[data-left-m], #cab-open,
 *                  #cab-back, #cab-passed; #cab-place[data-step], #cab-before, #cab-following, input[data-tick];
 *                  #cab-stuck[data-hazard], #cab-crossing, [data-number], #cab-call, #cab-no-phone, #cab-call-911,
 *                  #cab-leave; #cab-blocks; #cab-file, #cab-none, li[data-sheet] with .cab-use and .cab-remove
 *   #cab-foot      #cab-stuck-open, #cab-colors, #cab-locate
 */
import { el, replace } from '../dom.js';
import { createKeeping, storageOf } from './keeping.js';
import { entries, hasWay, read } from './sheet.js';
import { WORDS, wordsOf } from './words.js';
import { strip } from './views/strip.js';
import { place } from './views/place.js';
import { places } from './views/places.js';
import { cards } from './views/cards.js';
import { stuck } from './views/stuck.js';
import { sheets } from './views/sheets.js';

const VIEWS = { next: strip, place, places, cards, stuck, sheets };
const TABS = ['next', 'places', 'cards', 'sheets'];
const COLORS = { system: 'dark', light: 'dark', dark: 'light' };
const [head, main, foot] = ['cab-head', 'cab', 'cab-foot'].map(id => document.getElementById(id));
const keeping = createKeeping(storageOf(window));
const secure = 'serviceWorker' in navigator;
let state = { id: null, view: 'next', at: 0, crossing: null, trouble: null, position: { status: 'off' } };
let watching = null;

/** What the address asks for; the last sheet where it names none. */
function follow() {
  const asked = new URLSearchParams(window.location.hash.slice(1));
  const id = [asked.get('sheet'), ...keeping.sheets()].find(own => own && keeping.sheet(own) !== null) ?? null;
  const view = id === null ? 'sheets' : asked.get('view') ?? 'next';
  const at = Math.max(0, Math.trunc(Number(asked.get('at'))) || 0);
  state = { ...state, id, view: view in VIEWS ? view : 'next', at };
  draw();
  window.scrollTo(0, 0);
  main.querySelector('h1')?.focus({ preventScroll: true });
}

function go(view, at = 0) {
  const asked = new URLSearchParams({ ...(state.id && { sheet: state.id }), view, ...(view === 'place' && { at }) });
  state.crossing = null;
  state.trouble = null;
  const hash = `#${asked}`;
  if (window.location.hash === hash) {
    follow();
  } else {
    window.location.hash = hash;
  }
}

function draw() {
  const kept = state.id === null ? null : keeping.sheet(state.id);
  const words = kept ? wordsOf(kept) : WORDS[navigator.language.slice(0, 2)] ?? WORDS.en;
  const list = kept ? entries(kept) : [];
  const context = {
    ...state, kept, words, list, keeping, secure, go,
    index: state.id === null ? 0 : Math.min(keeping.step(state.id), list.length),
    setStep: index => {
      keeping.setStep(state.id, index);
      draw();
      window.scrollTo(0, 0);
      main.querySelector('h1')?.focus({ preventScroll: true });
    },
    chooseCrossing: crossing => { state.crossing = crossing; draw(); document.getElementById('cab-crossing').focus(); },
    use: id => { state.id = id; go('next'); },
    remove: id => { keeping.remove(id); state.id = state.id === id ? null : state.id; go('sheets'); },
    openFile,
  };
  document.documentElement.lang = kept?.language ?? 'en';
  document.documentElement.dataset.theme = keeping.colors();
  document.title = kept ? `${kept.sheet.route.name}: ${words.title}` : words.title;
  main.dataset.view = state.view;
  main.dataset.sheet = state.id ?? '';
  drawHead(context);
  // A blocked sheet has nothing to drive from: what blocks stands in the place of every step.
  const steps = ['next', 'place', 'places', 'cards'].includes(state.view);
  replace(main, steps && kept && !hasWay(kept) ? blocked(context) : VIEWS[state.view](context));
  drawFoot(context);
}

function drawHead({ kept, words, view, trouble }) {
  replace(head, trouble && el('p', { class: 'cab-alert', role: 'alert' }, trouble), kept && [
    el('p', { id: 'cab-name' }, kept.sheet.route.name, ', ', kept.sheet.rig.name),
    // Stuck on the tracks nothing stands before what to do.
    view !== 'stuck' && el('p', { id: 'cab-banner', 'data-drivable': String(kept.sheet.banner.drivable) },
      kept.sheet.banner.headline),
    view !== 'stuck' && el('nav', { 'aria-label': words.title }, TABS.map(name => el('button', {
      type: 'button', 'data-view': name, 'aria-current': name === view ? 'page' : null, on: { click: () => go(name) },
    }, words[name])))]);
}

function blocked({ kept: { sheet }, words }) {
  return el('section', { id: 'cab-blocks' }, el('h1', { tabindex: '-1' }, words.blocks),
    sheet.banner.lines.map(text => el('p', { class: 'cab-alert' }, text)),
    sheet.cautions.map(text => el('p', { class: 'cab-line' }, text)));
}

function drawFoot({ kept, words, view, position }) {
  const dark = document.documentElement.dataset.theme === 'dark';
  replace(foot,
    kept && view !== 'stuck' && el('button', {
      type: 'button', id: 'cab-stuck-open', on: { click: () => go('stuck') },
    }, words.stuck),
    el('div', { class: 'cab-small' },
      el('button', { type: 'button', id: 'cab-colors', 'aria-pressed': String(dark), on: {
        click: () => {
          keeping.setColors(COLORS[keeping.colors()]);
          draw();
          document.getElementById('cab-colors').focus();
        },
      } }, dark ? words.day : words.night),
      kept?.line && 'geolocation' in navigator && el('button', {
        type: 'button', id: 'cab-locate', on: { click: locate },
      }, position.status === 'off' || position.status === 'refused' ? words.position : words.positionStop)));
}

/** The phone's position, while the driver wants it. */
function locate() {
  if (watching !== null) {
    navigator.geolocation.clearWatch(watching);
    watching = null;
    state.position = { status: 'off' };
    draw();
    return;
  }
  const show = position => {
    state.position = position;
    if (state.view === 'next') {
      draw();
    }
  };
  show({ status: 'waiting' });
  watching = navigator.geolocation.watchPosition(
    ({ coords: { longitude: lon, latitude: lat, accuracy: accuracyM } }) =>
      show({ status: 'on', at: { lon, lat, accuracyM } }),
    ({ code, PERMISSION_DENIED }) => {
      if (code !== PERMISSION_DENIED) {
        // In a valley, say: it comes back by itself, and until then no old distance stands.
        show({ status: 'waiting' });
        return;
      }
      navigator.geolocation.clearWatch(watching);
      watching = null;
      show({ status: 'refused' });
    }, { enableHighAccuracy: true, maximumAge: 5000 });
  draw();
}

async function openFile(file) {
  const kept = read(await file.text());
  const words = WORDS[document.documentElement.lang] ?? WORDS.en;
  if (kept === null) {
    state.trouble = words.unreadable;
    draw();
    return;
  }
  const { id, kept: stays } = keeping.keep(kept);
  state.id = id;
  go('next');
  state.trouble = stays ? null : words.full;
}

if (secure) {
  navigator.serviceWorker.register('worker.js').catch(() => {});
  navigator.storage?.persist?.();
}
window.addEventListener('hashchange', follow);
follow();
