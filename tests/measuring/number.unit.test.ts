import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkRange, readNumber } from "../../src/measuring/index.ts";

// How numbers are written: CLDR number symbols (decimal comma or point, U+2212, Arabic and Persian digits).
describe("reading a typed number", () => {
  test.each([
    ["150", 150],
    ["  150 ", 150],
    ["\u00a0150\n", 150],
    ["1.5", 1.5],
    ["1,5", 1.5],
    ["0,150", 0.15],
    [",5", 0.5],
    ["5.", 5],
    ["+3", 3],
    ["-18", -18],
    ["\u221218", -18],
    ["\u221218,5", -18.5],
    ["1234,5", 1234.5],
    ["1500", 1500],
    ["007", 7],
    ["١٥٠", 150],
    ["−١٨٫٥", -18.5],
    ["۱۵۰", 150],
  ])("%j is %d", (typed, value) => {
    expect(readNumber(typed)).toEqual({ kind: "value", value });
  });

  test.each([
    ["1/2", 0.5],
    ["3 1/4", 3.25],
    ["-3 1/4", -3.25],
    ["½", 0.5],
    ["3½", 3.5],
    ["1 ¾", 1.75],
    ["1\u20442", 0.5],
    ["٣ ١/٤", 3.25],
    ["0/2", 0],
  ])("%j is %d, as the marks of a cup have it", (typed, value) => {
    expect(readNumber(typed)).toEqual({ kind: "value", value });
  });

  test.each(["3/2", "1/0", "1/2/3", "1/", "/2", "1.5/2", "1 2", "1 1", "½½", `3${" ".repeat(40)}1/4`])(
    "%j is no fraction that a cup has",
    (typed) => {
      expect(readNumber(typed)).toEqual({ kind: "unreadable", typed });
    },
  );

  test("reads 0 ml as an empty jug, not as an empty answer", () => {
    expect(readNumber("0")).toEqual({ kind: "value", value: 0 });
    expect(readNumber("0,0")).toEqual({ kind: "value", value: 0 });
  });

  test("minus nought is plain nought, as it would come back from a stored log", () => {
    expect(Object.is(JSON.parse(JSON.stringify(readNumber("-0"))).value, -0)).toBe(false);
    expect(readNumber("-0")).toEqual(JSON.parse(JSON.stringify(readNumber("-0"))));
  });

  test.each(["", " ", "\t\n", " ".repeat(100)])("%j is an empty answer", (typed) => {
    expect(readNumber(typed)).toEqual({ kind: "empty" });
  });

  test.each([
    "12abc",
    "1,2,3",
    "1.2.3",
    "1.234,5",
    "1e5",
    "Infinity",
    "-Infinity",
    "NaN",
    "0x1F",
    "0b1",
    "1_000",
    "1 500",
    "--5",
    "5-",
    "+",
    "-",
    ".",
    ",",
    "about a cup",
    "1".repeat(41),
    `${" ".repeat(40)}1`,
  ])("%j is unreadable and kept as typed", (typed) => {
    expect(readNumber(typed)).toEqual({ kind: "unreadable", typed });
  });

  test("1,500 and 1.500 mean fifteen hundred in one country and one and a half in another: ask again", () => {
    for (const typed of ["1,500", "1.500", "-12,345", "999,999"])
      expect(readNumber(typed)).toEqual({ kind: "unreadable", typed });
  });

  test("40 characters are read, 41 are not", () => {
    expect(readNumber("0".repeat(40))).toEqual({ kind: "value", value: 0 });
    expect(readNumber("0".repeat(41)).kind).toBe("unreadable");
  });

  test("no string whatever throws, and a value is always a finite number that JSON keeps", () => {
    const anything = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.string(),
      fc.stringMatching(/^[ +\-−]?[\d.,٫٠-٩eE ]{0,45}$/),
    );
    fc.assert(
      fc.property(anything, (typed) => {
        const reading = readNumber(typed);
        if (reading.kind === "value") expect(Number.isFinite(reading.value)).toBe(true);
        if (reading.kind === "unreadable") expect(reading.typed).toBe(typed);
        expect(JSON.parse(JSON.stringify(reading))).toEqual(reading);
      }),
      { numRuns: 2000 },
    );
  });

  test("a number written with point or comma comes back as it was", () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e6, max: 1e6 }), (hundredths) => {
        const written = (hundredths / 100).toFixed(2);
        for (const typed of [written, written.replace(".", ","), written.replace("-", "\u2212")])
          expect(readNumber(typed)).toEqual({ kind: "value", value: hundredths / 100 + 0 });
      }),
    );
  });
});

describe("checking a range", () => {
  const seconds = { min: 1, max: 120 };

  test("the ends of the range are within it", () => {
    expect(checkRange(1, seconds)).toBeNull();
    expect(checkRange(120, seconds)).toBeNull();
  });

  test("a problem says what is wrong and gives the numbers for the message", () => {
    expect(checkRange(-3, seconds)).toEqual({ code: "negative", value: -3, min: 1, max: 120 });
    expect(checkRange(0, seconds)?.code).toBe("zero");
    expect(checkRange(0.5, seconds)?.code).toBe("too-small");
    expect(checkRange(121, seconds)?.code).toBe("too-large");
  });

  test("below nought is only 'negative' where nothing below nought is allowed", () => {
    expect(checkRange(-61, { min: -60, max: 60 })?.code).toBe("too-small");
    expect(checkRange(0, { min: 0, max: 5 })).toBeNull();
  });

  test("not a number at all never passes", () => {
    expect(checkRange(Number.NaN, seconds)).not.toBeNull();
    expect(checkRange(Number.POSITIVE_INFINITY, seconds)?.code).toBe("too-large");
  });
});
