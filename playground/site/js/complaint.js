// What is wrong, beside the text, at the right place, with a button for every
// mend that is known to be good.

import { make } from "./svg.js";
import { t } from "./words.js";

const slotOf = (field) => document.querySelector(`[data-complaint="${CSS.escape(field)}"]`) ?? document.querySelector('[data-complaint=""]');
const controlOf = (field) => document.querySelector(`[data-field="${CSS.escape(field)}"]`);

/** Takes all complaints away. */
export function contentAll() {
  for (const slot of document.querySelectorAll("[data-complaint]")) slot.replaceChildren();
  for (const control of document.querySelectorAll("[aria-invalid]")) content(control);
  for (const shade of document.querySelectorAll(".shade")) shade.replaceChildren();
}

/** Takes the complaint about one control away. */
export function content(control) {
  control.removeAttribute("aria-invalid");
  const slot = document.querySelector(`[data-complaint="${CSS.escape(control.dataset.field)}"]`);
  slot?.replaceChildren();
}

/**
 * Complains about a field. failure is as the library answers; mend is called with
 * a field and its mended text; more are other ways out, { text, act }.
 */
export function complain(field, failure, { mend = () => {}, more = [], lang = "en" } = {}) {
  const control = controlOf(field);
  control?.setAttribute("aria-invalid", "true");
  const place = failure.place;
  const parts = [make("p", { class: "wrong", lang: lang || null }, sentence(failure))];
  const buttons = place && control ? mends(field, place, control, mend, more) : [];
  if (buttons.length > 0) parts.push(make("p", { class: "buttons" }, ...buttons));
  slotOf(field).replaceChildren(...parts);
  if (place && control) shade(control, place);
}

function sentence(failure) {
  const { place } = failure;
  if (!place) return failure.message;
  return place.mend ? `${place.reason}: ${place.mend}` : place.reason;
}

function mends(field, place, control, mend, more) {
  const offered = (place.mends ?? []).slice(0, 6).map(({ write, text }) => ({
    text: write.trim() === "" ? t("delete") : t("write", { text: write }),
    act: () => mend(field, text),
  }));
  const buttons = [...offered, ...more].map(({ text, act }) =>
    make("button", { type: "button", class: "mend", onclick: () => { act(); control.focus(); } }, text));
  if (control.setSelectionRange && control.type !== "number") {
    const show = () => {
      control.focus();
      control.setSelectionRange(place.offset, place.offset + Math.max(place.length, 0));
    };
    buttons.push(make("button", { type: "button", class: "quiet", onclick: show }, t("goTo")));
  }
  return buttons;
}

// The same text behind the text area, with the fault marked in it.
function shade(control, place) {
  const behind = control.parentElement.querySelector(".shade");
  if (!behind || control.value !== place.source) return;
  const end = place.offset + place.length;
  const mark = make("mark", place.length === 0 ? { class: "gap" } : {}, place.length === 0 ? "\u200b" : place.source.slice(place.offset, end));
  behind.replaceChildren(place.source.slice(0, place.offset), mark, place.source.slice(end));
}
