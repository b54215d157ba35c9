/** Prints every change that the page offers for the rigs that are named, made with the figures it gives as examples. */
import { readFileSync } from 'node:fs';
import { changesOf, copied, emptied } from '../../../web/rig/changes.js';

for (const file of process.argv.slice(2)) {
  const text = readFileSync(file, 'utf8');
  for (const [state, rig] of [['', text], [' without load', emptied(copied(text, 'Another'))]]) {
    const print = (title, made) => console.log(JSON.stringify({ title: title + state, file, text: made }));
    print('begun', rig);
    for (const { title, asked, make } of changesOf(JSON.parse(rig), 0)) {
      const given = Object.fromEntries(asked.map(({ key, example, choices }) => [key, example ?? choices.at(-1)[0]]));
      print(title, make(rig, given));
    }
  }
}
