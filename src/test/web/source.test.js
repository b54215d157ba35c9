/** Rules every file of the page keeps; read from the files themselves. */
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import test from 'node:test';

const WEB = fileURLToPath(new URL('../../../web/', import.meta.url));
const FILES = readdirSync(WEB, { recursive: true, withFileTypes: true })
  .filter(entry => entry.isFile())
  .map(entry => `${entry.path ?? entry.parentPath}/${entry.name}`.replaceAll('//', '/'));
const text = name => readFileSync(name, 'utf8');
const named = (...endings) => FILES.filter(name => endings.some(ending => name.endsWith(ending)));

test('the page is there', () => {
  assert.ok(named('.js').length > 20, `${FILES.length} files`);
  assert.equal(named('index.html').length, 1);
});

test('nothing imported ever becomes markup', () => {
  for (const name of named('.js')) {
    assert.doesNotMatch(text(name),
      /innerHTML|outerHTML|insertAdjacentHTML|document\.write|DOMParser|\beval\(|new Function/, name);
  }
});

test('nothing is loaded from another host', () => {
  for (const name of named('.js', '.css', '.html', '.svg')) {
    const hosts = [...text(name).matchAll(/(?:https?:)?\/\/[\w.-]+\.\w+[^\s'"`)]*/g)].map(([url]) => url)
      .filter(url => url !== 'http://www.w3.org/2000/svg');
    assert.deepEqual(hosts, [], name);
  }
});

test('the content security policy has nothing inline to refuse', () => {
  for (const name of named('.html')) {
    assert.doesNotMatch(text(name), /<style|style=|\son\w+=|<script(?![^>]*\ssrc=)/, name);
  }
  for (const name of named('.js')) {
    assert.doesNotMatch(text(name), /setAttribute\(\s*'style'|[{,]\s*style:/, name);
  }
});

test('numbers become words in format.js alone', () => {
  for (const name of named('.js').filter(file => !file.endsWith('/format.js'))) {
    assert.doesNotMatch(text(name), /0\.0254|0\.3048|1609|toLocaleString|Intl\./, name);
  }
});

test('nothing but panels, the cab and what starts the page touches the document', () => {
  // preferences.js is handed the window whose storage it reads.
  const free = named('.js').map(name => name.slice(WEB.length))
    .filter(name => !/^(panels|cab)\/|^(app|dom|page\/preferences)\.js$/.test(name));
  assert.ok(free.length >= 80, `${free.length}`);
  for (const name of free) {
    assert.doesNotMatch(text(WEB + name), /\bdocument\.|\bwindow\.|from '[./]+\/(?:panels\/|dom\.js)/, name);
  }
});

test('no line is longer than 120 columns', () => {
  for (const name of named('.js', '.css', '.html')) {
    text(name).split('\n').forEach((line, index) => assert.ok(line.length <= 120, `${name}:${index + 1}`));
  }
});

test('every import inside the page exists', () => {
  for (const name of named('.js')) {
    for (const [, path] of text(name).matchAll(/from '(\.[^']+)'/g)) {
      const target = new URL(path, `file://${name}`).pathname;
      assert.ok(FILES.includes(target), `${name} imports ${path}`);
    }
  }
});
