/** What a user can do to the survey of the hazard on show: put into the route as soon as it can be read. No DOM. */
import { tellDrafts } from './drafts.js';
import { COLUMNS } from './leveling.js';
import { tableOf } from './pasting.js';
import {
  draftOf, featureOf, inOrder, placed, readDraft, SURVEYED_KINDS, withCell, withField, withNotes, withNotesTaken,
  withOffset, withoutRow, withPasted, withReading, withRowAt, withSurvey, withUnit,
} from './survey.js';

/** How long after the last change it goes into the route, milliseconds. */
const PUT_AFTER = 600;
const BROWSER = { set: (call, after) => setTimeout(call, after), clear: timer => clearTimeout(timer) };

/**
 * @param change (what, text) → another text of the route in force, if the server accepts it; whether it did
 * @param timers {set, clear} of the browser, or stand-ins in tests
 */
export function createSurveyActions(store, change, timers = BROWSER) {
  /** Drafts that are not in the route yet, by hazard. */
  const kept = new Map();
  let timer = null;
  let sending = null;

  const patch = part => store.set({ survey: { ...store.get().survey, ...part } });
  const propertiesAt = index => store.get().inputs.route.json.features[index].properties;

  /** The draft of the hazard on show: the one that was begun, unless the route says something else of it since. */
  function show({ inputs, hazard, units }) {
    const index = hazard === null ? -1 : featureOf(inputs?.route, hazard);
    const properties = index < 0 ? null : inputs.route.json.features[index].properties;
    if (properties === null || !SURVEYED_KINDS.includes(properties.hazard)) {
      leave(null);
      store.set({ survey: null });
      return;
    }
    const now = store.get().survey;
    const base = JSON.stringify(properties);
    if (now?.id === hazard) {
      if (now.base === base || sending === base) {
        store.set({ survey: { ...now, index, base } });
        return;
      }
      timers.clear(timer);
      kept.delete(hazard);
    }
    leave(hazard);
    const before = kept.get(hazard);
    if (before?.base === base) {
      store.set({ survey: { ...before, index, kind: properties.hazard, name: properties.name } });
      if (before.status === 'changed') {
        timer = timers.set(put, PUT_AFTER);
      }
      return;
    }
    const draft = draftOf(properties, units === 'us' ? 'ft' : 'm');
    store.set({
      survey: {
        id: hazard, index, kind: properties.hazard, name: properties.name, base, draft, read: readDraft(draft),
        status: 'same', refused: [], said: '', made: (now?.made ?? 0) + 1,
      },
    });
  }

  /** What was begun at a hazard is there when it is on show again. */
  function leave(next) {
    const { survey } = store.get();
    if (survey && survey.id !== next) {
      timers.clear(timer);
      if (survey.status === 'same') {
        kept.delete(survey.id);
      } else {
        kept.set(survey.id, survey);
      }
    }
  }

  /** @param said what became of it, for those who do not see it */
  function edit(draft, said = '') {
    const { survey } = store.get();
    const reshaped = draft.rows.length !== survey.draft.rows.length || said !== '';
    patch({
      draft, said, read: readDraft(draft), status: 'changed', refused: [], made: survey.made + (reshaped ? 1 : 0),
    });
    timers.clear(timer);
    timer = timers.set(put, PUT_AFTER);
  }

  /** Puts the draft into the route; what cannot be read stays a draft, and the route as it was. */
  async function put() {
    timers.clear(timer);
    const { survey, inputs } = store.get();
    if (!survey || survey.status === 'same') {
      return;
    }
    const { id, index, name, read, draft } = survey;
    if (read.problems.length > 0) {
      patch({ status: 'unread' });
      return;
    }
    const text = withSurvey(inputs.route.text, index, propertiesAt(index), read);
    if (text === inputs.route.text) {
      patch({ status: 'same' });
      return;
    }
    patch({ status: 'sent' });
    sending = JSON.stringify(JSON.parse(text).features[index].properties);
    const accepted = await change(`surveying ${id} ${name}`, text);
    const after = store.get().survey;
    if (after?.id !== id || after.draft !== draft) {
      return;
    }
    sending = null;
    if (accepted) {
      patch({ status: 'same' });
    } else if (store.get().problem === null) {
      // Another question to the server came between.
      patch({ status: 'changed' });
      timer = timers.set(put, PUT_AFTER);
    } else {
      refuse(index, read);
    }
  }

  function refuse(index, read) {
    const { problem } = store.get();
    const { here, elsewhere } = placed(problem?.problems ?? [], index, read);
    patch({ status: here.length > 0 ? 'refused' : 'unsent', refused: here });
    if (here.length > 0 && elsewhere.length === 0) {
      store.set({ problem: null, candidate: null });
    }
  }

  store.watch(['inputs', 'hazard'], show);
  const tell = () => tellDrafts(store, 'survey', kept);
  store.watch(['inputs', 'survey'], tell);

  const now = () => store.get().survey.draft;
  return {
    surveyCell: (row, column, text) => edit(withCell(now(), row, column, text)),
    surveyField: (key, text) => edit(withField(now(), key, text)),
    surveyOffset: (line, text) => edit(withOffset(now(), line, text)),
    surveyUnit: (which, unit) => edit(withUnit(now(), which, unit)),
    addSurveyRow: row => edit(withRowAt(now(), row), `Row ${row + 1} is new.`),
    removeSurveyRow: row => edit(withoutRow(now(), row), `Row ${row + 1} is taken out.`),
    orderSurvey: () => edit(inOrder(now()), 'The rows are in the order of travel.'),
    clearSurvey: () => edit({ ...now(), rows: [] }, 'Every row is taken out: the place is not surveyed.'),
    pasteSurvey: (row, column, text) => {
      const { draft, said } = withPasted(now(), row, column, tableOf(text));
      edit(draft, said);
    },
    surveyReading: (row, column, text) => edit(withReading(now(), row, column, text)),
    /** @param part of the notes: start, closing, end, loop, spread, unit */
    surveyNotes: part => edit(withNotes(now(), part)),
    pasteReadings: (row, column, text) => {
      const { rows } = tableOf(text);
      edit(rows.reduce((draft, cells, i) => cells.reduce((made, cell, k) =>
        (column + k < COLUMNS.length ? withReading(made, row + i, column + k, cell) : made), draft), now()),
      `${rows.length} rows of notes pasted.`);
    },
    takeNotes: () => edit(withNotesTaken(now()), 'The heights of the notes are in the table.'),
    /** Gives up what is not in the route. */
    resetSurvey: () => {
      const { survey } = store.get();
      kept.delete(survey.id);
      timers.clear(timer);
      store.set({ survey: null });
      show(store.get());
    },
    putSurvey: put,
    /** Every draft that is not in the route, as JSON has it. */
    surveyDrafts: () => {
      const { survey } = store.get();
      const begun = survey !== null && survey.status !== 'same' ? [survey] : [];
      return [...[...kept.values()].filter(({ id }) => id !== survey?.id), ...begun]
        .map(({ id, base, draft }) => ({ id, base, draft }));
    },
    /** Takes up such drafts, each where the route still says what it was begun on. */
    restoreSurveyDrafts: drafts => {
      drafts.forEach(({ id, base, draft }) => {
        const read = readDraft(draft);
        kept.set(id, {
          id, base, draft, read, refused: [], said: '', made: 1,
          status: read.problems.length > 0 ? 'unread' : 'changed',
        });
      });
      tell();
      const { survey } = store.get();
      if (survey !== null && kept.has(survey.id) && survey.status === 'same') {
        store.set({ survey: null });
        show(store.get());
      }
    },
  };
}
