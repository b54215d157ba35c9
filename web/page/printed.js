/** What of the page prints and is asked for after the report, and what of it is there. No DOM. */

const PARTS = {
  plan: 'the route plan',
  passage: 'the drawing of the hazard on show',
  loads: 'the axle loads',
  comparison: 'the configurations side by side',
};

/** The keys of the state that hold what prints. */
export const PRINTED = Object.keys(PARTS);

/** Whether something that prints is still on its way. */
export const isOnItsWay = state => state.busy || PRINTED.some(part => state[part].status === 'loading');

/** What a print of the page as it stands would lack, in words; empty when all is there. */
export function leftOut(state) {
  if (state.report === null) {
    return ['the check'];
  }
  const parts = PRINTED
    .filter(part => !['ready', 'none'].includes(state[part].status)
      // Nobody has looked at it yet. Without a drawing or loads there is nothing to load.
      || (part === 'comparison' && state.comparison.status === 'none'))
    .map(part => PARTS[part]);
  return state.busy ? ['the check that is running now', ...parts] : parts;
}
