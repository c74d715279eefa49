// Draws the part: a row for every few bars, and in it, on one scale of time, the
// names and boxes of the chords, the thread, the strokes, the count and the tab.
// The drawing is for the eye; the same facts stand in words beside it.

import { draw, make } from "./svg.js";
import { BOX, drawBox } from "./box.js";
import { height, layout, weave, xOf } from "./thread.js";

const LABEL = 34; // for the names of the strings
const GAP = 17; // between strings of the thread
const LINE = 12; // between lines of the tab
const NAME = 20;

/** Where things stand in a row, from the top, for so many strings; with a capo there are two names. */
export function bands(strings, capo) {
  const box = capo ? NAME + 16 : NAME;
  const thread = box + BOX.height + 16;
  const strokes = thread + (strings - 1) * GAP + 22;
  const count = strokes + 20;
  const tab = count + 16;
  return { box, thread, strokes, count, tab, end: tab + (strings - 1) * LINE + 14 };
}

/**
 * Draws a part into an element that is so many pixels wide, and returns its rows:
 * { element, picture, stops, lost, marks }. A row that is as it was in the sheet
 * before is kept, so that typing costs one row and not all. meter is as check
 * answers; tuned are the names of the strings, string 1 first.
 */
export function drawSheet(element, width, { part, meter, tuned }, before = []) {
  const plan = layout(part.passage, Math.max(200, width - LABEL - 8), Math.max(1, meter.beat));
  const sheet = { part, meter, tuned, plan, strings: tuned.length };
  sheet.bands = bands(sheet.strings, part.passage.capo > 0);
  sheet.picks = stops(sheet);
  const kept = new Map(before.map((row) => [row.signature, row]));
  const rows = plan.rows.map((row, index) => rowOf(sheet, row, index, kept));
  element.replaceChildren(...rows.map((row) => row.element));
  return rows;
}

function rowOf(sheet, pieces, index, kept) {
  const stops = sheet.picks.filter((stop) => stop.row === index);
  const lost = sheet.part.losses.filter((loss) => stops.some((stop) => stop.index === loss.from));
  const row = { pieces, stops, lost, closes: index === sheet.plan.rows.length - 1, end: LABEL + pieces.at(-1).x + pieces.at(-1).width };
  const signature = signed(sheet, row);
  const same = kept.get(signature);
  return same ? { ...same, stops, lost, isKept: true } : { ...drawRow(sheet, row), signature, isKept: false };
}

// All that the drawing of a row depends on.
function signed(sheet, { pieces, stops, lost, closes, end }) {
  const { part, meter, tuned, plan } = sheet;
  const held = part.held.filter((h) => pieces.some((p) => p.bar === h.bar));
  return JSON.stringify([
    plan.perTick, part.passage.capo, part.down, meter, tuned, closes, end, pieces,
    stops.map((s) => [s.x, s.y, s.from, s.to, s.pick.at, s.pick.stroke, s.pick.fret]),
    edge(sheet, stops[0], -1, 0), edge(sheet, stops.at(-1), 1, 0),
    held.map((h) => [h.played.name, h.sounds.name, h.box === null ? null : part.boxes[h.box].box, part.passage.bars[h.bar].chords[h.chord]]),
    lost.map((l) => [l.words, sheet.picks[l.to]?.x, sheet.picks[l.to]?.from]), part.passage.fit,
    pieces.map((p) => part.passage.bars[p.bar].number),
  ]);
}

const y = (sheet, position) => sheet.bands.thread + height(position, sheet.strings, sheet.part.down) * GAP;

// Every pick with its row and place, in order.
function stops(sheet) {
  const { part, plan } = sheet;
  return part.picks.map((view, index) => {
    const pick = part.passage.bars[view.bar].picks[view.pick];
    const row = plan.rows.findIndex((r) => r.some((p) => p.bar === view.bar && pick.at >= p.from && pick.at < p.to));
    const x = LABEL + xOf(plan.rows[row], pick.at, plan.perTick);
    return { index, view, pick, row, x, from: y(sheet, view.from), to: y(sheet, view.to), y: y(sheet, pick.string) };
  });
}

