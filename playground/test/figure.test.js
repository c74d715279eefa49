import { test } from "node:test";
import assert from "node:assert/strict";
import { insert, join, press, put, read, remove, slots, split, stroke, write, MOST_SLOTS } from "../site/js/figure.js";

const TEXTS = ["5 3 2 1 2 3", "5d 3 2u 1", "1/8 root 5: 5 - 3 . 2 1", "6 4 3 | 2 1 2", "12 11 10d", "root 4: 4 3"];

test("what is read is written the same", () => {
  for (const text of TEXTS) assert.equal(write(read(text)), text);
});

test("what is no figure in canonical form is null", () => {
  for (const text of ["", "5 x", "5dd", "123", "5 3 |", "1/8:"]) assert.equal(read(text), null, text);
});

test("a press plucks, and again goes through the own strokes and back", () => {
  let f = read("5 3");
  const seen = [];
  for (let i = 0; i < 4; i++) seen.push(write((f = press(f, 1, 1))));
  assert.deepEqual(seen, ["5 1", "5 1d", "5 1u", "5 1"]);
});

test("a press on a rest or on what rings plucks there", () => {
  assert.equal(write(press(read("5 - ."), 1, 2)), "5 2 .");
  assert.equal(write(press(read("5 - ."), 2, 3)), "5 - 3");
});

test("an own stroke is given and taken away, and only to what is plucked", () => {
  assert.equal(write(stroke(read("5 3"), 1, "u")), "5 3u");
  assert.equal(write(stroke(read("5 3u"), 1, "u")), "5 3");
  assert.equal(write(stroke(read("5 -"), 1, "u")), "5 -");
});

test("slots are counted over bars", () => {
  const f = read("6 4 | 2 1");
  assert.equal(slots(f).length, 4);
  assert.equal(write(put(f, 2, { kind: "rest" })), "6 4 | . 1");
  assert.equal(write(insert(f, 2, { kind: "hold" })), "6 4 | - 2 1");
  assert.equal(write(insert(f, 4, { kind: "hold" })), "6 4 | 2 1 -");
  assert.equal(write(remove(remove(f, 3), 2)), "6 4");
});

test("the last slot stays, and there is an end to adding", () => {
  assert.equal(write(remove(read("5"), 0)), "5");
  let f = read("5");
  for (let i = 0; i < 400; i++) f = insert(f, 0, { kind: "hold" });
  assert.equal(slots(f).length, MOST_SLOTS);
});

test("no edit changes the figure that it was given", () => {
  const f = read("1/8: 5 3 | 2 1");
  press(f, 0, 6), put(f, 0, { kind: "rest" }), insert(f, 0, { kind: "rest" }), remove(f, 0), stroke(f, 0, "d");
  assert.equal(write(f), "1/8: 5 3 | 2 1");
});

test("one of several figures is put back in its place", () => {
  assert.equal(join(split("5 3; 6 4;1"), 1, "2"), "5 3; 2; 1");
});
