import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Context, understand } from "../../src/understanding/index.ts";
import { at, seal, small, symptom } from "./small-model.ts";

const read = (sentence: string, context: Context = symptom) => understand(small, sentence, context);
const first = (sentence: string, context?: Context) => read(sentence, context)[0];

describe("a typed sentence", () => {
  test("is an answer of the turn, to be confirmed, however it is spelt", () => {
    for (const sentence of ["It's LEAKING!!", "its leakin", "there is water on my floor"])
      expect(first(sentence)).toEqual({
        kind: "answer",
        turn: "opening.symptom",
        answer: "leaking",
        sure: false,
      });
  });

  test("is sure where it is an answer's own wording, and nowhere else", () => {
    const sure = (sentence: string) => read(sentence).some((one) => one.kind === "answer" && one.sure);
    expect(first("it makes NO new ice.")).toMatchObject({ answer: "no-ice", sure: true });
    expect(sure("it makes no new ice at all")).toBe(false);
  });

  test("may be that somebody is not sure, at any turn", () => {
    expect(first("no idea", seal)).toMatchObject({ kind: "answer", answer: "not-sure" });
  });

  test("is told from what the same words would mean at another turn", () => {
    expect(first("a tear in it", seal)).toMatchObject({ answer: "torn" });
    expect(read("a tear in it", symptom)).not.toContainEqual(expect.objectContaining({ answer: "torn" }));
  });

  test("tells several things about other turns at once, and each only where it is still open", () => {
    const sentence = "no ice since we changed the filter";
    expect(read(sentence, seal)).toContainEqual({
      kind: "facts",
      facts: expect.arrayContaining([
        { turn: "opening.symptom", answer: "no-ice" },
        { turn: "opening.changed", answer: "new-filter" },
      ]),
    });
    const facts = read(sentence, { ...seal, isOpen: ({ turn }) => turn !== "opening.symptom" }).flatMap(
      (one) => (one.kind === "facts" ? one.facts : []),
    );
    expect(facts).toEqual([{ turn: "opening.changed", answer: "new-filter" }]);
  });

  test("is a question about a place, a word or the cost", () => {
    expect(first("where's the water tank?", seal)).toEqual({ kind: "question", entry: "where-tank" });
    expect(first("whats a filter", seal)).toEqual({ kind: "question", entry: "what-filter" });
    expect(first("what will the part cost", seal)).toEqual({ kind: "question", entry: "cost-part" });
  });

  test("is a question by a rule, where no phrase is like it", () => {
    expect(first("am I going to be set back by a pricey new valve", seal)).toMatchObject({
      entry: "cost-part",
    });
  });

  test("names a model, as the given function finds it", () => {
    const findModel = (code: string) => (code.toUpperCase() === "IM-2040B" ? "IM-2040B" : null);
    expect(first("its an im-2040b", { ...seal, findModel })).toEqual({ kind: "model", code: "IM-2040B" });
    const withBlank = (code: string) => (code.toUpperCase() === "IM 2040B" ? "IM-2040B" : null);
    expect(first("its an im 2040b", { ...seal, findModel: withBlank })).toMatchObject({ kind: "model" });
    expect(read("its an XX-99999", { ...seal, findModel })).not.toContainEqual(
      expect.objectContaining({ kind: "model" }),
    );
  });

  test("fills in the turn's instrument", () => {
    const flow = at("flow-test.run", { instrument: "flow" });
    expect(first("150 ml in 10 seconds", flow)).toEqual({
      kind: "reading",
      instrument: "flow",
      entries: { volume: "150", unit: "ml", seconds: "10" },
    });
  });

  test("about anything else is left alone", () => {
    expect(first("tell me a joke about the weather")).toEqual({ kind: "nothing" });
    for (const empty of ["", "  ", "?!", "👻"]) expect(read(empty)).toEqual([{ kind: "nothing" }]);
  });
});

describe("a danger", () => {
  test("comes before all else, also beside an answer", () => {
    const all = read("it leaks and smoke comes out of the plug");
    expect(all[0]).toMatchObject({ kind: "danger" });
    expect(all).toContainEqual(expect.objectContaining({ answer: "leaking" }));
  });

  test.each([
    ["theres a burning smell", "burning"],
    ["my hand buzzed when I touched the door", "shock"],
    ["the plug went brown", "sparks"],
    ["cord is laying in a puddle", "water-near-socket"],
    ["no ice, and the socket crackles", "sparks"],
    ["i punctured the freezer wall and now it hisses", "gas"],
    ["can't touch the plug it's so hot", "sparks"],
    ["no idea why but there's smoke", "burning"],
    ["it used to just hum, now the plug sizzles", "sparks"],
  ])("is heard in “%s”", (sentence, danger) => {
    expect(first(sentence)).toMatchObject({ kind: "danger", danger });
  });

  test.each([
    "no burning smell",
    "sparkling water",
    "the plug isn't hot",
    "nobody got a shock",
    "the smoke alarm is fine",
    "there's no water near the socket",
    "no sign of any smoke or flames",
    "the old fridge used to spark",
    "got a shock when I saw the price",
    "what if it catches fire",
  ])("is not heard in “%s”", (sentence) => {
    expect(first(sentence)).not.toMatchObject({ kind: "danger" });
  });
});

test("any text at all is understood as something, quickly forgotten and never thrown over", () => {
  const anyText = fc.oneof(
    fc.string({ unit: "binary", maxLength: 700 }),
    fc
      .array(
        fc.constantFrom("no", "ice", "plug", "hot", "1/2", "minus", "and", "??", "é", "\u0000", "12/13/14"),
      )
      .map((words) => words.join(" ")),
  );
  const contexts = [
    symptom,
    seal,
    at("a.b", { instrument: "temperature" }),
    at("a.b", { instrument: "filter-age" }),
  ];
  fc.assert(
    fc.property(anyText, fc.constantFrom(...contexts), (sentence, context) => {
      const all = read(sentence, context);
      expect(all.length).toBeGreaterThan(0);
      for (const one of all)
        if (one.kind === "answer") expect(context.answers.map(({ id }) => id)).toContain(one.answer);
    }),
    { numRuns: 300 },
  );
});

test("of a paste only the beginning is read", () => {
  const filler = "so it goes ".repeat(10_000);
  expect(read(`${filler} smoke comes out`)[0]).not.toMatchObject({ kind: "danger" });
  expect(first(`smoke comes out. ${filler}`)).toMatchObject({ kind: "danger" });
});
