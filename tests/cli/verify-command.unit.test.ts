import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { verifyCommand } from "../../src/cli/verify-command.ts";
import { ownFlows } from "../../src/workbench/build/flows-folder.ts";

// Reading and judging every file takes seconds on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

const root = fileURLToPath(new URL("../../", import.meta.url));
let folder = "";

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "flows-"));
  cpSync(ownFlows, folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Changes one file of the copy. */
function change(file: string, find: string, put: string): void {
  const text = readFileSync(join(folder, file), "utf8");
  expect(text).toContain(find);
  writeFileSync(join(folder, file), text.replace(find, put));
}

async function verify(...args: string[]): Promise<{ code: number; lines: string[] }> {
  const lines: string[] = [];
  const code = await verifyCommand(args, (line) => lines.push(line));
  return { code, lines };
}

describe("verify", () => {
  test("finds no problem in an untouched copy of the project's flows", async () => {
    const { code, lines } = await verify(folder);
    expect(lines).toEqual([expect.stringMatching(/^No problems in \d+ files of the flow$/)]);
    expect(code).toBe(0);
  });

  test("names file, line and column of each problem, as an editor can jump to", async () => {
    change("checks/too-full.yaml", "to: rearrange", "to: rearange");
    change("checks/filter-age.yaml", "station: filter", "station: fliter");
    const { code, lines } = await verify(folder);
    expect(lines).toEqual([
      `${folder}/checks/filter-age.yaml:3:10 Check "filter-age" looks at the station "fliter", which does not exist. Did you mean "filter"?`,
      expect.stringMatching(
        /checks\/too-full\.yaml:\d+:\d+ Check "too-full" goes to "rearange", which does not exist\./,
      ),
      expect.stringMatching(/^2 problems in/),
    ]);
    expect(code).toBe(1);
  });

  test("gives the same as JSON for other tools", async () => {
    change("checks/filter-age.yaml", "station: filter", "station: fliter");
    const { code, lines } = await verify(folder, "--json");
    expect(JSON.parse(lines.join("\n"))).toEqual({
      problems: [
        {
          code: "unknown-station",
          file: `${folder}/checks/filter-age.yaml`,
          line: 3,
          column: 10,
          path: ["station"],
          id: "fliter",
          role: "station",
          kind: "station",
          message: expect.any(String),
          suggestion: "filter",
        },
      ],
    });
    expect(code).toBe(1);
  });

  test("holds a retailer's parts against the catalogue that it is given, and against none otherwise", async () => {
    const catalogue = join(folder, "catalogue.json");
    writeFileSync(catalogue, JSON.stringify({ models: [], parts: [] }));
    expect((await verify(folder)).code).toBe(0);
    const { code, lines } = await verify(folder, "--catalogue", catalogue);
    expect(code).toBe(1);
    expect(lines[0]).toMatch(/parts\.yaml:\d+:1 The catalogue has no part of the kind "water-filter"\./);
  });

  test("says so where there is no such folder", async () => {
    expect((await verify(join(folder, "nowhere"))).code).toBe(2);
    expect((await verify(folder, "--locales", join(folder, "nowhere"))).code).toBe(2);
  });
});

describe("the command that a shop runs", () => {
  const run = (...args: string[]) => {
    try {
      return {
        code: 0,
        out: execFileSync("node", [`${root}src/cli/fridgeside.mjs`, ...args], {
          cwd: root,
          encoding: "utf8",
        }),
      };
    } catch (fault) {
      const { status, stdout } = fault as { status: number; stdout: string };
      return { code: status, out: stdout };
    }
  };

  test("starts without a build and ends with the verifier's exit code", { timeout: 60_000 }, () => {
    change("checks/too-full.yaml", "to: rearrange", "to: rearange");
    const { code, out } = run("verify", folder);
    expect(code).toBe(1);
    expect(out).toContain("checks/too-full.yaml:");
  });
});
