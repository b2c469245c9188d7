import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

const command = fileURLToPath(new URL("../../src/cli/fridgeside.mjs", import.meta.url));
const run = (...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...args], { encoding: "utf8" });
  return { status, stdout, stderr };
};

describe("the command line", () => {
  test("names its commands to who asks, and to who names none that there is", () => {
    const asked = run("--help");
    expect([asked.status, asked.stderr]).toEqual([0, ""]);
    expect(asked.stdout).toMatch(/^Commands:\n {2}build .*\n {2}play /);
    for (const name of ["", "constructor"]) {
      const wrong = run(...(name ? [name] : []));
      expect([wrong.status, wrong.stdout]).toEqual([2, ""]);
      expect(wrong.stderr).toBe(asked.stdout);
    }
  });

  test("says what a command takes, and does nothing then", () => {
    expect(run("build", "--help")).toEqual({
      status: 0,
      stdout:
        "fridgeside build: build the script that a shop embeds   [--out dist] [--keep 5] [--keep-days 30]\n",
      stderr: "",
    });
    expect(run("relay", "--help").stdout).toContain("--origin");
  });
});
