// Tests of the loader in Node. WEFT is the folder of the package, ANSWERS the
// file of what the library answers natively.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { resolve } from "node:path";
import { test } from "node:test";
import { pathToFileURL } from "node:url";
import { Worker } from "node:worker_threads";

const folder = pathToFileURL(resolve(process.env.WEFT) + "/");
const { questions, sound } = JSON.parse(await readFile(process.env.ANSWERS, "utf8"));

const namesBefore = new Set(Object.getOwnPropertyNames(globalThis));
const { load, VERSION } = await import(new URL("weft.js", folder));
const weft = await load();

const sum = (bytes) => createHash("sha256").update(bytes).digest("hex");

/** What an answer is compared by: the bytes of a file by their sum. */
function summed(answer) {
  const bytes = answer.ok ? answer.result.bytes : undefined;
  if (bytes === undefined) {
    return { answer };
  }
  const { bytes: _, ...result } = answer.result;
  return { answer: { ...answer, result }, file: sum(bytes) };
}

const asked = questions.filter((question) => question.ask in weft);

test("every operation answers as the library does natively, files byte for byte", async () => {
  assert.ok(asked.length > 150, `${asked.length} questions`);
  const operations = new Set(asked.map((question) => question.ask));
  assert.deepEqual([...operations].sort(), Object.keys(weft).filter((name) => name !== "version").sort());
  for (const { name, ask, request, answer, file } of asked) {
    const got = summed(await weft[ask](request));
    assert.deepEqual(got, file === undefined ? { answer } : { answer, file }, name);
  }
});

test("nothing is left in the global scope", () => {
  assert.deepEqual(Object.getOwnPropertyNames(globalThis).filter((name) => !namesBefore.has(name)), []);
});

test("version", () => {
  assert.equal(VERSION, 1);
  assert.equal(weft.version, 1);
});

const worker = `
  import { parentPort, workerData } from "node:worker_threads";
  const { load } = await import(workerData.module);
  const weft = await load();
  for (const { name, ask, request } of workerData.asked) {
    parentPort.postMessage({ name, answer: await weft[ask](request) });
  }
`;

test("in a worker the answers are the same, and pass between threads", async () => {
  const data = { module: new URL("weft.js", folder).href, asked };
  const thread = new Worker(new URL(`data:text/javascript,${encodeURIComponent(worker)}`), { workerData: data });
  const answers = new Map();
  thread.on("message", ({ name, answer }) => answers.set(name, summed(answer)));
  const code = await new Promise((done, fail) => thread.on("exit", done).on("error", fail));
  assert.equal(code, 0);
  assert.equal(answers.size, asked.length);
  for (const { name, answer, file } of asked) {
    assert.deepEqual(answers.get(name), file === undefined ? { answer } : { answer, file }, name);
  }
});

test("a player fills as the library does natively", () => {
  const opened = weft.sound(sound.request);
  assert.ok(opened.ok);
  assert.equal(opened.result.rate, sound.request.rate);
  const hash = createHash("sha256");
  for (const filled of sound.filled) {
    // Somewhere within larger buffers, as a worklet may have them.
    const left = new Float32Array(new ArrayBuffer(4 * sound.size + 8), 8);
    const right = new Float32Array(sound.size);
    assert.deepEqual(opened.result.fill(left, right), filled);
    hash.update(new Uint8Array(left.buffer, 8)).update(new Uint8Array(right.buffer));
  }
  assert.equal(hash.digest("hex"), sound.samples);
  assert.equal(opened.result.tempo(60).result.ended, false);
  assert.equal(opened.result.tempo(5).error.code, "impossible");
  assert.equal(opened.result.seek(2).result.bar, 2);
  assert.equal(opened.result.seek(9).error.field, "bar");
  assert.equal(opened.result.position().result.frame, sound.size * sound.filled.length);
  assert.equal(opened.result.fill(new Float32Array(2), new Float32Array(3)).error.code, "request");
  assert.equal(opened.result.fill(new Float32Array(70000), new Float32Array(70000)).error.code, "request");
  assert.throws(() => opened.result.fill([], []), TypeError);
  opened.result.close();
  assert.equal(opened.result.position().error.code, "request");
  assert.equal(opened.result.fill(new Float32Array(2), new Float32Array(2)).error.code, "request");
});

test("texts of JavaScript are answered in its own units", () => {
  const text = "Am | 🎸🎸 \ud83c | G";
  const { place } = weft.check({ notation: "chords", text }).error;
  assert.equal(place.source, text);
  assert.equal(text.slice(place.offset, place.offset + place.length), "\ud83c");
});

