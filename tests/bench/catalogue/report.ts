import { slipKinds } from "../../catalogue/slips.ts";
import { inKilobytes, tableOf } from "../table.ts";
import type { Accuracy, Tally } from "./accuracy.ts";
import type { Took } from "./child.ts";
import type { FolderSize } from "./folder.ts";
import type { Measured, Traffic } from "./measure.ts";
import type { PhoneTimes } from "./phone-page.ts";
import type { Weight } from "./weight.ts";

export type Goal = { met: boolean; says: string };

export const inMegabytes = (bytes: number) => `${(bytes / 1e6).toFixed(1)} MB`;
export const inSeconds = (seconds: number) => `${seconds.toFixed(1)} s`;
const percent = (share: number) => `${(100 * share).toFixed(2)} %`;

/** The number below which this share of the others lie. */
export const rankOf = (numbers: readonly number[], share: number) =>
  [...numbers].sort((a, b) => a - b)[Math.floor((numbers.length - 1) * share)] ?? Number.NaN;

/** Reading alone beside commands, each in a process of its own. @param feed its bytes */
export function timesReport(feed: number, floor: Took, commands: Record<string, Took>): string {
  const row = (name: string, { seconds, cpu, peak }: Took) => [
    name,
    inSeconds(seconds),
    `x ${(seconds / floor.seconds).toFixed(1)}`,
    inSeconds(cpu),
    `x ${(cpu / floor.cpu).toFixed(1)}`,
    `${(feed / 1e6 / cpu).toFixed(0)} MB/s`,
    inMegabytes(peak),
  ];
  return tableOf([
    ["", "by the clock", "ratio", "of a processor", "ratio", "speed", "peak memory"],
    row("floor: the feed read and parsed", floor),
    ...Object.entries(commands).map(([name, took]) => row(name, took)),
  ]);
}

export function sizesReport(sizes: Record<string, FolderSize>): string {
  return tableOf([
    ["", "files", "as they lie", "brotli 5", "brotli 11", "weighed"],
    ...Object.entries(sizes).map(([name, { files, raw, quick, best, weighed }]) => [
      name,
      `${files}`,
      inMegabytes(raw),
      inMegabytes(quick),
      inMegabytes(best),
      weighed < files ? `${weighed}, the rest reckoned` : "all",
    ]),
  ]);
}

/** Requests and bytes of lookups by a phone that has only the manifest yet. */
export function trafficReport({ exact, slipped }: Measured): string {
  const rows = (name: string, { requests, widest, rounds, weights }: Traffic) => {
    if (requests.length === 0) return [[`${name} (none)`]];
    const cells = (numbers: readonly number[], write: (number: number) => string) =>
      [0.5, 0.99, 1].map((share) => write(rankOf(numbers, share)));
    const bytes = (kind: keyof Weight) =>
      cells(
        weights.map((weight) => weight[kind]),
        inKilobytes,
      );
    return [
      [`${name} (${requests.length})`],
      ["  requests", ...cells(requests, String)],
      ["  side by side at most", ...cells(widest, String)],
      ["  waits for answers, one after the other", ...cells(rounds, String)],
      [`  brotli 5 (${weights.length} weighed)`, ...bytes("quick")],
      ["  brotli 11", ...bytes("best")],
    ];
  };
  return tableOf([
    ["", "median", "p99", "worst"],
    ...rows("taken at once", exact),
    ...rows("with a slip", slipped),
  ]);
}

export function accuracyReport({ right, bySlip, all }: Accuracy): string {
  const row = (name: string, tally: Tally) => [
    `${name} (${tally.typed})`,
    ...(["found", "shown", "first"] as const).map((each) => percent(tally[each] / tally.typed)),
    `${tally.silent}`,
    percent(tally.another / tally.typed),
    percent(tally.exact / tally.typed),
    percent(tally.alike / tally.typed),
  ];
  return tableOf([
    ["", "found", "of three", "first", "wrong, silent", "is another", "taken at once", "asked, same parts"],
    ...slipKinds.map((slip) => row(slip, bySlip[slip])),
    row("all slips", all),
    row("no slip", right),
  ]);
}

export function phoneReport(times: Record<string, PhoneTimes>): string {
  const cells = (numbers: readonly number[]) =>
    [0.5, 0.99, 1].map((share) => `${rankOf(numbers, share).toFixed(1)} ms`);
  return tableOf([
    ["", "median", "p99", "worst"],
    ...Object.entries(times).flatMap(([name, { lookups, floor }]) => [
      [`${name} (${lookups.length})`, ...cells(lookups)],
      ["  floor: JSON.parse of its files", ...cells(floor)],
    ]),
  ]);
}

export function goalsOfBuild(floor: Took, build: Took, sizes: Record<string, FolderSize>): Goal[] {
  const ratio = build.seconds / floor.seconds;
  const index = sizes["nearby"]?.best ?? Number.NaN;
  return [
    {
      met: ratio <= 10,
      says: `the build takes ten times as long as reading at most: x ${ratio.toFixed(1)}, of a processor x ${(build.cpu / floor.cpu).toFixed(1)}`,
    },
    { met: build.peak < 1e9, says: `the build takes less than 1 GB of memory: ${inMegabytes(build.peak)}` },
    { met: index <= 20e6, says: `the whole index 20 MB brotli at most: ${inMegabytes(index)}` },
  ];
}

export function goalsOfLookups({ exact, slipped }: Measured): Goal[] {
  const worst = (numbers: readonly number[]) => rankOf(numbers, 1);
  const weigh = ({ weights }: Traffic) => worst(weights.map(({ best }) => best));
  const atOnce = exact.requests.filter((count) => count === 1).length;
  const ofExact: Goal[] = [
    {
      met: worst(exact.requests) === 1,
      says: `a code that is taken at once takes one request: worst ${worst(exact.requests)}, one for ${percent(atOnce / exact.requests.length)}`,
    },
    { met: weigh(exact) <= 3000, says: `and 3 kB brotli at most: worst ${inKilobytes(weigh(exact))}` },
  ];
  return [
    // Where codes are numbered through none is taken without a question, and these goals say nothing.
    ...(exact.requests.length > 0 ? ofExact : []),
    {
      met: worst(slipped.widest) <= 8,
      says: `with a slip, eight requests side by side at most: worst ${worst(slipped.widest)}`,
    },
    {
      met: weigh(slipped) <= 20_000,
      says: `and 20 kB brotli in all at most: worst ${inKilobytes(weigh(slipped))}`,
    },
  ];
}

export function goalsOfAccuracy({ all, right }: Accuracy): Goal[] {
  const share = (name: "found" | "shown" | "first", least: number, words: string): Goal => ({
    met: all[name] / all.typed >= least,
    says: `${words} in ${100 * least} % at least: ${percent(all[name] / all.typed)}`,
  });
  return [
    share("found", 0.995, "the code that was meant is found"),
    share("shown", 0.99, "it is among the three shown"),
    share("first", 0.95, "it is the first"),
    {
      met: all.silent + right.silent === 0,
      says: `no wrong code is taken without a question: ${all.silent + right.silent}`,
    },
  ];
}

export const printGoals = (goals: Goal[]) =>
  goals.map(({ met, says }) => `Goal  ${met ? "pass" : "MISS"}  ${says}`).join("\n");
