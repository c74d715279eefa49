// Taking the part away: the printed sheet, files, words and a link.

import { COMFORTABLE, encode } from "./link.js";
import { make } from "./svg.js";
import { song } from "./state.js";
import { t } from "./words.js";

const $ = (id) => document.getElementById(id);
const FORMATS = ["text", "words", "html", "svg", "json", "musicxml", "mxl", "midi", "wav"];
const LARGE = 24; // points for the names of chords
const PAUSE = 300; // milliseconds without typing before pages are drawn

export class Taking {
  #timer = 0;
  #turn = 0;
  #urls = [];
  #choices = null;
  #words = "";

  /** page has state() and engine. */
  constructor(page) {
    this.page = page;
    $("print").onclick = () => this.#print();
    $("copy").onclick = () => this.#copyLink();
    $("copy-words").onclick = () => this.#copy(this.#words, t("copiedWords"));
  }

  /** Offers the formats that the library has. */
  offer(choices) {
    this.#choices = choices;
    this.list();
  }

  /** Lists the files in the language chosen. */
  list() {
    const known = this.#choices?.formats ?? [];
    const offered = FORMATS.map((name) => known.find((f) => f.format === name)).filter(Boolean);
    $("files").replaceChildren(...offered.map((format) => make("li", {},
      make("button", { type: "button", "data-format": format.format, onclick: () => this.#save(format) }, t(`file.${format.format}`)))));
  }

  /** Draws pages and words again, once typing has paused. */
  refresh() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.draw().catch((error) => this.#say(error.message)), PAUSE);
  }

  /** Draws pages and words now. */
  async draw() {
    const turn = ++this.#turn;
    const state = this.page.state();
    const [words, svg] = await Promise.all([
      this.page.engine.ask("sheet", { song: song(state), as: { format: "words", width: 0 } }),
      this.page.engine.ask("sheet", { song: song(state), as: drawing(state) }),
    ]);
    if (turn !== this.#turn) return;
    if (words.ok) this.#showWords(words.result.pages.join("\n"));
    if (svg.ok) await this.#showPages(svg.result.pages, state);
  }

  #showWords(text) {
    this.#words = text;
    const paragraphs = () => text.trim().split(/\n{2,}/).map((p) => make("p", {}, p));
    $("words").replaceChildren(...paragraphs());
    $("spoken").querySelector("div").replaceChildren(...paragraphs());
  }

  async #showPages(pages, state) {
    const old = this.#urls;
    this.#urls = pages.map((page) => URL.createObjectURL(new Blob([page], { type: "image/svg+xml" })));
    const name = `page ${state.paper.toLowerCase()} ${state.wide ? "across" : "upright"}`;
    const images = this.#urls.map((src, i) => make("img", { class: name, src, alt: t("pageOf", { n: i + 1, all: pages.length }) }));
    $("pages").replaceChildren(...images);
    await Promise.all(images.map((image) => image.decode().catch(() => {})));
    for (const url of old) URL.revokeObjectURL(url);
  }

  async #print() {
    clearTimeout(this.#timer);
    try {
      await this.draw();
      print();
    } catch (error) {
      this.#say(error.message);
    }
  }

  async #save(format) {
    const state = this.page.state();
    const request = { song: song(state), as: options(format.format, state) };
    const answer = await this.page.engine.ask("file", request).catch((error) => ({ error }));
    if (!answer.ok) return this.#say(answer.error.message, "en");
    const { bytes, media, extension } = answer.result;
    const name = `${fileName(state.title)}.${extension.replace(/^\./, "")}`;
    const href = URL.createObjectURL(new Blob([bytes], { type: media }));
    make("a", { href, download: name }).click();
    setTimeout(() => URL.revokeObjectURL(href), 60000);
    this.#say(t("saved", { name }));
  }

  #copyLink() {
    const link = `${location.href.replace(/#.*$/, "")}#${encode(this.page.state())}`;
    const n = link.length;
    return this.#copy(link, t(n > COMFORTABLE ? "copiedLong" : "copied", { n }));
  }

  async #copy(text, done) {
    try {
      await navigator.clipboard.writeText(text);
      this.#say(done);
    } catch {
      const area = make("textarea", { readonly: true, rows: "3", "aria-label": t("copyFailed") }, text);
      $("taken").replaceChildren(t("copyFailed"), area);
      area.select();
    }
  }

  #say(text, lang = null) {
    $("taken").replaceChildren(make("span", { lang }, text));
  }
}

function drawing(state) {
  const as = { format: "svg", paper: state.paper, landscape: state.wide };
  if (state.large) as.size = LARGE;
  return as;
}

function options(format, state) {
  switch (format) {
    case "svg":
      return drawing(state);
    case "midi":
      return { format, countIn: state.countIn, click: state.click !== "off" };
    case "wav":
      return { format, material: state.material, countIn: state.countIn, click: state.click };
    default:
      return { format };
  }
}

/** A title as the name of a file, on any system. */
export function fileName(title) {
  const plain = title.normalize("NFC").replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-+|-+$/g, "").slice(0, 60);
  return plain || t("untitled");
}
