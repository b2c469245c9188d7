// @vitest-environment happy-dom
import { afterEach, describe, expect, test, vi } from "vitest";
import type { View } from "../../../src/turn/index.ts";
import { endingFixtures, endingTurn, partEnding } from "../gallery/ending-fixtures.ts";
import { createBasketOf, servicesFor } from "../gallery/services.ts";
import { viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

async function atEnding(fixture: string, services = servicesFor(fixture)) {
  const panel = await mount(endingFixtures[fixture] as View, { services });
  await panel.settle();
  return panel;
}

/** A device that has a share sheet, and what becomes of it. */
function withShareSheet(share: (shared: ShareData) => Promise<void>): void {
  Object.defineProperty(navigator, "share", { value: share, configurable: true });
}

const copied = () => vi.spyOn(navigator.clipboard, "writeText").mockResolvedValue();

afterEach(() => {
  vi.restoreAllMocks();
  Reflect.deleteProperty(navigator, "share");
});

describe("an ending to take along", () => {
  test("is not offered to a share sheet where the device has none", async () => {
    const { buttons } = await atEnding("professional");
    expect(buttons()).not.toContain("Share this summary");
    expect(buttons()).toEqual(expect.arrayContaining(["Copy this summary", "Print"]));
  });

  test("is shared with the very text that is copied", async () => {
    const shared = vi.fn().mockResolvedValue(undefined);
    withShareSheet(shared);
    const writeText = copied();
    const { tap, settle } = await atEnding("part");
    await tap("Share this summary");
    await tap("Copy this summary");
    await settle();
    expect(shared.mock.calls).toEqual([[{ text: writeText.mock.calls[0]?.[0] }]]);
    expect(shared.mock.calls[0]?.[0].text).toContain("Model: WX-40B8/E");
  });

  test("has what was said and nobody understood, in its own words", async () => {
    const writeText = copied();
    const { tap } = await atEnding("professional", {
      ...servicesFor("professional"),
      said: () => ["my cousin fitted it"],
    });
    await tap("Copy this summary");
    expect(writeText.mock.calls[0]?.[0]).toContain("Also said: “my cousin fitted it”");
  });

  test("has the words of a typed answer once, with the first finding that they were taken as", async () => {
    const writeText = copied();
    const words = "slow as anything since tuesday";
    const ending = { ...partEnding, evidence: partEnding.evidence.map((each) => ({ ...each, words })) };
    const services = { ...servicesFor("part"), said: () => [words, "it hums"] };
    const { tap } = await mount(viewOf(endingTurn("The filter is clogged", ending)), { services });
    await tap("Copy this summary");
    const text = `${writeText.mock.calls[0]?.[0]}`;
    expect(text.split(words)).toHaveLength(2);
    expect(text).toContain(`give or take 0.7 (“${words}”)`);
    expect(text).toContain("Also said: “it hums”");
  });

  test("has how old the machine was said to be, and nothing of it from who is not sure", async () => {
    const writeText = copied();
    const { tap, pick } = await atEnding("part");
    await tap("Copy this summary");
    await pick("Over 10 years");
    await tap("Copy this summary");
    await pick("Not sure");
    await tap("Copy this summary");
    const isTold = writeText.mock.calls.map(([text]) => text.includes("Age of the machine: Over 10 years"));
    expect(isTold).toEqual([false, true, false]);
  });

  test("is copied where sharing fails", async () => {
    withShareSheet(() => Promise.reject(new DOMException("no", "NotAllowedError")));
    const writeText = copied();
    const { tap, settle, text } = await atEnding("part");
    await tap("Share this summary");
    await settle();
    expect(writeText).toHaveBeenCalledOnce();
    expect(text()).toContain("Copied.");
  });

  test("is not copied by somebody who only closes the share sheet", async () => {
    withShareSheet(() => Promise.reject(new DOMException("closed", "AbortError")));
    const writeText = copied();
    const { tap, settle } = await atEnding("part");
    await tap("Share this summary");
    await settle();
    expect(writeText).not.toHaveBeenCalled();
  });

  test("says in its text what else it may be, and what nobody has looked at", async () => {
    const writeText = copied();
    const { tap, settle } = await atEnding("part");
    await tap("Copy this summary");
    await settle();
    const text = writeText.mock.calls[0]?.[0];
    expect(text).toContain(
      "If a new one doesn't help, most likely\n1. The inlet valve doesn't let water in. May need: inlet valve",
    );
    expect(text).toContain("Not looked at: ");
  });
});

describe("the evidence in one glance", () => {
  test("is what speaks for the cause, what is ruled out and what nobody has looked at, above the part", async () => {
    const { all } = await atEnding("part");
    const [glance, card] = [all(".glance")[0] as Element, all(".part-card")[0] as Element];
    expect([...glance.children].map((each) => each.className)).toEqual([
      "found",
      "found",
      "ruled-out",
      "not-tried",
    ]);
    expect(glance.textContent).toContain("Water in ten seconds: 10.2 ml a second, give or take 0.7");
    expect(glance.textContent).toContain("Ruled out: the small tap and the door.");
    expect(glance.compareDocumentPosition(card)).toBe(Node.DOCUMENT_POSITION_FOLLOWING);
  });

  test("of many findings names the first and the two that settled it", async () => {
    const evidence = ["a", "b", "c", "d"].map((id) => ({ turn: id, check: id, found: "yes", proves: true }));
    const { all } = await mount(viewOf(endingTurn("A valve", { ...partEnding, evidence })), {
      services: servicesFor("part"),
    });
    expect(all(".glance .found").map((each) => each.textContent)).toEqual(["a: yes", "c: yes", "d: yes"]);
  });
});

test("nothing is called ruled out that is called likely a line further", async () => {
  const likely = [{ causeId: "x", cause: "The small tap is stuck.", part: "", station: "stop-tap" }];
  const ending = { ...partEnding, part: null, outcome: "professional" as const, likely };
  const { text } = await mount(viewOf(endingTurn("Somebody has to look", ending)));
  expect(text()).toContain("The small tap is stuck.");
  expect(text()).toContain("Ruled out: the door.");
});

describe("the rest of an ending", () => {
  test("says what to do for ice meanwhile, and whether mending is worth it", async () => {
    const { text } = await atEnding("part");
    expect(text()).toContain("Meanwhile, freeze drinking water in an ice tray.");
    expect(text()).toContain(
      "Is it worth it?How old is it?Over 10 yearsNot sureThe part is all you pay for.",
    );
  });

  test("a part is shown where it sits, whatever the shop has of it", async () => {
    const { all } = await atEnding("part-none");
    expect(all(".part-card .tile img").map((each) => each.getAttribute("alt"))).toEqual(["filter-seated"]);
  });

  test("a part in the basket has a way there, and no other has", async () => {
    const { all, tap, settle } = await atEnding("part", {
      ...servicesFor("part"),
      basket: createBasketOf("added"),
    });
    const way = () => all('a[href="https://shop.example/basket"]').map((each) => each.textContent);
    expect(way()).toEqual([]);
    await tap("Add to basket");
    await settle();
    expect(way()).toEqual(["Go to your basket"]);
  });

  test("a shop that names no basket gets no link to one", async () => {
    const basket = createBasketOf("added", undefined, "added");
    const { text } = await atEnding("part", { ...servicesFor("part"), basket, basketLink: null });
    expect(text()).toContain("In your basket");
    expect(text()).not.toContain("Go to your basket");
  });

  test("a safe stop has nothing in its dock: it only says what to do", async () => {
    const { all } = await atEnding("stopped");
    expect(all(".dock")).toEqual([]);
    expect(all("details button").map((each) => each.textContent)).toContain("Copy this summary");
  });
});
