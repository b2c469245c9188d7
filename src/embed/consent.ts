import { createFile } from "./later-file.ts";
import type { Hears, Teller } from "./teller.ts";

const getInsight = createFile<typeof import("./insight.ts")>(
  "insight",
  () => import("./insight.ts"),
  (file) => Boolean(file.createInsight),
);

/** What happened while the file that sends it is on its way; a search has fewer. */
const mostHeard = 100;

const yes = ["", "yes", "true"];

/**
 * Sends outcomes for as long as the tag says that the person agrees: by its attribute `consent`, or by the property of
 * that name. Before that nothing is gathered, and once it is gone nothing of what was is left.
 * @param address where to; null for nowhere
 * @returns ends it
 */
export function watchConsent(host: HTMLElement, address: string | null, teller: Teller): () => void {
  if (!address) return () => {};
  const isGiven = () => yes.includes(host.getAttribute("consent")?.trim().toLowerCase() ?? "no");
  const set = (given: unknown) =>
    given === true || (typeof given === "string" && yes.includes(given))
      ? host.setAttribute("consent", "yes")
      : host.removeAttribute("consent");
  // A page may have set it before there was anybody to heed it.
  if (Object.getOwnPropertyDescriptor(host, "consent")?.value !== undefined)
    set((host as { consent?: unknown }).consent);
  Object.defineProperty(host, "consent", { configurable: true, enumerable: true, get: isGiven, set });

  type Heard = Parameters<Hears>;
  let heard: Heard[] = [];
  let insight: import("./insight.ts").Insight | null = null;
  const look = () => {
    if (!isGiven()) {
      heard = [];
      insight?.drop();
    } else if (!insight)
      getInsight().then(
        ({ createInsight }) => {
          insight ??= createInsight(address, isGiven, ownSending);
          for (const one of heard.splice(0)) insight.hears(...one);
        },
        // It is asked for again with the next that happens.
        () => {},
      );
  };
  teller.hear(((...one: Heard) => {
    if (!isGiven()) return;
    if (insight) return insight.hears(...one);
    heard = [...heard, one].slice(-mostHeard);
    look();
  }) as Hears);
  const send = () => insight?.send();
  const sendHidden = () => document.visibilityState === "hidden" && send();
  const observer = new MutationObserver(look);
  observer.observe(host, { attributeFilter: ["consent"] });
  document.addEventListener("visibilitychange", sendHidden);
  addEventListener("pagehide", send);
  addEventListener("online", send);
  look();
  return () => {
    send();
    observer.disconnect();
    teller.hear(() => {});
    document.removeEventListener("visibilitychange", sendHidden);
    removeEventListener("pagehide", send);
    removeEventListener("online", send);
  };
}

const ownSending = {
  beacon: (address: string, body: string) => navigator.sendBeacon(address, body),
  async post(address: string, body: string): Promise<boolean> {
    const settings = { method: "POST", body, keepalive: true, credentials: "omit", mode: "no-cors" } as const;
    const { ok, type } = await fetch(address, settings);
    return ok || type === "opaque";
  },
  later: (work: () => void, ms: number) => void setTimeout(work, ms),
};
