/**
 * Weft in JavaScript: give it chords and a picking figure, and it returns the
 * finished part, every string, stroke and reason in it; its sheets, files and
 * sound; and shapes, names and ways through a song.
 *
 * Requests and answers are plain data: they pass postMessage, JSON and
 * structuredClone. A request is read strictly: a field that is unknown, of the
 * wrong type or out of range is an error, never passed over. No call throws for
 * what a person typed; each returns an answer that is ok or an error.
 *
 * Words. String 1 is the thinnest, nearest the floor when a right-handed player
 * holds a normally strung guitar. A down-stroke goes toward the floor. Frets
 * count from the capo. Times are ticks, 480 to the quarter note, from the start
 * of the passage. Pitches are MIDI key numbers. Lists count from 0; what a
 * musician counts (strings, bars, events, figures) counts from 1.
 */

/** The version of this contract. A change that breaks a caller raises it. */
export const VERSION: 1;

/**
 * Loads the library, which comes in three files: weft.wasm, which is all that a
 * page needs to show and play a part; sheets.wasm, which writes text, words, html,
 * json and MusicXML; and drawings.wasm, which writes svg and midi. The last two are
 * fetched by the first call that needs them. Where no source is given they are
 * those beside this module. Each call makes an instance of its own, with
 * memory of its own. It rejects if weft.wasm cannot be had or is not this version's.
 */
export function load(source?: Source, sheets?: Source, drawings?: Source): Promise<Weft>;

/** Where a file of WebAssembly is: an address, a response, bytes or a module. */
export type Source =
  | string
  | URL
  | Response
  | Promise<Response>
  | ArrayBuffer
  | ArrayBufferView
  | WebAssembly.Module;

/** The library. */
export interface Weft {
  readonly version: 1;

  /** Reads one text, and returns it in canonical form or says what is wrong with it. */
  check<N extends Notation>(request: CheckRequest<N>): Answer<Checked[N]>;

  /** Lists the names that requests may use, and the library's limits. */
  choices(): Answer<Choices>;

  /** Carries the figures over the chords: the part, with all that a page shows of it. */
  arrange(request: { song: Song }): Answer<Part>;

  /** Writes the part in a format of text. It rejects if the file that does so cannot be had. */
  sheet(request: { song: Song; as: SheetFormat }): Promise<Answer<Sheet>>;

  /** Writes the part as a file, in any format. It rejects if the file that does so cannot be had; for wav that is weft.wasm. */
  file(request: { song: Song; as: FileFormat }): Promise<Answer<File>>;

  /** Finds the shapes of a chord, the best first. */
  shapes(request: ShapesRequest): Answer<Shapes>;

  /** Names what a shape sounds. */
  names(request: NamesRequest): Answer<Names>;

  /** Finds the easiest way through the chords of a song. */
  path(request: PathRequest): Answer<Path>;

  /** Finds the frets for the capo, the easiest first. */
  capo(request: CapoRequest): Answer<Capos>;

  /** Opens a player of the part's sound. It makes samples and plays nothing by itself. */
  sound(request: SoundRequest): Answer<Sound>;
}

/* Answers */

export type Answer<T> = { version: 1; ok: true; result: T } | { version: 1; ok: false; error: Failure };

export interface Failure {
  code: FailureCode;
  /** One line of English, with the mend if there is one. */
  message: string;
  /** The field of the request that is at fault, such as "song.chords"; empty for the whole request. */
  field: string;
  /** Where in a text the fault lies; null where no text that a person typed is at fault. */
  place: Place | null;
}

/**
 * syntax: a text cannot be read. impossible: it reads well and asks for what
 * cannot be. request: the request itself is wrong, which is the program's fault.
 * internal: a defect of the library; later calls go on working.
 */
export type FailureCode = "syntax" | "impossible" | "request" | "internal";

