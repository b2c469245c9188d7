import { fork } from "node:child_process";
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { overlayOf } from "../../src/cli/learn-command.ts";
import { readLine } from "../../src/insight/index.ts";
import { ownFlows, readFlow, readShares } from "../../src/workbench/build/index.ts";
import { countSearch, createSearches, learnFrom } from "../../src/workbench/learn/index.ts";
import { compare } from "./learn/compare.ts";
import { createPlay, type Played } from "./learn/play.ts";
import { type WorldName, worldOf } from "./learn/worlds.ts";
import { tableOf } from "./table.ts";

const options = {
  homes: { type: "string", default: "5000" },
  held: { type: "string", default: "2000" },
  world: { type: "string", default: "apart,judged,few" },
  worth: { type: "string", default: "300" },
  jobs: { type: "string", default: "2" },
  /** Files of training homes that were played before, in place of playing them, for one world. */
  lines: { type: "string", multiple: true },
} as const;

/** So many outcomes are few. */
const few = 50;

/** What a job is told: homes of a world by their seeds, and what was learnt, as the text of a file of shares. */
type Task = { world: WorldName; seeds: string[]; overlay: string };

/**
 * `npm run bench -- learn`: homes of a world are played, `learn` makes shares and rates of what the panel would send of
 * them, and other homes of the same world are played with and without these.
 */
export async function benchLearn(args: string[]): Promise<void> {
  process.once("message", (task) => process.send?.(playAll(task as Task)));
  if (process.send) return;
  const { values } = parseArgs({ args, options });
  const [homes, held, jobs, worth] = [values.homes, values.held, values.jobs, values.worth].map(Number) as [
    number,
    number,
    number,
    number,
  ];
  const names = values.world.split(",");
  const seedsOf = (kind: string, count: number) => Array.from({ length: count }, (_, at) => `${kind}-${at}`);
  /** By world: homes that were played before are not played again. */
  const known = new Map<string, Promise<Played[]>>();
  const play = (world: WorldName, kind: string, count: number, overlay = "") => {
    const key = [world, kind, count, overlay].join(" ");
    const played = known.get(key) ?? playIn(jobs, { world, seeds: seedsOf(kind, count), overlay });
    known.set(key, played);
    return played;
  };
  for (const name of names) {
    const world: WorldName = name === "judged" ? "judged" : "apart";
    const train = values.lines ? readPlayed(values.lines).slice(0, homes) : await play(world, "train", homes);
    const lines = (name === "few" ? train.slice(0, few) : train).flatMap(({ line }) => readLine(line) ?? []);
    const flow = readFlow();
    const searches = createSearches();
    const used = lines.filter((line) => countSearch(searches, flow, line)).length;
    const learnt = learnFrom(flow, searches, worth);
    const without = await play(world, "held", held);
    const after = await play(world, "held", held, overlayOf(learnt, used));
    const moved = learnt.causes.filter(({ hasMoved }) => hasMoved).length;
    console.log(
      `\nWorld "${name}": ${used} of ${lines.length} outcomes used, ${moved} shares of causes moved.`,
    );
    for (const { error, was, is, low, high } of learnt.errors)
      console.log(`  ${error} ${was} -> ${is.toFixed(3)} (${low.toFixed(3)} to ${high.toFixed(3)})`);
    const head = [`${held} other homes`, "without", "learnt", "difference (95 %)"];
    console.log(tableOf([head, ...compare(without, after)]));
  }
}

const readPlayed = (files: readonly string[]): Played[] =>
  files.flatMap((file) =>
    readFileSync(file, "utf8")
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line)),
  );

function playAll({ world, seeds, overlay }: Task): Played[] {
  const judged = readFlow();
  const flow = overlay ? readFlow(ownFlows, readShares(overlay)) : judged;
  return seeds.map(createPlay(flow, worldOf(world, judged)));
}

/** Shares the homes among processes; they come back in the order of their seeds. */
async function playIn(jobs: number, task: Task): Promise<Played[]> {
  const parts = await Promise.all(
    Array.from({ length: jobs }, (_, job) => {
      const child = fork(process.argv[1] ?? "", ["learn"]);
      child.send({ ...task, seeds: task.seeds.filter((_, at) => at % jobs === job) });
      return new Promise<Played[]>((resolve, reject) => {
        child.once("message", (played) => {
          resolve(played as Played[]);
          child.kill();
        });
        child.once("exit", (code) => reject(new Error(`A job ended with ${code}`)));
      });
    }),
  );
  const found = new Map(parts.flat().map((one) => [one.seed, one]));
  return task.seeds.flatMap((seed) => found.get(seed) ?? []);
}
