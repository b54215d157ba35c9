/** Prints changes of the line that the page can make of the routes that are named: moved, cut, turned round, drawn on. */
import { readFileSync } from 'node:fs';
import { courseOfLines, linesOf } from '../../../web/line/course.js';
import { cutLine } from '../../../web/line/cutting.js';
import { drawnOn } from '../../../web/line/drawing.js';
import { rehung, withChanges } from '../../../web/line/hanging.js';
import { goesOn, insertedPoint, keptBecause, movedPoint, pointsOf, removedPoint } from '../../../web/line/positions.js';
import { reversedRoute } from '../../../web/line/reversing.js';
import { withFeature } from '../../../web/line/places.js';

for (const file of process.argv.slice(2)) {
  const text = readFileSync(file, 'utf8');
  const json = JSON.parse(text);
  const lines = linesOf(json);
  const points = pointsOf(lines);
  const { lengthM } = courseOfLines(lines);
  const print = (title, { refused, text: after, at = [] }) => console.log(JSON.stringify({
    title, file, refused, text: after, at: at.map(({ index, alongM }) => [json.features[index].properties.id, alongM]),
  }));
  const put = (title, made) => {
    const hung = rehung(json, made);
    print(title, {
      ...hung,
      text: hung.twins.reduce((now, { feature }) => withFeature(now, feature), withChanges(made.text, hung.changes)),
    });
  };
  for (const paths of ['same', 'other']) {
    for (const [stops, limits] of [[true, true], [false, true]]) {
      print(`turned round, ${paths}`, reversedRoute(text, json, { paths, stops, limits }));
    }
  }
  for (let part = 1; part < 16; part++) {
    ['before', 'after'].forEach(keep => print(`cut at ${part}/16, ${keep}`, cutLine(text, json, lengthM * part / 16, keep)));
  }
  for (let k = 0; k < points.length; k += 7) {
    const { lonLat: [lon, lat] } = points[k];
    put(`point ${k} moved`, movedPoint(text, json, points[k], [lon + 4e-6, lat + 4e-6]));
    if (goesOn(lines, points[k])) {
      put(`point behind ${k}`, insertedPoint(text, json, points[k],
        [(lon + points[k + 1].lonLat[0]) / 2, (lat + points[k + 1].lonLat[1]) / 2]));
    }
    if (keptBecause(lines, points[k]) === null) {
      put(`point ${k} taken out`, removedPoint(text, json, points[k]));
    }
  }
  put('drawn back', drawnOn(text, json, 'Back', points.slice(-40).reverse().map(({ lonLat }) => lonLat)));
}
