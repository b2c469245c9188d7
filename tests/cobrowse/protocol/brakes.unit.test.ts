import { describe, expect, test } from "vitest";
import { createBrakes } from "../../../src/cobrowse/protocol/room/index.ts";

const minute = 60_000;

describe("guessing", () => {
  test("is looked at five times a minute from one address, and then again when the first is a minute old", () => {
    const brakes = createBrakes();
    for (let nth = 0; nth < 5; nth++) expect(brakes.tries("a", nth * 1000)).toBe(null);
    expect(brakes.tries("a", 5000)).toEqual({ why: "too-often", wait: 55_000 });
    expect(brakes.tries("b", 5000)).toBe(null);
    expect(brakes.tries("a", minute)).toBe(null);
    expect(brakes.tries("a", minute)).toMatchObject({ why: "too-often" });
  });

  test("is locked for fifteen minutes after ten failures, for the address and for the agent", () => {
    const brakes = createBrakes();
    for (let nth = 1; nth <= 9; nth++) brakes.failed(["address", "agent"], nth * minute);
    expect(brakes.held(["address"], 9 * minute)).toBe(null);
    brakes.failed(["address", "agent"], 10 * minute);
    for (const name of ["address", "agent"])
      expect(brakes.held([name], 10 * minute)).toEqual({ why: "locked", wait: 15 * minute });
    // From elsewhere the same agent is locked as well; another one is not.
    expect(brakes.held(["elsewhere", "agent"], 24 * minute)).toEqual({ why: "locked", wait: minute });
    expect(brakes.held(["elsewhere", "other"], 24 * minute)).toBe(null);
    expect(brakes.held(["address", "agent"], 25 * minute)).toBe(null);
  });

  test("counts failures in a row: a code that was right ends the row", () => {
    const brakes = createBrakes();
    for (let nth = 1; nth <= 9; nth++) brakes.failed(["a"], nth * minute);
    brakes.succeeded(["a"]);
    brakes.failed(["a"], 10 * minute);
    expect(brakes.held(["a"], 10 * minute)).toBe(null);
  });

  test("from everywhere at once holds everybody, until the minute is over", () => {
    const brakes = createBrakes();
    for (let nth = 0; nth < 50; nth++) brakes.failed([`address-${nth}`], nth);
    expect(brakes.held(["new"], 1000)).toEqual({ why: "busy", wait: 59_000 });
    expect(brakes.held(["new"], minute + 50)).toBe(null);
  });

  test("from names that objects have anyway counts as from any other", () => {
    const brakes = createBrakes();
    for (let nth = 0; nth < 5; nth++) expect(brakes.tries("__proto__", 0)).toBe(null);
    expect(brakes.tries("__proto__", 0)).not.toBe(null);
    expect(brakes.tries("constructor", 0)).toBe(null);
  });

  test("from ever new addresses makes nobody forget who is locked", () => {
    const brakes = createBrakes();
    for (let nth = 0; nth < 10; nth++) brakes.failed(["locked"], 0);
    for (let nth = 0; nth < 30_000; nth++) brakes.tries(`address-${nth}`, minute);
    expect(brakes.held(["locked"], 2 * minute)).toMatchObject({ why: "locked" });
  });
});
