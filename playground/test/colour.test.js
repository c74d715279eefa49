import { test } from "node:test";
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";

const css = readFileSync(new URL("../site/css/paper.css", import.meta.url), "utf8");

// The colours of each look, by name; the dark ones stand there twice.
const looks = [...css.matchAll(/\{\s*color-scheme: (\w+);([^}]+)\}/g)].map(([, scheme, body]) =>
  [scheme, Object.fromEntries([...body.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name, colour]) => [name, colour]))]);

// Relative luminance and contrast as in WCAG 2.2.
function luminance(colour) {
  const [r, g, b] = [1, 3, 5].map((i) => parseInt(colour.slice(i, i + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a, b) {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

test("contrast is computed as it should be", () => {
  assert.equal(contrast("#000000", "#ffffff"), 21);
  assert.ok(Math.abs(contrast("#777777", "#ffffff") - 4.48) < 0.01); // a well-known near miss
});

test("there is a light look, and the dark one is the same twice", () => {
  assert.deepEqual(looks.map(([scheme]) => scheme), ["light", "dark", "dark"]);
  assert.deepEqual(looks[1][1], looks[2][1]);
});

test("text has a contrast of 4.5 on every ground, lines that matter 3", () => {
  for (const [scheme, c] of looks) {
    for (const ground of ["paper", "leaf", "press"]) {
      for (const text of ["ink", "soft", "thread", "wrong", "lit"]) {
        assert.ok(contrast(c[text], c[ground]) >= 4.5, `${scheme}: ${text} on ${ground} ${contrast(c[text], c[ground]).toFixed(2)}`);
      }
      assert.ok(contrast(c.edge, c[ground]) >= 3, `${scheme}: edge on ${ground} ${contrast(c.edge, c[ground]).toFixed(2)}`);
    }
    assert.ok(contrast(c.paper, c.ink) >= 4.5 && contrast(c.paper, c.thread) >= 4.5, scheme);
  }
});
