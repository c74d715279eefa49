// A chord box: the neck upright, the nut on top, string 6 to 1 from left to right.

import { draw } from "./svg.js";

const COLUMN = 9;
const ROW = 11;
const TOP = 14;

/** How wide and how high a box is drawn. */
export const BOX = { width: 5 * COLUMN + 26, height: TOP + 5 * ROW + 12 };

const FINGERS = { index: "1", middle: "2", ring: "3", little: "4" };

/** Draws a box. */
export function drawBox(box) {
  const last = (box.columns.length - 1) * COLUMN;
  const rows = Math.max(4, box.rows);
  const group = draw("g", { class: "box" });
  for (let row = 0; row <= rows; row++) {
    const nut = row === 0 && box.first === 1;
    group.append(line(0, TOP + row * ROW, last, TOP + row * ROW, nut ? "nut" : "wire"));
  }
  box.columns.forEach((column, i) => group.append(line(i * COLUMN, TOP, i * COLUMN, TOP + rows * ROW, "wire")));
  if (box.first > 1) group.append(draw("text", { class: "fret-number", x: -5, y: TOP + ROW - 2, "text-anchor": "end" }, String(box.first)));
  for (const barre of box.barres) group.append(drawBarre(barre));
  box.columns.forEach((column, i) => group.append(...drawColumn(column, i * COLUMN, rows)));
  return group;
}

function line(x1, y1, x2, y2, name) {
  return draw("line", { x1, y1, x2, y2, class: name });
}

const middle = (row) => TOP + row * ROW - ROW / 2;

function drawBarre(barre) {
  const [left, right] = [barre.left * COLUMN, barre.right * COLUMN];
  return draw("rect", { class: "barre", x: left - 3.5, y: middle(barre.row) - 3.5, width: right - left + 7, height: 7, rx: 3.5 });
}

function drawColumn(column, x, rows) {
  const marks = [];
  if (column.muted) marks.push(draw("path", { class: "mute", d: `M${x - 2.5} 5.5l5 5m0 -5l-5 5` }));
  else if (column.row === 0) marks.push(draw("circle", { class: "open", cx: x, cy: 8, r: 2.8 }));
  else marks.push(draw("circle", { class: "dot", cx: x, cy: middle(column.row), r: 4 }));
  if (column.finger) {
    marks.push(draw("text", { class: "finger", x, y: middle(column.row) + 2.6, "text-anchor": "middle" }, FINGERS[column.finger]));
  }
  if (column.start) {
    const y = TOP + rows * ROW + 3;
    marks.push(draw("path", { class: "start", d: `M${x} ${y}l-4 7h8z` }));
  }
  return marks;
}
