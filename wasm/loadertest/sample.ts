// Not run: it is held against the declarations, which it uses as a program would.

import { load, VERSION } from "weft";
import type { Answer, Box, Checked, Failure, Filled, Notation, Part, Pick, Song, Sound, Weft } from "weft";

const version: 1 = VERSION;
const weft: Weft = await load();
await load("https://weft.example/weft.wasm", new URL("https://weft.example/sheets.wasm"));
await load(fetch("weft.wasm"), await fetch("sheets.wasm"), new ArrayBuffer(8));
await load(new Uint8Array(8));
await load(await WebAssembly.compile(new ArrayBuffer(8)));

function result<T>(answer: Answer<T>): T {
  if (answer.ok) {
    return answer.result;
  }
  const failure: Failure = answer.error;
  const button = failure.place?.mends[0]?.text;
  throw new Error(`${failure.code} ${failure.field}: ${failure.message} ${button ?? ""}`);
}

const song: Song = {
  chords: "Am | F=xx3211 | C G/B | E7", figures: "5 3 2 1 2 3", title: "Sample", meter: "6/8", tempo: 66, tuning: "drop D",
  frets: 20, capo: 2, scaleLength: 650, stringSpacing: 11, hand: "left", strokes: "economy", fit: "bass", change: "carry",
  fill: "ring", inTurn: true, once: true, spelling: "german",
};
const part: Part = result(weft.arrange({ song }));
for (const { bar, pick, from, to, why } of part.picks) {
  const picked: Pick | undefined = part.passage.bars[bar]?.picks[pick];
  console.log(picked?.string, picked?.crossing?.toUpperCase(), from - to, why);
}
const box: Box | undefined = part.boxes[part.held[0]?.box ?? 0]?.box;
console.log(version, box?.columns.map((column) => column.finger ?? "none"), part.losses.map((loss) => loss.want));

const figures: Checked["figures"] = result(weft.check({ notation: "figures", text: "5 3 2 1" }));
for (const slot of figures.figures[0]?.bars.flat() ?? []) {
  console.log(slot.kind === "pluck" ? slot.string : slot.kind);
}
const silent: boolean = result(weft.check({ notation: "chord", text: "N.C.", spelling: "mixed" })).silent;
const notation: Notation = silent ? "key" : "meter";
console.log(result(weft.check({ notation, text: "C" })).text, result(weft.choices()).limits.tempo[0]);

console.log(result(weft.shapes({ chord: "Am", count: 3, sounding: [1, 2], beginner: true })).shapes[0]?.fingers);
console.log(result(weft.names({ shape: "x02010", key: "C" })).names[0]?.confidence);
const path = result(weft.path({ chords: "Am | G", aim: "worst", tried: 4 }));
console.log(path.steps[0]?.shape, path.worst === null ? "" : path.changes[path.worst]?.remarks);
console.log(result(weft.capo({ chords: "Bb | F" })).capos[0]?.path.chords);

const pages: string[] = result(await weft.sheet({ song, as: { format: "svg", paper: "Letter", landscape: true, size: 18 } })).pages;
const file = result(await weft.file({ song, as: { format: "wav", rounds: 2, material: "nylon", sample: "float32" } }));
new Blob([file.bytes as Uint8Array<ArrayBuffer>, ...pages], { type: file.media });

const sound: Sound = result(weft.sound({ song, rate: 48000, click: "auto", endless: true }));
const filled: Filled = result(sound.fill(new Float32Array(128), new Float32Array(128)));
console.log(filled.picks[0]?.frame, result(sound.seek(2)).tick, result(sound.tempo(90)).bar, sound.rate);
sound.close();

// @ts-expect-error: chords must be there
weft.arrange({ song: { figures: "5" } });
// @ts-expect-error: no such field
weft.arrange({ song: { chords: "C", figures: "5", colour: "red" } });
// @ts-expect-error: no such hand
weft.arrange({ song: { chords: "C", figures: "5", hand: "both" } });
// @ts-expect-error: a sheet is text
weft.sheet({ song, as: { format: "midi" } });
// @ts-expect-error: an option of another format
weft.file({ song, as: { format: "json", width: 80 } });
// @ts-expect-error: an answer may be an error
weft.choices().result.limits;
// @ts-expect-error: no such notation
weft.check({ notation: "poem", text: "" });
// @ts-expect-error: the tones are a chord's
result(weft.check({ notation: "key", text: "C" })).tones;
