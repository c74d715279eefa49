import { test } from "node:test";
import assert from "node:assert/strict";
import { Curve } from "../site/js/curve.js";
import { height, layout, nearest, weave, xOf } from "../site/js/thread.js";

// A passage of bars of a length, each with picks of one length.
function passage(bars, length = 1920, step = 240) {
  return { bars: Array.from({ length: bars }, (_, i) => ({
    at: i * length, length, chords: [{ at: i * length, length }],
    picks: Array.from({ length: length / step }, (_, j) => ({ at: i * length + j * step, length: step })),
  })) };
}

const WIDTHS = [200, 264, 330, 500, 700, 1100, 2000];

test("every tick of a passage stands in exactly one piece, in order, and no row is wider than the sheet", () => {
  for (const width of WIDTHS) {
    for (const p of [passage(1), passage(7), passage(16, 1920, 120), passage(5, 1440, 240), passage(3, 3360, 60)]) {
      const { rows, perTick } = layout(p, width, 480);
      let at = 0;
      for (const piece of rows.flat()) {
        assert.equal(piece.from, at);
        assert.ok(piece.to > piece.from);
        at = piece.to;
      }
      assert.equal(at, p.bars.at(-1).at + p.bars.at(-1).length);
      for (const row of rows) assert.ok(row.at(-1).x + row.at(-1).width <= width + 0.01, `${width}: ${row.at(-1).x + row.at(-1).width}`);
      assert.ok(perTick > 0);
    }
  }
});

test("picks stand in their order from left to right", () => {
  const p = passage(4);
  const { rows, perTick } = layout(p, 700, 480);
  for (const row of rows) {
    const xs = p.bars.flatMap((b) => b.picks).filter((k) => row.some((r) => k.at >= r.from && k.at < r.to)).map((k) => xOf(row, k.at, perTick));
    for (let i = 1; i < xs.length; i++) assert.ok(xs[i] > xs[i - 1]);
  }
});

test("the floor is below: string 1 is the lowest, or the highest where the guitar is turned", () => {
  assert.equal(height(6, 6, -1), 0);
  assert.equal(height(1, 6, -1), 5);
  assert.equal(height(1, 6, 1), 0);
  assert.ok(height(4.5, 6, -1) < height(3.5, 6, -1), "a down-stroke over string 4 goes down");
});

const ends = (d) => {
  const n = d.match(/-?[\d.]+/g).map(Number);
  return { x1: n[0], y1: n[1], x2: n.at(-2), y2: n.at(-1) };
};

test("a stroke passes its string in its own direction", () => {
  const stops = [
    { x: 20, y: 30, from: 20, to: 40 }, { x: 60, y: 50, from: 40, to: 60 }, { x: 100, y: 50, from: 60, to: 40 }, { x: 140, y: 10, from: 20, to: 0 },
  ];
  weave(stops, { x: 0, y: 20 }, { x: 160, y: 0 }).strokes.forEach((d, i) => {
    const { y1, y2 } = ends(d);
    assert.equal(Math.sign(y2 - y1), Math.sign(stops[i].to - stops[i].from), d);
  });
});

test("the thread begins and ends where it is told, and without picks there is none", () => {
  const { way } = weave([{ x: 20, y: 5, from: 0, to: 10 }], { x: 0, y: 3 }, { x: 90, y: 7 });
  assert.deepEqual(ends(way), { x1: 0, y1: 3, x2: 90, y2: 7 });
  assert.equal(weave([], null, null).way, "");
  assert.ok(weave([{ x: 20, y: 5, from: 0, to: 10 }], null, null).way.startsWith("M"));
});

test("the curve meets its points and never overshoots them", () => {
  const points = [[0, 0], [5, 8], [9, 8], [14, 2], [30, 1], [31, 9]].map(([x, y]) => ({ x, y }));
  const curve = new Curve(points);
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    for (let x = a.x; x < b.x; x += 0.25) {
      const { y1 } = ends(curve.path(x, b.x));
      assert.ok(y1 >= Math.min(a.y, b.y) - 0.051 && y1 <= Math.max(a.y, b.y) + 0.051, `${x} ${y1}`);
    }
    assert.equal(ends(curve.path(a.x, b.x)).y1, a.y);
  }
});

test("the nearest pick is found", () => {
  assert.equal(nearest([{ x: 10 }, { x: 30 }, { x: 50 }], 41), 2);
  assert.equal(nearest([{ x: 10 }, { x: 30 }], -5), 0);
  assert.equal(nearest([], 3), -1);
});
