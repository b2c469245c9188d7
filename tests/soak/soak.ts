import { spawnSync } from "node:child_process";

/*
 * `npm run soak`: the long sweeps, as often as it takes to believe them. The tests try each of them less often.
 */
const stages: [name: string, command: string][] = [
  [
    "walks, journals, SCXML, tabs",
    "npm run unit -- tests/session/answering tests/session/walks tests/session/journal tests/flow/draw-scxml tests/embed/two-tabs",
  ],
  ["files that do not come", "npm run browser -- faults"],
];

let failed = 0;
for (const [name, command] of stages) {
  console.log(`\n== ${name}: ${command}`);
  const start = performance.now();
  const { status } = spawnSync(command, {
    stdio: "inherit",
    shell: true,
    env: { ...process.env, SOAK: "all", FAULTS: "all" },
  });
  const minutes = ((performance.now() - start) / 60_000).toFixed(1);
  console.log(`== ${name}: ${status === 0 ? "passed" : "FAILED"} in ${minutes} min`);
  if (status !== 0) failed++;
}
process.exitCode = failed ? 1 : 0;
