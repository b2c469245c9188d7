import { expect, test } from "vitest";
import { asideOf } from "../../src/understanding/index.ts";

const asides = {
  tap: { says: "On the pipe.", tank: "There is none." },
  cost: { says: "You'll see the price.", priced: "{{part}} costs {{price}} here." },
};

test("a place is told by the type of machine", () => {
  expect(asideOf(asides, "tap")).toBe("On the pipe.");
  expect(asideOf(asides, "tap", { hasTank: true })).toBe("There is none.");
});

test("a price is the shop's own, and never ours", () => {
  expect(asideOf(asides, "cost", { part: "The filter" })).toBe("You'll see the price.");
  expect(asideOf(asides, "cost", { part: "The filter", price: "£30" })).toBe("The filter costs £30 here.");
});

test("there is no answer to what is not among them", () => {
  expect(asideOf(asides, "toString")).toBeNull();
});
