import { execFileSync } from "node:child_process";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { buildEmbed, distFolder } from "../src/workbench/build/index.ts";
import { createManifest } from "../src/workbench/manifest/index.ts";

/*
 * Before `npm pack`: `lib/`, the command and what scripts import, as plain JavaScript with types; `dist/`, what a shop
 * serves, of this build alone; `maps/`, its source maps, for those who look into a fault.
 */
const root = fileURLToPath(new URL("..", import.meta.url));
for (const folder of ["lib", "dist", "maps"]) rmSync(`${root}${folder}`, { recursive: true, force: true });
execFileSync(
  process.execPath,
  [`${root}node_modules/typescript/bin/tsc`, "-p", `${root}.config/tsconfig.package.json`],
  { stdio: "inherit" },
);
await buildEmbed(distFolder, { maps: `${root}maps` });
const [readme, told] = ["README.md", "demo/docs/events.md"].map((page) =>
  readFileSync(`${root}${page}`, "utf8"),
);
const manifest = createManifest(readme ?? "", told ?? "");
writeFileSync(`${root}lib/custom-elements.json`, `${JSON.stringify(manifest, null, 2)}\n`);
