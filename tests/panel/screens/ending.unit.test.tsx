// @vitest-environment happy-dom
import { describe, expect, test, vi } from "vitest";
import type { View } from "../../../src/turn/index.ts";
import { endingFixtures } from "../gallery/ending-fixtures.ts";
import { createBasketOf, servicesFor } from "../gallery/services.ts";
import { mount } from "../mount.tsx";

async function atEnding(fixture: string, services = servicesFor(fixture)) {
  const panel = await mount(endingFixtures[fixture] as View, { services });
  await panel.settle();
  return panel;
}

describe("the part", () => {
  test("is shown for this very code, with price, stock, origin and work", async () => {
    const { text } = await atEnding("part");
    for (const said of [
      "Fits your model: WX-40B8/E",
      "£34.90",
      "In stock",
      "Original part",
      "About 4 minutes to fit",
    ])
      expect(text()).toContain(said);
  });

  test("shows its evidence, what proves it first", async () => {
    const { all, text } = await atEnding("part");
    expect(text()).toContain("Proved by your checks");
    expect(all(".evidence li").map((each) => each.className)).toEqual(["proves", "proves", ""]);
    expect(all(".evidence em").map((each) => each.textContent)).toEqual(["proves it", "proves it"]);
  });

  test("proves nothing where the part is only due: what was found points to it", async () => {
    const { all, text } = await atEnding("part-unknown");
    expect(all(".evidence em").map((each) => each.textContent)).toContain("points to it");
    expect(text()).not.toContain("proves it");
  });

  test("goes into the basket with its number, its name and the model, once", async () => {
    const asked = vi.fn();
    const basket = createBasketOf("added", asked);
    const { tap, settle, text } = await atEnding("part", { ...servicesFor("part"), basket });
    await tap("Add to basket");
    await settle();
    expect(text()).toContain("It's in your basket.");
    await tap("In your basket");
    expect(asked.mock.calls).toEqual([
      [
        {
          number: "NF-2207",
          name: "Water filter cartridge, quarter turn, with seal ring",
          model: "WX-40B8/E",
        },
      ],
    ]);
  });

  test("a refused basket can be tried again", async () => {
    const { tap, settle, text, buttons } = await atEnding("part-failed");
    await tap("Add to basket");
    await settle();
    expect(text()).toContain("Couldn't add it to your basket.");
    expect(buttons()).toContain("Try again");
  });

  test("a page that has not answered is asked again only by somebody who has looked into the basket", async () => {
    const asked = vi.fn();
    const basket = createBasketOf("silent", asked);
    const { tap, text, buttons } = await atEnding("part", { ...servicesFor("part"), basket });
    await tap("Add to basket");
    expect(text()).toContain("The shop hasn't answered yet. Look in your basket before you try again.");
    // The other part that fits can still be added.
    expect(buttons().filter((name) => name === "Add to basket")).toHaveLength(1);
    await tap("It's not in my basket. Try again");
    expect(asked).toHaveBeenCalledTimes(2);
  });

  test("an answer that comes late is shown", async () => {
    const basket = createBasketOf("silent");
    const { tap, settle, text } = await atEnding("part", { ...servicesFor("part"), basket });
    await tap("Add to basket");
    basket.becomes("NF-2207", "added");
    await settle();
    expect(text()).toContain("It's in your basket.");
    expect(text()).not.toContain("hasn't answered");
  });

  test("what is in the basket from before a reload is not offered again", async () => {
    const basket = createBasketOf("added", undefined, "added");
    const { button, buttons } = await atEnding("part", { ...servicesFor("part"), basket });
    expect(button("In your basket").getAttribute("aria-disabled")).toBe("true");
    expect(buttons()).not.toContain("Add to basket");
  });

  test("out of stock has no basket but the shop's help", async () => {
    const { buttons, text } = await atEnding("part-out");
    expect(buttons()).not.toContain("Add to basket");
    expect(text()).toContain("Ask the people at Winterhof Parts");
  });

  test("a shop that gives no name is called the shop", async () => {
    const shopHelp = { name: "", link: null };
    const { text } = await atEnding("part-out", { ...servicesFor("part-out"), shopHelp });
    expect(text()).toContain("Ask the shop");
  });

  test("an unknown model gets the kind of part and the shop's help, and nothing is looked up", async () => {
    const partFor = vi.fn();
    const { text, buttons } = await atEnding("part-unknown", { ...servicesFor(""), partFor });
    expect(partFor).not.toHaveBeenCalled();
    expect(text()).toContain("You need this kind of part: Water filter.");
    expect(text()).toContain("Due for a change");
    expect(buttons()).not.toContain("Add to basket");
  });

  test("without a list of parts nothing is looked up, though a code was given, and the kind of part is named", async () => {
    const partFor = vi.fn();
    const services = { ...servicesFor("part"), partFor, canLookUp: () => false };
    const { text, buttons } = await atEnding("part", services);
    expect(partFor).not.toHaveBeenCalled();
    expect(text()).toContain("You need this kind of part: Water filter.");
    expect(text()).toContain("Ask the people at Winterhof Parts");
    expect(buttons().filter((name) => /model number|Try again/.test(name))).toEqual([]);
  });

  test("a code that the shop's list no longer has can be typed again", async () => {
    const partFor = async () => ({ kind: "unknown-model" }) as const;
    const { text, tap, calls } = await atEnding("part", { ...servicesFor("part"), partFor });
    expect(text()).toContain("The shop's list no longer has WX-40B8/E.");
    await tap("Type the model number again");
    expect(calls).toEqual([["retypeModel"]]);
  });

  test("a code that was passed over can be typed after all", async () => {
    const { tap, calls } = await atEnding("part-unknown");
    await tap("Type the model number");
    expect(calls).toEqual([["retypeModel"]]);
  });

  test("no part in the catalogue is said in words", async () => {
    const { text } = await atEnding("part-none");
    expect(text()).toContain("The shop lists no Water filter for WX-40B8/E.");
  });

  test("a catalogue that does not load can be tried again", async () => {
    const partFor = vi
      .fn()
      .mockRejectedValueOnce(new Error("offline"))
      .mockImplementation(servicesFor("part").partFor);
    const { tap, settle, text } = await atEnding("part", { ...servicesFor("part"), partFor });
    expect(text()).toContain("The list of parts didn't load.");
    await tap("Try again");
    await settle();
    expect(text()).toContain("£34.90");
  });

  test("a price without pennies has none", async () => {
    const partFor = async () => {
      const found = await servicesFor("part").partFor("", "");
      if (found.kind !== "part") throw new Error("the gallery's part is gone");
      return { ...found, part: { ...found.part, price: { minor: 5200, currency: "JPY" } } };
    };
    const { text } = await atEnding("part", { ...servicesFor("part"), partFor });
    expect(text()).toContain("JP¥5,200");
  });

  test("names from a feed are text, never markup", async () => {
    const partFor = async () => {
      const found = await servicesFor("part").partFor("", "");
      if (found.kind !== "part") throw new Error("the gallery's part is gone");
      return { ...found, part: { ...found.part, name: "<img src=x onerror=alert(1)>" } };
    };
    const { all, text } = await atEnding("part", { ...servicesFor("part"), partFor });
    expect(all("img[src]")).toHaveLength(0);
    expect(text()).toContain("<img src=x onerror=alert(1)>");
  });
});

