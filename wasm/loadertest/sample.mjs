// What a developer writes first, in a project that has the package installed.

import { load } from "weft";

const weft = await load();
const song = { chords: "Am | G | Dm | E", figures: "5 3 2 1 2 3", meter: "6/8" };
const part = weft.arrange({ song });
if (!part.ok) {
  throw new Error(part.error.message);
}
console.log(part.result.passage.bars.length, part.result.picks.length, part.result.picks[0].words);
const sheet = await weft.sheet({ song, as: { format: "text" } });
console.log(sheet.result.pages[0].split("\n").find((line) => line.startsWith("chord")));
