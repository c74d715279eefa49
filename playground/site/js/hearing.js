// The controls for hearing and practising: what is played, from where to where,
// how fast; the rounds, the repair, and the proposal to rest.

import { Player } from "./player.js";
import { phase, slowed } from "./rounds.js";
import { song } from "./state.js";
import { t } from "./words.js";

const $ = (id) => document.getElementById(id);

export class Hearing {
  #part = null;
  #mode = "run";
  #rounds = false;
  #bars = -1; // heard since the start
  #last = "";
  #at = 1; // the bar that sounds
  #began = null;
  #played = 0; // milliseconds since the last rest
  #rest = 0;

  /** page has state(), chosenBar(), light(index), fade(name), and words for the screen. */
  constructor(page) {
    this.page = page;
    this.player = new Player({
      pick: (index) => page.light(index),
      bar: (bar, round) => this.#bar(bar, round),
      state: (name) => this.#changed(name),
      failed: (why) => ($("playing").textContent = t("noSound", { why })),
    });
    $("play").onclick = () => this.toggle();
    $("stop").onclick = () => this.player.stop();
    $("speed").oninput = () => this.#speed();
    for (const id of ["from", "to"]) $(id).onchange = () => this.#bounds();
    $("rounds").onclick = () => this.#startRounds();
    $("run").onclick = () => this.#play("run");
    $("repair").onclick = () => this.#repair();
    this.#media();
  }

  /** Takes in a new part; what sounds goes on with it from the bar it is in. */
  show(part) {
    const before = this.#part;
    const bars = part.passage.bars.length;
    const whole = !before || Number($("to").value) === before.passage.bars.length;
    this.#part = part;
    for (const id of ["from", "to", "repair-bar"]) $(id).max = bars;
    if (whole) $("to").value = bars;
    this.#bounds(false);
    if (this.player.state !== "stopped" && before && changed(before, part)) this.#go(Math.min(this.#at, bars));
  }

