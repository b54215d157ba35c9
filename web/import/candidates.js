/** Candidates of a route file: what nobody on this haul has measured, and what became of each. No DOM. */
import { spanOf } from '../text/jsontext.js';

/** Every candidate of a parsed route file, in the order of the file: {index, id, name, hazard, candidate}. */
export function candidatesOf(route) {
  const features = Array.isArray(route?.json?.features) ? route.json.features : [];
  return features.flatMap(({ properties } = {}, index) => (properties?.candidate?.state
    ? [{ index, id: properties.id, name: properties.name, hazard: properties.hazard, candidate: properties.candidate }]
    : []));
}

/** How many there are of each state, in words: "12 open, 3 dismissed". */
export function statesInWords(candidates) {
  return ['open', 'surveyed', 'dismissed']
    .map(state => [state, candidates.filter(({ candidate }) => candidate.state === state).length])
    .filter(([, count]) => count > 0)
    .map(([state, count]) => `${count} ${state}`)
    .join(', ');
}

/**
 * The text of the route file with one candidate dismissed, or open again; every other byte stays as it was.
 *
 * @param decision {by, why}, or null to open it again
 */
export function withDecision(text, index, decision) {
  const [from, to] = spanOf(text, ['features', index, 'properties', 'candidate']);
  const { by, why, ...rest } = JSON.parse(text.slice(from, to));
  const changed = decision === null ? { ...rest, state: 'open' } : { ...rest, state: 'dismissed', ...decision };
  return text.slice(0, from) + JSON.stringify(changed) + text.slice(to);
}
