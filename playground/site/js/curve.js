// A smooth line through points from left to right that never overshoots them: a
// cubic between each two, by Fritsch and Carlson (1980). Where the points turn,
// the line is level; where they lie on a slope, it is that slope.

/** A line through points { x, y }, x rising. */
export class Curve {
  constructor(points) {
    this.points = points;
    this.slopes = slopes(points);
  }

  /** The line from one x to another as the path of an SVG drawing. */
  path(from, to) {
    const inner = this.points.filter((p) => p.x > from && p.x < to).map((p) => p.x);
    const knots = [from, ...inner, to];
    let d = "";
    for (let i = 1; i < knots.length; i++) d += this.#piece(knots[i - 1], knots[i], i === 1);
    return d;
  }

  // A part of a cubic is the cubic with the same heights and slopes at its ends.
  #piece(x1, x2, moves) {
    const i = this.#interval((x1 + x2) / 2);
    const [a, b] = [this.#at(i, x1), this.#at(i, x2)];
    const third = (x2 - x1) / 3;
    const n = [x1 + third, a.y + a.slope * third, x2 - third, b.y - b.slope * third, x2, b.y].map(round);
    return `${moves ? `M${round(x1)} ${round(a.y)}` : ""}C${n.join(" ")}`;
  }

  #interval(x) {
    const after = this.points.findIndex((p) => p.x >= x);
    return Math.max(0, (after < 0 ? this.points.length : after) - 1);
  }

  #at(i, x) {
    const [p, q] = [this.points[i], this.points[i + 1]];
    const h = q.x - p.x;
    const s = (x - p.x) / h;
    const [m, n] = [this.slopes[i] * h, this.slopes[i + 1] * h];
    const c = 3 * (q.y - p.y) - 2 * m - n;
    const d = 2 * (p.y - q.y) + m + n;
    return { y: p.y + s * (m + s * (c + s * d)), slope: (m + s * (2 * c + s * 3 * d)) / h };
  }
}

const round = (n) => Math.round(n * 10) / 10;

// The weighted harmonic mean of the slopes on both sides, 0 where they disagree.
function slopes(points) {
  const step = (i) => (points[i + 1].y - points[i].y) / (points[i + 1].x - points[i].x);
  return points.map((_, i) => {
    if (i === 0 || i === points.length - 1) return 0;
    const [a, b] = [step(i - 1), step(i)];
    if (a * b <= 0) return 0;
    const [h, k] = [points[i].x - points[i - 1].x, points[i + 1].x - points[i].x];
    return (3 * (h + k)) / ((2 * k + h) / a + (k + 2 * h) / b);
  });
}
