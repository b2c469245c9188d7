// @vitest-environment happy-dom
import { describe, expect, test, vi } from "vitest";
import type { FoundPart, Services, View } from "../../../src/turn/index.ts";
import { endingFixtures } from "../gallery/ending-fixtures.ts";
import { createBasketOf, servicesFor } from "../gallery/services.ts";
import { mount } from "../mount.tsx";

const field = "Serial number";
const show = "Show the part";
const lost = "I can't find it";
const add = "Add to basket";

async function atPart(fixture: string, services: Partial<Services> = {}) {
  const panel = await mount(endingFixtures.part as View, {
    services: { ...servicesFor(fixture), ...services },
  });
  await panel.settle();
  return panel;
}

type Panel = Awaited<ReturnType<typeof atPart>>;

async function say(panel: Panel, serial: string) {
  await panel.type(field, serial);
  await panel.tap(show);
  await panel.settle();
}

async function pick(panel: Panel, label: string) {
  await panel.pick(label);
  await panel.settle();
}

describe("a part that depends on the serial number", () => {
  test("is not offered before the number is read, and nothing claims to fit", async () => {
    const { text, buttons } = await atPart("part-serial");
    expect(text()).toContain("Which Water filter fits depends on the serial number.");
    expect(text()).not.toContain("£");
    expect(text()).not.toContain("Fits your model");
    expect(buttons()).not.toContain(add);
  });

  test("is offered for the number that was typed, which is shown back", async () => {
    const panel = await atPart("part-serial");
    await say(panel, " 4711 ");
    expect(panel.text()).toContain("Serial number 4711: fits");
    expect(panel.text()).toContain("NF-2301");
    expect(panel.text()).toContain("Fits your model: WX-40B8/E");
  });

  test("is another one for another number, and none while the number is being changed", async () => {
    const panel = await atPart("part-serial");
    await say(panel, "4711");
    await panel.type(field, "471");
    expect(panel.buttons()).not.toContain(add);
    await panel.settle();
    expect(panel.buttons()).not.toContain(add);
    await say(panel, "8000");
    expect(panel.text()).toContain("CF-118");
    expect(panel.text()).not.toContain("NF-2301");
  });

  test("takes the number along into the basket", async () => {
    const asked = vi.fn();
    const panel = await atPart("part-serial", { basket: createBasketOf("added", asked) });
    await say(panel, "4711");
    await panel.tap(add);
    expect(asked).toHaveBeenCalledWith(
      expect.objectContaining({ number: "NF-2301", model: "WX-40B8/E", serial: "4711" }),
    );
  });

  test("asks for a number where none was typed", async () => {
    const panel = await atPart("part-serial");
    await panel.tap(show);
    expect(panel.told(field)).toBe("Type the serial number from the plate.");
    expect(panel.focused()).toBe(panel.field(field));
  });

  test("says of a number that is not like the shop's that it is not, each time, and keeps it", async () => {
    const panel = await atPart("part-serial");
    for (const typed of ["K12-77", "K12-77", "K12-78"]) {
      await say(panel, typed);
      expect(panel.told(field)).toContain("doesn't look like the serial numbers on the shop's list");
      expect(panel.field(field).value).toBe(typed);
      expect(panel.focused()).toBe(panel.field(field));
      expect(panel.buttons()).not.toContain(add);
    }
  });

  test("that nobody can read leads to the shop's people, and can still be typed afterwards", async () => {
    const panel = await atPart("part-serial");
    await panel.tap(lost);
    await panel.settle();
    expect(panel.text()).toContain("Without that number we can't tell which Water filter fits");
    expect(panel.text()).toContain("Ask the people at Winterhof Parts");
    expect(panel.buttons()).not.toContain(add);
    await say(panel, "4711");
    expect(panel.text()).toContain("Serial number 4711: fits");
    expect(panel.text()).not.toContain("Without that number");
  });

  test("that nobody can read does no harm where one part fits all", async () => {
    const fitsAll: Services["partFor"] = async (_code, _kind, plate = {}) =>
      plate.serial === null ? servicesFor("part").partFor("", "") : { kind: "unread", about: "serial" };
    const panel = await atPart("part", { partFor: fitsAll });
    await panel.tap(lost);
    await panel.settle();
    expect(panel.text()).toContain("This one fits whatever the serial number is.");
    expect(panel.buttons()).toContain(add);
  });

  test("has a field that completes and corrects nothing", async () => {
    const panel = await atPart("part-serial");
    const input = panel.field(field);
    expect(input.getAttribute("autocapitalize")).toBe("characters");
    expect(input.getAttribute("autocomplete")).toBe("off");
    expect(input.hasAttribute("autocorrect")).toBe(true);
  });

  test("keeps what was typed when the shop's list does not load, and can ask again", async () => {
    const answers: Services["partFor"][] = [
      servicesFor("part-serial").partFor,
      async () => Promise.reject(new Error("offline")),
    ];
    const partFor: Services["partFor"] = (...asked) =>
      (answers.shift() ?? servicesFor("part-serial").partFor)(...asked);
    const panel = await atPart("part", { partFor });
    await say(panel, "4711");
    expect(panel.text()).toContain("The list of parts didn't load.");
    expect(panel.field(field).value).toBe("4711");
    await panel.tap("Try again");
    await panel.settle();
    expect(panel.text()).toContain("Serial number 4711: fits");
  });

  test("takes the answer to the latest number only", async () => {
    const held: ((fit: FoundPart) => void)[] = [];
    const partFor: Services["partFor"] = (_code, _kind, plate = {}) =>
      plate.serial
        ? new Promise((resolve) => held.push(resolve))
        : servicesFor("part-serial").partFor("", "");
    const panel = await atPart("part", { partFor });
    await say(panel, "1");
    await say(panel, "8000");
    const late = await servicesFor("part-serial").partFor("", "", { serial: "1" });
    held[0]?.(late);
    await panel.settle();
    expect(panel.text()).not.toContain("NF-2301");
  });
});

