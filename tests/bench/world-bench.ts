import { fork } from "node:child_process";
import { parseArgs } from "node:util";
import { compileFlow, guideOf, inRegion } from "../../src/compile/index.ts";
import { regionIn } from "../../src/guide/index.ts";
import { createTexts } from "../../src/turn/index.ts";
import { readFlow, readLocales } from "../../src/workbench/build/index.ts";
import {
  drawHome,
  followList,
  type Last,
  type Outcome,
  outcomeOf,
  reportOf,
  shareTable,
  talk,
  traceOf,
  type Visit,
} from "./world/index.ts";

const options = {
  homes: { type: "string", default: "3000" },
  seed: { type: "string", default: "1" },
  jobs: { type: "string", default: "2" },
  /** Of so many jobs this one, counted from 0: what a job is told, not a person. */
  job: { type: "string" },
  perfect: { type: "boolean", default: false },
  "by-fault": { type: "boolean", default: false },
  shares: { type: "boolean", default: false },
  trace: { type: "string" },
} as const;

/**
 * `npm run bench -- world`: sends homes of a physical world through the session, and through the list that shops
 * print, and says how they ended. `--trace` takes a fault or a verdict and prints conversations that ended wrong.
 */
export async function benchWorld(args: string[]): Promise<void> {
  const { values } = parseArgs({ args, options });
  const { perfect, seed, trace } = values;
  const [homes, jobs] = [Number(values.homes), Number(values.jobs)];
  if (!(homes > 0 && jobs > 0)) throw new Error("--homes and --jobs take numbers above 0");
  const seeds = Array.from({ length: homes }, (_, place) => `${seed}-${place}`);
  if (values.shares) console.log(shareTable());
  else if (trace !== undefined) console.log(traceOf(trace, seeds, createAsking(perfect)));
  else if (values.job !== undefined) {
    const ask = createAsking(perfect);
    const own = seeds.filter((_, place) => place % jobs === Number(values.job));
    process.send?.(own.map((one) => outcomeOf(ask(one))));
  } else {
    const began = performance.now();
    const ours = await askAll(args, jobs, seeds);
    const list = (last: Last) =>
      seeds.map((one) => outcomeOf(followList(drawHome(one, perfect), perfect, last)));
    const columns = { ours, "list: ice maker": list("ice-maker"), "list: call": list("professional") };
    const people = perfect ? "people who err at nothing" : "people as they are";
    const took = ((performance.now() - began) / 1000).toFixed(0);
    console.log(`${homes} homes, seed ${seed}, ${people}, ${took} s\n`);
    console.log(reportOf(columns, values["by-fault"]));
  }
}

/** Shares the homes among processes of their own; the outcomes come back in the order of the homes. */
async function askAll(args: string[], jobs: number, seeds: readonly string[]): Promise<Outcome[]> {
  const parts = await Promise.all(
    Array.from({ length: jobs }, (_, job) => {
      const child = fork(process.argv[1] ?? "", ["world", ...args, "--jobs", `${jobs}`, "--job", `${job}`]);
      return new Promise<Outcome[]>((resolve, reject) => {
        child.once("message", (outcomes) => resolve(outcomes as Outcome[]));
        child.once("exit", (code) => reject(new Error(`A job of the world ended with ${code}`)));
      });
    }),
  );
  const found = new Map(parts.flat().map((one) => [one.seed, one]));
  return seeds.flatMap((seed) => found.get(seed) ?? []);
}

function createAsking(perfect: boolean): (seed: string) => Visit {
  const flow = readFlow();
  const guide = guideOf(inRegion(compileFlow(flow), regionIn(flow.regions, "en-GB")));
  const texts = createTexts(readLocales(), "en-GB", guide.flow);
  return (seed) => talk(guide, texts, drawHome(seed, perfect), perfect);
}
