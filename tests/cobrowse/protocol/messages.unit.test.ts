import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bytesOf, fits, readFromRelay } from "../../../src/cobrowse/protocol/index.ts";
import { readFirst, readLater } from "../../../src/cobrowse/protocol/room/index.ts";

describe("what the relay sends", () => {
  test("is read by its known fields alone", () => {
    const text = '{"type":"kept","lane":"carried","n":1,"seq":7,"__proto__":{"x":1},"more":true}';
    expect(readFromRelay(text)).toEqual({ type: "kept", lane: "carried", n: 1, seq: 7 });
  });

  test("may leave out what need not be there", () => {
    expect(readFromRelay('{"type":"no","why":"ended"}')).toEqual({ type: "no", why: "ended" });
    expect(readFromRelay('{"type":"no","why":"locked","wait":9}')).toMatchObject({ wait: 9 });
    expect(readFromRelay('{"type":"no","why":"locked","wait":"9"}')).toBe(null);
  });

  test.each([
    "",
    "null",
    "[]",
    "1",
    '{"type":"constructor"}',
    '{"type":"__proto__"}',
    '{"type":["kept"],"n":1}',
    '{"type":"kept","lane":"carried","n":1}',
    '{"type":"kept","lane":"carried","n":1.5,"seq":2}',
    '{"type":"kept","lane":"carried","n":-1,"seq":2}',
    '{"type":"kept","lane":"carried","n":"1","seq":2}',
    '{"type":"record","seq":1,"from":"h","n":1,"at":0,"kind":"entry","body":{}}',
  ])("is nothing where it is not the protocol's: %s", (text) => expect(readFromRelay(text)).toBe(null));

  test("never makes the reader fail, whatever it is", () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.json()), (text) => void readFromRelay(text)));
  });
});

describe("what is sent to the relay", () => {
  test("is read where it is the protocol's", () => {
    expect(readFirst('{"type":"open","v":1}')).toEqual({ type: "open", v: 1 });
    expect(readLater('{"type":"ask","after":0}')).toEqual({ type: "ask", after: 0 });
    const put = { type: "put", lane: "carried", n: 1, kind: "entry", body: "{" };
    expect(readLater(JSON.stringify(put))).toEqual(put);
  });

  test.each([
    ["another version", '{"type":"open","v":2}'],
    ["a role that is claimed", '{"type":"open","v":1,"role":"agent"}'],
    ["a later message", '{"type":"ask","after":0}'],
    ["a secret that is too long", `{"type":"join","v":1,"code":"1","token":"${"x".repeat(2001)}"}`],
    ["no object", "[1]"],
    ["no JSON", "open"],
  ])("is no first message with %s", (_, text) => expect(readFirst(text)).toBe(null));

  test.each([
    ["a sender that is claimed", '{"type":"put","lane":"carried","n":1,"kind":"entry","body":"","from":"h"}'],
    ["a kind that there is not", '{"type":"put","lane":"carried","n":1,"kind":"opened","body":""}'],
    ["a kind that every object has", '{"type":"put","lane":"carried","n":1,"kind":"constructor","body":""}'],
    ["a lane that there is not", '{"type":"put","lane":"constructor","n":1,"kind":"entry","body":""}'],
    ["a number below 1", '{"type":"put","lane":"carried","n":0,"kind":"entry","body":""}'],
    ["half a number", '{"type":"put","lane":"carried","n":1.5,"kind":"entry","body":""}'],
    ["a body that is no text", '{"type":"put","lane":"carried","n":1,"kind":"entry","body":{}}'],
    ["a first message", '{"type":"open","v":1}'],
  ])("is no later message with %s", (_, text) => expect(readLater(text)).toBe(null));
});

describe("the size of a message", () => {
  test("is counted as the bytes of UTF-8, as Node counts them", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 0x10ffff })), (points) => {
        const text = String.fromCodePoint(...points);
        expect(bytesOf(text)).toBe(Buffer.byteLength(text));
      }),
    );
    expect(bytesOf("\ud83e")).toBe(Buffer.byteLength("\ud83e"));
  });

  test("fits with its envelope, in any script", () => {
    expect(fits("entry", "x".repeat(4000))).toBe(true);
    expect(fits("entry", "x".repeat(4001))).toBe(false);
    expect(fits("entry", "\u6c34".repeat(1300))).toBe(true);
    expect(fits("entry", "\u6c34".repeat(1400))).toBe(false);
    // Quotation marks are escaped on their way.
    expect(fits("entry", '"'.repeat(2100))).toBe(false);
  });
});
