import { describe, expect, test } from "vitest";
import { passOver } from "../../../src/panel/screens/full-screen/back-entries.ts";
import { openEntries, openTab } from "./open-tab.ts";

/** Never too long. */
const patient = new Promise<never>(() => {});
const basket = "https://shop.example/basket";

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
  await entries.leave(patient);
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
  page.push({ of: "the shop" }, basket);
  page.go(-1);
  expect([page.place(), page.now().state]).toEqual([0, null]);
  page.go(1);
  expect([page.place(), page.now().state]).toEqual([0, null]);
});

test("after a reload of the page on top of one, the page's own entry is there", () => {
  const page = openTab();
  openEntries(page).entries.reach(2);
  passOver(page.load());
  expect([page.place(), page.now().state]).toEqual([0, null]);
});

test("of two panels each hears its own", async () => {
  const page = openTab();
  const one = openEntries(page, "one");
  one.entries.reach(2);
  await one.entries.leave(patient);
  const other = openEntries(page, "other");
  other.entries.reach(2);
  page.go(-1);
  expect([one.told, other.told]).toEqual([[], ["back"]]);
});

test.each([
  ["the browser never goes", { goes: false }, "too long"],
  ["the page moves on meanwhile", { goes: false }, "moved"],
])("nobody waits for ever to have left: %s", async (_, kind, why) => {
  const page = openTab(kind);
  const { entries } = openEntries(page);
  entries.reach(2);
  const left = entries.leave(why === "moved" ? patient : Promise.resolve());
  if (why === "moved") page.push({ of: "the shop" }, basket);
  expect(await left, "it is told that the page is not where it was").toBe(false);
});

test("who has left is told so", async () => {
  const page = openTab();
  const { entries } = openEntries(page);
  entries.reach(2);
  expect(await entries.leave(patient)).toBe(true);
});

test("a browser that lets no more be made leaves those that are there", () => {
  const page = openTab();
  const { entries, told } = openEntries(page);
  entries.reach(2);
  page.tab.history.pushState = () => {
    throw new DOMException("", "SecurityError");
  };
  entries.reach(5);
  page.go(-1);
  expect([told, entries.left()]).toEqual([["back"], 1]);
});

test("a browser that lets none be made says so, and nothing is heard from then on", () => {
  const page = openTab();
  page.push({});
  const { entries, told } = openEntries(page);
  page.tab.history.pushState = () => {
    throw new DOMException("", "SecurityError");
  };
  expect(() => entries.reach(1)).toThrow();
  page.go(-1);
  page.go(1);
  expect([told, page.heard]).toEqual([[], [null, {}]]);
});

