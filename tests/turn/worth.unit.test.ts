import { describe, expect, test } from "vitest";
import { createTexts } from "../../src/turn/index.ts";
import { worthOf } from "../../src/turn/worth.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { readerOf } from "./reader.ts";

const flow = ownFlow;
const texts = createTexts(ownTexts, "en-GB", readerOf(flow));
const guarantee = texts("endings.guarantee");
const optionOf = ({ age }: ReturnType<typeof worthOf>, id: string) =>
  age?.options.find((option) => option.id === id)?.worth ?? [];

describe("how old the machine is", () => {
  test.each([
    ["a part that somebody fits themselves", "", "part"],
    ["work by an engineer", "appliance-engineer", "work"],
    ["work on the gas circuit", "refrigeration-engineer", "work"],
  ])("is asked for %s, with years that are limits, and makes its worth clear", (_, trade, kind) => {
    const found = worthOf(trade, false, texts);
    expect(found.age?.options.map(({ text }) => text)).toEqual([
      "Under 5 years",
      "5 to 10 years",
      "Over 10 years",
      "Not sure",
    ]);
    for (const age of ["young", "middle", "old"]) {
      expect(optionOf(found, age)).toContain(texts(`endings.age.${kind}.${age}`));
      expect(optionOf(found, age).includes(guarantee)).toBe(age === "young");
    }
    expect(optionOf(found, "unknown")).toEqual(found.worth);
    expect(found.worth).toContain(guarantee);
  });

  test.each([
    ["for the pipes in front of it", "plumber", false],
    ["where the shop only advises", "shop", false],
    ["where nothing is mended", null, false],
    ["for a filter, which is changed at any age", "", true],
  ])("is not asked %s", (_, trade, isWorn) => {
    expect(worthOf(trade, isWorn, texts).age).toBeNull();
  });

  test("is a matter of consumables in flows/: the water filter is one, and no other part", () => {
    const consumables = Object.entries(flow.parts).flatMap(([id, { consumable }]) => (consumable ? id : []));
    expect(consumables).toEqual(["water-filter"]);
  });
});
