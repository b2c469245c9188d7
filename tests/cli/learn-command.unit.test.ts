import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeEach, expect, test, vi } from "vitest";
import { learnCommand } from "../../src/cli/learn-command.ts";
import { packCommand } from "../../src/cli/pack-command.ts";
import { verifyCommand } from "../../src/cli/verify-command.ts";
import { readFlow } from "../../src/workbench/build/index.ts";
import { drawSearches, plantedIn } from "../workbench/learn/planted.ts";

const flow = readFlow();

const folder = mkdtempSync(join(tmpdir(), "learnt-"));
afterAll(() => rmSync(folder, { recursive: true }));
beforeEach(() => {
  vi.spyOn(console, "error").mockImplementation(() => {});
});
afterEach(() => {
  vi.restoreAllMocks();
});

const line = (cause: string | null) =>
  `${JSON.stringify({
    ...{ format: 1, what: "ended", scenario: "no-ice-plumbed", outcome: "fixed", cause },
    ...{ part: null, minutes: 6, answers: 8 },
  })}\n`;

const outcomes = join(folder, "outcomes.ndjson");
writeFileSync(
  outcomes,
  `${line("switched-off").repeat(300)}${line("tap-closed").repeat(20)}${line(null)}spoilt\n`,
);

async function run(...args: string[]): Promise<{ code: number; out: string }> {
  let out = "";
  const code = await learnCommand(args, (text) => {
    out += text;
  });
  return { code, out };
}

test("says what moved and by how much, and writes shares that verify and pack take", async () => {
  const shares = join(folder, "shares.yaml");
  const { code, out } = await run(outcomes, "--out", shares);
  expect(code).toBe(0);
  expect(out).toContain("320 searches that say what was found. 1 lines could not be read.");
  expect(out).toMatch(
    /Moved:\n[\s\S]*switched-off +\d+\.\d % -> +\d+\.\d % {2}\(\d+\.\d % to \d+\.\d %, 300\)/,
  );
  expect(readFileSync(shares, "utf8")).toMatch(/^# Homes in 1,000[^\n]*\n([a-z-]+: [\d.]+\n)+$/);
  // Half the way as a ratio, and no rates of error.
  const { causes } = JSON.parse((await run(outcomes, "--json")).out);
  const { share } = causes.find(({ cause }: { cause: string }) => cause === "switched-off");
  const written = Number(/^switched-off: (.*)$/m.exec(readFileSync(shares, "utf8"))?.[1]);
  expect(written / share.was).toBeCloseTo(share.is / written, 1);
  expect(written).toBeGreaterThan(share.was);
  expect(readFileSync(shares, "utf8")).not.toContain("error-");
  const printed: string[] = [];
  expect(await verifyCommand(["--shares", shares], (text) => printed.push(text)), printed.join("\n")).toBe(0);
  const plain = join(folder, "plain");
  const packed = join(folder, "packed");
  expect(await packCommand(["--out", plain], () => {})).toBe(0);
  expect(await packCommand(["--out", packed, "--shares", shares], (text) => printed.push(text))).toBe(0);
  const [before, after] = [plain, packed].map((place) => readFileSync(join(place, "en-GB.json"), "utf8"));
  expect(after).not.toBe(before);
});

test("says how often people err where it is told what they saw, and writes rates that verify and pack take", async () => {
  const seen = join(folder, "seen.ndjson");
  const drawn = drawSearches(flow, plantedIn(flow, "command"), "command", 600);
  writeFileSync(seen, drawn.map(({ line }) => `${JSON.stringify(line)}\n`).join(""));
  const shares = join(folder, "rates.yaml");
  const { code, out } = await run(seen, "--worth", "30", "--out", shares, "--errors");
  expect(code).toBe(0);
  expect(out).toMatch(/error-look +10\.0 % -> +1\d\.\d % {2}\(\d+\.\d % to \d+\.\d %, \d+\)/);
  expect(readFileSync(shares, "utf8")).toMatch(/^error-look: 0\.1\d+$/m);
  expect(await verifyCommand(["--shares", shares], () => {})).toBe(0);
  expect(await packCommand(["--out", join(folder, "rated"), "--shares", shares], () => {})).toBe(0);
});

test("says what is missing: files, causes, a worth, a share of a cause that there is not", async () => {
  const none = join(folder, "none.ndjson");
  writeFileSync(none, line(null));
  const wrong = join(folder, "wrong.yaml");
  writeFileSync(wrong, "no-such-cause: 3\n");
  expect((await run()).code).toBe(2);
  expect((await run(outcomes, "--worth", "0")).code).toBe(2);
  expect((await run(none)).code).toBe(1);
  expect((await run(join(folder, "gone.ndjson"))).code).toBe(1);
  await expect(verifyCommand(["--shares", wrong], () => {})).rejects.toThrow("no-such-cause");
  expect(await verifyCommand(["--shares", join(folder, "gone.yaml")], () => {})).toBe(2);
});
