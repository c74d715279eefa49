// The loader: hands requests to the library and its answers back. weft.d.ts
// documents what it exports.

import { Go, scope } from "./go.js";

export const VERSION = 1;

export async function load(
  source = new URL("./weft.wasm", import.meta.url),
  sheets = new URL("./sheets.wasm", import.meta.url),
  drawings = new URL("./drawings.wasm", import.meta.url),
) {
  const main = await Program.load(source);
  const reading = once(sheets);
  const drawing = once(drawings);
  const writer = (request) => {
    const format = request?.as?.format;
    return format === "svg" || format === "midi" ? drawing() : reading();
  };
  const ask = (name, request) => main.ask(name, request).answer;
  return Object.freeze({
    version: VERSION,
    check: (request) => ask("check", request),
    choices: () => ask("choices", {}),
    arrange: (request) => ask("arrange", request),
    sheet: async (request) => (await writer(request)).ask("sheet", request).answer,
    file: async (request) => file(request?.as?.format === "wav" ? main : await writer(request), request),
    shapes: (request) => ask("shapes", request),
    names: (request) => ask("names", request),
    path: (request) => ask("path", request),
    capo: (request) => ask("capo", request),
    sound: (request) => sound(main, request),
  });
}

// once returns a function that loads a program when it is first called, and again
// only where that failed.
function once(source) {
  let program;
  return () => (program ??= Program.load(source).catch((error) => {
    program = undefined;
    throw error;
  }));
}

function file(program, request) {
  const { answer, bytes } = program.ask("file", request);
  return answer.ok ? { ...answer, result: { ...answer.result, bytes } } : answer;
}

function sound(program, request) {
  const { answer } = program.ask("sound", request);
  if (!answer.ok) {
    return answer;
  }
  const { player, rate } = answer.result;
  const ask = (name, more) => program.ask(name, { player, ...more }).answer;
  const result = Object.freeze({
    rate,
    fill: (left, right) => program.fill(player, left, right),
    seek: (bar) => ask("seek", { bar }),
    tempo: (tempo) => ask("tempo", { tempo }),
    position: () => ask("position"),
    close: () => void ask("close"),
  });
  return { ...answer, result };
}

// A Program is one file of the library at work. If it dies, which takes more than
// a defect (memory that gives out, say), the call is answered with an error, and
// the next one starts it afresh; players do not survive that.
class Program {
  static async load(source) {
    const program = new Program();
    program.module = await compile(await source);
    const go = new Go();
    program.start(go, await WebAssembly.instantiate(program.module, go.importObject));
    if (program.exports?.version !== VERSION) {
      throw new Error(`the library answers version ${program.exports?.version}, its loader asks for ${VERSION}`);
    }
    return program;
  }

  start(go, instance) {
    this.stop();
    this.go = go;
    go.exit = () => this.stop();
    scope.weftLoaded = (exports) => {
      this.exports = exports;
    };
    go.run(instance).catch(() => {});
    delete scope.weftLoaded;
  }

  stop() {
    this.exports = undefined;
    for (const timer of this.go?._scheduledTimeouts.values() ?? []) {
      clearTimeout(timer);
    }
    this.go = undefined;
  }

  // While a call goes on the program counts as dead: whatever throws, and be it
  // for want of stack, the next call finds it so.
  call(name, ...args) {
    try {
      if (!this.exports) {
        const go = new Go();
        this.start(go, new WebAssembly.Instance(this.module, go.importObject));
      }
      const { exports, go } = this;
      this.exports = undefined;
      const result = exports[name](...args);
      if (this.go === go && result != null) {
        this.exports = exports;
        return result;
      }
    } catch (error) {
      console.error(error);
    }
    this.stop();
    return undefined;
  }

  ask(name, request) {
    const text = JSON.stringify({ version: VERSION, ask: name, request: request ?? null });
    const result = this.call("answer", text);
    return result ? { answer: JSON.parse(result[0]), bytes: result[1] } : { answer: died() };
  }

  fill(player, left, right) {
    const result = this.call("fill", player, bytesOf(left), bytesOf(right));
    return result ? JSON.parse(result) : died();
  }
}

function died() {
  const message = "the library came to an end and will be started afresh";
  return { version: VERSION, ok: false, error: { code: "internal", message, field: "", place: null } };
}

function bytesOf(samples) {
  if (!(samples instanceof Float32Array)) {
    throw new TypeError("fill wants two Float32Arrays");
  }
  return new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength);
}

async function compile(source) {
  if (source instanceof WebAssembly.Module) {
    return source;
  }
  if (source instanceof ArrayBuffer || ArrayBuffer.isView(source)) {
    return WebAssembly.compile(source);
  }
  if (typeof Response === "function" && source instanceof Response) {
    return compileResponse(source);
  }
  const address = new URL(source, import.meta.url);
  if (address.protocol === "file:" && typeof process === "object") {
    const { readFile } = await import(/* webpackIgnore: true */ "node:fs/promises");
    return WebAssembly.compile(await readFile(address));
  }
  return compileResponse(await fetch(address));
}

// Some servers do not know what WebAssembly is; it is then not compiled as it
// comes but all at once.
async function compileResponse(response) {
  if (!response.ok) {
    throw new Error(`${response.url}: ${response.status} ${response.statusText}`);
  }
  if (WebAssembly.compileStreaming && response.headers.get("Content-Type") === "application/wasm") {
    return WebAssembly.compileStreaming(response);
  }
  return WebAssembly.compile(await response.arrayBuffer());
}
