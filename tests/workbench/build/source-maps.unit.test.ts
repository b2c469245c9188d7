import { eachMapping, originalPositionFor, sourceContentFor, TraceMap } from "@jridgewell/trace-mapping";
import { beforeAll, describe, expect, test } from "vitest";
import type { BuiltFile } from "../../../src/workbench/build/chunks.ts";
import { builtOnce } from "../../built-once.ts";

/*
 * The maps are read by another library than the ones that wrote them. A literal text of the script is looked up: its place
 * in the sources must be a line that holds it.
 */
let scripts: BuiltFile[];

beforeAll(async () => {
  scripts = (await builtOnce()).filter(({ path }) => path.endsWith(".js"));
}, 300_000);

/** The longer texts in a script, with where each stands (line from 1, column from 0). */
function textsIn({ content }: BuiltFile): { text: string; line: number; column: number }[] {
  return content
    .toString()
    .split("\n")
    .flatMap((code, at) =>
      [...code.matchAll(/(?<=[("'`[=:,?])(["'`])([A-Za-z][\w .,-]{11,60})\1/g)].map((found) => ({
        text: found[2] ?? "",
        line: at + 1,
        column: found.index,
      })),
    );
}

describe("the source maps", () => {
  test("lead every long text of a script to the line of its source that holds it", () => {
    const astray: string[] = [];
    let led = 0;
    for (const script of scripts) {
      const map = new TraceMap(script.map as string);
      for (const { text, line, column } of textsIn(script)) {
        const { source, line: own } = originalPositionFor(map, { line, column });
        if (!source || own === null) continue;
        const lines =
          sourceContentFor(map, source)
            ?.split("\n")
            .slice(own - 1, own + 2) ?? [];
        if (lines.join().includes(text)) led++;
        else astray.push(`${script.path}: "${text}" to ${source}:${own}`);
      }
    }
    // The bundler puts the value of a constant where its name stood: there the line has the name.
    expect(astray.length / led, astray.join("\n")).toBeLessThan(0.02);
    expect(led).toBeGreaterThan(1000);
  });

  test("come with the sources they speak of, and name no place on the machine that built them", () => {
    for (const { path, map } of scripts) {
      const { sources, sourcesContent, file } = JSON.parse(map as string);
      expect(sources.length, path).toBeGreaterThan(0);
      expect(sourcesContent, path).toHaveLength(sources.length);
      expect(file, path).toBe(path.split("/").at(-1));
      for (const source of sources)
        expect(source, path).toMatch(/^(\.\.\/)*(src|node_modules)\/|^\0?virtual:/);
    }
  });

  test("are named by no script, so that nobody fetches them who does not look for them", () => {
    for (const { path, content } of scripts)
      expect(content.toString(), path).not.toContain("sourceMappingURL");
  });

  test("cover a script to its end, behind what is put in between for the language", () => {
    for (const { path, content, map } of scripts) {
      let last = { line: 0, column: 0 };
      eachMapping(new TraceMap(map as string), ({ generatedLine: line, generatedColumn: column }) => {
        last = { line, column };
      });
      const lines = content.toString().trimEnd().split("\n");
      expect(last.line, path).toBeGreaterThanOrEqual(lines.length - 1);
    }
  });
});
