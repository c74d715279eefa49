// The library's synth, in a worker: it fills chunks of samples when the audio
// thread asks for them. Timers play no part, so a hidden page sounds on.

import { load } from "../weft/weft.js";

const CHUNK = 1024;

let start;
const library = new Promise((resolve) => (start = resolve)).then(load);
let sound = null;
let turn = 0;
let out = null;

self.onmessage = async ({ data }) => {
  if (data.program) return start(data.program);
  if (data.port) {
    out = data.port;
    out.onmessage = ({ data: wanted }) => fill(wanted);
  }
  try {
    const weft = await library;
    if (data.open) open(weft, data);
    if (data.tempo) sound?.tempo(data.tempo);
    if (data.close) close();
  } catch (error) {
    self.postMessage({ turn: data.turn ?? turn, failure: { message: String(error?.message ?? error) } });
  }
};

function open(weft, { open: request, bar, turn: mine }) {
  close();
  turn = mine;
  const answer = weft.sound(request);
  if (!answer.ok) return self.postMessage({ turn, failure: answer.error });
  sound = answer.result;
  if (bar) sound.seek(bar);
  self.postMessage({ turn, opened: true });
}

function close() {
  sound?.close();
  sound = null;
}

function fill({ turn: wanted, frames }) {
  if (wanted !== turn || !sound) return;
  for (let left = frames; left > 0; left -= CHUNK) if (!fillOne()) return;
}

function fillOne() {
  const chunk = { turn, left: new Float32Array(CHUNK), right: new Float32Array(CHUNK) };
  const answer = sound.fill(chunk.left, chunk.right);
  if (!answer.ok) {
    self.postMessage({ turn, failure: answer.error });
    return false;
  }
  const { picks, bar, round, ended } = answer.result;
  out.postMessage({ ...chunk, picks, bar, round, ended }, [chunk.left.buffer, chunk.right.buffer]);
  return !ended;
}
