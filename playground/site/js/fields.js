// The controls that stand for a field of the state: they show it and change it.

import { FIELDS, allows } from "./state.js";
import { t } from "./words.js";
import { complain, content } from "./complaint.js";

const controls = () => document.querySelectorAll("[data-field]");

/** Lets every control report what a person puts into it. */
export function listen(change) {
  for (const control of controls()) control.addEventListener("input", () => take(control, change));
}

function take(control, change) {
  const name = control.dataset.field;
  const value = valueOf(control);
  if (value === undefined) return;
  if (!allows(name, value)) return refuse(control, name);
  if (control.dataset.refused) accept(control);
  change(name, value);
}

function valueOf(control) {
  switch (control.type) {
    case "checkbox":
      return control.checked;
    case "radio":
      return control.checked ? control.value : undefined;
    case "number":
      return control.value === "" ? NaN : Number(control.value);
    default:
      return control.value;
  }
}

function refuse(control, name) {
  const { least, most } = FIELDS[name];
  const message = least === undefined ? "" : t("range", { least, most });
  control.dataset.refused = "true";
  complain(name, { message, place: null }, { lang: "" });
}

function accept(control) {
  delete control.dataset.refused;
  content(control);
}

/** Shows a state in all controls, but for the one that is being typed in if it says the same. */
export function show(state) {
  for (const control of controls()) {
    const value = state[control.dataset.field];
    if (control.type === "checkbox") control.checked = value;
    else if (control.type === "radio") control.checked = control.value === value;
    else if (String(value) !== control.value) control.value = value;
    if (control.dataset.refused) accept(control);
  }
  growAll();
}

const growsByItself = CSS.supports("field-sizing", "content");

/** Makes every text area as high as its text, where the browser does not. */
export function growAll() {
  if (growsByItself) return;
  for (const area of document.querySelectorAll(".written textarea")) {
    area.style.height = "auto";
    area.style.height = `${area.scrollHeight + 2}px`;
  }
}
