import { test } from "node:test";
import assert from "node:assert/strict";
import { COMFORTABLE, decode, encode } from "../site/js/link.js";
import { FIELDS, allows, fresh, same, song } from "../site/js/state.js";

// A generator with a seed, so that a failure comes again (Park and Miller 1988).
function* numbers(seed) {
  for (let n = seed; ; ) yield (n = (n * 48271) % 2147483647);
}

const WEIRD = ["Am | F=xx3211 | C G/B:2 | E7 :|", "a=b&c~d+e%20%", "ß♭♯–„“", "\u0000\n\t", "#1&x", "😀 | 𝄪", "</script><img>", ""];

function anyState(random) {
  const pick = (n) => random.next().value % n;
  const value = (field) => {
    if (field.kind === "text") return WEIRD[pick(WEIRD.length)].slice(0, field.longest);
    if (field.kind === "number") return field.least + pick(field.most - field.least + 1);
    return field.kind === "choice" ? field.options[pick(field.options.length)] : pick(2) === 1;
  };
  return Object.fromEntries(Object.entries(FIELDS).map(([name, field]) => [name, value(field)]));
}

test("every state comes back from its link, and nothing is lost", () => {
  const random = numbers(7);
  for (let i = 0; i < 2000; i++) {
    const state = anyState(random);
    const back = decode(`#${encode(state)}`);
    assert.deepEqual(back.lost, []);
    assert.deepEqual(back.state, state);
  }
});

test("a link holds only what an address may hold, and no bar line", () => {
  const random = numbers(11);
  for (let i = 0; i < 500; i++) {
    assert.match(encode(anyState(random)), /^[A-Za-z0-9\-._~!$&'()*+,;=:@/?%]*$/, "RFC 3986, section 3.5");
  }
});

test("sixteen bars with every shape and figure named stay under 2,000 characters", () => {
  const bar = "F#m7b5/A=xx-10-12-12-12@2:2 Bbmaj7=x-13-12-10-10-10@1:2";
  const state = { ...fresh(), title: "A title of some length", chords: Array(16).fill(bar).join(" | "), figures: "1/16 root 6: 6 4 3 2 1 2 3 4 6 4 3 2 1 2 3 4; 6 3 2 1", tempo: 66, capo: 3 };
  const address = `https://playground.example.org/some/path/#${encode(state)}`;
  assert.ok(address.length < COMFORTABLE, `${address.length}`);
});

test("links that were sent long ago open as they did then", () => {
  const old = [
    ["#1&chords=Am+~+F=xx3211+~+C+G/B+~+E7&figures=5+3+2+1+2+3+2+1", { chords: "Am | F=xx3211 | C G/B | E7", figures: "5 3 2 1 2 3 2 1", tempo: 80, meter: "4/4", fit: "contour" }],
    ["#1&chords=a+~+H7&figures=5d+3+2u+-&meter=6/8&tempo=66&spelling=german&once=1&fit=bass&capo=2", { chords: "a | H7", figures: "5d 3 2u -", meter: "6/8", tempo: 66, spelling: "german", once: true, fit: "bass", capo: 2 }],
  ];
  for (const [link, want] of old) {
    const { state, lost } = decode(link);
    assert.deepEqual(lost, []);
    assert.deepEqual(state, { ...fresh(), ...want });
  }
});

test("a broken link says what was lost and opens the rest", () => {
  const { state, lost } = decode("#2&chords=Am&tempo=9000&nonsense=1&meter=%E0%A4%A&figures=1+2&figures=3&hand=third&capo=-1&once=yes&click");
  assert.equal(state.chords, "Am");
  assert.equal(state.figures, "1 2");
  assert.deepEqual(lost.map(({ what, text }) => `${what} ${text}`), [
    "version 2", "value tempo=9000", "field nonsense=1", "code meter=%E0%A4%A", "twice figures=3", "value hand=third", "value capo=-1", "value once=yes", "value click",
  ]);
  for (const [name, field] of Object.entries(FIELDS)) if (!["chords", "figures"].includes(name)) assert.equal(state[name], field.fallback);
});

test("names that every object has are no fields", () => {
  const { lost } = decode("#1&__proto__=1&constructor=1&toString=1");
  assert.deepEqual(lost.map((l) => l.what), ["field", "field", "field"]);
});

test("whatever a fragment holds, each state that comes out is allowed", () => {
  const random = numbers(3);
  const alphabet = [..."#1&=+~%chordsfigurestempo 0129aZ\ud800é\u0000"];
  for (let i = 0; i < 3000; i++) {
    const text = Array.from({ length: random.next().value % 60 }, () => alphabet[random.next().value % alphabet.length]).join("");
    const found = decode(text);
    if (found) for (const name of Object.keys(FIELDS)) assert.ok(allows(name, found.state[name]), text);
  }
  assert.equal(decode(""), null);
  assert.equal(decode("#"), null);
});

test("ten megabytes are cut, and it is said", () => {
  const { lost } = decode(`#1&chords=${"A".repeat(1e7)}`);
  assert.ok(lost.some((l) => l.what === "length"));
});

test("half a surrogate pair does no harm", () => {
  assert.equal(decode(encode({ ...fresh(), title: "a\ud800b" })).state.title, "a\ufffdb");
});

test("a song holds what the library asks for, and no title that is empty", () => {
  assert.equal("title" in song(fresh()), false);
  assert.equal(song({ ...fresh(), title: "x" }).title, "x");
  assert.equal("paper" in song(fresh()), false);
  assert.ok(same(fresh(), fresh()));
  assert.ok(!same(fresh(), { ...fresh(), wide: true }));
});
