// The library's program, compiled once for all workers of the page.

/** The compiled program; rejects if it cannot be had. */
export const program = compile(new URL("../weft/weft.wasm", import.meta.url));

async function compile(address) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${response.status} ${response.statusText}`);
  const known = response.headers.get("Content-Type") === "application/wasm";
  return known ? WebAssembly.compileStreaming(response) : WebAssembly.compile(await response.arrayBuffer());
}

/** Starts a worker and hands it the program. */
export function start(name, onBroken) {
  const worker = new Worker(new URL(name, import.meta.url), { type: "module" });
  worker.onerror = (event) => onBroken(event.message || name);
  program.then((module) => worker.postMessage({ program: module }), (error) => onBroken(error.message));
  return worker;
}
