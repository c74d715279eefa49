// The state as the fragment of an address, and back:
//
//   #1&chords=Am+~+F=xx3211&figures=5+3+2+1&tempo=66
//
// First the version, then fields that differ from their default, of which chords
// and figures are always there. A space is +, a bar line is ~, since messages
// tend to cut an address at a bar line; the rest is percent-encoded. A link
// never fails as a whole: what cannot be read is named, the rest opens.

import { FIELDS, allows, fresh } from "./state.js";

export const VERSION = 1;

/** Addresses that are longer than this are cut by some programs. */
export const COMFORTABLE = 2000;

/** The most characters of a fragment that are read. */
const MOST = 400000;

const ALWAYS = ["chords", "figures"];
const PLAIN = { "%20": "+", "%7C": "~", "%2F": "/", "%3A": ":", "%40": "@", "%2C": ",", "%3B": ";", "%3D": "=" };

function pack(value) {
  return encodeURIComponent(whole(value))
    .replaceAll("~", "%7E")
    .replace(/%(20|7C|2F|3A|40|2C|3B|3D)/g, (code) => PLAIN[code]);
}

// A lone half of a surrogate pair cannot be encoded.
function whole(value) {
  return String(value).replace(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g, "\uFFFD");
}

function unpack(value) {
  return decodeURIComponent(value.replaceAll("+", "%20").replaceAll("~", "%7C"));
}

function written(name, value) {
  return FIELDS[name].kind === "flag" ? "1" : pack(value);
}

/** The fragment of a state, without the #. */
export function encode(state) {
  const fields = Object.keys(FIELDS)
    .filter((name) => ALWAYS.includes(name) || state[name] !== FIELDS[name].fallback)
    .map((name) => `${name}=${written(name, state[name])}`);
  return [VERSION, ...fields].join("&");
}

function read(name, value) {
  switch (FIELDS[name].kind) {
    case "number":
      return /^\d{1,6}$/.test(value) ? Number(value) : undefined;
    case "flag":
      return { 1: true, 0: false }[value];
    default:
      return value;
  }
}

/**
 * The state of a fragment, with what was lost: a list of { what, text }, what
 * being "version", "field" (not known), "value" (not allowed), "code" (cannot be
 * decoded), "twice" or "length". Null for a fragment that is empty.
 */
export function decode(fragment) {
  const bare = fragment.replace(/^#/, "");
  if (!bare) return null;
  const found = { state: fresh(), lost: [] };
  if (bare.length > MOST) found.lost.push({ what: "length", text: String(bare.length) });
  const [version, ...parts] = bare.slice(0, MOST).split("&");
  if (version !== String(VERSION)) found.lost.push({ what: "version", text: version.slice(0, 40) });
  const seen = new Set();
  for (const part of parts) take(found, seen, part);
  return found;
}

function take({ state, lost }, seen, part) {
  const cut = part.indexOf("=");
  const name = cut < 0 ? part : part.slice(0, cut);
  const lose = (what) => lost.push({ what, text: part.slice(0, 60) });
  if (!Object.hasOwn(FIELDS, name)) return lose("field");
  if (seen.has(name)) return lose("twice");
  seen.add(name);
  let value;
  try {
    value = read(name, unpack(part.slice(cut + 1)));
  } catch {
    return lose("code");
  }
  if (cut < 0 || value === undefined || !allows(name, value)) return lose("value");
  state[name] = value;
}
