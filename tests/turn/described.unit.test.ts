import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Lexicon, suggest } from "../../src/turn/index.ts";

const lexicon: Lexicon = {
  shortForms: "won t=will not\nwont=will not\nn t=not\nsnt=not",
  words: {
    "no-ice": "no ice 4, not mak ice 5\nwill not make 3, cubes 1",
    leaking: "leak 7\nwater on floor 6\nwet 2",
    warm: "warm 3\ngefrierfacher warm 6\nice cream soft 4",
    odd: "tast 6\nice ice ice 9",
    unknown: "",
  },
};
const read = (sentence: string) => suggest(sentence, lexicon);

describe("a sentence suggests an answer", () => {
  test.each([
    ["It leaks", "leaking"],
    ["LEAKING!!!", "leaking"],
    ["It doesn't make ice", "no-ice"],
    ["It doesn’t make ice", "no-ice"],
    ["It doesnʼt make ice", "no-ice"],
    ["It doesn`t make ice", "no-ice"],
    ["it doesnt make ice", "no-ice"],
    ["It won’t make any", "no-ice"],
    ["it wont make any", "no-ice"],
    ["no\n\tice", "no-ice"],
    ["no-ice", "no-ice"],
    ["Gefrierfächer zu warm", "warm"],
    ["GEFRIERFA\u0308CHER zu warm", "warm"],
    ["ｉｔ　ｌｅａｋｓ", "leaking"],
  ])("%s", (sentence, answer) => {
    expect(read(sentence)[0]).toBe(answer);
  });

  test("with up to two other words between two that belong together, and no more", () => {
    expect(read("water is on the floor")).toEqual(["leaking"]);
    expect(read("water on my nice floor")).toEqual(["leaking"]);
    expect(read("water on my nice new floor")).toEqual([]);
  });

  test("only when its words come in their order, and begin the words of the sentence", () => {
    expect(read("the floor has on it some water")).toEqual([]);
    expect(read("a distaste for bleak houses")).toEqual([]);
  });

  test("by words of their own, not by the same word read several times", () => {
    expect(read("ice")).toEqual([]);
    expect(read("ice ice ice")).toEqual(["odd"]);
  });
});

describe("what is suggested", () => {
  test("is in the order of how much of the sentence speaks for it", () => {
    expect(read("no ice, and it tastes")).toEqual(["odd", "no-ice"]);
    expect(read("no ice, it does not make ice, and it tastes")).toEqual(["no-ice", "odd"]);
  });

  test("is three answers at most", () => {
    expect(read("It leaks, tastes, is warm, and there is no ice")).toHaveLength(3);
  });

  test("is nothing for an empty sentence, for one that speaks of nothing known, and for a lone weak word", () => {
    for (const sentence of ["", "  ", "My dog barks", "Zebra 12345", "the cubes", "👻🧊", "冰"])
      expect(read(sentence)).toEqual([]);
  });

  test("leaves out a stray word beside a clear favourite", () => {
    expect(read("It leaks, water on the floor, and it is warm")).toEqual(["leaking"]);
    expect(read("It leaks and it is warm")).toEqual(["leaking", "warm"]);
  });

  test("is nothing where no answer has words", () => {
    expect(suggest("It leaks", { shortForms: "", words: {} })).toEqual([]);
    expect(suggest("It leaks", { shortForms: "", words: { a: "", b: "" } })).toEqual([]);
  });
});

describe("any text at all", () => {
  // Also halves of surrogate pairs, which a broken paste can hold.
  const anyText = fc.oneof(
    fc.string({ unit: "binary" }),
    fc.array(fc.integer({ min: 0, max: 0xffff })).map((units) => String.fromCharCode(...units)),
    fc
      .array(fc.constantFrom("no", "ice", "water", "on", "floor", "warm", "won't", "$&", "(", "\\", " ", "é"))
      .map((words) => words.join(" ")),
  );

  test("gives three different answers at most, each of the turn, and throws nothing", () => {
    fc.assert(
      fc.property(anyText, (sentence) => {
        const found = read(sentence);
        expect(found.length).toBeLessThanOrEqual(3);
        expect(new Set(found).size).toBe(found.length);
        expect(Object.keys(lexicon.words)).toEqual(expect.arrayContaining(found));
      }),
      { numRuns: 2000 },
    );
  });

  test("suggests the same in capitals", () => {
    // Letters that are several in capitals, such as ß, are no concern of an English sentence.
    const words = fc.array(
      fc.constantFrom("no", "ice", "leaks", "wet", "don't", "make", "tastes", "warm", "it"),
    );
    fc.assert(
      fc.property(words, (chosen) => {
        const sentence = chosen.join(" ");
        expect(read(sentence.toUpperCase())).toEqual(read(sentence));
      }),
    );
  });

  test("a paste of 100 kB is read for as long as a description may be, and its end is not", () => {
    const filler = "so it goes ".repeat(10_000);
    expect(read(`It leaks. ${filler}`)).toEqual(["leaking"]);
    expect(read(`${filler} It leaks.`)).toEqual([]);
    for (const hard of ["water on ", "wwwwwwwww", "water water water ", "\u0301", " ", "n t ", "ﷺ"])
      expect(read(hard.repeat(100_000 / hard.length)).length).toBeLessThanOrEqual(3);
  });
});
