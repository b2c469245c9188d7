import { describe, expect, test } from "vitest";
import { label } from "../../../src/workbench/pictures/index.ts";

const wordsOf = (part: string) => ({ lid: "The lid", float: "The\nfloat" })[part] ?? `The ${part}`;
const textsOf = (shapes: string[]) => shapes.filter((shape) => shape.startsWith("T"));

describe("what a part is called", () => {
  test("stands where its line ends, away from the part", () => {
    const { shapes, legend } = label(["b1 M0 0l9 9z", "@lid 10 20 60 30", "@lid 90 20 60 30"], wordsOf);
    expect(textsOf(shapes)).toEqual(["Ts 64 35 The lid", "Te 56 35 The lid"]);
    expect(shapes.filter((shape) => shape.startsWith("cl "))).toEqual([
      "cl M10 20L51 30H60",
      "cl M90 20L69 30H60",
    ]);
    expect(legend).toEqual([]);
  });

  test("has as many lines as its words, around the end of its line", () => {
    const { shapes } = label(["@float 10 20 60 30"], wordsOf);
    expect(textsOf(shapes)).toEqual(["Ts 64 27.5 The", "Ts 64 42.5 float"]);
  });

  test("is a number from four parts on, and stands in a list", () => {
    const parts = ["lid", "sieve", "grip", "foot"];
    const { shapes, legend } = label(
      parts.map((part, i) => `@${part} ${i} 20 60 30`),
      wordsOf,
    );
    expect(textsOf(shapes)).toEqual(["Tn 60 35 1", "Tn 60 35 2", "Tn 60 35 3", "Tn 60 35 4"]);
    expect(legend).toEqual(["The lid", "The sieve", "The grip", "The foot"]);
  });

  test("is the number of a list elsewhere where the part is one, without a list of its own", () => {
    const { shapes, legend } = label(["@2 10 20 60 30"], wordsOf);
    expect(textsOf(shapes)).toEqual(["Tn 60 35 2"]);
    expect(legend).toEqual([]);
  });
});

test("a line of water is its wall and what it holds", () => {
  expect(label(["pf M0 0L9 9", "pd M1 1L2 2"], wordsOf).shapes).toEqual([
    ...["pf M0 0L9 9", "pfi M0 0L9 9", "pd M1 1L2 2", "pdi M1 1L2 2"],
  ]);
});