function drawRow(sheet, row) {
  const { end, stops, lost } = row;
  const top = startsChord(sheet, row.pieces) ? 0 : sheet.bands.thread - 22;
  const height = sheet.bands.end - top;
  const picture = draw("svg", { width: end + 6, height, viewBox: `0 ${top} ${end + 6} ${height}`, "aria-hidden": "true" });
  const marks = stops.map((stop) => drawPick(sheet, stop));
  const frets = stops.map((stop) => drawFret(sheet, stop));
  picture.append(
    ...drawThread(sheet, row),
    ...marks,
    ...drawBars(sheet, row),
    ...drawChords(sheet, row.pieces),
    ...drawCount(sheet, row.pieces),
    ...drawTab(sheet, row),
    ...frets,
    ...lost.map((loss) => drawLoss(sheet, loss)).filter(Boolean),
  );
  return { element: make("div", { class: "row" }, picture), picture, stops, lost, marks: marks.map((mark, i) => ({ mark, fret: frets[i] })) };
}

// Beats in the middle of a bar may have neither a chord nor a number above them.
function startsChord(sheet, pieces) {
  const { held, passage } = sheet.part;
  const starts = (piece) => held.some((h) => h.bar === piece.bar && passage.bars[h.bar].chords[h.chord].at >= piece.from && passage.bars[h.bar].chords[h.chord].at < piece.to);
  return pieces.some((piece) => piece.opens || starts(piece));
}

function drawThread(sheet, { stops, end }) {
  const { way, strokes } = weave(stops, edge(sheet, stops[0], -1, LABEL + 2), edge(sheet, stops.at(-1), 1, end));
  const lines = [];
  for (let s = 1; s <= sheet.strings; s++) {
    lines.push(draw("line", { class: "string", x1: LABEL, x2: end, y1: y(sheet, s), y2: y(sheet, s), "stroke-width": 0.7 + s * 0.16 }));
    lines.push(label(sheet, s, y(sheet, s)));
  }
  const over = strokes.join("");
  return [draw("path", { class: "thread", d: way }), ...lines, draw("path", { class: "over", d: over }), draw("path", { class: "thread", d: over })];
}

function label(sheet, string, at) {
  return draw("text", { class: "string-name", x: LABEL - 8, y: at + 4, "text-anchor": "end" }, `${string} ${sheet.tuned[string - 1] ?? ""}`);
}

// Where the thread comes from on the left, or leads to on the right.
function edge(sheet, stop, step, x) {
  if (!stop) return null;
  const count = sheet.picks.length;
  const next = stop.index + step;
  if ((next < 0 || next >= count) && !sheet.part.passage.loop) return null;
  const other = sheet.picks[(next + count) % count];
  return { x, y: step < 0 ? stop.from + (other.to - stop.from) / 4 : (stop.to + other.from) / 2 };
}

function drawPick(sheet, stop) {
  const held = sheet.part.held[stop.view.held];
  const chord = sheet.part.passage.bars[held.bar].chords[held.chord];
  const starts = stop.pick.at === chord.at && chord.start?.string === stop.pick.string;
  const mark = draw("g", { class: `pick ${stop.pick.stroke}` });
  if (starts) mark.append(draw("circle", { class: "root", cx: stop.x, cy: stop.y, r: 8 }));
  mark.append(draw("circle", { class: "node", cx: stop.x, cy: stop.y, r: 4.6 }));
  mark.append(draw("circle", { class: "halo", cx: stop.x, cy: stop.y, r: 11 }));
  mark.append(drawStroke(stop, sheet.bands.strokes));
  return mark;
}

// The down-bow and the up-bow of common notation.
function drawStroke({ x, pick }, at) {
  const d = pick.stroke === "down" ? `M${x - 4} ${at}v-9h8v9m-8 -9v3h8v-3z` : `M${x - 4} ${at - 9}l4 9l4 -9`;
  return draw("path", { class: `stroke ${pick.stroke}`, d });
}

function drawBars(sheet, { pieces, closes, end }) {
  const { bands: b, part } = sheet;
  const out = [];
  for (const piece of pieces) {
    const x = LABEL + piece.x;
    if (piece.opens) {
      out.push(draw("text", { class: "bar-number", x: x + 1, y: 12 }, String(part.passage.bars[piece.bar].number)));
      out.push(draw("line", { class: "bar", x1: x, x2: x, y1: b.thread, y2: b.strokes - 22 }), draw("line", { class: "bar", x1: x, x2: x, y1: b.tab, y2: b.end - 14 }));
    }
  }
  for (const [y1, y2] of [[b.thread, b.strokes - 22], [b.tab, b.end - 14]]) {
    out.push(draw("line", { class: closes ? "bar last" : "bar", x1: end, x2: end, y1, y2 }));
  }
  return out;
}

