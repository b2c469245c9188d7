import { describe, expect, test } from "vitest";
import { createTexts, type Resource } from "../../src/turn/index.ts";
import { ownFlow } from "../own-flow.ts";
import { readerOf } from "./reader.ts";

const flow = ownFlow;

const locales: Record<string, Resource> = {
  "en-GB": {
    tray: {
      name: "Ice tray",
      colour: "The grey one",
      cold: "It should be {{freezer-target}} or colder.",
      wait: "Wait for {{ice-return-hours}} hours, {{name}}.",
      strong: "Above {{supply-pressure-advised}}.",
      share: "{{jug-scale}} of {{flow-most}} ml",
      found_one: "{{count}} cube",
      found_other: "{{count}} cubes",
    },
  },
  "en-US": { tray: { colour: "The gray one" } },
  de: { tray: { share: "{{jug-scale}} von {{flow-most}} ml" } },
};
const textsIn = (language: string) => createTexts(locales, language, readerOf(flow, language));

describe("a text", () => {
  test("is the reader's own language's where there is one", () => {
    expect(textsIn("en-US")("tray.colour")).toBe("The gray one");
    expect(textsIn("en-GB")("tray.colour")).toBe("The grey one");
  });

  test("is British English where the reader's language has none", () => {
    expect(textsIn("en-US")("tray.name")).toBe("Ice tray");
    expect(textsIn("de")("tray.name")).toBe("Ice tray");
    expect(textsIn("zz")("tray.name")).toBe("Ice tray");
  });

  test("is empty where no language has one, so that an optional text can be left out", () => {
    expect(textsIn("en-US")("tray.smell")).toBe("");
    expect(textsIn("en-US")("cellar.light.name")).toBe("");
  });

  test("counts", () => {
    expect([0, 1, 8].map((count) => textsIn("en-GB")("tray.found", { count }))).toEqual([
      "0 cubes",
      "1 cube",
      "8 cubes",
    ]);
  });

  test("shows typed words as they are: the screen writes text, and an escaped & would be read as &amp;", () => {
    expect(textsIn("en-GB")("tray.wait", { name: "<b>Tom & Jo</b>" })).toBe(
      "Wait for 24 hours, <b>Tom & Jo</b>.",
    );
  });

  test("does not look up what a value names: a typed $t(…) stays what it is", () => {
    expect(textsIn("en-GB")("tray.wait", { name: "$t(tray.colour)" })).toContain("$t(tray.colour)");
  });
});

describe("a limit in a text", () => {
  // −18 °C: three- and four-star compartments, (EU) 2019/2016 Annex Table 3; 0 °F: USDA FSIS and FDA advice.
  // −18 °C is −0.4 °F (NIST SP 811 B.8), which rounds to 0 and not to a minus nought.
  test("is in the reader's own unit", () => {
    expect(textsIn("en-GB")("tray.cold")).toBe("It should be \u221218\u00a0°C or colder.");
    expect(textsIn("en-US")("tray.cold")).toBe("It should be 0\u00a0°F or colder.");
  });

  // 80 psi, UPC 608.2 (IAPMO): 5.516 bar by NIST SP 811 B.8.
  test("of a pressure is in the unit of the reader's gauge", () => {
    expect(textsIn("en-GB")("tray.strong")).toBe("Above 5.5\u00a0bar.");
    expect(textsIn("en-US")("tray.strong")).toBe("Above 80\u00a0psi.");
  });

  test("is a bare number otherwise, written as the language writes numbers", () => {
    expect(textsIn("en-GB")("tray.share")).toBe("0.05 of 5000 ml");
    expect(textsIn("de")("tray.share")).toBe("0,05 von 5000 ml");
  });
});
