// The library, in a worker of its own so that typing is never held up by it.

import { load } from "../weft/weft.js";

let start;
const library = new Promise((resolve) => (start = resolve)).then(load);

self.onmessage = async ({ data: { program, id, ask, request } }) => {
  if (program) return start(program);
  try {
    const weft = await library;
    const answer = ask === "draw" ? drawn(weft, request) : await weft[ask](request);
    self.postMessage({ id, answer });
  } catch (error) {
    self.postMessage({ id, broken: String(error?.message ?? error) });
  }
};

// All that a drawing of the part needs, in one answer. Figures are read even
// where the chords are at fault, so that the lattice stays of use.
function drawn(weft, request) {
  const checked = (notation, text) => {
    const answer = weft.check({ notation, text });
    return answer.ok ? answer.result : null;
  };
  const { figures, tuning, meter } = request.song;
  const answer = weft.arrange(request);
  return {
    ...answer,
    spellings: answer.ok ? [] : otherSpellings(weft, request.song),
    figures: checked("figures", figures),
    tuning: checked("tuning", tuning),
    meter: checked("meter", meter),
  };
}

// The spellings of notes in which the chords can be read, other than their own.
function otherSpellings(weft, { chords, spelling }) {
  const reads = (other) => weft.check({ notation: "chords", text: chords, spelling: other }).ok;
  return reads(spelling) ? [] : ["english", "german", "mixed"].filter((other) => other !== spelling && reads(other));
}
