import { BinaryBitmap, HybridBinarizer, QRCodeReader, RGBLuminanceSource } from "@zxing/library";
import { describe, expect, test } from "vitest";
import { broughtBy, linkOf, packed, unpacked } from "../../src/embed/carry.ts";
import { carriedIn } from "../../src/embed/fragment.ts";
import {
  append,
  carriedOf,
  createJournal,
  type Journal,
  parseJournal,
  standingOf,
} from "../../src/session/index.ts";
import { at } from "../session/drive.ts";

type Said = Journal["entries"][number]["event"];

const journalOf = (...said: Said[]): Journal =>
  said.reduce(
    (journal, event, place) => append(journal, { id: `entry-${place}`, at: at(place), event }),
    createJournal(at(0)),
  );
const answered = (turn: string, answer: string): Said => ({ type: "answered", turn, answer });
const short = journalOf(answered("opening.danger", "none"), answered("opening.symptom", "no-ice"));
/** As long as a way through the flow gets, each with a check of another name. */
const long = journalOf(
  ...Array.from({ length: 40 }, (_, place) =>
    answered(`check-number-${place * 7919}.look`, `answer-${place % 7}`),
  ),
);
const carried = (journal: Journal) => carriedOf(standingOf(journal));
const page = "https://shop.example/help/ice?from=mail#parts";
const door = { parseJournal } as never;

/** What a camera makes of the code, by a reader that is not ours (npm `@zxing/library`); with four dots of margin. */
function read(code: boolean[][]): string {
  const [scale, size] = [4, (code.length + 8) * 4];
  const tones = new Uint8ClampedArray(size * size).fill(255);
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++)
      if (code[Math.floor(y / scale) - 4]?.[Math.floor(x / scale) - 4]) tones[y * size + x] = 0;
  const seen = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(tones, size, size)));
  return new QRCodeReader().decode(seen).getText();
}

describe("a conversation in a link", () => {
  test("is unpacked as it was packed", async () => {
    for (const journal of [short, long])
      expect(await unpacked(await packed(journal))).toEqual(carried(journal));
  });

  test("is in the letters that need no escape in an address (RFC 4648, base64url)", async () => {
    expect(await packed(long)).toMatch(/^[\w-]+$/);
  });

  test("stands behind the page's own address, in place of its fragment: no server is sent it", async () => {
    const { link } = await linkOf(short, page);
    expect(link).toBe(`https://shop.example/help/ice?from=mail#fridgeside=${await packed(short)}`);
    expect(carriedIn(new URL(link).hash)).toBe(await packed(short));
    expect(carriedIn("#parts")).toBeNull();
  });

  test.each([
    ["a short one", short],
    ["a long one", long],
  ])("is read off its code by a camera: %s", async (_, journal) => {
    const { link, code } = await linkOf(journal, page);
    expect(read(code as boolean[][])).toBe(link);
  });

  test("has no code where it is longer than one can be, and is a link all the same", async () => {
    const words = Array.from({ length: 4000 }, (_, place) =>
      String.fromCharCode(0x4e00 + ((place * 7919) % 20_000)),
    );
    const told = Array.from(
      { length: 8 },
      (_, place): Said => ({
        type: "told",
        words: words.slice(place * 500, place * 500 + 500).join(""),
        facts: [],
      }),
    );
    const { link, code } = await linkOf(journalOf(...told), page);
    expect(code).toBeNull();
    expect(await unpacked(carriedIn(new URL(link).hash) ?? "")).toEqual(carried(journalOf(...told)));
  });

  test("says what somebody typed of it, once and in plain text", async () => {
    const told: Said = { type: "told", words: "it began\nafter the move", facts: [] };
    const { words } = await linkOf(
      journalOf(told, told, { ...answered("opening.symptom", "no-ice"), words: "no ice" } as Said),
      page,
    );
    expect(words).toEqual(["it began after the move", "no ice"]);
  });
});

describe("what a link brings", () => {
  test("is the conversation that was sent", async () => {
    expect(await broughtBy(await packed(long), door)).toEqual(carried(long));
  });

  test.each([
    ["nothing", async () => ""],
    ["no base64", async () => "%%%%"],
    ["a link that was cut", async () => (await packed(long)).slice(0, 200)],
    ["another text", async () => zipped('{"format":2}')],
    ["no JSON", async () => zipped("hello")],
    ["a journal without an entry", async () => packed(createJournal(at(0)))],
    ["names of an object's own", async () => zipped('{"__proto__":{"format":2},"constructor":1}')],
    ["a text that unfolds to many megabytes", async () => zipped(" ".repeat(50_000_000))],
  ])("is none where it is %s", async (_, text) => {
    expect(await broughtBy(await text(), door)).toBeNull();
  });
});

async function zipped(text: string): Promise<string> {
  const bytes = new Blob([text]).stream().pipeThrough(new CompressionStream("deflate-raw"));
  return Buffer.from(await new Response(bytes).arrayBuffer()).toString("base64url");
}
