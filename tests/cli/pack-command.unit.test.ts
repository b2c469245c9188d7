import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { packCommand } from "../../src/cli/pack-command.ts";
import { ownFlows } from "../../src/workbench/build/flows-folder.ts";

// Reading and judging every file takes seconds on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

let folder = "";
let out = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "flows-"));
  out = join(folder, "packed");
  cpSync(ownFlows, join(folder, "flows"), { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

function change(file: string, find: string, put: string): void {
  const path = join(folder, "flows", file);
  const text = readFileSync(path, "utf8");
  expect(text).toContain(find);
  writeFileSync(path, text.replace(find, put));
}

const pack = (...args: string[]) => packCommand(args, () => {});

test("an edited flows folder becomes a file for each language, without sources and examples", async () => {
  change("checks/ice-bin.yaml", "minutes: 3", "minutes: 4");
  expect(await pack(join(folder, "flows"), "--out", out)).toBe(0);
  for (const tag of ["en-GB", "en-US"]) {
    const text = readFileSync(join(out, `${tag}.json`), "utf8");
    const data = JSON.parse(text);
    expect(data.madeFor).toBe(JSON.parse(readFileSync("package.json", "utf8")).version);
    const plumbed = data.scenarios.find(({ id }: { id: string }) => id === "no-ice-plumbed");
    const { states } = plumbed.chart.states["no-ice-plumbed"].states["ice-bin"];
    expect(states.look.meta.minutes).toBe(4);
    expect(data.resources[tag].checks["ice-bin"].look.ask).toMatch(/\w/);
    expect(text).not.toMatch(/"source"|"confidence"|"examples"/);
  }
});

test("flows with a problem are told about and not packed", async () => {
  change("checks/fill-tube.yaml", "gates:", "# gates:");
  expect(await pack(join(folder, "flows"), "--out", out)).toBe(1);
  expect(existsSync(out)).toBe(false);
});

test("flows that no panel would take at its door are told about and not packed", async () => {
  // No fault of the flows, and yet nobody could report it any more while something smells of burning.
  change("opening.yaml", "burning: { to: stopped, danger: true }", "burning: { to: stopped }");
  const lines: string[] = [];
  expect(await packCommand([join(folder, "flows"), "--out", out], (line) => lines.push(line))).toBe(1);
  expect(lines.join("\n")).toMatch(/danger "burning"/);
  expect(existsSync(out)).toBe(false);
});

test("without a place to write to it says how it is called", async () => {
  const told = vi.spyOn(console, "error").mockImplementation(() => {});
  expect(await pack(folder)).toBe(2);
  expect(told).toHaveBeenCalledWith(expect.stringContaining("--out <folder>"));
  told.mockRestore();
});
