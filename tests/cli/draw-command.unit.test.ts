import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import { drawCommand } from "../../src/cli/draw-command.ts";

// Reading and judging every file takes seconds on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

async function draw(...args: string[]): Promise<{ code: number; out: string }> {
  let out = "";
  const code = await drawCommand(args, (text) => {
    out += text;
  });
  return { code, out };
}

test("draws an SVG unless SCXML is asked for", async () => {
  expect((await draw("no-ice-plumbed")).out).toMatch(/^<svg /);
  expect((await draw("no-ice-plumbed", "--svg")).out).toMatch(/^<svg /);
  expect((await draw("no-ice-plumbed", "--scxml")).out).toContain("<scxml ");
});

test("writes to a file where one is named, and then prints nothing", async () => {
  const folder = mkdtempSync(join(tmpdir(), "drawing-"));
  const file = join(folder, "chart.scxml");
  expect(await draw("no-ice-plumbed", "--scxml", "--out", file)).toEqual({ code: 0, out: "" });
  expect(readFileSync(file, "utf8")).toContain("<scxml ");
  rmSync(folder, { recursive: true });
});

test("names the scenarios where none, or none that exists, is named", async () => {
  expect(await draw()).toEqual({ code: 2, out: "" });
  expect(await draw("no-ise")).toEqual({ code: 2, out: "" });
  expect(await draw("no-ice-plumbed", "--svg", "--scxml")).toEqual({ code: 2, out: "" });
});
