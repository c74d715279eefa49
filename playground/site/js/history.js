// Undo and redo over whole states, which are small. Changes to one field in
// quick succession count as one, so undo takes back a word and not a letter.

const MOST = 200;
const TOGETHER = 1200; // milliseconds

export class History {
  #past = [];
  #future = [];
  #last = { field: "", time: -Infinity };

  constructor(state) {
    this.now = state;
  }

  /** Takes in a new state. field says what changed; time is in milliseconds. */
  push(state, field, time) {
    const joins = field !== "" && field === this.#last.field && time - this.#last.time < TOGETHER;
    if (!joins) this.#past.push(this.now);
    if (this.#past.length > MOST) this.#past.shift();
    this.#future = [];
    this.#last = { field, time };
    this.now = state;
  }

  get canUndo() {
    return this.#past.length > 0;
  }

  get canRedo() {
    return this.#future.length > 0;
  }

  /** Goes one step back and returns the state there. */
  undo() {
    return this.#step(this.#past, this.#future);
  }

  /** Goes one step forward again. */
  redo() {
    return this.#step(this.#future, this.#past);
  }

  #step(from, to) {
    if (from.length === 0) return this.now;
    to.push(this.now);
    this.now = from.pop();
    this.#last = { field: "", time: -Infinity };
    return this.now;
  }
}