test("what is no plain data is an error of the program that asks", () => {
  for (const request of [undefined, null, 5, "text", [], { song: undefined }, { song: { chords: NaN } }]) {
    const answer = weft.arrange(request);
    assert.equal(answer.ok, false);
    assert.equal(answer.error.code, "request");
  }
  assert.throws(() => weft.arrange({ song: 5n }), TypeError);
});

test("ten megabytes of text are refused", () => {
  const answer = weft.check({ notation: "chords", text: "Am | ".repeat(2_000_000) });
  assert.equal(answer.ok, false);
  assert.match(answer.error.message, /the limit is/);
});

test("the library is loaded from wherever it lies", async (t) => {
  const bytes = await readFile(new URL("weft.wasm", folder));
  const sheets = await readFile(new URL("sheets.wasm", folder));
  const drawings = await readFile(new URL("drawings.wasm", folder));
  const server = createServer((request, response) => {
    const types = { "/weft.wasm": "application/wasm", "/sheets.wasm": "application/wasm", "/drawings.wasm": "application/wasm", "/plain": "text/plain" };
    response.writeHead(types[request.url] ? 200 : 404, { "Content-Type": types[request.url] ?? "text/plain" });
    response.end({ "/sheets.wasm": sheets, "/drawings.wasm": drawings }[request.url] ?? bytes);
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  t.after(() => server.close());
  const at = `http://127.0.0.1:${server.address().port}`;
  const sources = {
    bytes, buffer: bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length),
    module: await WebAssembly.compile(bytes), file: new URL("weft.wasm", folder), name: new URL("weft.wasm", folder).href,
    address: `${at}/weft.wasm`, plain: `${at}/plain`, response: await fetch(`${at}/weft.wasm`), promise: fetch(`${at}/plain`),
  };
  for (const [name, source] of Object.entries(sources)) {
    const other = await load(source);
    assert.ok(other.choices().ok, name);
  }
  const song = { chords: "Am=x02210", figures: "5 3 2 1" };
  const served = await load(`${at}/weft.wasm`, `${at}/sheets.wasm`, `${at}/drawings.wasm`);
  assert.ok((await served.sheet({ song, as: { format: "text" } })).ok);
  assert.ok((await served.sheet({ song, as: { format: "svg" } })).ok);
  await assert.rejects(load(`${at}/nowhere`), /404/);
  await assert.rejects(load(new Uint8Array([1, 2, 3])), WebAssembly.CompileError);
  await assert.rejects(load(new URL("nothing.wasm", folder)));
  const half = await load(bytes, `${at}/nowhere`);
  await assert.rejects(half.sheet({ song, as: { format: "text" } }), /404/);
  await assert.rejects(half.sheet({ song, as: { format: "text" } }), /404/);
  assert.ok((await half.file({ song, as: { format: "wav", rate: 8000 } })).ok, "sound needs no sheets.wasm");
});

test("a program that dies is started afresh", (t) => {
  t.mock.method(console, "error", () => {});
  t.mock.method(console, "log", () => {});
  const request = { song: { chords: "Am | F | C | G", figures: "5 3 2 1" } };
  const before = weft.arrange(request);

  // The stack gives out in the library, or just before it.
  let tried = 0;
  const sink = () => {
    try {
      sink();
    } catch (error) {
      if (tried++ === 8) {
        weft.arrange(request);
      }
      throw error;
    }
  };
  assert.throws(sink, RangeError);
  assert.deepEqual(weft.arrange(request), before);

  // What typed arrays are changes under its feet: it panics, or JavaScript throws.
  for (const instance of [true, false]) {
    const player = weft.sound(sound.request).result;
    const Uint8 = globalThis.Uint8Array;
    globalThis.Uint8Array = class {
      constructor(_, __, length) {
        this.length = length;
      }
      static [Symbol.hasInstance]() {
        return instance;
      }
    };
    let filled;
    try {
      filled = player.fill(new Float32Array(10), new Float32Array(10));
    } finally {
      globalThis.Uint8Array = Uint8;
    }
    assert.equal(filled.error?.code, "internal");
    assert.equal(player.position().error.code, "request", "players do not survive");
    assert.deepEqual(weft.arrange(request), before);
  }
});

test("two libraries do not disturb each other", async () => {
  const other = await load();
  const a = weft.sound(sound.request).result;
  const b = other.sound(sound.request).result;
  const left = new Float32Array(100);
  const right = new Float32Array(100);
  assert.equal(a.fill(left, right).result.frame, 100);
  assert.equal(a.fill(left, right).result.frame, 200);
  assert.equal(b.fill(left, right).result.frame, 100);
  a.close();
  assert.ok(b.position().ok);
});
