/** Prints every change that the page offers for the rigs that are named, made with the figures it gives as examples. */
import { readFileSync } from 'node:fs';
import { changesOf, copied, emptied } from '../../../web/rig/changes.js';

for (const file of process.argv.slice(2)) {
  const text = readFileSync(file, 'utf8');
  const starts = [['', text], [' without load', emptied(copied(text, 'Another'))]];
  const lift = changesOf(JSON.parse(text), 0).find(({ key }) => key === 'lift-on');
  if (lift) {
    const which = lift.asked[0].choices[0][0];
    starts.push([' with one more lift axle', lift.make(text, { which, gap: '4 1/4 in', secondaryRise: '0 in' })]);
  }
  for (const [state, rig] of starts) {
    const print = (title, made) => console.log(JSON.stringify({ title: title + state, file, text: made }));
    print('begun', rig);
    for (const { title, asked, make } of changesOf(JSON.parse(rig), 0)) {
      const given = Object.fromEntries(asked.map(({ key, example, choices }) => [key, example ?? choices.at(-1)[0]]));
      print(title, make(rig, given));
    }
  }
}
