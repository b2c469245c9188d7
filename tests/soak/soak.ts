import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { soakRelay } from "./relay-soak.ts";

/*
 * `npm run soak`: the long sweeps, as often as it takes to believe them. The tests try each of them less often.
 * `npm run soak -- relay`: relays and Redis killed again and again while people talk.
 */
const root = fileURLToPath(new URL("../..", import.meta.url));
const swept = readdirSync(`${root}/tests`, { recursive: true, encoding: "utf8" })
  .filter((name) => /\.unit\.test\.tsx?$/.test(name))
  .filter((name) => readFileSync(`${root}/tests/${name}`, "utf8").includes("soak/counts.ts"))
  .map((name) => `tests/${name}`);

const stages: [name: string, command: string][] = [
  ["every unit test that counts", `npm run unit -- ${swept.join(" ")}`],
  [
    "files that do not come, double taps, widths, a plate, a line cut for a minute, pages that mean no good",
    "npm run browser -- faults double-taps narrow plate-photo two-ends hostile",
  ],
];

function sweep(): boolean {
  let failed = 0;
  for (const [name, command] of stages) {
    console.log(`\n== ${name}: ${command}`);
    const start = performance.now();
    const { status } = spawnSync(command, {
      cwd: root,
      stdio: "inherit",
      shell: true,
      env: { ...process.env, SOAK: "all", FAULTS: "all" },
    });
    const minutes = ((performance.now() - start) / 60_000).toFixed(1);
    console.log(`== ${name}: ${status === 0 ? "passed" : "FAILED"} in ${minutes} min`);
    if (status !== 0) failed++;
  }
  return failed === 0;
}

const [what, ...args] = process.argv.slice(2);
const isFaultless = what === "relay" ? await soakRelay(args) : sweep();
process.exitCode = isFaultless ? 0 : 1;
