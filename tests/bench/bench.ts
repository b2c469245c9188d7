import { findChromium, thisMachine } from "../browser/find-chromium.ts";
import { benchPage } from "./page-bench.ts";

/*
 * `npm run bench` measures the panel on a slow phone; `npm run bench -- <name>` another thing. Nothing is written, but
 * for the README's chart of the households.
 */

const benches: Record<string, (args: string[]) => Promise<void>> = {
  advice: async () => (await import("./advice-bench.ts")).benchAdvice(findChromium(thisMachine)),
  bounds: async () => (await import("./bounds.ts")).printBounds(),
  catalogue: async (args) =>
    (await import("./catalogue-bench.ts")).benchCatalogue(args, findChromium(thisMachine)),
  households: async () => (await import("./households-bench.ts")).printHouseholds(),
  learn: async (args) => (await import("./learn-bench.ts")).benchLearn(args),
  plates: async (args) => (await import("./plates-bench.ts")).benchPlates(args, findChromium(thisMachine)),
  relay: async (args) => (await import("./relay-bench.ts")).benchRelay(args),
  world: async (args) => (await import("./world-bench.ts")).benchWorld(args),
  words: async (args) => (await import("./words-bench.ts")).benchWords(args),
  page: () => benchPage(findChromium(thisMachine)),
};

const [name = "page", ...args] = process.argv.slice(2);
const bench = benches[name];
if (!bench) {
  console.error(`There is no "${name}" to measure. There is: ${Object.keys(benches).join(", ")}`);
  process.exitCode = 2;
} else await bench(args);
