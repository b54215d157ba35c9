/** What waits for a survey. No DOM. */

export const trackWords = tracks => `${tracks} ${tracks === 1 ? 'track' : 'tracks'}`;

/** Who says that there is something, and what else is known of a place. */
export function knownFrom(place) {
  return [
    place.origin ?? 'the route file',
    place.reported && 'figure reported, not measured',
    place.known,
    place.sketch && `sketch from ${place.sketch.source}${place.sketch.date ? `, ${place.sketch.date}` : ''}`,
    place.landmark && `landmark: ${place.landmark}`,
  ].filter(Boolean).join('; ');
}

/** More places than these are told on paper by the table that has them all, with an order. */
const MOST_APART = 12;

/** The ids of places that wait for a survey and of which nothing is known, where there are many; otherwise none. */
export function waitingTogether(report) {
  const waiting = report.surveyFirst.places.filter(place => !place.reported).map(place => place.id);
  return new Set(waiting.length > MOST_APART ? waiting : []);
}

export const togetherWords = count =>
  `${count} places wait for a survey. They stand in order under Survey first.`;

/** The gap over the sketch of a place. @param show a gap in words @param apart a length in words */
export function sketchWords(sketch, show, apart) {
  if (sketch === null) {
    return 'no sketch';
  }
  const cells = `${apart(sketch.spacingM)} cells`;
  return `${sketch.tooCoarse ? 'too coarse' : sketch.gapM === null ? 'unknown' : show(sketch.gapM)}, ${cells}`;
}

/**
 * A ladder's rungs by axle state, booster states with equal rungs together.
 *
 * @returns {{axles: number, boosters: string[], rungs: {notch: string, clearM: ?number, contactM: ?number}[]}[]}
 */
export function humpColumns(report, hump) {
  const states = new Map();
  report.configurations.forEach((configuration, i) => {
    const { configuration: key, clearM, contactM } = hump.rungs[i];
    if (key !== configuration.key) {
      throw new Error(`the ladder has ${key} where the report has ${configuration.key}`);
    }
    const state = `${configuration.lift}/${configuration.booster}`;
    const column = states.get(state)
      ?? {
        lift: configuration.lift, axles: configuration.axles, axlesUp: configuration.axlesUp,
        boosters: [configuration.booster], rungs: [],
      };
    column.rungs.push({ notch: configuration.notch, clearM, contactM });
    states.set(state, column);
  });
  const columns = [];
  for (const column of states.values()) {
    const alike = columns.find(other => other.lift === column.lift
      && JSON.stringify(other.rungs) === JSON.stringify(column.rungs));
    if (alike) {
      alike.boosters.push(...column.boosters);
    } else {
      columns.push(column);
    }
  }
  return columns;
}
