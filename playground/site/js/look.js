// Before anything is drawn: the look and the language that were chosen here.
(() => {
  const root = document.documentElement;
  try {
    const look = localStorage.getItem("weft.look");
    if (look === "light" || look === "dark") root.dataset.look = look;
  } catch {
    // A browser that keeps nothing: the system's look it is.
  }
})();