describe("a part that depends on what stands beside the code", () => {
  test("gives the shop's variants to choose from, and two ways on without", async () => {
    const { all, buttons } = await atPart("part-variant");
    expect(all(".plate-question label").map((each) => each.textContent)).toEqual([
      "V1",
      "V2",
      "Another one",
      lost,
    ]);
    expect(all<HTMLInputElement>("[type=radio]").filter(({ checked }) => checked)).toEqual([]);
    expect(buttons()).not.toContain(add);
  });

  test("is offered for the variant that was chosen, and takes it along into the basket", async () => {
    const asked = vi.fn();
    const panel = await atPart("part-variant", { basket: createBasketOf("added", asked) });
    await pick(panel, "V1");
    expect(panel.text()).toContain("V1: fits");
    await panel.tap(add);
    expect(asked).toHaveBeenCalledWith(expect.objectContaining({ number: "NF-2207", variant: "V1" }));
  });

  test.each([
    ["Another one", "The shop lists no Water filter for a WX-40B8/E with that on its plate."],
    [lost, "Without that we can't tell which Water filter fits, so ask before you buy."],
  ])("%s: the honest answer and the shop's people, and another choice after all", async (label, said) => {
    const panel = await atPart("part-variant");
    await pick(panel, label);
    expect(panel.text()).toContain(said);
    expect(panel.text()).toContain("Ask the people at Winterhof Parts");
    expect(panel.buttons()).not.toContain(add);
    await pick(panel, "V1");
    expect(panel.text()).toContain("V1: fits");
    expect(panel.text()).not.toContain(said);
  });

  test("may depend on the serial number too, which is then asked for that variant alone", async () => {
    const panel = await atPart("part-variant");
    await pick(panel, "V2");
    expect(panel.buttons()).not.toContain(add);
    await say(panel, "4711");
    expect(panel.text()).toContain("Serial number 4711: fits");
    await pick(panel, "V1");
    expect(panel.all(".plate-question form")).toHaveLength(0);
    expect(panel.text()).toContain("V1: fits");
    // Nothing that was read for another variant counts for this one.
    await pick(panel, "V2");
    expect(panel.buttons()).not.toContain(add);
  });

  test("tells the basket of no variant where it is none of the shop's", async () => {
    const asked = vi.fn();
    const partFor: Services["partFor"] = async (_code, _kind, { variant } = {}) =>
      variant === undefined
        ? { kind: "unread", about: "variant", choices: ["V1"] }
        : servicesFor("part").partFor("", "");
    const panel = await atPart("part", { basket: createBasketOf("added", asked), partFor });
    await pick(panel, "Another one");
    expect(panel.text()).toContain("This one fits all of them.");
    await panel.tap(add);
    expect(asked).toHaveBeenCalledWith(expect.not.objectContaining({ variant: expect.anything() }));
  });
});

describe("what the shop knows of a part", () => {
  test("older numbers that it stands in for", async () => {
    expect((await atPart("part-picture")).text()).toContain("Replaces NF-2207 and NF-2190.");
  });

  test("a picture that is loaded late, tells its host nothing of the page, and has its place kept free", async () => {
    const { all } = await atPart("part-picture");
    const [image] = all<HTMLImageElement>(".offer img");
    const given = ["src", "alt", "width", "height", "loading", "referrerpolicy"];
    expect(given.map((name) => image?.getAttribute(name))).toEqual([
      ...["/tests/panel/gallery/part.svg", "", "80", "80"],
      ...["lazy", "no-referrer"],
    ]);
  });

  test("a picture that does not load is gone", async () => {
    const { all, settle } = await atPart("part-picture");
    all(".offer img")[0]?.dispatchEvent(new Event("error"));
    await settle();
    expect(all<HTMLImageElement>(".offer img").map(({ hidden }) => hidden)).toEqual([true]);
  });

  test("that it has none left: it is the right part all the same, and the shop tells when", async () => {
    const { text } = await atPart("part-out");
    expect(text()).toContain("This is the right part. The shop can tell you when it has it again.");
  });
});
