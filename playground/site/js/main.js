// Ties the page together: a change makes a new state, a state is shown, drawn,
// kept and put into the address.

import { Engine } from "./engine.js";
import { Hearing } from "./hearing.js";
import { History } from "./history.js";
import { Lattice } from "./lattice.js";
import { Part } from "./part.js";
import { Taking } from "./taking.js";
import { complain, contentAll } from "./complaint.js";
import { growAll, listen, show } from "./fields.js";
import { decode, encode } from "./link.js";
import { keep, keepWork, kept, lastWork } from "./memory.js";
import { linkLost, notice } from "./notice.js";
import { keepOffline } from "./offline.js";
import { fresh, same, song } from "./state.js";
import { make } from "./svg.js";
import { languages, speak, t } from "./words.js";

const $ = (id) => document.getElementById(id);

const history_ = new History(fresh());
let addressTimer = 0;
let lastAnswer = null;

const page = {
  state: () => history_.now,
  engine: null,
  fit: (name) => change("fit", name, ""),
  toggle: () => hearing.toggle(),
  light: (index) => part.light(index),
  fade: (name) => ($("sheet").dataset.phase = name),
  toSheet: () => $("sheet").scrollIntoView({ block: "nearest" }),
};

page.engine = new Engine(drawn, broken);
const lattice = new Lattice($("lattice"), (text) => change("figures", text));
const part = new Part(page);
const hearing = new Hearing(page);
const taking = new Taking(page);

/** Changes one field; changes to the same one in quick succession are undone together. */
function change(name, value, together = name) {
  if (history_.now[name] === value) return;
  history_.push({ ...history_.now, [name]: value }, together, performance.now());
  shown();
  hearing.changed(name);
}

// Everything follows from the state that is now.
function shown() {
  const state = history_.now;
  show(state);
  $("undo").disabled = !history_.canUndo;
  $("redo").disabled = !history_.canRedo;
  document.title = state.title ? `${state.title} – Weft` : "Weft";
  document.body.dataset.drawn = "";
  page.engine.draw(song(state));
  clearTimeout(addressTimer);
  addressTimer = setTimeout(remember, 400);
}

// Browsers allow so many changes of the address in a while, hence the pause.
function remember() {
  clearTimeout(addressTimer);
  const fragment = encode(history_.now);
  keepWork(fragment);
  if (location.hash !== `#${fragment}`) history.replaceState(null, "", `#${fragment}`);
}

function drawn(answer, asked, since) {
  lastAnswer = answer;
  contentAll();
  lattice.show(answer.figures, answer.tuning?.strings.length ?? 6);
  $("stale").hidden = answer.ok || !part.shown;
  $("sheet").classList.toggle("is-stale", !$("stale").hidden);
  if (answer.ok) draw(answer);
  else fail(answer);
  document.body.dataset.drawn = answer.ok ? "part" : "error";
  performance.measure("weft-redraw", { start: since, end: performance.now() });
}

function draw(answer) {
  part.show(answer.result, answer.meter, answer.tuning);
  hearing.show(answer.result);
  taking.refresh();
}

function fail({ error, spellings }) {
  const field = error.field.replace(/^song\.?/, "");
  const more = field !== "chords" ? [] : spellings.map((name) => ({ text: t(`spelling.${name}`), act: () => change("spelling", name, "") }));
  if (!part.shown) $("sheet").replaceChildren(make("p", { class: "hint" }, t("emptyPart")));
  complain(field, error, { mend: (name, text) => change(name, text, ""), more });
}

function broken(why) {
  $("sheet").replaceChildren(make("p", { class: "wrong", role: "alert" }, t("broken", { why })));
  document.body.dataset.drawn = "broken";
}

// What to open: the link, or else the last work, or else the song of the page.
function open() {
  const link = decode(location.hash);
  const work = decode(lastWork() ?? "");
  if (work) history_.now = work.state;
  if (link && !(work && same(link.state, work.state))) {
    if (work) history_.push(link.state, "", performance.now());
    else history_.now = link.state;
  }
  shown();
  tell(link, work && link && !same(link.state, work.state));
}

function tell(link, undoable) {
  if (link?.lost.length) linkLost(link.lost);
  else if (undoable) notice([t("linkOpened")]);
}

function follow() {
  const link = decode(location.hash);
  if (!link || location.hash === `#${encode(history_.now)}`) return;
  const differs = !same(link.state, history_.now);
  if (differs) history_.push(link.state, "", performance.now());
  shown();
  tell(link, differs);
}

function choosePreferences() {
  const wanted = kept("weft.language") ?? navigator.language?.slice(0, 2);
  $("language").value = languages.includes(wanted) ? wanted : "en";
  $("look").value = document.documentElement.dataset.look ?? "";
  $("language").onchange = () => {
    keep("weft.language", $("language").value);
    say();
  };
  $("look").onchange = () => {
    keep("weft.look", $("look").value);
    if ($("look").value) document.documentElement.dataset.look = $("look").value;
    else delete document.documentElement.dataset.look;
  };
}

// Says everything again in the language chosen.
function say() {
  speak($("language").value);
  hearing.refresh();
  taking.list();
  lattice.say();
  part.draw(true);
  if (lastAnswer) drawn(lastAnswer, null, performance.now());
}

function undo() {
  history_.undo();
  shown();
  hearing.refresh();
}

function redo() {
  history_.redo();
  shown();
  hearing.refresh();
}

function keys(event) {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  const back = key === "z" && !event.shiftKey;
  const forward = key === "y" || (key === "z" && event.shiftKey);
  if (!back && !forward) return;
  event.preventDefault();
  back ? undo() : redo();
}

$("undo").onclick = undo;
$("redo").onclick = redo;
$("again").onclick = () => {
  history_.push(fresh(), "", performance.now());
  shown();
  $("chords").focus();
};
choosePreferences();
speak($("language").value);
listen(change);
open();
hearing.refresh();
addEventListener("keydown", keys);
addEventListener("hashchange", follow);
addEventListener("pagehide", remember);
addEventListener("resize", growAll);
page.engine.ask("choices").then((answer) => {
  if (!answer.ok) return;
  $("tunings").replaceChildren(...answer.result.tunings.map(({ name, text }) => make("option", { value: name }, text)));
  taking.offer(answer.result);
}, (error) => broken(error.message));
keepOffline();
