import { createInstance } from "i18next";
import { describe, expect, test } from "vitest";
import { createTexts, type Resource } from "../../src/turn/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { readerOf } from "./reader.ts";

const flow = readFlow();

const locales: Record<string, Resource> = {
  "en-GB": {
    tray: {
      name: "Ice tray",
      colour: "The grey one",
      cold: "It should be {{freezer-target}} or colder.",
      wait: "Wait for {{ice-return-hours}} hours, {{name}}.",
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

describe("texts that are looked up", () => {
  /** A library that is kept for nothing else; it knows no limits, so values are left as they stand. */
  const libraryIn = (resources: Record<string, Resource>, language: string) => {
    const library = createInstance({
      lng: language,
      fallbackLng: "en-GB",
      initAsync: false,
      resources: Object.fromEntries(
        Object.entries(resources).map(([tag, texts]) => [tag, { translation: texts }]),
      ),
      parseMissingKeyHandler: () => "",
    });
    void library.init();
    return (key: string, count?: number) =>
      library.t(key, { ...(count !== undefined && { count }), skipInterpolation: true });
  };
  const forms = ["zero", "one", "two", "few", "many", "other"].map((form) => [`found_${form}`, form]);
  const everyForm: Resource = { tray: Object.fromEntries(forms) };

  test.each(["en-GB", "en-US", "de", "fr", "pl", "ar", "ja"])("agree with i18next on counts: %s", (tag) => {
    const texts = createTexts({ [tag]: everyForm }, tag, readerOf(flow, tag));
    const library = libraryIn({ [tag]: everyForm }, tag);
    for (const count of [1, 2, 3, 5, 11, 21, 22, 100, 1.5])
      expect(texts("tray.found", { count })).toBe(library("tray.found", count));
  });

  test.each(["en-GB", "en-US", "de", "de-CH", "zz"])("agree with i18next on every key: %s", (language) => {
    const [texts, library] = [textsIn(language), libraryIn(locales, language)];
    for (const key of ["name", "colour", "smell", "found"].map((last) => `tray.${last}`))
      for (const count of [undefined, 1, 8])
        expect(texts(key, count === undefined ? undefined : { count })).toBe(
          library(key, count).replace("{{count}}", `${count}`),
        );
  });

  test("are found once they have come, and leave what was there", () => {
    const texts = textsIn("en-US");
    expect([texts("tray.smell"), texts("tray.colour")]).toEqual(["", "The gray one"]);
    texts.add({ tray: { smell: "Fresh" }, lid: { name: "Lid" } });
    expect(["tray.smell", "tray.colour", "tray.name", "lid.name"].map((key) => texts(key))).toEqual([
      "Fresh",
      "The gray one",
      "Ice tray",
      "Lid",
    ]);
    expect(textsIn("en-US")("tray.smell")).toBe("");
  });
});

describe("a limit in a text", () => {
  // −18 °C: three- and four-star compartments, (EU) 2019/2016 Annex Table 3; 0 °F: USDA FSIS and FDA advice.
  // −18 °C is −0.4 °F (NIST SP 811 B.8), which rounds to 0 and not to a minus nought.
  test("is in the reader's own unit", () => {
    expect(textsIn("en-GB")("tray.cold")).toBe("It should be \u221218 °C or colder.");
    expect(textsIn("en-US")("tray.cold")).toBe("It should be 0 °F or colder.");
  });

  test("is a bare number otherwise, written as the language writes numbers", () => {
    expect(textsIn("en-GB")("tray.share")).toBe("0.05 of 5000 ml");
    expect(textsIn("de")("tray.share")).toBe("0,05 von 5000 ml");
  });
});