export interface Place {
  /** What the text is: "chords", "figure", "tuning", "shape", "chord", "key", "meter", "tempo", ... */
  notation: string;
  /** The whole text. */
  source: string;
  /** Where the fault begins and how long it is, in UTF-16 units, as JavaScript counts. Length 0: something is missing there. */
  offset: number;
  length: number;
  reason: string;
  /** What to write instead, in English; empty where nothing helps. */
  mend: string;
  /** Whole texts that mend it, tried and found good, the best first; may be empty. For buttons. */
  mends: Mend[];
}

export interface Mend {
  /** What is put in the place of the fault. */
  write: string;
  /** The source with that done. */
  text: string;
}

/* Choices */

export type Spelling = "english" | "german" | "mixed";
/** Right-handed; left-handed and restrung; left-handed, a right-handed guitar turned over. */
export type Hand = "right" | "left" | "turned";
export type Strokes = "toward-next" | "economy" | "alternate" | "rest-stroke" | "jig";
export type Fit = "contour" | "bass" | "shift";
export type Change = "restart" | "carry";
export type Fill = "again" | "ring";
export type Aim = "total" | "worst";
export type Stroke = "down" | "up";
export type Why = "toward the next string" | "turnaround" | "repeat" | "loop" | "last" | "own" | "tradition";
export type Crossing = "same" | "sweep" | "outside" | "inside" | "return";
export type Direction = "same" | "up" | "down";
export type FingerName = "index" | "middle" | "ring" | "little";

export interface Choices {
  spelling: Spelling[];
  hand: Hand[];
  strokes: Strokes[];
  fit: Fit[];
  change: Change[];
  fill: Fill[];
  aim: Aim[];
  count: CountWords[];
  paper: Paper[];
  staves: Staves[];
  material: Material[];
  click: Click[];
  sample: Sample[];
  tunings: { name: string; text: string }[];
  formats: { format: Format; media: string; extension: string }[];
  limits: {
    strings: number;
    frets: number;
    bars: number;
    slots: number;
    /** Bytes of UTF-8 in a text. */
    text: number;
    tempo: [least: number, most: number];
    /** Bytes of a WAV file. */
    sound: number;
  };
}

/* Requests */

/** What the player holds. What is left out is a six-string in standard tuning, 24 frets, no capo, right-handed. */
export interface Instrument {
  /** The name of a tuning, or the open strings, the highest number first: "E2 A2 D3 G3 B3 E4". */
  tuning?: string;
  /** On the neck, from the nut, 1 to 36. */
  frets?: number;
  capo?: number;
  /** Of the open strings, in millimetres. */
  scaleLength?: number;
  /** Between neighbouring strings at the pick, in millimetres. */
  stringSpacing?: number;
  hand?: Hand;
}

/** A song and how it is to be arranged. Everything but chords and figures may be left out. */
export interface Song extends Instrument {
  /** "Am | F=xx3211 | C G/B | E7": the package picking documents the notation. */
  chords: string;
  /** "5 3 2 1 2 3"; several with semicolons between them. */
  figures: string;
  title?: string;
  /** 4/4 if left out. */
  meter?: string;
  /** The meter's beats a minute, 10 to 400; 80 if left out. */
  tempo?: number;
  strokes?: Strokes;
  fit?: Fit;
  change?: Change;
  fill?: Fill;
  /** Take the figures in turn, one a chord, where a chord names none. */
  inTurn?: boolean;
  /** Play once, rather than loop. */
  once?: boolean;
  /** Of the notes in chords, and in all that is shown. JSON and tunings stay English. */
  spelling?: Spelling;
}

/* Checking one text */

export type Notation = "chord" | "chords" | "figures" | "tuning" | "shape" | "key" | "meter";

export interface CheckRequest<N extends Notation = Notation> {
  notation: N;
  text: string;
  /** Of chord and chords; others are English. */
  spelling?: Spelling;
}

export interface Canonical {
  /** The text in canonical form, which reads as the same thing. */
  text: string;
}