describe.each([
  ["tells of entries", true],
  ["tells nothing of entries", false],
])("where a browser %s", (_, tells) => {
  const copied = (page: ReturnType<typeof openTab>) => ({ ...(page.now().state as object), page: 2 });
  const opened = () => {
    const page = openTab({ state: { of: "the shop" }, tells });
    const panel = openEntries(page);
    panel.entries.reach(3);
    return { page, ...panel };
  };

  test("a page that moves on has them lost, at the next touch at the latest", async () => {
    const { page, entries, told } = opened();
    page.push({ of: "the shop" }, basket);
    expect(told).toEqual(tells ? ["lost"] : []);
    page.touch();
    expect(told).toEqual(["lost"]);
    expect(await entries.leave(patient)).toBe(false);
    expect(page.now().href, "nobody is led away from where the page went").toBe(basket);
  });

  test("or by Back from there, which leads to the page's own entry, and the page hears of it", () => {
    const { page, told } = opened();
    page.push({ of: "the shop", page: 2 }, basket);
    page.go(-1);
    expect([told, page.place(), page.heard]).toEqual([["lost"], 0, [{ of: "the shop" }]]);
  });

  test("or else when it is looked for, or more would be made", () => {
    for (const act of ["look", "reach"] as const) {
      const { page, entries, told } = opened();
      page.push({ of: "the shop" }, basket);
      entries[act](4);
      expect(told, act).toEqual(["lost"]);
      expect(page.count()).toBe(5);
    }
  });

  test("an entry of the page's with a copy of ours in it is the page's: they are lost, and nobody is led away", async () => {
    const { page, entries, told } = opened();
    page.push(copied(page));
    page.touch();
    expect(told).toEqual(["lost"]);
    await entries.leave(patient);
    expect([page.place(), page.now().state]).toMatchObject([4, { page: 2 }]);
  });

  test("such a one is the page's after a reload as well, and what is beneath is passed over", () => {
    const { page } = opened();
    page.push(copied(page));
    passOver(page.load());
    expect([page.place(), page.now().state]).toMatchObject([4, { page: 2 }]);
    page.go(-1);
    expect([page.place(), page.heard]).toEqual([0, [{ of: "the shop" }]]);
    page.go(4);
    expect([page.place(), page.now().state]).toMatchObject([4, { page: 2 }]);
  });

  test("a copy put over the page's own entry leads nobody away either", () => {
    const page = openTab({ tells });
    for (let before = 0; before < 5; before++) page.push({ of: "the shop" });
    openEntries(page).entries.reach(3);
    const copy = copied(page);
    page.go(-3);
    page.replace(copy);
    passOver(page.load());
    expect([page.place(), page.now().state]).toMatchObject([5, { page: 2 }]);
  });

  test("what the page puts over one of them for another address has them lost, and one Back passes the rest", async () => {
    const { page, entries, told } = opened();
    page.replace(copied(page), basket);
    page.touch();
    expect(told).toEqual(["lost"]);
    await entries.leave(patient);
    expect([page.place(), page.now().href]).toEqual([3, basket]);
    page.go(-1);
    expect([page.place(), page.now().state]).toEqual([0, { of: "the shop" }]);
  });

  test("a mark that nobody of us has made counts for nothing", () => {
    for (const mark of [null, 7, {}, { by: "one", at: -4, place: "" }, { by: "one", at: 1e9, place: 1 }]) {
      const page = openTab({ tells });
      page.push({ fridgeside: mark });
      passOver(page.tab);
      expect(page.place()).toBe(1);
      page.push({});
      page.go(-1);
      expect(page.heard).toEqual([{ fridgeside: mark }]);
    }
  });
});

describe("what the page notes in one of them for the same address", () => {
  const noted = [
    ["beside what is there", (own: object) => ({ ...own, scrolled: 120 })],
    ["in place of it", () => ({ scrolled: 120 })],
  ] as const;

  test.each(noted)("is kept, %s: Back is heard as before, and the page's own entry has it", (_, note) => {
    const page = openTab();
    const { entries, told } = openEntries(page);
    entries.reach(2);
    page.replace(note(page.now().state as object));
    expect(told).toEqual([]);
    page.go(-1);
    expect([told, entries.left()]).toEqual([["back"], 1]);
    page.go(-1);
    expect([told, page.place(), page.now().state]).toEqual([["back", "back"], 0, { scrolled: 120 }]);
  });

  test("is there as well once it was left, and after what was no object", async () => {
    const page = openTab({ state: { of: "the shop" } });
    const { entries, told } = openEntries(page);
    entries.reach(2);
    page.replace("page 2");
    entries.reach(3);
    await entries.leave(patient);
    expect([told, page.place(), page.now().state]).toEqual([[], 0, "page 2"]);
  });

  test("has them lost where the browser tells nothing of it, and one Back passes the rest", async () => {
    const page = openTab({ tells: false });
    const { entries, told } = openEntries(page);
    entries.reach(3);
    page.replace({ scrolled: 120 });
    page.touch();
    expect(told).toEqual(["lost"]);
    await entries.leave(patient);
    page.go(-1);
    expect([page.place(), page.now().state]).toEqual([0, null]);
  });
});
