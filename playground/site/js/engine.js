// Asks the library, which works in two workers: one draws, and is always free to;
// the other writes sheets and files, which takes longer. Of drawings only the
// newest matters: while one is made, those asked for after it replace each other.

import { start } from "./library.js";

// A worker and what has been asked of it.
class Asked {
  #waiting = new Map();
  #count = 0;

  constructor(onBroken) {
    this.worker = start("engine-worker.js", onBroken);
    this.worker.onmessage = ({ data }) => this.#take(data);
  }

  ask(ask, request) {
    const id = ++this.#count;
    this.worker.postMessage({ id, ask, request });
    return new Promise((resolve, reject) => this.#waiting.set(id, { resolve, reject }));
  }

  #take({ id, answer, broken }) {
    const { resolve, reject } = this.#waiting.get(id);
    this.#waiting.delete(id);
    if (broken === undefined) resolve(answer);
    else reject(new Error(broken));
  }
}

export class Engine {
  #drawer;
  #writer = null;
  #drawing = false;
  #waiting = null;

  /** onDrawn is called with the answer to every drawing, onBroken if the library fails as a whole. */
  constructor(onDrawn, onBroken) {
    this.onDrawn = onDrawn;
    this.onBroken = onBroken;
    this.#drawer = new Asked(onBroken);
  }

  /** Asks for anything that the library offers; resolves to its answer, rejects if there is none. */
  ask(ask, request) {
    if (ask !== "sheet" && ask !== "file") return this.#drawer.ask(ask, request);
    this.#writer ??= new Asked(this.onBroken);
    return this.#writer.ask(ask, request);
  }

  /** Asks for a drawing of a song. */
  draw(song) {
    this.#waiting = { song, asked: performance.now() };
    if (!this.#drawing) this.#drawNext();
  }

  async #drawNext() {
    this.#drawing = true;
    while (this.#waiting) {
      const { song, asked } = this.#waiting;
      this.#waiting = null;
      try {
        const answer = await this.ask("draw", { song });
        if (!this.#waiting) this.onDrawn(answer, song, asked);
      } catch (error) {
        this.onBroken(error.message);
      }
    }
    this.#drawing = false;
  }
}
