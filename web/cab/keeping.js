/** Sheets, their ticks and where the driver is in them, kept by the browser. Without storage they last as the page. */
import { identity, read } from './sheet.js';

/** The storage of a browser that lets the page have it, else null. */
export function storageOf(window) {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

const PREFIX = 'cresthaul.cab.';

export function createKeeping(storage) {
  const beside = new Map();

  const get = key => {
    try {
      return storage.getItem(PREFIX + key) ?? beside.get(key) ?? null;
    } catch {
      return beside.get(key) ?? null;
    }
  };
  /** Whether it is kept beyond the page. */
  const put = (key, text) => {
    beside.set(key, text);
    try {
      storage.setItem(PREFIX + key, text);
      return true;
    } catch {
      return false;
    }
  };
  const drop = key => {
    beside.delete(key);
    try {
      storage.removeItem(PREFIX + key);
    } catch {
      // Nothing can be kept, so nothing is.
    }
  };
  const list = key => {
    try {
      const found = JSON.parse(get(key) ?? '[]');
      return Array.isArray(found) ? found.filter(item => typeof item === 'string') : [];
    } catch {
      return [];
    }
  };

  return {
    /** Ids of the sheets, the last one first. */
    sheets: () => list('sheets'),
    sheet: id => read(get(`sheet.${id}`) ?? ''),
    /** Keeps a sheet; {id, kept}: whether it outlives the page. */
    keep(file) {
      const text = JSON.stringify(file);
      const id = identity(text);
      const kept = put(`sheet.${id}`, text);
      return { id, kept: put('sheets', JSON.stringify([id, ...list('sheets').filter(other => other !== id)])) && kept };
    },
    remove(id) {
      ['sheet', 'ticks', 'step'].forEach(part => drop(`${part}.${id}`));
      put('sheets', JSON.stringify(list('sheets').filter(other => other !== id)));
    },
    ticks: id => new Set(list(`ticks.${id}`)),
    tick(id, key, on) {
      const ticks = new Set(list(`ticks.${id}`));
      ticks[on ? 'add' : 'delete'](key);
      put(`ticks.${id}`, JSON.stringify([...ticks]));
    },
    /** Index of the step that comes next. */
    step: id => Math.max(0, Math.trunc(Number(get(`step.${id}`) ?? 0)) || 0),
    setStep: (id, index) => put(`step.${id}`, String(index)),
    colors: () => get('colors') ?? 'system',
    setColors: colors => put('colors', colors),
  };
}
