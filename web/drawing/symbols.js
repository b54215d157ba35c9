/**
 * The sheet's symbols as path data, each in its own box; words go with them everywhere. No DOM.
 *
 * Verdicts, 16 × 16: what differs is the outline and how much of it is inked, so that they stay apart in one color:
 * an open ring, a diamond with a bar across, a solid square with a cross cut out, a broken ring with a question,
 * a solid weight pressing down, a broken square with a question.
 */

/** Part kinds: 'line' is stroked, 'solid' is filled, 'cut' is stroked in the color of the paper. */
const VERDICTS = {
  'clear': { word: 'clear', parts: [['line', 'M14 8A6 6 0 1 1 2 8A6 6 0 1 1 14 8Z']] },
  'tight': { word: 'tight', parts: [['line', 'M8 1.2L14.8 8L8 14.8L1.2 8Z'], ['line', 'M1.2 8H14.8']] },
  'contact': {
    word: 'contact',
    parts: [['solid', 'M1.5 1.5H14.5V14.5H1.5Z'], ['cut', 'M4.8 4.8L11.2 11.2M11.2 4.8L4.8 11.2']],
  },
  'outside limits': { word: 'outside limits', parts: [['solid', 'M1 2H15L8 15Z'], ['cut', 'M5 5.4H11']] },
  'loads not known': {
    word: 'loads not known',
    parts: [['broken', 'M1.8 1.8H14.2V14.2H1.8Z'],
      ['line', 'M6 6.2A2 2 0 1 1 8.9 7.9Q8 8.4 8 9.4'], ['solid', 'M7.1 10.8H8.9V12.4H7.1Z']],
  },
  'not surveyed': {
    word: 'not surveyed',
    parts: [['broken', 'M14.2 8A6.2 6.2 0 1 1 1.8 8A6.2 6.2 0 1 1 14.2 8Z'],
      ['line', 'M6 6.4A2 2 0 1 1 8.9 8.1Q8 8.6 8 9.6'], ['solid', 'M7.1 11H8.9V12.6H7.1Z']],
  },
};

/**
 * Outcomes of a plan, 16 × 16: a way that goes on, one that goes on past a gate to be opened, one that ends at a bar.
 */
const OUTCOMES = {
  'way through': { name: 'through', parts: [['line', 'M1 8H14M9.5 3.5L14 8L9.5 12.5']] },
  'way through under conditions': {
    name: 'conditional', parts: [['line', 'M1 8H4.5M11 8H14.5M11.8 5L14.8 8L11.8 11'], ['line', 'M8 3L12 8L8 13L4 8Z']],
  },
  'no way through': { name: 'blocked', parts: [['line', 'M0.5 8H8'], ['solid', 'M9 1H14V15H9Z']] },
};

/** The symbol of an outcome; one this page does not know is drawn as blocked and keeps its own word. */
export const outcomeSymbol = outcome =>
  ({ word: String(outcome), ...(OUTCOMES[outcome] ?? OUTCOMES['no way through']) });

/** Stopping places, 14 × 14: a triangle to stop at, a square yard to set up in. */
const STOPS = {
  'stopping-place': { word: 'stopping place', path: 'M7 2L12.5 12H1.5Z' },
  'set-up-area': { word: 'set-up area', path: 'M1.5 1.5H12.5V12.5H1.5ZM1.5 7H12.5' },
};

export const stopSymbol = kind => STOPS[kind] ?? { word: String(kind), path: STOPS['stopping-place'].path };

/** The symbol of a verdict. A word this page does not know is drawn as not surveyed and keeps its own word. */
export function verdictSymbol(verdict) {
  return VERDICTS[verdict] ?? { word: String(verdict), parts: VERDICTS['not surveyed'].parts };
}

/** A verdict as a class name. */
export function verdictClass(verdict) {
  return verdict in VERDICTS ? verdict.replaceAll(' ', '-') : 'not-surveyed';
}

/** In words, as printed beside a choice. */
export const BOOSTER_WORDS = {
  'none': 'no booster',
  'trailing': 'trailing',
  'close-coupled': 'close-coupled',
  'carried': 'carried',
};

/** The side of a clearance, in words. */
export const SIDE_WORDS = {
  ground: 'under the combination', overhead: 'over the load', units: 'between the units',
  corner: 'beside, in the corner',
};