function drawChords(sheet, pieces) {
  const { part, plan } = sheet;
  const out = [];
  let shown = null;
  part.held.forEach((held) => {
    const chord = part.passage.bars[held.bar].chords[held.chord];
    const piece = pieces.find((p) => p.bar === held.bar && chord.at >= p.from && chord.at < p.to);
    if (!piece) return;
    const x = LABEL + xOf([piece], chord.at, plan.perTick) - 4;
    const same = shown !== null && shown === `${held.box} ${held.sounds.symbol}`;
    shown = `${held.box} ${held.sounds.symbol}`;
    if (!same) out.push(...drawChord(sheet, held, x, chord.length * plan.perTick));
  });
  return out;
}

// room is how far it is to the next chord.
function drawChord({ part, bands: b }, held, x, room) {
  const name = held.played.name;
  const texts = [named(name, "chord", x + 12, 14, room - 14, 9.5)];
  if (b.box > NAME && held.sounds.name !== name) texts.push(named(`(${held.sounds.name})`, "sounds", x + 12, 30, room - 6, 6.5));
  if (held.box === null) return texts;
  const scale = Math.min(1, (room - 6) / BOX.width);
  return [...texts, draw("g", { transform: `translate(${x + 10} ${b.box}) scale(${scale})` }, drawBox(part.boxes[held.box].box))];
}

// A name, squeezed where it would run into the next one; each is about so many pixels a letter.
function named(text, name, x, y, room, letter) {
  const squeezed = text.length * letter > room ? { textLength: Math.max(12, room), lengthAdjust: "spacingAndGlyphs" } : {};
  return draw("text", { class: name, x, y, ...squeezed }, text);
}

// Beats by number; halves of a plain beat by &, where something is plucked.
function drawCount(sheet, pieces) {
  const { meter, part, plan, bands: b } = sheet;
  const unit = meter.compound ? meter.beat / 3 : meter.beat;
  const out = [];
  for (const piece of pieces) {
    const bar = part.passage.bars[piece.bar];
    for (let tick = piece.from; tick < piece.to; tick += unit / 2) {
      const n = (tick - bar.at) / unit;
      const whole = Number.isInteger(n);
      if (!whole && (meter.compound || !bar.picks.some((p) => p.at === tick))) continue;
      const x = LABEL + xOf([piece], tick, plan.perTick);
      out.push(draw("text", { class: "count", x, y: b.count, "text-anchor": "middle" }, whole ? String(n + 1) : "&"));
    }
  }
  return out;
}

const line = (sheet, string) => sheet.bands.tab + (string - 1) * LINE;

// The lines, with gaps in them where numbers stand.
function drawTab(sheet, { stops, end }) {
  const out = [];
  for (let s = 1; s <= sheet.strings; s++) {
    out.push(draw("line", { class: "tab-line", x1: LABEL, x2: end, y1: line(sheet, s), y2: line(sheet, s) }), label(sheet, s, line(sheet, s)));
  }
  const gap = (stop) => {
    const half = 3.5 * String(stop.pick.fret).length + 1;
    return `M${stop.x - half} ${line(sheet, stop.pick.string) - 5}h${2 * half}v10h${-2 * half}z`;
  };
  return [...out, draw("path", { class: "gap", d: stops.map(gap).join("") })];
}

function drawFret(sheet, { x, pick }) {
  return draw("text", { class: "fret", x, y: line(sheet, pick.string) + 4, "text-anchor": "middle" }, String(pick.fret));
}

// A knot on the way from one pick to the next, where the rise or fall is lost.
function drawLoss(sheet, loss) {
  const [from, to] = [sheet.picks[loss.from], sheet.picks[loss.to]];
  if (!from || !to) return null;
  const beside = to.row === from.row && to.x > from.x;
  const x = beside ? (from.x + to.x) / 2 : from.x + 12;
  const at = beside ? (from.to + to.from) / 2 : from.to;
  return draw("path", { class: "loss", d: `M${x - 5} ${at - 5}l10 10m0 -10l-10 10M${x - 8} ${at}a8 8 0 1 0 16 0a8 8 0 1 0 -16 0` });
}
