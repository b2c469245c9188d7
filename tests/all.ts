import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { inMinutes, runTimed, sumOf, type Took } from "./timed.ts";

/*
 * `npm test`: types, lint, unit tests, browser tests. Each stage runs whatever became of the one before and prints how
 * long it took; the last line counts all tests, a stage that is no test run as one.
 */
const root = fileURLToPath(new URL("../", import.meta.url));
const cache = `${root}.cache/`;
const reports = { unit: `${cache}unit-report.json`, browser: `${cache}browser-report.json` };

type Count = { passed: number; failed: number };
type Result = Count & { name: string; took: Took };
type Stage = { name: string; command: string; count?(): Count };

const stages: Stage[] = [
  { name: "types", command: "npm run types" },
  { name: "lint", command: "npm run lint" },
  {
    name: "unit",
    command: `npm run unit -- --reporter=default --reporter=json --outputFile.json="${reports.unit}"`,
    count: () => {
      const { numPassedTests: passed, numFailedTests, numFailedTestSuites } = readReport(reports.unit);
      // A file that cannot even be loaded has no tests that could fail.
      return { passed, failed: Math.max(numFailedTests, Math.min(1, numFailedTestSuites)) };
    },
  },
  {
    name: "browser",
    command: "npm run browser",
    count: () => {
      const { stats, errors } = readReport(reports.browser);
      return {
        passed: stats.expected,
        failed: stats.unexpected + stats.flaky + errors.length,
      };
    },
  },
];

function readReport(path: string) {
  return JSON.parse(readFileSync(path, "utf8"));
}

function run({ name, command, count }: Stage): Result {
  console.log(`\n== ${name}: ${command}`);
  const { status, took } = runTimed(command, root, `${cache}times.txt`);
  const counted = count ? countOf(count) : { passed: status === 0 ? 1 : 0, failed: 0 };
  // Whatever a report says, a stage that ended badly has failed.
  const failed = status === 0 ? counted.failed : Math.max(1, counted.failed);
  console.log(`== ${name}: ${failed > 0 ? "FAILED" : "passed"} in ${inMinutes(took)}`);
  return { ...counted, failed, name, took };
}

/** A stage that left no report did not get as far as its tests. */
function countOf(count: () => Count): Count {
  try {
    return count();
  } catch {
    return { passed: 0, failed: 1 };
  }
}

mkdirSync(cache, { recursive: true });
// An older report must not be counted for a stage that does not get far enough to write one.
for (const path of Object.values(reports)) if (existsSync(path)) rmSync(path);
const results = stages.map(run);
const total = (key: keyof Count) => results.reduce((sum, each) => sum + each[key], 0);
console.log();
for (const { name, took } of results) console.log(`${name.padEnd(8)} ${inMinutes(took)}`);
console.log(`${"in all".padEnd(8)} ${inMinutes(sumOf(results.map(({ took }) => took)))}`);
console.log(`\n${total("passed")} passed, ${total("failed")} failed`);
process.exitCode = total("failed") > 0 ? 1 : 0;