export interface Checked {
  chord: CheckedChord;
  chords: CheckedChords;
  figures: CheckedFigures;
  tuning: CheckedTuning;
  shape: CheckedShape;
  key: CheckedKey;
  meter: CheckedMeter;
}

export interface CheckedChord extends Canonical, ChordName {
  silent: boolean;
  /** Such as "1 b3 5 b7"; empty for silence. */
  formula: string;
  tones: Tone[];
  /** The note after the slash; empty where none is. */
  bass: string;
}

export interface CheckedChords extends Canonical {
  /** In English, for links and programs. */
  english: string;
  bars: { opens: boolean; closes: boolean; again: boolean; chords: ChartChord[] }[];
}

export interface ChartChord extends ChordName {
  /** Empty where the best shape is found. */
  shape: string;
  /** From 1; 0 where none is named. */
  figure: number;
  /** How long it lasts, such as 1.5; 0 for an equal share of the bar. */
  beats: number;
}

export interface CheckedFigures extends Canonical {
  figures: {
    text: string;
    /** The slot's length, such as "1/8"; empty if the bar is divided. */
    value: string;
    /** The string of the root on the home chord. */
    root: number;
    bars: Slot[][];
    /** Sentences that tell it, as one player tells another. */
    words: string[];
  }[];
}

export type Slot =
  | { kind: "rest" }
  | { kind: "hold" }
  /** own: the teacher's own stroke, or "free". */
  | { kind: "pluck"; string: number; own: Stroke | "free" };

export interface CheckedTuning extends Canonical {
  /** The name under which it is known; empty where it has none. */
  name: string;
  /** String 1 first. */
  strings: StringNote[];
}

export interface CheckedShape extends Canonical {
  /** The fret of each string, string 1 first; null where it is muted. */
  frets: (number | null)[];
}

export interface CheckedKey extends Canonical {
  tonic: string;
  minor: boolean;
}

export interface CheckedMeter extends Canonical {
  count: number;
  unit: number;
  /** Whether three units make a beat. */
  compound: boolean;
  /** Ticks. */
  bar: number;
  beat: number;
}

/* Chords and shapes */

export interface ChordName {
  /** In plain English text, as requests, links and programs use it: "F#m7b5". */
  symbol: string;
  /** As it is shown, in the spelling asked for, with printed accidentals: "F♯m7♭5". */
  name: string;
  /** As it is said: "F sharp minor seven flat five". English. */
  words: string;
}

export interface Tone {
  /** Such as "b3". */
  degree: string;
  /** In the spelling asked for, with printed accidentals. */
  note: string;
  need: "essential" | "optional" | "either";
}

export interface StringNote {
  string: number;
  /** In English with its octave, "A2"; C4 is middle C. */
  note: string;
  pitch: number;
}

export interface Start {
  string: number;
  reason: "root" | "slash bass" | "bass";
}

/** A shape with the fingers that hold it. */
export interface Held {
  chord: ChordName;
  shape: string;
  /** A character a string, the highest number first: the finger, 0 for open, x for muted. Empty if no four fingers can hold it. */
  fingers: string;
  start: Start;
  /** The string that sounds lowest. */
  bass: number;
  /** The lowest string with the root; null where none sounds it. */
  root: number | null;
  /** What sounds, string 1 first, capo and all. */
  notes: StringNote[];
  /** How hard it is to hold, in points; a point is worth a millimetre on the neck. */
  effort: number;
  /** What shapes are ranked by, in hundredths of a point. */
  cost: number;
  /** What is amiss with it, in short English clauses. */
  remarks: string[];
  box: Box;
}

/** A chord box: the neck upright, seen from the front. */
export interface Box {
  /** The fret of the first row, from the capo; above row 1 of fret 1 is the nut or the capo. */
  first: number;
  rows: number;
  /** From left to right; already mirrored for a restrung left-handed guitar. */
  columns: BoxColumn[];
  barres: { finger: FingerName; row: number; left: number; right: number }[];
  /** Why no fingers are given; empty where they are. */
  unheld: string;
  /** The box in short English sentences, to be read aloud. */
  words: string[];
}

