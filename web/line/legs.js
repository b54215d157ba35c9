/** Places along the route line for the plan. A line is a list of legs, each a list of [lon, lat, chainageM]. No DOM. */

/** Where the line is at a chainage, [lat, lon]; between two of its points in proportion; null off the line. */
export function pointAt(line, chainageM) {
  const at = drawnBeside(line);
  for (const leg of line) {
    for (let i = 1; i < leg.length; i++) {
      const [a, b] = [leg[i - 1], leg[i]];
      if (chainageM >= a[2] && chainageM <= b[2]) {
        const t = b[2] > a[2] ? (chainageM - a[2]) / (b[2] - a[2]) : 0;
        const [[lat, lon], [toLat, toLon]] = [at(a), at(b)];
        return [lat + (toLat - lat) * t, lon + (toLon - lon) * t];
      }
    }
  }
  return null;
}

/**
 * How [lon, lat] is drawn beside a line, as [lat, lon]: within half the world of where the line starts, so that nothing
 * across the 180th meridian is drawn the long way round.
 */
export function drawnBeside(line) {
  const from = line?.[0]?.[0]?.[0] ?? 0;
  return ([lon, lat]) => [lat, lon - 360 * Math.round((lon - from) / 360)];
}

/** The legs' points as [lat, lon]. */
export function legPaths(line) {
  const at = drawnBeside(line);
  return line.map(leg => leg.map(at));
}
