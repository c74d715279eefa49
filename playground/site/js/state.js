// What the page is about: one flat record, of which every field has a kind, a
// default and bounds. The link, the memory of the device and the form all go by
// this list, so a field that is added here is kept, sent and restored.
//
// Links leave out what stands at its default. A default that changed would
// change what old links mean; give a new version to the link instead.

/** The most characters kept of a text, as the library takes no more. */
export const LONGEST = 65536;

const text = (fallback, longest = LONGEST) => ({ kind: "text", fallback, longest });
const number = (fallback, least, most) => ({ kind: "number", fallback, least, most });
const choice = (...options) => ({ kind: "choice", fallback: options[0], options });
const flag = () => ({ kind: "flag", fallback: false });

/** Every field of the state, under the name that it has in links. */
export const FIELDS = Object.freeze({
  title: text("", 200),
  chords: text("Am | F | C G/B | E7 | Am | Dm | E7 | Am"),
  figures: text("5 3 2 1 2 3 2 1"),
  meter: text("4/4", 20),
  tempo: number(80, 10, 400),
  tuning: text("standard", 200),
  frets: number(24, 1, 36),
  capo: number(0, 0, 36),
  hand: choice("right", "left", "turned"),
  strokes: choice("toward-next", "economy", "alternate", "rest-stroke", "jig"),
  fit: choice("contour", "bass", "shift"),
  change: choice("restart", "carry"),
  fill: choice("again", "ring"),
  inTurn: flag(),
  once: flag(),
  spelling: choice("english", "german", "mixed"),
  material: choice("steel", "nylon"),
  countIn: number(1, 0, 8),
  click: choice("off", "auto", "beats", "divided"),
  look: number(4, 0, 64),
  glance: number(4, 0, 64),
  away: number(4, 0, 64),
  sounding: number(4, 1, 64),
  silent: number(0, 0, 16),
  hush: flag(),
  slow: number(60, 20, 100),
  rest: number(25, 5, 120),
  paper: choice("A4", "Letter"),
  wide: flag(),
  large: flag(),
});

/** The fields that make a song, as the library asks for it. */
const SONG = ["chords", "figures", "meter", "tempo", "tuning", "frets", "capo", "hand", "strokes", "fit", "change",
  "fill", "inTurn", "once", "spelling"];

/** A state in which every field stands at its default. */
export function fresh() {
  return Object.fromEntries(Object.entries(FIELDS).map(([name, field]) => [name, field.fallback]));
}

/** Whether a value may stand in a field. */
export function allows(name, value) {
  const field = FIELDS[name];
  switch (field.kind) {
    case "text":
      return typeof value === "string" && value.length <= field.longest;
    case "number":
      return Number.isInteger(value) && value >= field.least && value <= field.most;
    case "choice":
      return field.options.includes(value);
    default:
      return typeof value === "boolean";
  }
}

/** The song of a state, as a request holds it. */
export function song(state) {
  const asked = Object.fromEntries(SONG.map((name) => [name, state[name]]));
  if (state.title) asked.title = state.title;
  return asked;
}

/** Whether two states are the same in every field. */
export function same(a, b) {
  return Object.keys(FIELDS).every((name) => a[name] === b[name]);
}
