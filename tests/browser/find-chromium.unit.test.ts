import { describe, expect, test } from "vitest";
import { findChromium, type Surroundings } from "./find-chromium.ts";

const own = "/home/someone/.cache/own/chrome";

/** A machine on which only `programs` start; `installs` says what a command brings. */
function machine(
  programs: string[],
  { env = {}, isRoot = false, installs = {} as Record<string, string> } = {},
): Surroundings & { ran: string[] } {
  const there = new Set(programs);
  const ran: string[] = [];
  return {
    env: { PATH: "/opt/tools:/usr/bin", ...env },
    isRoot,
    playwrightPath: () => own,
    starts: (program) => there.has(program),
    run: (command, args) => {
      const line = [command, ...args].join(" ");
      ran.push(line);
      const brought = installs[line];
      if (brought) there.add(brought);
      return brought !== undefined;
    },
    say: () => {},
    ran,
  };
}

const download = "npx playwright install chromium";

describe("finding a Chromium", () => {
  test("takes the one that CHROMIUM_PATH names before any other", () => {
    const env = { CHROMIUM_PATH: "/mine/chromium" };
    expect(findChromium(machine(["/mine/chromium", own, "/usr/bin/chromium"], { env }))).toBe(
      "/mine/chromium",
    );
  });

  test("does not quietly take another when CHROMIUM_PATH is wrong", () => {
    const env = { CHROMIUM_PATH: "/mine/typo" };
    expect(() => findChromium(machine([own, "/usr/bin/chromium"], { env }))).toThrow("/mine/typo");
  });

  test("takes Playwright's own before the system's", () => {
    expect(findChromium(machine([own, "/usr/bin/chromium"]))).toBe(own);
  });

  test.each(["chromium", "chromium-browser", "google-chrome"])("finds %s in a folder of PATH", (name) => {
    expect(findChromium(machine([`/opt/tools/${name}`]))).toBe(`/opt/tools/${name}`);
  });

  test("looks in the usual places that PATH leaves out", () => {
    expect(findChromium(machine(["/snap/bin/chromium"], { env: { PATH: "" } }))).toBe("/snap/bin/chromium");
  });

  test("installs nothing while there is one", () => {
    const around = machine(["/usr/bin/chromium"], { isRoot: true });
    findChromium(around);
    expect(around.ran).toEqual([]);
  });

  test("downloads Playwright's when there is none", () => {
    const around = machine([], { installs: { [download]: own } });
    expect(findChromium(around)).toBe(own);
    expect(around.ran).toEqual([download]);
  });

  test("turns to Debian's package where the download fails, or brings one that does not start", () => {
    const debian = { "apt-get update": "", "apt-get install -y chromium": "/usr/bin/chromium" };
    for (const installs of [debian, { [download]: "/without/libraries", ...debian }]) {
      const around = machine([], { isRoot: true, installs });
      expect(findChromium(around)).toBe("/usr/bin/chromium");
      expect(around.ran).toEqual([download, "apt-get update", "apt-get install -y chromium"]);
    }
  });

  test("leaves the system's packages alone when it is not root", () => {
    const around = machine([], { installs: { "apt-get update": "", "apt-get install -y chromium": "/x" } });
    expect(() => findChromium(around)).toThrow(/CHROMIUM_PATH=/);
    expect(around.ran).toEqual([download]);
  });
});
