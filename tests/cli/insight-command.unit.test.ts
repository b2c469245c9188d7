import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { insightCommand } from "../../src/cli/insight-command.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "outcomes-"));
  vi.spyOn(console, "error").mockImplementation(() => {});
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true });
});

function write(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

async function run(...args: string[]): Promise<{ code: number; out: string }> {
  let out = "";
  const code = await insightCommand(args, (text) => {
    out += text;
  });
  return { code, out };
}

const started = '{"format":1,"what":"started"}\n';
const fixed = `${JSON.stringify({
  ...{ format: 1, what: "ended", scenario: "no-ice", outcome: "fixed", cause: "door-ajar" },
  ...{ part: null, minutes: 6, answers: 8 },
})}\n`;

test("several files are one report, their blank lines are none, and what is spoilt is counted", async () => {
  const one = write("one.ndjson", `${started}\r\n\n${started}{"format":1,"what":"star`);
  const other = write("other.ndjson", `${fixed}${fixed.trim()}`);
  const { code, out } = await run(one, other);
  expect(code).toBe(0);
  expect(out).toContain("2 searches began and 2 ended. 1 of 5 lines could not be read");
  expect(out).toContain("no-ice: 2 ended, median 6 minutes");
});

test("a page and a drawing are written beside what is printed", async () => {
  const file = write("one.ndjson", started + fixed);
  const [html, svg] = [join(folder, "out.html"), join(folder, "out.svg")];
  const { out } = await run(file, "--html", html, "--svg", svg, "--json");
  expect(JSON.parse(out)).toMatchObject({ started: 1, scenarios: [{ id: "no-ice" }] });
  expect(readFileSync(html, "utf8")).toMatch(/^<!doctype html>/);
  expect(readFileSync(svg, "utf8")).toMatch(/^<svg /);
});

test("a line without an end is one bad line, whatever its length, and lines after it count", async () => {
  const file = write("long.ndjson", `${"x".repeat(3_000_000)}\n${started}`);
  expect((await run(file)).out).toContain("1 search began and 0 ended. 1 of 2 lines");
});

test("signs that a chunk cuts in two are read whole", async () => {
  const line = (code: string) =>
    `${JSON.stringify({ format: 1, what: "model-missing", scenario: null, code })}\n`;
  const file = write("codes.ndjson", line("ÄÖ77").repeat(3000));
  const { out } = await run(file);
  expect(out).not.toContain("could not be read");
  expect(out).toContain("ÄÖ77  3,000");
});

test("names what is missing: files, a file that is there, a place to write", async () => {
  expect((await run()).code).toBe(2);
  expect((await run(join(folder, "none.ndjson"))).code).toBe(1);
  expect((await run(write("a", started), "--html", join(folder, "no", "b.html"))).code).toBe(1);
});
