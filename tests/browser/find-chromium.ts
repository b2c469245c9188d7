import { spawnSync } from "node:child_process";
import { delimiter, join } from "node:path";
import { chromium } from "playwright";

/** What the search looks at and does, so that its order can be tested without a browser. */
export type Surroundings = {
  env: Record<string, string | undefined>;
  isRoot: boolean;
  /** Where Playwright keeps a Chromium of its own, whether or not one is there. */
  playwrightPath(): string;
  /** Whether this program is there and starts; one without its libraries does not. */
  starts(program: string): boolean;
  /** Runs a command to its end; false when it failed. */
  run(command: string, args: string[]): boolean;
  say(line: string): void;
};

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
const usualPlaces = [
  ...["/usr/bin", "/usr/local/bin", "/snap/bin"].flatMap((folder) => names.map((name) => join(folder, name))),
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/**
 * A Chromium that starts: the one that `CHROMIUM_PATH` names, Playwright's own, the system's, or else one that is
 * installed now.
 * @throws Error that says what was tried and what a person can do
 */
export function findChromium(around: Surroundings): string {
  const wanted = around.env.CHROMIUM_PATH;
  if (wanted) {
    if (around.starts(wanted)) return wanted;
    throw new Error(`CHROMIUM_PATH is "${wanted}", which does not start. Correct it or leave it out.`);
  }
  return findInstalled(around) ?? install(around);
}

function findInstalled({ env, playwrightPath, starts }: Surroundings): string | undefined {
  const folders = (env.PATH ?? "").split(delimiter).filter(Boolean);
  const inPath = names.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...new Set([playwrightPath(), ...inPath, ...usualPlaces])].find(starts);
}

function install(around: Surroundings): string {
  const ways: [command: string, args: string[]][][] = [[["npx", ["playwright", "install", "chromium"]]]];
  if (around.isRoot)
    ways.push([
      ["apt-get", ["update"]],
      ["apt-get", ["install", "-y", "chromium"]],
    ]);
  for (const way of ways) {
    around.say(`No Chromium yet: ${way.map(([command, args]) => [command, ...args].join(" ")).join(" && ")}`);
    const found = way.every(([command, args]) => around.run(command, args)) && findInstalled(around);
    if (found) return found;
  }
  throw new Error(
    "There is no Chromium for the browser tests, and none could be installed. " +
      "Install Chromium yourself, or name one: CHROMIUM_PATH=/path/to/chromium npm run browser",
  );
}

/** The machine that this runs on. */
export const thisMachine: Surroundings = {
  env: process.env,
  isRoot: process.getuid?.() === 0,
  playwrightPath: () => chromium.executablePath(),
  starts: (program) => spawnSync(program, ["--version"], { stdio: "ignore" }).status === 0,
  run: (command, args) => spawnSync(command, args, { stdio: "inherit" }).status === 0,
  say: (line) => console.log(line),
};
