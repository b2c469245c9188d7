import { spawnSync } from "node:child_process";
import { rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { buildDemoShards } from "../../demo/generate/shards.ts";
import { allFilesOf, keptFor } from "../../src/workbench/build/build.ts";
import { writeOwnFiles } from "../../src/workbench/own-files/index.ts";
import { builtOnce } from "../built-once.ts";
import { findChromium, thisMachine } from "./find-chromium.ts";
import { builtFolder } from "./site.ts";

/*
 * `npm run browser [part of a file's name] [-g "part of a sentence"]`: finds a Chromium, builds the embed, tests it.
 */
try {
  const chromium = findChromium(thisMachine);
  console.log(`Chromium: ${chromium}`);
  // Nobody has a page of an earlier run open.
  rmSync(builtFolder, { recursive: true, force: true });
  writeOwnFiles(builtFolder, allFilesOf(await builtOnce()), {
    writer: "build",
    ...keptFor,
    now: new Date(),
  });
  await buildDemoShards(`${builtFolder}/shards`);
  const command = ["playwright", "test", "--config", ".config/playwright.ts", ...process.argv.slice(2)];
  const { status } = spawnSync("npx", command, {
    cwd: fileURLToPath(new URL("../..", import.meta.url)),
    stdio: "inherit",
    env: { ...process.env, CHROMIUM_PATH: chromium },
  });
  process.exitCode = status ?? 1;
} catch (problem) {
  console.error(problem instanceof Error ? problem.message : problem);
  process.exitCode = 1;
}
