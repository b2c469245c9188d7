import type { LogStore } from "./log-store.ts";
import type { Controller } from "./surroundings.ts";

/** How often a shown wait looks at the clock; its end is also looked for whenever the page comes to the front. */
const LOOK_MS = 30_000;

/**
 * Has a session look at the clock, its storage and the connection whenever they may have changed.
 * @param letGo gives back the lock of a tab that is hidden or left
 * @returns ends it
 */
export function watchTab(
  { tick, follow, comeBack, setOffline }: Controller,
  letGo: () => void,
  store: LogStore,
): () => void {
  const endWatch = store.watch(follow);
  const timer = setInterval(tick, LOOK_MS);
  const lookAtConnection = () => setOffline(!navigator.onLine);
  const lookAtTab = () => {
    if (document.visibilityState === "hidden") letGo();
    tick();
  };
  const lookAtReturn = ({ persisted }: PageTransitionEvent) => (persisted ? comeBack() : tick());
  document.addEventListener("visibilitychange", lookAtTab);
  // A page that has the lock could not be brought back as it was.
  addEventListener("pagehide", letGo);
  // Another tab has written, or this page was brought back as it was.
  addEventListener("storage", tick);
  addEventListener("pageshow", lookAtReturn);
  addEventListener("online", lookAtConnection);
  addEventListener("offline", lookAtConnection);
  // A page that was kept on the phone opens without a connection, too.
  lookAtConnection();
  return () => {
    endWatch();
    clearInterval(timer);
    letGo();
    document.removeEventListener("visibilitychange", lookAtTab);
    removeEventListener("pagehide", letGo);
    removeEventListener("storage", tick);
    removeEventListener("pageshow", lookAtReturn);
    removeEventListener("online", lookAtConnection);
    removeEventListener("offline", lookAtConnection);
  };
}
