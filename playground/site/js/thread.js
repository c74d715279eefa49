// The geometry of the sheet: which bars stand in which row, where a tick lies in
// it, and the pick's way over the strings as a path. No drawing here.
//
// The floor is below: a down-stroke goes down, as players see their own hand.

import { Curve } from "./curve.js";

/** Pixels between two picks, at the least and at the most. */
const TIGHT = 17;
const COMFORTABLE = 26;
const LOOSE = 46;
const CHORD = 58; // and from chord to chord, so that there is room for their boxes
const INSET = 13; // from a bar line to its first pick

/** The least distance in ticks from a pick to the next one in its bar. */
export function grain(passage) {
  let least = Infinity;
  for (const bar of passage.bars) {
    for (const pick of bar.picks) least = Math.min(least, pick.length);
  }
  return Number.isFinite(least) ? least : 480;
}

// The shortest chord, in ticks.
function shortest(passage) {
  return Math.min(...passage.bars.flatMap((bar) => bar.chords.map((chord) => chord.length)), 1920);
}

/**
 * The rows of a passage on a sheet that is so many pixels wide, label apart:
 * { perTick, rows }, a row being pieces { bar, from, to, x, width, opens }. A
 * piece is a bar, or some beats of one that is wider than the sheet.
 */
export function layout(passage, width, beat) {
  const step = grain(passage);
  const tight = TIGHT / step;
  const comfortable = Math.max(COMFORTABLE / step, CHORD / shortest(passage));
  const pieces = passage.bars.flatMap((bar, index) => cut(bar, index, (width - INSET) / tight, beat));
  const rows = fill(pieces, width, tight, comfortable);
  const perTick = Math.min(Math.max(LOOSE / step, comfortable), ...rows.map((row) => looseness(row, width)));
  return { perTick, rows: rows.map((row) => place(row, perTick)) };
}

function cut(bar, index, most, beat) {
  const beats = Math.max(1, Math.floor(most / beat));
  const length = bar.length <= most ? bar.length : beats * beat;
  const pieces = [];
  for (let from = bar.at; from < bar.at + bar.length; from += length) {
    const to = Math.min(from + length, bar.at + bar.length);
    pieces.push({ bar: index, from, to, opens: from === bar.at });
  }
  return pieces;
}

const ticks = (row) => row.reduce((sum, piece) => sum + piece.to - piece.from, 0);

function looseness(row, width) {
  return Math.max(TIGHT / 1e6, (width - row.length * INSET) / ticks(row));
}

// As few rows as are comfortable, and all about as long as each other.
function fill(pieces, width, tight, comfortable) {
  const fits = (row, perTick) => ticks(row) * perTick + row.length * INSET <= width;
  const rows = pack(pieces, (row, piece) => fits([...row, piece], Math.max(tight, comfortable)));
  const each = Math.ceil(pieces.length / rows.length);
  const even = pack(pieces, (row) => row.length < each);
  return even.length <= rows.length && even.every((row) => fits(row, tight)) ? even : rows;
}

function pack(pieces, fits) {
  const rows = [];
  for (const piece of pieces) {
    const row = rows.at(-1);
    if (row && fits(row, piece)) row.push(piece);
    else rows.push([piece]);
  }
  return rows;
}

function place(row, perTick) {
  let x = 0;
  return row.map((piece) => {
    const width = (piece.to - piece.from) * perTick + INSET;
    const placed = { ...piece, x, width };
    x += width;
    return placed;
  });
}

/** Where a tick lies in a row; it must be in one of its pieces. */
export function xOf(row, tick, perTick) {
  const piece = row.find((p) => tick >= p.from && tick < p.to) ?? row.at(-1);
  return piece.x + INSET + (tick - piece.from) * perTick;
}

/** How high a string lies, in gaps between strings from the one on top. */
export function height(position, strings, down) {
  return down < 0 ? strings - position : position - 1;
}

/**
 * The pick's way as SVG paths: { way, strokes }. stops are { x, y, from, to } in
 * pixels, in order, y being the string's; before and after are where the way
 * comes from and leads to, { x, y }, or null.
 */
export function weave(stops, before, after) {
  if (stops.length === 0) return { way: "", strokes: [] };
  const points = waypoints(stops, strokeReach(stops));
  const first = before ?? points.shift();
  const last = after ?? points.pop();
  if (before) points[0].x = Math.max(points[0].x, before.x + 1);
  const curve = new Curve([first, ...points, last]);
  const reach = strokeReach(stops) * 0.9;
  const within = (x) => Math.max(first.x, Math.min(last.x, x));
  return {
    way: curve.path(first.x, last.x),
    strokes: stops.map((s) => curve.path(within(s.x - reach), within(s.x + reach))),
  };
}

// The ends of every stroke and its string; where one stroke ends as the next
// begins, the pick passes that height half way.
function waypoints(stops, reach) {
  const points = [{ x: stops[0].x - reach, y: stops[0].from }];
  stops.forEach((stop, i) => {
    const next = stops[i + 1];
    points.push({ x: stop.x, y: stop.y });
    if (next && next.from === stop.to) points.push({ x: (stop.x + next.x) / 2, y: stop.to });
    else if (next) points.push({ x: stop.x + reach, y: stop.to }, { x: next.x - reach, y: next.from });
    else points.push({ x: stop.x + reach, y: stop.to });
  });
  return points;
}

// A stroke takes its time from the plucks beside it, so that none overlap.
function strokeReach(stops) {
  let least = 24;
  for (let i = 1; i < stops.length; i++) least = Math.min(least, stops[i].x - stops[i - 1].x);
  return Math.max(2, least * 0.35);
}

/** The pick of a row that lies nearest to x: an index in stops; -1 if there is none. */
export function nearest(stops, x) {
  let best = -1;
  stops.forEach((stop, i) => {
    if (best < 0 || Math.abs(stop.x - x) < Math.abs(stops[best].x - x)) best = i;
  });
  return best;
}
