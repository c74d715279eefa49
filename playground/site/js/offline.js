// Registers the service worker, which keeps the page for when there is no network.

import { notice } from "./notice.js";
import { t } from "./words.js";

/** Starts keeping the page, where the browser can. */
export async function keepOffline() {
  if (!("serviceWorker" in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register(new URL("../sw.js", import.meta.url));
    watch(registration);
  } catch {
    // Not allowed here, as in some private windows: the page works, with a network.
  }
}

function watch(registration) {
  if (registration.waiting) offer(registration.waiting);
  registration.addEventListener("updatefound", () => {
    const worker = registration.installing;
    worker?.addEventListener("statechange", () => {
      if (worker.state === "installed" && navigator.serviceWorker.controller) offer(worker);
    });
  });
}

function offer(worker) {
  const act = () => {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload());
    worker.postMessage("use");
  };
  notice([t("newer")], [{ text: t("useNewer"), act }]);
}
