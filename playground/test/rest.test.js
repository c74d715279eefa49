import { test } from "node:test";
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { History } from "../site/js/history.js";
import { phase, slowed } from "../site/js/rounds.js";
import { texts } from "../site/js/text.js";
import { FIELDS } from "../site/js/state.js";

const site = new URL("../site/", import.meta.url);
const html = readFileSync(new URL("index.html", site), "utf8");
const scripts = readdirSync(new URL("js/", site)).map((name) => [name, readFileSync(new URL(`js/${name}`, site), "utf8")]);

test("undo and redo go back and forth, and quick changes to one field are one step", () => {
  const h = new History("");
  h.push("A", "chords", 0), h.push("Am", "chords", 300), h.push("Am |", "chords", 600);
  h.push("x", "title", 700), h.push("Am | F", "chords", 9000);
  assert.equal(h.undo(), "x");
  assert.equal(h.undo(), "Am |");
  assert.equal(h.undo(), "");
  assert.equal(h.undo(), "");
  assert.equal(h.canUndo, false);
  assert.equal(h.redo(), "Am |");
  h.push("new", "", 9100);
  assert.equal(h.canRedo, false);
  assert.equal(h.undo(), "Am |");
});

test("what follows an undo at once is a step of its own", () => {
  const h = new History("a");
  h.push("b", "chords", 0), h.undo(), h.push("c", "chords", 1);
  assert.equal(h.undo(), "a");
});

test("rounds go from look to glance to away and begin again", () => {
  const plan = { look: 2, glance: 1, away: 3 };
  const names = Array.from({ length: 8 }, (_, bar) => phase(plan, bar));
  assert.deepEqual(names.map((p) => p.name), ["look", "look", "glance", "away", "away", "away", "look", "look"]);
  assert.deepEqual(names.map((p) => p.left), [2, 1, 1, 3, 2, 1, 2, 1]);
  assert.deepEqual(names.map((p) => p.round), [1, 1, 1, 1, 1, 1, 2, 2]);
});

test("a part of a round may be left out, and without any the sheet stays", () => {
  assert.equal(phase({ look: 0, glance: 0, away: 2 }, 5).name, "away");
  assert.equal(phase({ look: 0, glance: 0, away: 0 }, 5).name, "look");
});

test("a repair is slower and stays within what can be played", () => {
  assert.equal(slowed(80, 60), 48);
  assert.equal(slowed(12, 20), 10);
  assert.equal(slowed(400, 100), 400);
});

test("every language has every text, with the same values in it", () => {
  const values = (text) => [...text.matchAll(/\{(\w+)\}/g)].map((m) => m[1]).sort().join();
  for (const [language, table] of Object.entries(texts)) {
    assert.deepEqual(Object.keys(table).sort(), Object.keys(texts.en).sort(), language);
    for (const [key, text] of Object.entries(table)) {
      assert.notEqual(text.trim(), "", `${language} ${key}`);
      assert.equal(values(text), values(texts.en[key]), `${language} ${key}`);
    }
    assert.match(html, new RegExp(`<option value="${language}"`));
  }
});

test("every text that the page asks for is there, and none is there in vain", () => {
  const asked = new Set([...html.matchAll(/data-t="([^"]+)"/g)].map((m) => m[1]));
  const stems = new Set();
  for (const [name, text] of scripts) {
    if (name === "text.js") continue;
    for (const m of text.matchAll(/\bt\("([^"]+)"/g)) asked.add(m[1]);
    for (const m of text.matchAll(/\bt\([^")]*(?:"\w+" )?\? "(\w+)" : "(\w+)"/g)) asked.add(m[1]).add(m[2]);
    for (const m of text.matchAll(/\bt\(`([\w]+\.)\$\{/g)) stems.add(m[1]);
  }
  for (const key of asked) assert.ok(key in texts.en, key);
  for (const key of Object.keys(texts.en)) {
    assert.ok(asked.has(key) || [...stems].some((stem) => key.startsWith(stem)), `${key} is not used`);
  }
});

test("the page says in English what the English table says, before any script runs", () => {
  for (const [, key, text] of html.matchAll(/data-t="([^"]+)"[^>]*>([^<]+)</g)) assert.equal(text, texts.en[key], key);
});

test("every field of the state has a control, and its options are all offered", () => {
  for (const [name, field] of Object.entries(FIELDS)) {
    assert.match(html, new RegExp(`data-field="${name}"`), name);
    for (const option of field.options ?? []) assert.match(html, new RegExp(`value="${option}"|<option>${option}<`), `${name} ${option}`);
  }
});

test("the options of a field are those that the library declares", () => {
  const declared = readFileSync(new URL("../../wasm/weft.d.ts", import.meta.url), "utf8");
  const types = { spelling: "Spelling", hand: "Hand", strokes: "Strokes", fit: "Fit", change: "Change", fill: "Fill", paper: "Paper", material: "Material", click: "Click" };
  for (const [name, type] of Object.entries(types)) {
    const options = declared.match(new RegExp(`type ${type} = ([^;]+);`))[1].split("|").map((s) => s.trim().replaceAll('"', ""));
    assert.deepEqual(FIELDS[name].options, options, name);
  }
});

test("nothing is asked of another place", () => {
  for (const [name, text] of [["index.html", html], ...scripts]) {
    const found = text.replaceAll("http://www.w3.org/2000/svg", "").match(/https?:\/\/\S+/g);
    assert.equal(found, null, `${name}: ${found}`);
  }
});