export interface BoxColumn {
  string: number;
  /** The open string without the capo. */
  tuned: string;
  muted: boolean;
  /** From the capo; 0 if open or muted. */
  fret: number;
  /** Row of the window, 1 on top; 0 if open or muted. */
  row: number;
  /** null if the string is open or muted, or the shape cannot be held. */
  finger: FingerName | null;
  /** Whether a figure starts here. */
  start: boolean;
}

/** Which shapes may be held. */
export interface Limits {
  /** The lowest and the highest fret held, from the capo, open strings apart. */
  low?: number;
  high?: number;
  /** Between the lowest and the highest fret held, in millimetres, up to 150; 105 if left out. */
  span?: number;
  /** 1 to 4. */
  fingers?: number;
  /** Strings that may not be muted. */
  sounding?: number[];
  /** No string may be open. */
  closed?: boolean;
  /** The slash bass or else the root sounds lowest. */
  bassLow?: boolean;
  /** Weigh for hands that are new to the neck. */
  beginner?: boolean;
}

export interface ShapesRequest extends Instrument, Limits {
  chord: string;
  spelling?: Spelling;
  /** The most shapes wanted, 1 to 100, but 8 on more than nine strings; 8 if left out. */
  count?: number;
}

export interface Shapes {
  chord: CheckedChord;
  shapes: Held[];
  /** Whether there are more than these. */
  more: boolean;
}

export interface NamesRequest extends Instrument {
  shape: string;
  /** The key in which it stands, such as "Eb" or "F#m". English. */
  key?: string;
  spelling?: Spelling;
}

export interface Names {
  shape: string;
  /** What sounds, string 1 first, without the capo, as shapes are named. */
  notes: StringNote[];
  /** What sounds, without naming a chord: "a major third, C and E". English. */
  plain: string;
  /** The best first. Empty only where one pitch class sounds. */
  names: {
    chord: ChordName;
    confidence: "remote" | "possible" | "likely" | "certain";
    /** Notes of the chord that do not sound, and notes that sound and are not in it. */
    missing: string[];
    added: string[];
  }[];
  /** The shape under its first name; null where it has none. */
  held: Held | null;
}

export interface PathRequest extends Instrument, Limits {
  chords: string;
  spelling?: Spelling;
  /** total if left out; worst makes the hardest change as easy as can be. */
  aim?: Aim;
  /** Whether the last chord leads nowhere. */
  once?: boolean;
  /** How many shapes of each chord are tried, 1 to 24; 8 if left out. More take longer, by their square. */
  tried?: number;
}

export interface Path {
  /** The chart with every shape named, in the spelling asked for: it can be given to arrange. */
  chords: string;
  /** One for each chord of the chart in turn; null for silence. What is held on over bar lines counts once. */
  steps: (Held | null)[];
  changes: ChangeOfGrip[];
  /** In hundredths of a point. */
  total: number;
  /** The index in changes of the hardest; null where there is none. */
  worst: number | null;
  remarks: string[];
}

export interface ChangeOfGrip {
  /** Indexes in steps. */
  from: number;
  to: number;
  /** What every finger does, in English, the index finger first. */
  fingers: string[];
  /** In points. */
  cost: number;
  /** In hundredths of a point. */
  effort: number;
  remarks: string[];
}

export interface CapoRequest extends Instrument, Limits {
  /** As they are to sound. capo must be left out or 0. */
  chords: string;
  spelling?: Spelling;
  aim?: Aim;
  once?: boolean;
}

export interface Capos {
  capos: {
    fret: number;
    /** What the ranking goes by, in hundredths of a point. */
    cost: number;
    /** The chart as it is played behind the capo, with every shape named. */
    chords: string;
    /** What the shapes are called, one for each step, and what they sound. */
    played: ChordName[];
    sounding: ChordName[];
    path: Path;
  }[];
}

