import { beforeAll, describe, expect, test } from "vitest";
import type { WordsData } from "../../src/training/index.ts";
import { type Model, readModel, understand } from "../../src/understanding/index.ts";
import { contextOf } from "../bench/words/own-data.ts";
import { builtOnce } from "../built-once.ts";

let model: Model;
/** What somebody means who types this where the complaint is asked for. */
const read = (sentence: string) => understand(model, sentence, contextOf("opening.symptom"));

beforeAll(async () => {
  const file = (await builtOnce()).find(({ path }) => /^parts\/words-en-GB-.*\.json$/.test(path));
  const data: WordsData = JSON.parse(Buffer.from(file?.content ?? "").toString());
  model = readModel(data.model);
}, 240_000);

describe("the model that a shop embeds, asked for the complaint,", () => {
  test("offers both of two complaints in a sentence", () => {
    const offered = read("It leaks, and I don’t get any ICE").filter(({ kind }) => kind === "answer");
    for (const answer of ["leaking", "no-ice"])
      expect(offered.slice(0, 3)).toContainEqual(expect.objectContaining({ answer }));
  });

  test("hears the kind of odd ice with the complaint", () => {
    const [first, ...others] = read("the ice smells of garlic");
    expect(first).toMatchObject({ kind: "answer", answer: "odd-ice" });
    expect(others).toContainEqual({ kind: "facts", facts: [{ turn: "opening.odd", answer: "taste" }] });
  });

  test("puts a danger before all else", () => {
    expect(read("No ice and there are sparks at the plug")[0]).toMatchObject({
      kind: "danger",
      danger: "sparks",
    });
  });

  test("makes nothing of what has nothing to do with it", () => {
    expect(read("My neighbour's dog barks at it")[0]).toEqual({ kind: "nothing" });
  });

  test("hears a question about a place", () => {
    expect(read("where is the water filter?")[0]).toEqual({ kind: "question", entry: "where-filter" });
  });
});