  /** A setting of the state has changed. */
  changed(name) {
    if (name === "tempo") this.#showSpeed(this.page.state().tempo);
    const heard = ["material", "click", "countIn", "sounding", "silent", "hush"].includes(name);
    if (heard && this.player.state !== "stopped") this.#go(this.#at);
    if (name === "slow" && this.#mode === "repair") this.#showSpeed(this.#wanted(), true);
  }

  /** Shows the tempo and the words for where the player stands. */
  refresh() {
    if (this.player.state === "stopped") this.#showSpeed(this.page.state().tempo);
    this.#changed(this.player.state);
  }

  toggle() {
    if (!this.#part) return;
    if (this.player.state === "playing") this.player.pause();
    else if (this.player.state === "paused") this.player.resume();
    else this.#play(this.#mode);
  }

  #play(mode) {
    if (!this.#part) return;
    this.#mode = mode;
    this.#bars = -1;
    this.#showSpeed(this.#wanted());
    $("repair").setAttribute("aria-pressed", String(mode === "repair"));
    $("repair").textContent = t(mode === "repair" ? "repairEnd" : "repairStart");
    this.#go(0);
  }

  #wanted() {
    const { tempo, slow } = this.page.state();
    return this.#mode === "repair" ? slowed(tempo, slow) : tempo;
  }

  #repair() {
    if (this.#mode === "repair" && this.player.state !== "stopped") return this.#play("run");
    const bar = Math.max(1, Math.min(Number($("repair-bar").value) || 1, this.#part.passage.bars.length));
    $("repair-bar").value = bar;
    this.#endRounds();
    this.#play("repair");
  }

  // What the library is asked to play; bar is where to go on, 0 for the count-in.
  #go(bar) {
    const state = this.page.state();
    const repair = this.#mode === "repair";
    const [from, to] = repair ? [Number($("repair-bar").value), Number($("repair-bar").value)] : [Number($("from").value), Number($("to").value)];
    const request = { song: song(state), material: state.material, click: state.click, tempo: Number($("speed").value), from, to };
    if (bar === 0) request.countIn = state.countIn;
    if (repair || this.#part.passage.loop || to - from + 1 < this.#part.passage.bars.length) request.endless = true;
    if (!repair && state.silent > 0) Object.assign(request, { sounding: state.sounding, silent: state.silent, hush: state.hush });
    if (this.player.state === "stopped") $("playing").textContent = t("starting");
    this.player.start(request, bar >= from && bar <= to ? bar : 0);
  }

  #bounds(play = true) {
    const bars = this.#part?.passage.bars.length ?? 1;
    const clamp = (id, least) => ($(id).value = Math.max(least, Math.min(Math.round(Number($(id).value)) || least, bars)));
    clamp("to", clamp("from", 1));
    if (play && this.player.state !== "stopped" && this.#mode === "run") this.#go(this.#at);
  }

  #speed() {
    this.#showSpeed(Number($("speed").value));
    this.player.tempo(Number($("speed").value));
  }

  #showSpeed(beats, play = false) {
    $("speed").max = Math.max(240, beats);
    $("speed").value = beats;
    $("speed-value").textContent = String(beats);
    if (play) this.player.tempo(beats);
  }

  #bar(bar, round) {
    const key = `${bar} ${round}`;
    if (key === this.#last) return;
    this.#last = key;
    if (bar > 0) this.#bars++;
    this.#at = Math.max(1, bar);
    $("playing").textContent = bar === 0 ? t("countingIn") : t("barOf", { bar, round });
    if (this.#rounds && bar > 0) this.#phase();
    this.#tired();
  }

  #phase() {
    const now = phase(this.page.state(), this.#bars);
    this.page.fade(now.name);
    $("phase").textContent = t(`phase.${now.name}`, { left: now.left });
  }

  #startRounds() {
    if (this.#rounds) return this.#endRounds();
    this.#rounds = true;
    $("rounds").setAttribute("aria-pressed", "true");
    $("rounds").textContent = t("roundsEnd");
    this.#play("run");
    this.page.toSheet();
  }

  #endRounds() {
    this.#rounds = false;
    $("rounds").setAttribute("aria-pressed", "false");
    $("rounds").textContent = t("roundsStart");
    $("phase").textContent = "";
    this.page.fade("look");
  }

  #changed(state) {
    $("play").textContent = t(state === "playing" ? "pause" : "play");
    $("stop").disabled = state === "stopped";
    if (state === "paused") $("playing").textContent = t("paused");
    this.#count(state === "playing");
    if (state !== "stopped") return;
    $("playing").textContent = "";
    this.#last = "";
    this.page.light(-1);
    this.#endRounds();
    this.#mode = "run";
    $("repair").setAttribute("aria-pressed", "false");
    $("repair").textContent = t("repairStart");
  }

  // Minutes of playing, not of the page being open. Five minutes away count as a rest.
  #count(playing) {
    const now = performance.now();
    if (this.#began !== null) this.#played += now - this.#began;
    if (playing && this.#began === null && now - this.#rest > 300000) this.#played = 0;
    if (!playing && this.#began !== null) this.#rest = now;
    this.#began = playing ? now : null;
    if (this.#played === 0) $("rest").textContent = "";
  }

  #tired() {
    this.#count(true);
    const minutes = Math.floor(this.#played / 60000);
    if (minutes >= this.page.state().rest && !$("rest").textContent) $("rest").textContent = t("restNow", { n: minutes });
  }

  #media() {
    if (!("mediaSession" in navigator)) return;
    for (const action of ["play", "pause"]) navigator.mediaSession.setActionHandler(action, () => this.toggle());
    navigator.mediaSession.setActionHandler("stop", () => this.player.stop());
  }
}

const changed = (a, b) => JSON.stringify(a.passage) !== JSON.stringify(b.passage);
