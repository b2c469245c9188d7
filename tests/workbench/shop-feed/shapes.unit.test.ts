import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { UnusableFeed } from "../../../src/workbench/feed/index.ts";
import {
  decode,
  inspectFeed,
  readTable,
  understand,
  unpack,
} from "../../../src/workbench/shop-feed/index.ts";
import { shapes } from "./same-feeds.ts";

const kinds = ["water-filter", "door-seal", "ice-bin"];
describe("the same parts", () => {
  test.each(Object.entries(shapes))("come out of a feed in any shape: %s", (_, bytes) => {
    const tables = { parts: readTable(decode(unpack(bytes)).text) };
    const { guess } = inspectFeed(tables, {}, kinds);
    expect(guess.needs).toEqual([]);
    const fits: [string, string, string, string, string][] = [];
    understand(tables, guess.mapping, kinds, ({ part: { number, kind, name, price }, models }) => {
      for (const model of models) fits.push([number, kind, name, price, model]);
    });
    expect(fits).toEqual([
      ["LLS-0", "water-filter", "Water filter für Ihr Gerät", "1299.00", "WX 430A/EU"],
      ["LLS-0", "water-filter", "Water filter für Ihr Gerät", "1299.00", "WX 431A/EU"],
      ["LLS-1", "door-seal", "Door seal", "12.90", "TRN-77K20"],
      ["LLS-2", "ice-bin", "Ice bin, 4 l", "7.00", "WX 430A/EU"],
      ["LLS-2", "ice-bin", "Ice bin, 4 l", "7.00", "TRN-77K21"],
      ["LLS-2", "ice-bin", "Ice bin, 4 l", "7.00", "TRN-77K22"],
    ]);
  });
});

describe("bytes of any kind", () => {
  /** Torn anywhere, with others in between, or nothing but chance. */
  const torn = fc
    .tuple(fc.constantFrom(...Object.values(shapes)), fc.nat(), fc.uint8Array({ maxLength: 30 }))
    .map(([bytes, at, strange]) => {
      const place = at % bytes.length;
      return Buffer.concat([bytes.subarray(0, place), strange, bytes.subarray(place + 1)]);
    });
  const any = fc.oneof(
    torn,
    fc.uint8Array({ maxLength: 200 }).map((bytes) => Buffer.from(bytes)),
  );

  test("are understood or refused with a sentence, and never break the command", () => {
    fc.assert(
      fc.property(any, (bytes) => {
        try {
          const { understood } = inspectFeed(
            { parts: readTable(decode(unpack(bytes)).text) },
            { currency: "EUR" },
            kinds,
          );
          if (understood) expect(understood.parts.used).toBeLessThanOrEqual(understood.parts.read);
        } catch (fault) {
          expect(fault).toBeInstanceOf(UnusableFeed);
        }
      }),
      { numRuns: 1000, seed: 3 },
    );
  });
});
