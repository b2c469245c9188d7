import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseJsonInSteps, STEP_CHARACTERS } from "../../src/loading/json-in-steps.ts";

function parse(text: string): { value: unknown; steps: number } {
  const parsing = parseJsonInSteps(text);
  let steps = 0;
  for (;;) {
    const { done, value } = parsing.next();
    if (done) return { value, steps };
    steps += 1;
  }
}

/** A catalogue's shape around any JSON. */
const anyCatalogue = fc.record(
  { shop: fc.jsonValue(), models: fc.array(fc.jsonValue()), parts: fc.array(fc.jsonValue()) },
  { requiredKeys: [] },
);
const padding = " ".repeat(STEP_CHARACTERS);

describe("JSON read in steps", () => {
  test("gives what JSON.parse gives, short or long, however it is spaced", () => {
    fc.assert(
      fc.property(anyCatalogue, fc.constantFrom(0, 1, 2), (catalogue, indent) => {
        const text = JSON.stringify(catalogue, null, indent);
        expect(parse(text).value).toEqual(JSON.parse(text));
        expect(parse(`${padding}${text}${padding}`).value).toEqual(JSON.parse(text));
      }),
    );
  });

  test("refuses what JSON.parse refuses", () => {
    const good = JSON.stringify({ a: [1, { b: 'x\\"]' }], c: "d" });
    fc.assert(
      fc.property(fc.nat(good.length - 1), fc.constantFrom("", "]", ",", "}", '"', "{", "\\"), (at, put) => {
        const text = `${padding}${good.slice(0, at)}${put}${good.slice(at + 1)}`;
        let wanted: unknown;
        try {
          wanted = JSON.parse(text);
        } catch {
          expect(() => parse(text)).toThrow(SyntaxError);
          return;
        }
        expect(parse(text).value).toEqual(wanted);
      }),
    );
  });

  test.each([
    "[",
    "{",
    '{"a"',
    '{"a":',
    '{"a":[',
    '{"a":[1,]}',
    '{"a":[,1]}',
    '{"a":1,}',
    '{"a":[1 2]}',
    "{} {}",
    '{"a":1 "b":2}',
    "",
  ])("refuses %s", (text) => {
    expect(() => parse(padding + text)).toThrow(SyntaxError);
  });

  test("pauses at least once for every stretch of a long text, in one huge row too", () => {
    const rows = JSON.stringify({ parts: Array.from({ length: 20_000 }, (_, number) => ({ number })) });
    expect(parse(rows).steps).toBeGreaterThanOrEqual(Math.floor(rows.length / STEP_CHARACTERS));
    const huge = JSON.stringify({ parts: [{ name: "x".repeat(10 * STEP_CHARACTERS) }] });
    expect(parse(huge).steps).toBeGreaterThanOrEqual(9);
  });

  test("keeps a key called __proto__ a key", () => {
    const { value } = parse(`${padding}{"__proto__":[1]}`);
    expect(Object.keys(value as object)).toEqual(["__proto__"]);
    expect(Array.isArray(value)).toBe(false);
  });
});
