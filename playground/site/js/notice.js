// Lines above the lesson: what was lost of a link, and that a newer page is ready.

import { make } from "./svg.js";
import { t } from "./words.js";

const place = () => document.getElementById("notice");

/** Says lines, with buttons { text, act }; one to close comes last. */
export function notice(lines, buttons = []) {
  const close = { text: t("close"), act: () => (place().hidden = true) };
  place().replaceChildren(
    ...lines.map((line) => make("p", {}, line)),
    make("p", { class: "pair" }, ...[...buttons, close].map(({ text, act }) => make("button", { type: "button", onclick: act }, text))));
  place().hidden = false;
}

/** Says what was lost of a link. */
export function linkLost(lost) {
  notice([t("linkLost"), ...lost.slice(0, 8).map(({ what, text }) => t(`lost.${what}`, { text }))]);
}
