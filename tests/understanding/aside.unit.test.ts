import { expect, test } from "vitest";
import { asideOf } from "../../src/understanding/index.ts";

const asides = {
  tap: { says: "On the pipe.", drawing: "stop-tap", tank: "There is none." },
  engineer: {
    says: "Ask first.",
    drawing: "plug-out",
    tank: "Ask twice.",
    facts: {
      "call-out": "A visit costs {{call-out}}.",
      rate: "An hour costs {{rate}}.",
      open: "It's open now.",
    },
  },
  cost: { says: "You'll see the price.", priced: "{{part}} costs {{price}} here." },
};
const textOf = (...given: [string, Parameters<typeof asideOf>[2]?]) => asideOf(asides, ...given)?.text;

test("a place is told by the type of machine, and drawn where that has it", () => {
  expect(asideOf(asides, "tap")).toEqual({ text: "On the pipe.", drawing: "stop-tap" });
  expect(asideOf(asides, "tap", { hasTank: true })).toEqual({ text: "There is none.", drawing: null });
});

test("a price is the shop's own, and never ours", () => {
  expect(textOf("cost", { part: "The filter" })).toBe("You'll see the price.");
  expect(textOf("cost", { part: "The filter", price: "£30" })).toBe("The filter costs £30 here.");
});

test("the shop's facts are quoted where it gives them, in our order, and stand in place of all else", () => {
  const facts = { rate: "$& 48", "call-out": "£65", other: "9" };
  const quoted = { text: "A visit costs £65. An hour costs $& 48.", drawing: null };
  expect(asideOf(asides, "engineer", { hasTank: true, facts })).toEqual(quoted);
  expect(textOf("engineer", { facts: { open: "" } })).toBe("It's open now.");
  expect(textOf("engineer", { facts: { other: "9" } })).toBe("Ask first.");
  expect(textOf("tap", { facts })).toBe("On the pipe.");
});

test("there is no answer to what is not among them", () => {
  expect(asideOf(asides, "toString")).toBeNull();
});
