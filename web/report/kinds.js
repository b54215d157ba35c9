/**
 * Kinds of hazards, all there is to know of one on the page. No DOM.
 *
 * word: as people say it; path: its symbol, 28 × 14, the road as its section would show it; judged: by which engine,
 * 'gaps', 'room' or 'loads'; sped: whether a clear place is told the speed for which that stands; atPoint: whether it
 * is a place, and not limits along the road; over: what one passes under there. The program's own table says the same,
 * and a test compares them.
 */
export const KINDS = {
  'rail-crossing': {
    word: 'rail crossing', judged: 'gaps', sped: false, atPoint: true,
    path: 'M1 11C7 11 8 5 11 5H17C20 5 21 11 27 11M11.5 5V2M16.5 5V2M10 2H13M15 2H18',
  },
  'low-structure': {
    word: 'low structure', over: 'structure', judged: 'gaps', sped: true, atPoint: true,
    path: 'M1 12H27M4 2H24V5H4ZM6 5V12M22 5V12',
  },
  'overhead-wire': {
    word: 'overhead wire', over: 'wire', judged: 'gaps', sped: true, atPoint: true,
    path: 'M1 12H27M4 12V2M24 12V2M4 3C9 7 19 7 24 3',
  },
  'dip': {
    word: 'dip', judged: 'gaps', sped: true, atPoint: true,
    path: 'M1 4C8 4 9 11 14 11C19 11 20 4 27 4',
  },
  'crest': {
    word: 'crest', judged: 'gaps', sped: true, atPoint: true,
    path: 'M1 11C8 11 9 4 14 4C19 4 20 11 27 11',
  },
  'corner': {
    word: 'corner', judged: 'room', sped: false, atPoint: true,
    path: 'M8 13V10C8 5 11 3 16 3H26M2 13V9C2 2 6 1 12 1',
  },
  'posted-bridge': {
    word: 'posted bridge', judged: 'loads', sped: false, atPoint: true,
    path: 'M1 5H27M4 5V12M24 5V12M4 12C9 7 19 7 24 12M14 0V3M12 1.5L14 3.5L16 1.5',
  },
  'stretch': {
    word: 'stretch with weight limits', judged: 'loads', sped: false, atPoint: false,
    path: 'M1 11H27M4 11V3M24 11V3M4 5H9M12 5H16M19 5H24',
  },
  'limits': { word: 'limits', judged: 'loads', sped: false, atPoint: false, path: 'M1 8H27' },
};

/** A kind that this page does not know is shown by its word alone, and nothing is told of it that may not be so. */
export const kindOf = kind => KINDS[kind]
  ?? { word: String(kind), judged: 'gaps', sped: false, atPoint: true, path: 'M1 8H27' };
