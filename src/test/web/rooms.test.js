/** Which folder of the page may use which, and that no module stands on itself. */
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import test from 'node:test';

/**
 * Each room with those it may use. A room is a folder; a module that starts a page, and the one that makes elements,
 * are rooms of their own. Loosening a row is a decision written into docs/decisions.md.
 */
const MAY_USE = {
  'dom.js': [],
  text: [],
  report: ['text'],
  exchange: [],
  limits: ['exchange', 'text'],
  rig: ['exchange', 'text'],
  line: ['exchange', 'text'],
  survey: ['text'],
  corner: ['line', 'survey', 'text'],
  drawing: ['line', 'report', 'rig', 'text'],
  page: ['drawing', 'exchange', 'limits', 'report', 'rig', 'text'],
  import: ['exchange', 'limits', 'page', 'text'],
  merge: ['exchange', 'limits', 'page', 'rig', 'text'],
  project: ['exchange', 'limits', 'page', 'rig'],
  'panels/parts': ['dom.js', 'drawing', 'limits', 'report'],
  'panels/passage': ['dom.js', 'drawing', 'panels/parts', 'report', 'text'],
  'panels/survey': ['dom.js', 'drawing', 'panels/parts', 'report', 'survey', 'text'],
  'panels/corner': ['corner', 'dom.js', 'drawing', 'line', 'panels/parts', 'report', 'survey', 'text'],
  'panels/hazard': [
    'dom.js', 'drawing', 'panels/corner', 'panels/parts', 'panels/passage', 'panels/survey', 'report', 'survey', 'text',
  ],
  'panels/map': ['corner', 'dom.js', 'drawing', 'line', 'panels/parts', 'report', 'survey', 'text'],
  'panels/strip': ['dom.js', 'drawing', 'panels/parts', 'report', 'survey', 'text'],
  'panels/line': ['dom.js', 'line', 'panels/parts', 'report', 'text'],
  'panels/loads': ['dom.js', 'drawing', 'exchange', 'limits', 'panels/parts', 'report', 'rig', 'text'],
  'panels/rig': ['dom.js', 'drawing', 'rig', 'text'],
  'panels/plan': ['cab', 'dom.js', 'drawing', 'exchange', 'page', 'panels/parts', 'report', 'rig', 'text'],
  'panels/compare': ['dom.js', 'drawing', 'panels/parts', 'report', 'rig', 'text'],
  'panels/import': ['dom.js', 'exchange', 'import', 'line', 'panels/map', 'panels/parts', 'report', 'text'],
  'panels/project': ['dom.js', 'exchange', 'limits', 'merge', 'panels/parts', 'project', 'rig'],
  'panels/page': ['dom.js', 'exchange', 'import', 'page', 'panels/parts', 'report', 'rig', 'text'],
  'app.js': [
    'cab', 'corner', 'exchange', 'import', 'limits', 'line', 'merge', 'page', 'project', 'rig', 'survey',
    'panels/compare', 'panels/hazard', 'panels/import', 'panels/line', 'panels/loads', 'panels/map', 'panels/page',
    'panels/parts', 'panels/plan', 'panels/project', 'panels/rig', 'panels/strip', 'panels/survey',
  ],
  cab: [],
  'cab/views': ['cab', 'dom.js', 'text'],
  'cab/app.js': ['cab', 'cab/views', 'dom.js'],
};

const WEB = fileURLToPath(new URL('../../../web/', import.meta.url));
const MODULES = readdirSync(WEB, { recursive: true, withFileTypes: true })
  .filter(entry => entry.isFile() && entry.name.endsWith('.js'))
  .map(entry => relative(WEB, join(entry.path ?? entry.parentPath, entry.name)));
const USES = new Map(MODULES.map(name => [name, usedBy(name)]));

function usedBy(name) {
  const text = readFileSync(WEB + name, 'utf8');
  return [...text.matchAll(/^(?:import|export|\})[^'"\n]*['"](\.[^'"]+)['"]|\bimport\(\s*['"](\.[^'"]+)['"]/gm)]
    .map(([, fixed, later]) => join(dirname(name), fixed ?? later))
    .filter(used => !used.startsWith('lib/'));
}

const roomOf = name => (name.endsWith('app.js') || dirname(name) === '.' ? name : dirname(name));

/** One of `names` that is reached from itself, with the way there; null where there is none. */
function circle(names, next) {
  const done = new Set();
  const follow = (name, way) => {
    if (way.includes(name)) {
      return [...way.slice(way.indexOf(name)), name];
    }
    if (done.has(name)) {
      return null;
    }
    for (const used of next(name)) {
      const found = follow(used, [...way, name]);
      if (found) {
        return found;
      }
    }
    done.add(name);
    return null;
  };
  return names.map(name => follow(name, [])).find(found => found !== null) ?? null;
}

test('the modules are found, and what they use', () => {
  assert.ok(MODULES.length > 150, `${MODULES.length}`);
  assert.ok([...USES.values()].flat().length > 500, `${[...USES.values()].flat().length}`);
  assert.ok(USES.get('app.js').includes('panels/map/map.js'));
  // Names on several lines are seen too.
  assert.ok(USES.get('line/placeactions.js').includes('line/places.js'));
});

test('a circle is found where there is one', () => {
  const drawn = { a: ['b', 'c'], b: ['d'], c: ['b'], d: ['e'], e: ['b'] };
  assert.deepEqual(circle(Object.keys(drawn), name => drawn[name]), ['b', 'd', 'e', 'b']);
  assert.equal(circle(['a', 'b'], name => ({ a: ['b'], b: [] })[name]), null);
});

test('no module stands on itself', () => {
  assert.equal(circle(MODULES, name => USES.get(name))?.join(' uses ') ?? null, null);
});

test('every room uses only what the table says', () => {
  for (const [name, used] of USES) {
    const room = roomOf(name);
    assert.ok(room in MAY_USE, `${room} has no row`);
    for (const other of used.map(roomOf).filter(one => one !== room)) {
      assert.ok(MAY_USE[room].includes(other), `${name} uses ${other}`);
    }
  }
});

test('every row is used, and the table has no circle', () => {
  const used = new Map(Object.keys(MAY_USE).map(room => [room, new Set()]));
  for (const [name, others] of USES) {
    others.forEach(other => used.get(roomOf(name)).add(roomOf(other)));
  }
  for (const [room, may] of Object.entries(MAY_USE)) {
    assert.deepEqual(may.filter(other => !used.get(room).has(other)), [], `${room} does not use`);
    assert.ok(MODULES.some(name => roomOf(name) === room), `${room} has no module`);
  }
  assert.equal(circle(Object.keys(MAY_USE), room => MAY_USE[room])?.join(' uses ') ?? null, null);
});

test('every name that is imported is used', () => {
  for (const name of MODULES) {
    const text = readFileSync(WEB + name, 'utf8');
    for (const [whole, names] of text.matchAll(/^import \{([^}]+)\} from '[^']+';$/gm)) {
      const rest = text.replace(whole, '');
      for (const one of names.split(',').map(part => part.trim().split(' as ').at(-1)).filter(Boolean)) {
        assert.match(rest, new RegExp(`(?<![\\w$])${one}(?![\\w$])`), `${name} imports ${one}`);
      }
    }
  }
});
