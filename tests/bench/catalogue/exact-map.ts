import { demoCodes } from "../../../demo/generate/feed/index.ts";
import { keyOf } from "../../catalogue/slips.ts";
import { sampleOf } from "./sample.ts";

/** A process of its own: all codes in one Map, which is the least that an exact lookup can cost. */

const [models = 0, seed = 0] = process.argv.slice(2).map(Number);

const codes = [...demoCodes({ models, seed })];
const sample = sampleOf(codes, 10_000, seed);
const begun = performance.now();
const byKey = new Map<string, number>();
for (const [at, code] of codes.entries()) byKey.set(keyOf(code), at);
const built = performance.now();

const rounds = 20;
let found = 0;
const asked = performance.now();
for (let round = 0; round < rounds; round++) for (const code of sample) if (byKey.has(keyOf(code))) found++;
const microseconds = ((performance.now() - asked) * 1000) / (rounds * sample.length);

const inUse = () => {
  (globalThis as unknown as { gc(): void }).gc();
  return process.memoryUsage().heapUsed;
};
// What is given back when it is emptied is what it took, its keys included.
const full = inUse();
byKey.clear();
const bytes = full - inUse();

console.log(
  JSON.stringify({
    seconds: (built - begun) / 1000,
    bytes,
    microseconds,
    isComplete: found === rounds * sample.length,
  }),
);
