// Plays the part: an audio context, a worker that makes the samples, and the
// events of the part on the clock of the context. Nothing sounds until play.

import { start } from "./library.js";

/** Seconds that are made ahead: little, so that changes are heard soon; more while the page is hidden. */
const AHEAD = { visible: 0.2, hidden: 2 };

export class Player {
  #context = null;
  #node = null;
  #worker = null;
  #turn = 0;
  #events = [];
  #frame = 0;
  #state = "stopped";

  /** on has the functions pick(index), bar(bar, round), state(name), failed(message), played(seconds). */
  constructor(on) {
    this.on = on;
    document.addEventListener("visibilitychange", () => this.#seen());
  }

  /** "stopped", "playing" or "paused". */
  get state() {
    return this.#state;
  }

  /** Plays from the beginning, or from a bar. request is as the library takes it, without the rate. */
  async start(request, bar = 0) {
    try {
      await this.#ready();
    } catch (error) {
      this.on.failed(String(error?.message ?? error));
      return;
    }
    this.#turn++;
    this.#events = [];
    this.#node.port.postMessage({ turn: this.#turn });
    this.#worker.postMessage({ open: { ...request, rate: this.#context.sampleRate }, bar, turn: this.#turn });
    await this.#context.resume();
    this.#become("playing");
  }

  async pause() {
    if (this.#state !== "playing") return;
    this.#become("paused");
    await this.#context.suspend();
  }

  async resume() {
    if (this.#state !== "paused") return;
    this.#become("playing");
    await this.#context.resume();
  }

  stop() {
    if (this.#state === "stopped") return;
    this.#turn++;
    this.#events = [];
    this.#node.port.postMessage({ turn: this.#turn });
    this.#worker.postMessage({ close: true });
    this.#become("stopped");
    this.#context.suspend();
  }

  /** Goes on at another tempo. */
  tempo(beats) {
    if (this.#state !== "stopped") this.#worker.postMessage({ tempo: beats });
  }

  async #ready() {
    if (this.#node) return;
    if ("audioSession" in navigator) navigator.audioSession.type = "playback";
    const context = this.#context ?? (this.#context = new AudioContext());
    await context.audioWorklet.addModule(new URL("stream.js", import.meta.url));
    const node = new AudioWorkletNode(context, "weft-stream", { numberOfInputs: 0, outputChannelCount: [2] });
    const worker = start("sound-worker.js", (why) => this.on.failed(why));
    const { port1, port2 } = new MessageChannel();
    worker.postMessage({ port: port1 }, [port1]);
    node.port.postMessage({ port: port2, ahead: AHEAD.visible }, [port2]);
    node.port.onmessage = ({ data }) => this.#heard(data);
    worker.onmessage = ({ data }) => this.#told(data);
    context.onstatechange = () => this.#interrupted();
    node.connect(context.destination);
    [this.#node, this.#worker] = [node, worker];
  }

  #told({ turn, failure }) {
    if (turn !== this.#turn || !failure) return;
    this.stop();
    this.on.failed(failure.message);
  }

  #heard(chunk) {
    if (chunk.turn !== this.#turn) return;
    this.#events.push({ time: chunk.time, bar: chunk.bar, round: chunk.round });
    for (const { pick, time } of chunk.picks) this.#events.push({ time, pick });
    if (chunk.ended) this.#events.push({ time: chunk.until, ended: true });
    this.#events.sort((a, b) => a.time - b.time);
    if (document.hidden) this.#run();
    else if (!this.#frame) this.#frame = requestAnimationFrame(() => this.#tick());
  }

  #tick() {
    this.#frame = 0;
    this.#run();
    if (this.#state === "playing" && this.#events.length > 0) this.#frame = requestAnimationFrame(() => this.#tick());
  }

  // What has become audible by now: the clock of the context, less the way to the ear.
  #run() {
    const late = this.#context.outputLatency || 0;
    const now = this.#context.currentTime - late;
    while (this.#events.length > 0 && this.#events[0].time <= now) this.#happen(this.#events.shift());
  }

  #happen(event) {
    if (event.pick !== undefined) this.on.pick(event.pick);
    else if (event.ended) this.stop();
    else this.on.bar(event.bar, event.round);
  }

  #become(state) {
    this.#state = state;
    if ("mediaSession" in navigator) navigator.mediaSession.playbackState = { playing: "playing", paused: "paused", stopped: "none" }[state];
    this.on.state(state);
  }

  // A call or another program took the audio device; the page says so, and goes on when asked.
  #interrupted() {
    if (this.#state === "playing" && this.#context.state === "interrupted") this.#become("paused");
  }

  #seen() {
    this.#node?.port.postMessage({ ahead: document.hidden ? AHEAD.hidden : AHEAD.visible });
    if (!document.hidden && this.#state === "playing") this.#context.resume();
  }
}
