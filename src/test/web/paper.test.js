/**
 * Ink on paper: contrast by the formula of WCAG 2.2 (relative luminance; success criterion "Contrast (Minimum)"), on
 * both papers and in print.
 */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import test from 'node:test';

const css = name => readFileSync(new URL(`../../../web/css/${name}`, import.meta.url), 'utf8');
const INKS = ['ink', 'ink-soft', 'guide', 'clear', 'tight', 'contact', 'not-surveyed'];
const GROUNDS = ['paper', 'paper-shade', 'guide-wash', 'earth'];

function papers() {
  const blocks = ['paper.css', 'print.css']
    .flatMap(name => [...css(name).matchAll(/(:root[^{]*)\{([^}]*--desk: #[^}]*)\}/g)]);
  return blocks.map(([, selector, body]) => ({
    selector: selector.trim(),
    colors: Object.fromEntries([...body.matchAll(/--([\w-]+): (#[\da-f]{3,6})/g)]
      .map(([, name, value]) => [name, value])),
  }));
}

function luminance(hex) {
  const long = hex.length === 4 ? [...hex.slice(1)].map(c => c + c) : hex.slice(1).match(/../g);
  const [r, g, b] = long.map(c => parseInt(c, 16) / 255)
    .map(c => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a, b) {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}

test('the formula gives 21 for black on white and 1 for a color on itself', () => {
  assert.equal(contrast('#000', '#ffffff'), 21);
  assert.equal(contrast('#17664a', '#17664a'), 1);
});

test('every ink reads on every ground it meets: 4.5 to 1', () => {
  const found = papers();
  assert.equal(found.length, 4, found.map(paper => paper.selector).join('; '));
  for (const { selector, colors } of found) {
    for (const ink of INKS) {
      for (const ground of GROUNDS) {
        const ratio = contrast(colors[ink], colors[ground]);
        assert.ok(ratio >= 4.5, `${selector}: ${ink} on ${ground} is ${ratio.toFixed(2)}`);
      }
    }
    assert.ok(contrast(colors['ink-soft'], colors.desk) >= 4.5, `${selector}: soft ink on the desk`);
    for (const fill of ['steel', 'load', 'earth']) {
      assert.ok(contrast(colors.line, colors[fill]) >= 3, `${selector}: lines on ${fill}`);
    }
  }
});

test('the two ways to dark are the same dark', () => {
  const dark = papers().filter(({ selector, colors }) => /dark|system/.test(selector) && colors.paper !== '#fbfaf6');
  assert.equal(dark.length, 2);
  assert.deepEqual(dark[0].colors, dark[1].colors);
});
