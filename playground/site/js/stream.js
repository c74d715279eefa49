// Plays samples that come in chunks, in the thread of the audio device. It asks
// for more over the port from the sound worker, and tells the page when, on the
// clock of the audio context, each chunk begins.

class Stream extends AudioWorkletProcessor {
  #chunks = [];
  #offset = 0;
  #queued = 0;
  #asked = 0;
  #turn = 0; // chunks of an older turn are not played
  #ahead = 0.2;
  #done = true;
  #source = null;

  constructor() {
    super();
    this.port.onmessage = ({ data }) => this.#command(data);
  }

  #command({ port, turn, ahead }) {
    if (port) {
      this.#source = port;
      port.onmessage = ({ data }) => this.#take(data);
    }
    if (ahead) this.#ahead = ahead;
    if (turn === undefined) return;
    this.#turn = turn;
    this.#chunks = [];
    this.#offset = this.#queued = this.#asked = 0;
    this.#done = false;
  }

  #take(chunk) {
    if (chunk.turn !== this.#turn) return;
    this.#asked = Math.max(0, this.#asked - chunk.left.length);
    this.#queued += chunk.left.length;
    this.#done = chunk.ended;
    this.#chunks.push(chunk);
  }

  #askForMore() {
    const want = this.#ahead * sampleRate - this.#queued - this.#asked;
    if (this.#done || !this.#source || want <= 0) return;
    const frames = Math.ceil(want / 1024) * 1024;
    this.#asked += frames;
    this.#source.postMessage({ turn: this.#turn, frames });
  }

  process(_, [output]) {
    const [left, right] = output;
    for (let at = 0; at < left.length && this.#chunks.length > 0; ) at += this.#pour(left, right ?? left, at);
    this.#askForMore();
    return true;
  }

  #pour(left, right, at) {
    const chunk = this.#chunks[0];
    if (this.#offset === 0) this.#tell(chunk, currentTime + at / sampleRate);
    const count = Math.min(left.length - at, chunk.left.length - this.#offset);
    left.set(chunk.left.subarray(this.#offset, this.#offset + count), at);
    right.set(chunk.right.subarray(this.#offset, this.#offset + count), at);
    this.#offset += count;
    this.#queued -= count;
    if (this.#offset === chunk.left.length) {
      this.#chunks.shift();
      this.#offset = 0;
    }
    return count;
  }

  #tell({ turn, picks, bar, round, ended, left }, time) {
    const plucked = picks.map(({ pick, frame }) => ({ pick, time: time + frame / sampleRate }));
    this.port.postMessage({ turn, picks: plucked, bar, round, ended, time, until: time + left.length / sampleRate });
  }
}

registerProcessor("weft-stream", Stream);
