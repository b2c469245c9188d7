import { expect, test } from "vitest";
import {
  createBackEntries,
  passOver,
  type Tab,
} from "../../../src/panel/screens/full-screen/back-entries.ts";

type Entry = { state: unknown; href: string };

/** A tab with the history of one page, as HTML has it; going back and forward is heard at once. */
function openTab({ state = null, knowsPushes = true }: { state?: unknown; knowsPushes?: boolean } = {}) {
  let entries: Entry[] = [{ state, href: "https://shop.example/help" }];
  let at = 0;
  const heard: unknown[] = [];
  const listeners: ((event: PopStateEvent) => void)[] = [];
  const moved = new Set<(event: Event) => void>();
  const tell = (navigationType: string) => {
    for (const listener of [...moved]) listener({ navigationType } as never);
  };
  const now = () => entries[at] as Entry;
  const go = (by: number) => {
    if (by === 0 || !entries[at + by]) return;
    at += by;
    tell("traverse");
    let isStopped = false;
    const event = { state: now().state, stopImmediatePropagation: () => (isStopped = true) };
    for (const listener of listeners) listener(event as never);
    if (!isStopped) heard.push(event.state);
  };
  const push = (state: unknown, href = now().href) => {
    entries = [...entries.slice(0, ++at), { state: structuredClone(state), href }];
    tell("push");
  };
  const tab = {
    history: {
      get state() {
        return now().state;
      },
      pushState: (state: unknown) => push(state),
      go,
    },
    location: {
      get href() {
        return now().href;
      },
    },
    addEventListener: (_: string, listener: (event: PopStateEvent) => void) => listeners.push(listener),
    ...(knowsPushes && {
      navigation: {
        addEventListener: (_: string, listener: (event: Event) => void) => moved.add(listener),
        removeEventListener: (_: string, listener: (event: Event) => void) => moved.delete(listener),
      },
    }),
  };
  /** `heard`: what the page's own script hears of going back and forward. */
  return { tab: tab as never as Tab, go, push, heard, count: () => entries.length, place: () => at, now };
}

/** Entries of one panel, and what it was told. */
function openEntries(page: ReturnType<typeof openTab>, id = "one") {
  const told: string[] = [];
  const entries = createBackEntries(page.tab, id, {
    back: () => told.push("back"),
    lost: () => told.push("lost"),
  });
  return { entries, told };
}

test("each Back over one of them is told, and the page hears of none", () => {
  const page = openTab({ state: { of: "the shop" } });
  const { entries, told } = openEntries(page);
  entries.reach(2);
  page.go(-1);
  expect([told, entries.left()]).toEqual([["back"], 1]);
  page.go(-1);
  expect([told, entries.left()]).toEqual([["back", "back"], 0]);
  expect(page.now().state).toEqual({ of: "the shop" });
  expect(page.heard).toEqual([]);
});

test("they have the page's address, and keep what its script has noted there", () => {
  const page = openTab({ state: { of: "the shop" } });
  openEntries(page).entries.reach(3);
  expect(page.now()).toMatchObject({ state: { of: "the shop" }, href: "https://shop.example/help" });
});

test("so many as are missing are made, and never more than nine: the rest of the tab's history is the page's", () => {
  const page = openTab();
  const { entries } = openEntries(page);
  entries.reach(2);
  entries.reach(4);
  expect(page.count()).toBe(5);
  entries.reach(30);
  expect(page.count()).toBe(10);
});

test("left from anywhere, the page's own entry is there, and nobody is told", async () => {
  const page = openTab();
  const { entries, told } = openEntries(page);
  entries.reach(3);
  page.go(-1);
  await entries.leave();
  expect([page.place(), page.now().state]).toEqual([0, null]);
  expect(told).toEqual(["back"]);
  expect(page.heard).toEqual([]);
});

test("going forward over them again is no Back", () => {
  const page = openTab();
  const { entries, told } = openEntries(page);
  entries.reach(3);
  page.go(-1);
  page.go(1);
  expect([told, entries.left()]).toEqual([["back"], 3]);
});

test.each([
  ["where the browser tells of it, at once", true],
  ["else at the next of them", false],
])("a page that moves on has them lost: %s", async (_, knowsPushes) => {
  const page = openTab({ knowsPushes });
  const { entries, told } = openEntries(page);
  entries.reach(2);
  page.push({ of: "the shop" }, "https://shop.example/basket");
  entries.reach(3);
  expect(told).toEqual(["lost"]);
  await entries.leave();
  expect(page.now().href, "nobody is led away from where the page went").toBe("https://shop.example/basket");
});

test("a page that is taken back beyond them has them lost, and hears of it", () => {
  const page = openTab();
  page.push({ of: "the shop" }, "https://shop.example/other");
  const { entries, told } = openEntries(page);
  entries.reach(2);
  page.go(-3);
  expect(told).toEqual(["lost"]);
  expect(page.heard).toEqual([null]);
});

test("what was left over is passed over, from either side", async () => {
  const page = openTab();
  const { entries } = openEntries(page);
  entries.reach(2);
  page.push({ of: "the shop" }, "https://shop.example/basket");
  page.go(-1);
  expect([page.place(), page.now().state]).toEqual([0, null]);
  page.go(1);
  expect([page.place(), page.now().state]).toEqual([0, null]);
});

test("after a reload of the page on top of one, the page's own entry is there", () => {
  const page = openTab();
  openEntries(page).entries.reach(2);
  // The same history, of which a new script knows nothing.
  passOver({ ...page.tab, history: page.tab.history, location: page.tab.location });
  expect([page.place(), page.now().state]).toEqual([0, null]);
});

test("of two panels each hears its own", async () => {
  const page = openTab();
  const one = openEntries(page, "one");
  one.entries.reach(2);
  await one.entries.leave();
  const other = openEntries(page, "other");
  other.entries.reach(2);
  page.go(-1);
  expect([one.told, other.told]).toEqual([[], ["back"]]);
});
