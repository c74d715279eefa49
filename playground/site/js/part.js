// The part on the page: the sheet, the pick that is chosen and what is said of
// it, the losses with their ways out, the remarks and the words.

import { drawSheet } from "./sheet.js";
import { make } from "./svg.js";
import { nearest } from "./thread.js";
import { t } from "./words.js";

const $ = (id) => document.getElementById(id);
const FITS = ["contour", "bass", "shift"];

export class Part {
  #part = null;
  #meter = null;
  #tuning = null;
  #rows = [];
  #marks = []; // of every pick, with its row
  #chosen = 0;
  #lit = -1;
  #width = 0;
  #remarks = "";

  /** page has fit(name) to mould otherwise, and toggle() to play. */
  constructor(page) {
    this.page = page;
    $("choose").addEventListener("input", () => this.choose(Number($("choose").value) - 1));
    $("choose").addEventListener("keydown", (event) => this.#key(event));
    new ResizeObserver(() => this.#resized()).observe($("sheet"));
  }

  /** Whether a part has been shown. */
  get shown() {
    return this.#part !== null;
  }

  /** The bar of the chosen pick, as the passage numbers it. */
  get bar() {
    const view = this.#part?.picks[this.#chosen];
    return view ? this.#part.passage.bars[view.bar].number : 1;
  }

  /** Shows a part. */
  show(part, meter, tuning) {
    [this.#part, this.#meter, this.#tuning] = [part, meter, tuning];
    this.#chosen = Math.min(this.#chosen, Math.max(0, part.picks.length - 1));
    $("chosen").hidden = false;
    this.draw();
    this.#remark(remarks(part));
  }

  #remark(list) {
    if (list.join("\n") === this.#remarks) return;
    this.#remarks = list.join("\n");
    $("remarks").replaceChildren(...list.map((text) => make("li", { lang: "en" }, text)));
  }

  /** Draws the part; afresh after a change of language. */
  draw(afresh = false) {
    if (!this.#part) return;
    if (afresh) this.#rows = [];
    this.#width ||= $("sheet").clientWidth;
    const tuned = this.#tuning.strings.map((s) => s.note.replace(/\d+$/, "").replace("#", "♯").replace(/(?<=.)b/, "♭"));
    this.#rows = drawSheet($("sheet"), this.#width, { part: this.#part, meter: this.#meter, tuned }, this.#rows);
    this.#marks = [];
    this.#rows.forEach((row, index) => this.#take(row, index));
    $("choose").max = Math.max(1, this.#part.picks.length);
    $("choose").disabled = this.#part.picks.length === 0;
    this.choose(this.#chosen);
    this.light(this.#lit);
  }

  // What is kept of a row forgets what was chosen and lit in it.
  #take(row, index) {
    row.marks.forEach((mark, i) => {
      mark.mark.classList.remove("chosen", "lit");
      mark.fret.classList.remove("lit");
      this.#marks[row.stops[i].index] = { ...mark, row: index };
    });
    row.picture.onclick = (event) => this.#pressed(row, event);
    if (!row.isKept && row.lost.length > 0) row.element.append(this.#losses(row.lost));
  }

  #resized() {
    const width = $("sheet").clientWidth;
    if (Math.abs(width - this.#width) <= 2) return;
    this.#width = width;
    this.draw();
  }

  #losses(lost) {
    const now = this.#part.passage.fit;
    const told = lost.map((loss) => make("li", { lang: "en" }, loss.words));
    const buttons = FITS.map((fit) =>
      make("button", { type: "button", "aria-pressed": String(fit === now), onclick: () => this.page.fit(fit) }, t(`mould.${fit}`)));
    return make("div", { class: "losses", role: "group", "aria-label": t("lossHere") },
      make("p", {}, t("lossHere")), make("ul", {}, ...told),
      make("p", { class: "pair" }, make("span", {}, t("mouldings")), ...buttons));
  }

  #pressed(row, event) {
    const scale = row.picture.viewBox.baseVal.width / row.picture.getBoundingClientRect().width;
    const x = (event.clientX - row.picture.getBoundingClientRect().left) * scale;
    const at = nearest(row.stops, x);
    if (at < 0) return;
    this.choose(row.stops[at].index);
    $("choose").focus({ preventScroll: true });
  }

  /** Chooses a pick: marks it on the sheet and says all about it. */
  choose(index) {
    const marks = this.#marks;
    marks[this.#chosen]?.mark.classList.remove("chosen");
    this.#chosen = index;
    marks[index]?.mark.classList.add("chosen");
    const view = this.#part.picks[index];
    $("choose").value = index + 1;
    if (!view) return $("reason").replaceChildren();
    const count = t("pickOf", { n: index + 1, all: this.#part.picks.length });
    $("choose").setAttribute("aria-valuetext", [view.words, view.why, view.came].filter(Boolean).join(" "));
    $("reason").replaceChildren(
      make("p", {}, make("span", { class: "what", lang: "en" }, view.words), " ", make("span", { class: "hint" }, count)),
      make("p", { lang: "en" }, [view.why, view.came].filter(Boolean).join(" ")));
    $("repair-bar").value = this.bar;
  }

  #key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const step = { ArrowUp: -1, PageUp: -1, ArrowDown: 1, PageDown: 1 }[event.key];
    if (step) this.#byBar(step);
    else if (event.key === " ") this.page.toggle();
    else {
      if (["ArrowLeft", "ArrowRight", "Home", "End"].includes(event.key)) requestAnimationFrame(() => this.#follow(this.#chosen));
      return;
    }
    event.preventDefault();
  }

  #byBar(step) {
    const bar = this.#part.picks[this.#chosen]?.bar + step;
    const index = this.#part.picks.findIndex((view) => view.bar === bar);
    if (index >= 0) this.choose(index);
    this.#follow(this.#chosen);
  }

  /** Lights the pick that sounds; -1 for none. */
  light(index) {
    const marks = this.#marks;
    for (const on of [true, false]) {
      const at = on ? this.#lit : index;
      marks[at]?.mark.classList.toggle("lit", !on);
      marks[at]?.fret?.classList.toggle("lit", !on);
    }
    const before = marks[this.#lit]?.row;
    this.#lit = index;
    $("sheet").classList.toggle("first-beat", this.#onFirstBeat(index));
    if (marks[index] && before !== undefined && marks[index].row !== before) this.#turnTo(before, index);
  }

  #onFirstBeat(index) {
    const view = this.#part?.picks[index];
    if (!view) return false;
    const bar = this.#part.passage.bars[view.bar];
    return bar.picks[view.pick].at < bar.at + this.#meter.beat;
  }

  // Goes on to the next row only with those who were looking at the last one.
  #turnTo(before, index) {
    const { top, bottom } = this.#rows[before].element.getBoundingClientRect();
    if (bottom > 0 && top < innerHeight) this.#follow(index);
  }

  #follow(index) {
    this.#rows[this.#marks[index]?.row]?.element.scrollIntoView({ block: "nearest", behavior: calm() ? "instant" : "smooth" });
  }
}

const calm = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

// Remarks on the whole part, then those on its chords, with the bars of each.
function remarks(part) {
  const bars = new Map();
  for (const bar of part.passage.bars) {
    for (const chord of bar.chords) {
      for (const remark of chord.fit?.remarks ?? []) {
        const key = `${chord.sounds || chord.symbol}\n${remark}`;
        bars.set(key, [...new Set([...(bars.get(key) ?? []), bar.number])]);
      }
    }
  }
  const own = [...bars].map(([key, list]) => {
    const [chord, text] = key.split("\n");
    return t("remarkOn", { chord, bars: list.join(", "), text });
  });
  return [...part.remarks, ...own];
}
