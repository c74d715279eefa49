// What this browser keeps: the last work, the look, the language. A browser that
// keeps nothing is no error.

const WORK = "weft.work";

/** What is kept under a name; null if nothing is. */
export function kept(name) {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

/** Keeps a text under a name, or forgets it if it is empty. */
export function keep(name, text) {
  try {
    if (text) localStorage.setItem(name, text);
    else localStorage.removeItem(name);
  } catch {
    // Full, or not allowed: the page goes on without.
  }
}

/** The last work, as a fragment. */
export const lastWork = () => kept(WORK);

/** Keeps the work, as a fragment. */
export const keepWork = (fragment) => keep(WORK, fragment);
