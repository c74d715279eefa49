// A figure as the lattice edits it: the head ("1/8 root 5"), and bars of slots.
// It reads what the library prints, so it needs no grammar of its own beyond
// spaces, bar lines and the colon; what it writes, the library reads again.
//
// A slot is { kind: "pluck", string, own: "", "d" or "u" }, { kind: "hold" } or
// { kind: "rest" }. All functions return a new figure.

/** The most slots that a figure may have. */
export const MOST_SLOTS = 256;

/** Reads one figure in canonical form; null if it is none. */
export function read(text) {
  const colon = text.indexOf(":");
  const head = colon < 0 ? "" : text.slice(0, colon).trim();
  const bars = text.slice(colon + 1).split("|").map((bar) => bar.trim().split(/\s+/).map(readSlot));
  return bars.flat().includes(null) ? null : { head, bars };
}

function readSlot(word) {
  if (word === "-") return { kind: "hold" };
  if (word === ".") return { kind: "rest" };
  const parts = /^(\d{1,2})([du]?)$/.exec(word);
  return parts && { kind: "pluck", string: Number(parts[1]), own: parts[2] };
}

/** Writes a figure. */
export function write({ head, bars }) {
  const body = bars.map((bar) => bar.map(writeSlot).join(" ")).join(" | ");
  return head ? `${head}: ${body}` : body;
}

function writeSlot(slot) {
  if (slot.kind === "hold") return "-";
  if (slot.kind === "rest") return ".";
  return `${slot.string}${slot.own}`;
}

/** The slots of all bars in turn. */
export function slots(figure) {
  return figure.bars.flat();
}

/** Puts a slot in the place of the one at an index. */
export function put(figure, index, slot) {
  return onBar(figure, index, (bar, at) => bar.with(at, slot));
}

/** Puts a slot before the one at an index; at the end it goes into the last bar. */
export function insert(figure, index, slot) {
  if (slots(figure).length >= MOST_SLOTS) return figure;
  return onBar(figure, index, (bar, at) => bar.toSpliced(at, 0, slot));
}

/** Takes the slot at an index out; a bar that is left empty goes with it. */
export function remove(figure, index) {
  if (slots(figure).length === 1) return figure;
  const less = onBar(figure, index, (bar, at) => bar.toSpliced(at, 1));
  return { ...less, bars: less.bars.filter((bar) => bar.length > 0) };
}

function onBar(figure, index, change) {
  let at = index;
  const last = figure.bars.length - 1;
  const bars = figure.bars.map((bar, i) => {
    const mine = at >= 0 && (at < bar.length || (i === last && at === bar.length));
    const changed = mine ? change(bar, at) : bar;
    at = mine ? -1 : at - bar.length;
    return changed;
  });
  return { ...figure, bars };
}

/** What a press on a string does: pluck it; on one that is plucked, go on to the next own stroke. */
export function press(figure, index, string) {
  const now = slots(figure)[index];
  if (now.kind !== "pluck" || now.string !== string) return put(figure, index, { kind: "pluck", string, own: "" });
  const own = { "": "d", d: "u", u: "" }[now.own];
  return put(figure, index, { ...now, own });
}

/** Gives the pluck at an index an own stroke, or takes it away again. */
export function stroke(figure, index, own) {
  const now = slots(figure)[index];
  if (now.kind !== "pluck") return figure;
  return put(figure, index, { ...now, own: now.own === own ? "" : own });
}

/** Splits the text of several figures, as the library prints them. */
export function split(text) {
  return text.split(";").map((one) => one.trim());
}

/** Puts one of several figures back into their text. */
export function join(texts, index, one) {
  return texts.with(index, one).join("; ");
}
