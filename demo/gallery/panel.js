import { journalAt } from "./journal.js";

/*
 * One place of the gallery: panel.html?place=…&language=…&theme=…. A journal is laid where a panel looks for one, in a name
 * of its own, and the panel comes back to it, as for somebody who was there a moment ago. What no journal leads to is
 * tapped then. `data-stands` is on the root once all of it is done.
 */
const beside = (file) => new URL(file, import.meta.url).href;
const asked = new URLSearchParams(location.search);
const wanted = asked.get("place") ?? "";
const gallery = await (await fetch(beside("places.json"))).json();
const place = gallery.places.find(({ name }) => name === wanted) ?? gallery.places[0];

const theme = asked.get("theme") === "dark" ? "dark" : "light";
document.querySelector("[name=color-scheme]").content = theme;
document.documentElement.lang = asked.get("language") ?? gallery.languages[0];

const session = `gallery-${crypto.randomUUID().slice(0, 8)}`;
const key = `fridgeside:${session}`;
if (place.after !== null)
  localStorage.setItem(
    key,
    JSON.stringify(journalAt(gallery, place.after, Date.now() - 2000 - 60_000 * (place.ago ?? 0))),
  );
if (place.full)
  Storage.prototype.setItem = () => {
    throw new DOMException("This place of the gallery keeps nothing.", "QuotaExceededError");
  };
// Nothing of it is left behind.
const stores = [localStorage, sessionStorage];
addEventListener("pagehide", () => {
  for (const storage of stores)
    for (const name of Object.keys(storage)) if (name.startsWith(key)) storage.removeItem(name);
});
/** The page itself has what it needs of `from` by now. */
const instead = (from, name, get) => Object.defineProperty(from, name, { configurable: true, get });
if (place.denied)
  for (const name of ["localStorage", "sessionStorage"])
    instead(window, name, () => {
      throw new DOMException("This place of the gallery may not look.", "SecurityError");
    });
if (place.offline) instead(navigator, "onLine", () => false);
if (place.fragment) history.replaceState(null, "", place.fragment);
if (place.relay)
  instead(
    window,
    "WebSocket",
    () =>
      class extends EventTarget {
        close() {}
      },
  );
document.addEventListener("fridgeside-basket", ({ detail }) => detail.added());

const panel = document.createElement("fridgeside-panel");
const attributes = {
  language: document.documentElement.lang,
  theme,
  "session-name": session,
  catalogue: beside("../catalogue.json"),
  words: beside("own.json"),
  "shop-name": asked.get("shop") ?? "Larder Lane Spares",
  "help-link": "https://shop.example/help",
  "basket-link": "https://shop.example/basket",
  ...(place.relay && { relay: "wss://relay.example" }),
};
for (const [name, value] of Object.entries(attributes)) panel.setAttribute(name, value);
// Another page may have its own place for it.
(document.querySelector("[data-place]") ?? document.body).append(panel);

const frame = () => new Promise((done) => setTimeout(done, 16));

/** Waits for something of the panel. */
async function find(what) {
  for (let tries = 0; tries < 1000; tries++) {
    const found = panel.shadowRoot?.querySelector(what);
    if (found) return found;
    await frame();
  }
  throw new Error(`The panel has no ${what} at ${place.name}`);
}

const turnInSight = () => find(".turn[aria-busy=false] > :has(> h2)");

const acts = {
  async press({ what }) {
    (await find(what)).click();
  },
  async type({ what, words }) {
    const field = await find(what);
    field.focus({ preventScroll: true });
    field.value = words;
    field.dispatchEvent(new Event("input", { bubbles: true, composed: true }));
  },
  async elsewhere({ after }) {
    const text = JSON.stringify(journalAt(gallery, after, Date.now()));
    localStorage.setItem(key, text);
    dispatchEvent(new StorageEvent("storage", { key, newValue: text }));
    await find(".notices > :not(:empty)");
  },
  async answer({ place }) {
    (await turnInSight()).querySelectorAll(".answers > button")[place].click();
  },
  async confirm() {
    const gate = await turnInSight();
    for (const box of gate.querySelectorAll("[type=checkbox]")) {
      box.click();
      await frame();
    }
    gate.querySelector("button.main").click();
  },
};

await find(".notices");
for (const act of place.acts ?? []) {
  const before = await turnInSight();
  await acts[act.do](act);
  const leads = act.do === "answer" || act.do === "confirm";
  while (leads && (await turnInSight()) === before) await frame();
  await frame();
}
await turnInSight();
if (place.relay) await find(".live");
const heading = panel.shadowRoot.querySelector("h2");
document.title = heading.textContent;
if (place.acts) scrollTo(0, 0);
document.documentElement.dataset.stands = place.name;
