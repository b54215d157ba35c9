/** What a user can do to the survey of the hazard on show: put into the route as soon as it can be read. No DOM. */
import { COLUMNS } from './leveling.js';
import { tableOf } from '../text/pasting.js';
import { createPlaceDrafts } from './placedrafts.js';
import {
  draftOf, inOrder, placed, readDraft, SURVEYED_KINDS, withCell, withField, withNotes, withNotesTaken, withOffset,
  withoutRow, withPasted, withReading, withRowAt, withSurvey, withUnit,
} from './survey.js';

/**
 * @param change (what, text) → another text of the route in force, if the server accepts it; whether it did
 * @param timers {set, clear} of the browser, or stand-ins in tests
 */
export function createSurveyActions(store, change, timers) {
  const drafts = createPlaceDrafts(store, {
    kind: 'survey', after: 600, isOf: ({ hazard }) => SURVEYED_KINDS.includes(hazard), begin, read: readDraft,
    write: withSurvey, word: 'surveying', placed,
  }, change, timers);

  function begin(properties, units) {
    const draft = draftOf(properties, units === 'us' ? 'ft' : 'm');
    return { draft, read: readDraft(draft) };
  }

  /** @param said what became of it, for those who do not see it */
  function edit(draft, said = '') {
    drafts.edit(draft, draft.rows.length !== now().rows.length || said !== '', said);
  }

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
    resetSurvey: drafts.reset,
    putSurvey: drafts.put,
    surveyDrafts: drafts.drafts,
    restoreSurveyDrafts: drafts.restore,
  };
}
