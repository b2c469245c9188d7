import fc from "fast-check";
import { expect, test } from "vitest";
import { readDigits, writeDigits } from "../../src/understanding/index.ts";

test("numbers come back from their digits as they were", () => {
  fc.assert(
    fc.property(fc.array(fc.nat({ max: 2 ** 31 })), (numbers) => {
      expect(readDigits(writeDigits(numbers))).toEqual(numbers);
    }),
  );
});

test("small numbers are one sign each, and a foreign sign ends the reading", () => {
  expect(writeDigits([0, 31])).toHaveLength(2);
  expect(readDigits("AB C")).toEqual([0, 1]);
});
