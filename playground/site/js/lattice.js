// The figure as a lattice of strings and slots, to press or to walk through.
// String 6 is above as on the thread; two more rows let ring and damp.

import * as figure from "./figure.js";
import { make } from "./svg.js";
import { t } from "./words.js";

const HOLD = "hold";
const REST = "rest";

export class Lattice {
  #texts = [];
  #index = 0;
  #model = null;
  #rows = [];
  #at = { row: 0, slot: 0 };
  #shown = "";

  /** Lives in an element; change is called with the new text of all figures. */
  constructor(element, change) {
    this.element = element;
    this.change = change;
  }

  /** Shows figures as check answers them, for so many strings; null while they cannot be read. */
  show(checked, strings) {
    const now = JSON.stringify([checked?.text, strings]);
    if (now === this.#shown) return;
    this.#shown = now;
    if (!checked) {
      this.#model = null;
      this.element.replaceChildren(make("p", { class: "hint" }, t("latticeWaits")));
      return;
    }
    this.#texts = checked.figures.map((one) => one.text);
    this.#index = Math.min(this.#index, this.#texts.length - 1);
    this.#model = figure.read(this.#texts[this.#index]);
    const highest = Math.max(strings, ...figure.slots(this.#model).map((slot) => slot.string ?? 0));
    this.#rows = [...Array.from({ length: highest }, (_, i) => highest - i), HOLD, REST];
    this.#render();
  }

  /** Shows all afresh in another language. */
  say() {
    this.#shown = "";
  }

  #render() {
    const count = figure.slots(this.#model).length;
    this.#at = { row: Math.min(this.#at.row, this.#rows.length - 1), slot: Math.min(this.#at.slot, count - 1) };
    const focused = this.element.contains(document.activeElement) ? document.activeElement.dataset?.key : null;
    this.element.replaceChildren(this.#choice(), this.#grid(), this.#buttons(), make("p", { class: "hint", id: "lattice-hint" }, t("latticeHint")));
    if (focused) (this.element.querySelector(`[data-key="${focused}"]`) ?? this.#cell())?.focus();
  }

  #choice() {
    if (this.#texts.length < 2) return make("span", { hidden: true });
    const buttons = this.#texts.map((_, i) =>
      make("button", { type: "button", "data-key": `figure-${i}`, "aria-pressed": String(i === this.#index), onclick: () => this.#choose(i) }, `${i + 1}`));
    return make("p", { class: "pair", role: "group", "aria-label": t("figureNumber") }, make("span", {}, t("figureNumber")), ...buttons);
  }

  #choose(index) {
    this.#index = index;
    this.#model = figure.read(this.#texts[index]);
    this.#render();
  }

  #grid() {
    const slots = figure.slots(this.#model);
    const grid = make("div", { class: "lattice", role: "grid", "aria-label": t("lattice", { n: this.#index + 1 }), "aria-describedby": "lattice-hint", onkeydown: (e) => this.#key(e) });
    grid.style.setProperty("--slots", slots.length);
    const bounds = this.#bounds();
    this.#rows.forEach((name, row) => {
      const line = make("div", { role: "row", class: typeof name === "number" ? "of-string" : "of-sign" });
      line.append(make("span", { role: "rowheader", title: this.#rowName(name) }, typeof name === "number" ? String(name) : this.#rowName(name)));
      slots.forEach((slot, at) => line.append(this.#drawCell(slot, name, row, at, bounds.has(at))));
      grid.append(line);
    });
    return make("div", { class: "lattice-scroll" }, grid);
  }

  // The slots at which a bar begins, but for the first.
  #bounds() {
    let at = 0;
    return new Set(this.#model.bars.slice(0, -1).map((bar) => (at += bar.length)));
  }

  #rowName(name) {
    if (name === HOLD) return t("ring");
    return name === REST ? t("damp") : t("string", { n: name });
  }

  #drawCell(slot, name, row, at, opens) {
    const on = typeof name === "number" ? slot.kind === "pluck" && slot.string === name : slot.kind === name;
    const state = on ? slot.own || "on" : "empty";
    const here = row === this.#at.row && at === this.#at.slot;
    const sign = { on: "", d: "D", u: "U", empty: "" }[state];
    const button = make("button", {
      type: "button", tabindex: here ? "0" : "-1", "data-key": `${row}-${at}`, class: `cell ${state}`,
      "aria-label": t(`cell.${state}`, { row: this.#rowName(name), n: at + 1 }),
      onclick: () => this.#press(row, at), onfocus: () => this.#walk(row, at, false),
    }, make("span", { class: "bead" }, sign));
    return make("span", { role: "gridcell", class: opens ? "opens" : null }, button);
  }

  #buttons() {
    const last = figure.slots(this.#model).length;
    return make("p", { class: "pair" },
      make("button", { type: "button", "data-key": "add", onclick: () => this.#set(figure.insert(this.#model, last, { kind: HOLD })) }, t("addSlot")),
      make("button", { type: "button", "data-key": "less", disabled: last < 2, onclick: () => this.#set(figure.remove(this.#model, last - 1)) }, t("removeSlot")),
      make("button", { type: "button", "data-key": "more", onclick: () => this.#more() }, t("addFigure")));
  }

  #more() {
    this.#texts = [...this.#texts, this.#texts[this.#index]];
    this.#index = this.#texts.length - 1;
    this.change(this.#texts.join("; "));
  }

  #press(row, at) {
    this.#at = { row, slot: at };
    const name = this.#rows[row];
    this.#set(typeof name === "number" ? figure.press(this.#model, at, name) : figure.put(this.#model, at, { kind: name }));
  }

  #set(model) {
    this.#model = model;
    this.#texts = this.#texts.with(this.#index, figure.write(model));
    this.#shown = "";
    this.#render();
    this.change(this.#texts.join("; "));
  }

  #cell() {
    return this.element.querySelector(`[data-key="${this.#at.row}-${this.#at.slot}"]`);
  }

  #walk(row, slot, focus = true) {
    const slots = figure.slots(this.#model).length;
    this.#cell()?.setAttribute("tabindex", "-1");
    this.#at = { row: Math.max(0, Math.min(row, this.#rows.length - 1)), slot: Math.max(0, Math.min(slot, slots - 1)) };
    this.#cell()?.setAttribute("tabindex", "0");
    if (focus) this.#cell()?.focus();
  }

  #key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const act = this.#action(event.key);
    if (!act) return;
    event.preventDefault();
    act();
  }

  #action(key) {
    const { row, slot } = this.#at;
    const last = figure.slots(this.#model).length - 1;
    const moves = {
      ArrowLeft: () => this.#walk(row, slot - 1), ArrowRight: () => this.#walk(row, slot + 1),
      ArrowUp: () => this.#walk(row - 1, slot), ArrowDown: () => this.#walk(row + 1, slot),
      Home: () => this.#walk(row, 0), End: () => this.#walk(row, last),
      "-": () => this.#set(figure.put(this.#model, slot, { kind: HOLD })),
      ".": () => this.#set(figure.put(this.#model, slot, { kind: REST })),
      d: () => this.#set(figure.stroke(this.#model, slot, "d")), u: () => this.#set(figure.stroke(this.#model, slot, "u")),
      Insert: () => this.#set(figure.insert(this.#model, slot, { kind: HOLD })),
      Delete: () => this.#set(figure.remove(this.#model, slot)),
    };
    return moves[key.length === 1 ? key.toLowerCase() : key] ?? this.#digit(key);
  }

  // A digit plucks that string in this slot and goes on to the next one.
  #digit(key) {
    const row = /^[1-9]$/.test(key) ? this.#rows.indexOf(Number(key)) : -1;
    if (row < 0) return null;
    const { slot } = this.#at;
    return () => {
      this.#set(figure.put(this.#model, slot, { kind: "pluck", string: Number(key), own: "" }));
      this.#walk(row, slot + 1);
    };
  }
}
