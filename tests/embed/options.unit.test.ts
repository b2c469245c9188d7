import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { matchLanguage } from "../../src/embed/first-options.ts";
import { readOptions } from "../../src/embed/options.ts";
import { toWebAddress } from "../../src/embed/web-address.ts";

const languages = ["en-GB", "en-US"];
const read = (attributes: Record<string, string>, inherited = "de") =>
  readOptions((name) => attributes[name] ?? null, inherited, languages, "https://shop.example/page");

describe("attributes at the door", () => {
  test("no attribute at all is fine", () => {
    expect(read({})).toMatchObject({
      complaints: [],
      options: { language: "en-GB", theme: null, catalogue: null },
    });
  });

  test("the page's language counts where the tag names none", () => {
    expect(read({}, "en-US").options.language).toBe("en-US");
    expect(read({}, "en-AU").options.language).toBe("en-GB");
  });

  test("links start from the page", () => {
    expect(read({ catalogue: "parts.json" }).options.catalogue).toBe("https://shop.example/parts.json");
  });

  test.each([
    ["theme", "purple", "light, dark or auto"],
    ["language", "klingon", "one of en-GB, en-US"],
    ["catalogue", "javascript:alert(1)", "http or https"],
    ["help-link", "data:text/html,x", "http or https"],
    ["flows", "javascript:alert(1)", "http or https"],
    ["session-name", "two words", "1 to 40 letters"],
    ["model", "X".repeat(41), "at most 40"],
  ])("a wrong %s is ignored with a sentence that says what it must be", (name, value, wants) => {
    const { complaints } = read({ [name]: value });
    expect(complaints).toEqual([expect.stringContaining(wants)]);
    expect(complaints[0]).toMatch(new RegExp(`^<fridgeside-panel>: attribute "${name}"`));
  });

  test("never throws, whatever a page writes", () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (value, inherited) => {
        for (const name of [
          "language",
          "theme",
          "catalogue",
          "lookup",
          "flows",
          "model",
          "help-link",
          "session-name",
        ])
          read({ [name]: value }, inherited);
      }),
    );
  });

  test("only http and https are web addresses", () => {
    for (const link of ["javascript:x", "vbscript:x", "file:///etc", "blob:x", "ftp://a/b", "http://"])
      expect(toWebAddress(link, "https://shop.example/")).toBeNull();
  });

  test("a language is matched by its first part when its region has no texts", () => {
    expect(matchLanguage("EN-us", languages)).toBe("en-US");
    expect(matchLanguage("en", languages)).toBe("en-GB");
    expect(matchLanguage("fr", languages)).toBeNull();
  });
});
