import { expect, test } from "vitest";
import { createTexts, type Resource } from "../../../src/turn/index.ts";
import { flowPlugin } from "../../../src/workbench/build/flow-plugin.ts";
import { readLocales } from "../../../src/workbench/build/locales-folder.ts";

/** The data files of a build, by name. */
function emitted(): Map<string, string> {
  const plugin = flowPlugin() as unknown as Record<"buildStart" | "generateBundle", () => void>;
  const files = new Map<string, string>();
  plugin.buildStart();
  plugin.generateBundle.call({
    emitFile: ({ fileName, source }: Record<string, string>) => files.set(fileName ?? "", source ?? ""),
  });
  return files;
}

test("every language has what own words are read by, its own before that of en-GB, and no example", () => {
  const locales = readLocales();
  const files = emitted();
  const describedIn = (tag: string) => (locales[tag]?.["described"] ?? {}) as Record<string, Resource>;
  expect(files.size).toBe(Object.keys(locales).length);
  for (const tag of Object.keys(locales)) {
    const [, source = ""] = [...files].find(([name]) => name.startsWith(`parts/${tag}-`)) ?? [];
    const { resources, flow } = JSON.parse(source);
    const texts = createTexts(resources, tag, flow.limits);
    const words = { ...describedIn("en-GB")["words"], ...describedIn(tag)["words"] };
    expect(Object.keys(words).length).toBeGreaterThan(0);
    for (const [answer, lines] of Object.entries(words))
      expect(texts(`described.words.${answer}`)).toBe(lines);
    expect(texts("described.turn")).toBe("opening.symptom");
    expect(texts("described.short-forms")).toContain("=");
    const sentences = Object.values(describedIn(tag)["examples"] ?? {}).flatMap((text) =>
      String(text).split("\n"),
    );
    expect(sentences.length).toBeGreaterThan(0);
    expect(sentences.filter((sentence) => source.includes(sentence))).toEqual([]);
  }
});
