/** What is asked of loads beyond the files: what gauges show, and what the regulator is set to. */
import { el, replace } from '../../dom.js';
import { pressure, weight } from '../../text/format.js';

/** Gauge readings, to be held against the declared load. */
export function readingForm(store, actions) {
  const field = gauge => el('input', {
    id: `reading-${gauge}`, type: 'text', inputmode: 'decimal', size: 8, autocomplete: 'off',
  });
  const trailer = field('trailer');
  const booster = field('booster');
  const list = el('ul', { id: 'load-readings' });
  const boosterField = el('label', { class: 'field' }, el('span', {}, 'Booster gauge shows'), booster);
  const form = el('form', {},
    el('div', { class: 'choosers' },
      el('label', { class: 'field' }, el('span', {}, 'Trailer gauge shows'), trailer), boosterField,
      el('button', { id: 'readings-apply', type: 'submit' }, 'Compare with the declared load')));
  form.addEventListener('submit', event => {
    event.preventDefault();
    const shown = {
      trailer: withUnit(trailer.value, store),
      booster: boosterField.hidden ? null : withUnit(booster.value, store),
    };
    const readings = Object.fromEntries(Object.entries(shown).filter(([, value]) => value !== null));
    actions.askLoads({ readings: Object.keys(readings).length === 0 ? null : readings });
  });
  return {
    node: el('div', { class: 'loads-readings' },
      el('h3', {}, 'Does the gauge agree with the declared load?'), form,
      el('div', { role: 'status' }, list)),
    fill(data, units) {
      boosterField.hidden = !data.sheet.gauges.some(g => g.gauge === 'booster');
      trailer.placeholder = units === 'us' ? '55 psi' : '4.1 bar';
      booster.placeholder = trailer.placeholder;
      replace(list, data.readings.map(r => el('li', { 'data-gauge': r.gauge, 'data-agrees': String(r.agrees) },
        el('strong', {}, `${r.gauge} gauge at ${pressure(r.pressurePa, units)}: `), r.note, '. ',
        r.readKg !== null && `It stands for ${weight(r.readKg, units)} on each axle, `
          + `${weight(r.declaredKg, units)} is declared, within ${weight(r.toleranceKg, units)} they agree. `,
        r.pieceOffKg !== null && `If only the piece is mis-declared, it is ${weight(Math.abs(r.pieceOffKg), units)} `
          + `${r.pieceOffKg > 0 ? 'heavier' : 'lighter'} than declared.`)));
    },
  };
}

/** A bare number gets the unit on show. */
function withUnit(text, store) {
  const plain = text.trim();
  if (plain === '') {
    return null;
  }
  return /^[\d.]+$/.test(plain) ? `${plain} ${store.get().units === 'us' ? 'psi' : 'bar'}` : plain;
}

/** Sets the regulator to another pressure. */
export function setForm(store, actions) {
  const field = el('input', { id: 'regulator-set', type: 'text', inputmode: 'decimal', size: 8, autocomplete: 'off' });
  const form = el('form', { class: 'choosers' },
    el('label', { class: 'field' }, el('span', {}, 'Set the regulator to'), field),
    el('button', { type: 'submit' }, 'See what it does'));
  form.addEventListener('submit', event => {
    event.preventDefault();
    actions.askLoads({ regulator: withUnit(field.value, store) });
  });
  return {
    node: form,
    fill({ regulator }, units) {
      if (regulator !== null) {
        field.placeholder = pressure(regulator.at, units);
      }
    },
  };
}
