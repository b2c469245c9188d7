import { demoCodes } from "../../../src/cli/demo-feed/index.ts";
import { keyOf } from "../../catalogue/slips.ts";
import { sampleOf } from "./sample.ts";

/** A process of its own: all codes in one Map, which is the least that an exact lookup can cost. */

const [models = 0, seed = 0] = process.argv.slice(2).map(Number);
const collect = () => (globalThis as unknown as { gc(): void }).gc();

// As they come out of a file: texts of their own, not put together from pieces that are joined when first read.
const codes: string[] = JSON.parse(JSON.stringify([...demoCodes({ models, seed })]));
const sample = sampleOf(codes, 10_000, seed);
collect();
const before = process.memoryUsage().heapUsed;
const begun = performance.now();
const byKey = new Map<string, number>();
for (const [at, code] of codes.entries()) byKey.set(keyOf(code), at);
const built = performance.now();
collect();
const bytes = process.memoryUsage().heapUsed - before;

const rounds = 20;
let found = 0;
const asked = performance.now();
for (let round = 0; round < rounds; round++) for (const code of sample) if (byKey.has(keyOf(code))) found++;
const microseconds = ((performance.now() - asked) * 1000) / (rounds * sample.length);
console.log(
  JSON.stringify({
    seconds: (built - begun) / 1000,
    bytes,
    microseconds,
    isComplete: found === rounds * sample.length,
  }),
);
