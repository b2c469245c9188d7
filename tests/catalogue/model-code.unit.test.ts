import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { foldCode, isMisreading, longestCode, normaliseCode } from "../../src/catalogue/index.ts";
import { confusions, plateCharacters, published } from "./published-confusions.ts";

const codeOf = (typed: string) => {
  const read = normaliseCode(typed, Number.POSITIVE_INFINITY);
  return read.kind === "code" ? read.code : undefined;
};
// Also halves of surrogate pairs, which a broken paste can hold.
const anyText = fc.oneof(
  fc.string({ unit: "binary" }),
  fc.array(fc.integer({ min: 0, max: 0xffff })).map((units) => String.fromCharCode(...units)),
);

describe("normalising a model code", () => {
  test.each([
    ["wxm 431ab8/1", "WXM431AB81"],
    ["ＷＸＭ　４３１ＡＢ８／１", "WXM431AB81"],
    ["WXM‑431–AB8—1", "WXM431AB81"],
    ["WXM−431\u00ADAB8\u200B·1.", "WXM431AB81"],
    ["\tWXM\u00A0431⁄AB8∕1\\\n", "WXM431AB81"],
    ["WXM٤٣١AB۸1", "WXM431AB81"],
    ["__proto__", "__PROTO__"],
  ])("reads %j as %s", (typed, code) => {
    expect(normaliseCode(typed)).toEqual({ kind: "code", code, typed });
  });

  test("takes a lone ー of a Japanese keypad for no code, not for an empty one", () => {
    for (const typed of ["ー", "ｰ"])
      expect(normaliseCode(typed)).toEqual({ kind: "unreadable", problem: "no-code-characters", typed });
  });

  test("keeps a question mark, which stands for a character that could not be read", () => {
    expect(codeOf("WX?40")).toBe("WX?40");
  });

  test("keeps the letters of a tag, so that nothing typed is silently left out of a code", () => {
    expect(codeOf("<b>WX40</b>")).toContain("WX40");
    expect(codeOf("<b>WX40</b>")).not.toBe("WX40");
  });

  test.each(["", " ", "\n\t\u3000"])("calls %j empty", (typed) => {
    expect(normaliseCode(typed)).toEqual({ kind: "unreadable", problem: "empty", typed });
  });

  test.each(["🙂", "🧊🧊", "<b></b>", "<img src=x onerror=alert(1)>", "---", "/.", "???", "<", "\u200B"])(
    "finds no code characters in %j",
    (typed) => {
      expect(normaliseCode(typed)).toEqual({ kind: "unreadable", problem: "no-code-characters", typed });
    },
  );

  test("calls 300 characters too long and keeps them", () => {
    const typed = "A1".repeat(150);
    expect(normaliseCode(typed)).toEqual({ kind: "unreadable", problem: "too-long", typed });
  });

  test("takes a code of exactly the longest length, however many spaces are between", () => {
    const typed = "A ".repeat(longestCode);
    expect(normaliseCode(typed).kind).toBe("code");
    expect(normaliseCode(`${typed}A`)).toMatchObject({ problem: "too-long" });
    expect(normaliseCode("ABCD", 3)).toMatchObject({ problem: "too-long" });
  });

  test("reads any text without throwing, and keeps what was typed", () => {
    fc.assert(
      fc.property(anyText, (typed) => {
        expect(normaliseCode(typed).typed).toBe(typed);
      }),
    );
  });

  test("changes nothing when normalising twice", () => {
    fc.assert(
      fc.property(anyText, (typed) => {
        const once = codeOf(typed);
        fc.pre(once !== undefined);
        expect(codeOf(once as string)).toBe(once);
      }),
    );
  });

  test("changes nothing when normalising twice, whatever character stands before an accent", () => {
    const unstable: string[] = [];
    for (let unit = 0; unit <= 0xffff; unit++) {
      const once = codeOf(`E${String.fromCharCode(unit)}\u0301`) ?? "";
      if (once !== "" && codeOf(once) !== once) unstable.push(unit.toString(16));
    }
    expect(unstable).toEqual([]);
  });

  test("is not stalled by a long run of opening brackets", () => {
    expect(normaliseCode("<".repeat(200_000)).kind).toBe("unreadable");
  });
});

describe("folding look-alikes", () => {
  // Crockford Base32 decodes O as 0, and I and L as 1 (draft-crockford-davis-base32-for-humans-01).
  test("decodes O, I and L as Crockford's Base32 does", () => {
    expect(foldCode("OIL")).toBe("011");
  });

  test.each(["O0", "I1", "L1", "IL", "S5", "B8", "Z2", "G6"])("makes both of %s the same", (pair) => {
    expect(foldCode(pair.charAt(0))).toBe(foldCode(pair.charAt(1)));
  });

  test("folds only what is published as a confusion", () => {
    // I and L meet through 1, in Crockford and in the table.
    for (const a of plateCharacters)
      for (const b of plateCharacters)
        if (a !== b && foldCode(a) === foldCode(b) && a + b !== "IL" && a + b !== "LI")
          expect(confusions.has(a + b), a + b).toBe(true);
  });

  test("keeps digits apart, though the table leads from 3 to 8, 6, 0 and 9", () => {
    expect(new Set([..."0123456789"].map(foldCode)).size).toBe(10);
  });
});

describe("misreadings", () => {
  test("are the published table, closed under symmetry", () => {
    for (const a of plateCharacters)
      for (const b of plateCharacters) expect(isMisreading(a, b), a + b).toBe(confusions.has(a + b));
  });

  test("are published in one direction only for some pairs, which is why the table is closed", () => {
    expect(published.has("27")).toBe(true);
    expect(published.has("72")).toBe(false);
    expect(isMisreading("7", "2")).toBe(true);
  });
});