describe("every ending", () => {
  test.each([
    ["fixed", "Fixed"],
    ["part", "A part is needed"],
    ["professional", "A job for a professional"],
    ["stopped", "Stopped for your safety"],
  ])("%s says so in words, not by its sign alone", async (fixture, said) => {
    const { all } = await atEnding(fixture);
    expect(all(".badge")[0]?.textContent).toBe(said);
  });

  test("says who to call", async () => {
    const { text } = await atEnding("stopped");
    expect(text()).toContain("Who to callThe emergency line of your gas supplier, from outside.");
  });

  test("a safe stop does not send anybody to a shop first", async () => {
    const { text } = await atEnding("stopped");
    expect(text()).not.toContain("Winterhof");
  });

  test("calls what somebody put right no cause", async () => {
    const { text } = await atEnding("fixed");
    expect(text()).toContain("You switched the ice maker on.");
    expect(text()).not.toContain("You need");
  });

  test("copies its summary", async () => {
    const writeText = vi.spyOn(navigator.clipboard, "writeText").mockResolvedValue();
    const { tap, settle, text } = await atEnding("fixed");
    await tap("Copy this summary");
    await settle();
    expect(writeText.mock.calls[0]?.[0]).toBe(
      "The ice maker makes ice again\nYou switched the ice maker on.\n\n- Does the door hold a strip of paper?: It holds everywhere",
    );
    expect(text()).toContain("Copied.");
    writeText.mockRestore();
  });

  test("where copying is not allowed, the summary is shown to be copied by hand", async () => {
    const writeText = vi.spyOn(navigator.clipboard, "writeText").mockRejectedValue(new Error("denied"));
    const { tap, settle, all } = await atEnding("fixed");
    await tap("Copy this summary");
    await settle();
    expect(all<HTMLTextAreaElement>("textarea")[0]?.value).toContain("You switched the ice maker on.");
    expect(all<HTMLTextAreaElement>("textarea")[0]?.readOnly).toBe(true);
    writeText.mockRestore();
  });
});

test("what is left to do of what was changed stands as steps in their order, above all else; else nothing does", async () => {
  const { all } = await atEnding("part");
  expect(all(".back li").map((each) => each.textContent)).toEqual([
    "Open the small tap again, slowly.",
    "Put the plug in with dry hands.",
  ]);
  const fixed = await atEnding("fixed");
  expect(fixed.all(".back")).toEqual([]);
});