/* The part */

export interface Part {
  /** The chart and the figures in canonical form, in the spelling asked for. */
  chords: string;
  figures: string;
  /** The interchange form, in English. */
  passage: Passage;
  /** How long one playing lasts. */
  seconds: number;
  /** The step in string numbers that a down-stroke takes: -1, or 1 on a turned guitar. */
  down: -1 | 1;
  /** One for each pick of the passage, in order, and all that the thread needs. */
  picks: PickView[];
  /** One for each chord of the passage, in order. */
  held: HeldView[];
  /** The chord boxes of the part, each once, in the order of their first use. */
  boxes: Held[];
  /** Where the figure's rise and fall is lost. */
  losses: LossView[];
  /** On the whole part; each chord has its own in the passage. English. */
  remarks: string[];
}

export interface PickView {
  /** Indexes in passage.bars, in picks of that bar, and in held. */
  bar: number;
  pick: number;
  held: number;
  /** Seconds from the start. */
  time: number;
  /** Where the stroke begins and ends across the strings, in string spacings: over string 4 from 4.5 to 3.5. */
  from: number;
  to: number;
  /** Why the stroke goes its way, how the pick came here and how far, in English sentences. */
  why: string;
  came: string;
  /** The whole pick, as it is said: "Bar 1, beat 2: string 3, fret 2, A3, down." */
  words: string;
}

export interface HeldView {
  bar: number;
  chord: number;
  /** As the shape is called, and as it sounds with the capo. */
  played: ChordName;
  sounds: ChordName;
  /** Index in boxes; null for silence. */
  box: number | null;
}

export interface LossView {
  /** Index in held: the chord under which it is lost. */
  held: number;
  /** Indexes in picks: the step that sounds otherwise. From the last pick of a loop it leads to pick 0. */
  from: number;
  to: number;
  want: Direction;
  got: Direction;
  /** English. */
  words: string;
}

/** The interchange form: the package picking/json documents every field. */
export interface Passage {
  version: 1;
  title: string;
  meter: string;
  tempo: number;
  ticksPerQuarter: 480;
  tuning: string;
  frets: number;
  capo: number;
  scaleLength: number;
  stringSpacing: number;
  hand: Hand;
  strokes: Strokes;
  fit: Fit;
  loop: boolean;
  travel: { spacings: number; millimetres: number };
  remarks: string[];
  bars: Bar[];
}

export interface Bar {
  number: number;
  written: number;
  pass: 1 | 2;
  at: number;
  length: number;
  chords: HeldChord[];
  picks: Pick[];
}

/** Silence has neither figure nor anything after it. */
export interface HeldChord {
  at: number;
  length: number;
  symbol: string;
  sounds: string;
  figure?: number;
  shape?: string;
  start?: Start;
  bass?: number;
  root?: number;
  fit?: {
    strings: number[];
    csim: number;
    cplussim: number;
    losses: { from: number; to: number; want: Direction; got: Direction }[];
    remarks: string[];
  };
}

export interface Pick {
  at: number;
  length: number;
  rings: number;
  event: number;
  string: number;
  fret: number;
  pitch: number;
  note: string;
  stroke: Stroke;
  why: Why;
  crossing?: Crossing;
  travel: number;
}

/* Sheets and files */

export type CountWords = "auto" | "beats" | "units" | "eighths" | "sixteenths";
export type Paper = "A4" | "Letter";
export type Staves = "both" | "tab";

export type SheetFormat =
  /** For a terminal or a message. width in characters, 40 to 1000. */
  | { format: "text"; count?: CountWords; width?: number }
  /** The interchange form. */
  | { format: "json" }
  /** Prose for a screen reader or a braille display; width in cells, 12 to 1000, 0 breaks no line. */
  | { format: "words"; width?: number }
  | { format: "html" }
  /** A drawing a page. size of the chord names in points, 12 to 36. */
  | { format: "svg"; paper?: Paper; landscape?: boolean; size?: number }
  | { format: "musicxml"; staves?: Staves };

