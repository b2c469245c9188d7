import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { codeFrom, readCode, shownCode } from "../../../src/cobrowse/protocol/room/index.ts";

/** Crockford's table of symbols and what each is taken for (crockford.com/base32.html), as published. */
const published: [value: number, decoded: string][] = [
  [0, "0Oo"],
  [1, "1IiLl"],
  [10, "Aa"],
  [16, "Gg"],
  [17, "Hh"],
  [18, "Jj"],
  [19, "Kk"],
  [20, "Mm"],
  [21, "Nn"],
  [22, "Pp"],
  [26, "Tt"],
  [27, "Vv"],
  [31, "Zz"],
];

const codeOf = (value: number) => codeFrom(Uint8Array.from([0, 0, 0, 0, value]));

describe("a code", () => {
  test("of the lowest and the highest number has eight characters", () => {
    expect(codeOf(0)).toBe("00000000");
    expect(codeFrom(Uint8Array.from([255, 255, 255, 255, 255]))).toBe("ZZZZZZZZ");
  });

  test("has the symbols of the published table, and is read as it says", () => {
    for (const [value, decoded] of published)
      for (const one of decoded) expect(readCode(`0000000${one}`), one).toBe(codeOf(value));
  });

  test("is the number of its bytes in base 32", () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 5, maxLength: 5 }), (bytes) => {
        // Node's own digits of base 32 go from a to v; the order is the same.
        const number = BigInt(`0x${Buffer.from(bytes).toString("hex")}`);
        const digits = number.toString(32).padStart(8, "0");
        const own = [...codeFrom(bytes)].map((one) => "0123456789ABCDEFGHJKMNPQRSTVWXYZ".indexOf(one));
        expect(own).toEqual([...digits].map((one) => Number.parseInt(one, 32)));
      }),
    );
  });

  test("is read as it was shown, in either case and with what people type between", () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 5, maxLength: 5 }), (bytes) => {
        const code = codeFrom(bytes);
        expect(shownCode(code)).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}$/);
        expect(readCode(` ${shownCode(code).toLowerCase()} `)).toBe(code);
      }),
    );
  });

  test.each(["", "1234567", "123456789", "1234567U", "1234567*", "constructor", "__proto__"])(
    "is not what has other characters or another length: %s",
    (typed) => expect(readCode(typed)).toBe(null),
  );
});
