// The text of the page in the language chosen.

import { texts } from "./text.js";

let language = "en";

/** The languages there are. */
export const languages = Object.keys(texts);

/** The text under a key, with values in the place of {names}. */
export function t(key, values = {}) {
  const text = texts[language][key] ?? texts.en[key] ?? key;
  return text.replace(/\{(\w+)\}/g, (all, name) => (Object.hasOwn(values, name) ? String(values[name]) : all));
}

/** Speaks a language from here on, and says all that stands in the page in it. */
export function speak(wanted) {
  language = languages.includes(wanted) ? wanted : "en";
  document.documentElement.lang = language;
  for (const element of document.querySelectorAll("[data-t]")) element.textContent = t(element.dataset.t);
}

/** The language that is spoken. */
export function spoken() {
  return language;
}