export type FileFormat =
  | SheetFormat
  | { format: "mxl"; staves?: Staves }
  /** countIn: bars of clicks before the first bar, 0 to 8. */
  | { format: "midi"; oneTrack?: boolean; countIn?: number; click?: boolean }
  | ({ format: "wav" } & WavOptions);

export type Format = FileFormat["format"];

export interface Sheet {
  format: SheetFormat["format"];
  media: string;
  extension: string;
  /** More than one only for svg. */
  pages: string[];
}

export interface File {
  format: Format;
  media: string;
  extension: string;
  /** The caller's own. svg: all pages in one drawing. */
  bytes: Uint8Array;
}

/* Sound */

export type Sample = "int16" | "float32";
export type Material = "steel" | "nylon";
/** Clicks: none; each beat and, below 60 a minute, what divides it; each beat; each beat and what divides it. */
export type Click = "off" | "auto" | "beats" | "divided";

/** How the part is played. What is left out is steel strings, the song's tempo, once through, no click. */
export interface Band {
  material?: Material;
  /** Of the noise of the plectrum, a whole number from 0. */
  seed?: number;
  /** The meter's beats a minute, 10 to 400. */
  tempo?: number;
  /** Bars of clicks before the first bar, 0 to 8. */
  countIn?: number;
  click?: Click;
  /** The first and the last bar, as passage.bars numbers them. */
  from?: number;
  to?: number;
  /** How often these bars are played, 1 to 999. */
  rounds?: number;
  /** Bars in turn, over the rounds too: so many with the guitar, then so many without it. */
  sounding?: number;
  silent?: number;
  /** No click either in silent bars. */
  hush?: boolean;
}

export interface WavOptions extends Band {
  /** Frames a second, 8000 to 192000; 48000 if left out. A file of more than limits.sound bytes is refused. */
  rate?: number;
  /** How a sample is stored; int16 if left out. */
  sample?: Sample;
}

export interface SoundRequest extends Band {
  song: Song;
  /** Frames a second, 8000 to 192000: that of the audio context. */
  rate: number;
  /** Play the bars over and over, in place of rounds. */
  endless?: boolean;
}

/**
 * A player. Ask it for samples and hand them to the audio device. At most 16 are
 * open at a time; close those that are done.
 */
export interface Sound {
  /** Frames a second. */
  readonly rate: number;
  /** Fills two arrays of one length, at most 65536, with samples from -1 to 1, and says what they hold. */
  fill(left: Float32Array, right: Float32Array): Answer<Filled>;
  /** Goes on from a bar of passage.bars, as it numbers them; what rings fades out without a click. */
  seek(bar: number): Answer<Position>;
  /** Plays on at so many of the meter's beats a minute, 10 to 400, from the next frame. */
  tempo(beats: number): Answer<Position>;
  /** Where the last frame filled lies. What is shown should lag behind it by what sound takes to the ear. */
  position(): Answer<Position>;
  close(): void;
}

export interface Position {
  /** Frames filled since the player was opened. */
  frame: number;
  /** From the start of the passage; before the first bar in a count-in. */
  tick: number;
  /** The bar, as passage.bars numbers it; 0 in the count-in. */
  bar: number;
  /** From 1. */
  round: number;
  /** The latest to begin, by its index in part.picks; null before any. */
  pick: number | null;
  /** Whether the guitar is silent in this bar. */
  silent: boolean;
  /** Whether all has been played and has rung out. */
  ended: boolean;
}

export interface Filled extends Position {
  /** Frames filled. The rest of the arrays is silence. */
  frames: number;
  /** The picks that begin in these frames, by their index in part.picks, and after how many of them, to 128. */
  picks: { pick: number; frame: number }[];
}
