import { readFileSync } from "node:fs";
import { keptBounds } from "../../src/care/index.ts";
import { bounds as catalogue } from "../../src/catalogue/index.ts";
import { relayBounds } from "../../src/cobrowse/protocol/index.ts";
import { draftBounds } from "../../src/embed/drafts.ts";
import { wordsBounds } from "../../src/embed/own-words.ts";
import { factBounds } from "../../src/embed/shop-facts.ts";
import { flowBounds } from "../../src/guide/index.ts";
import { insightBounds } from "../../src/insight/index.ts";
import { readingBounds } from "../../src/instruments/index.ts";
import { bounds as session } from "../../src/session/index.ts";
import { shopFeedBounds } from "../../src/workbench/shop-feed/index.ts";

/** The bounds of each door by the file that has them; a bound's reason is the comment before it. */
const doors: [door: string, file: string, bounds: Record<string, number>][] = [
  ["a shop's catalogue", "src/catalogue/bounds.ts", catalogue],
  ["a shop's own feed", "src/workbench/shop-feed/bounds.ts", shopFeedBounds],
  ["flows, at the workbench and packed", "src/condition/bounds.ts", flowBounds],
  ["a reading", "src/instruments/bounds.ts", readingBounds],
  ["a journal, a pack, a typed text", "src/session/bounds.ts", session],
  ["a turn that is half done", "src/embed/drafts.ts", draftBounds],
  ["a machine's record", "src/care/kept.ts", keptBounds],
  ["a line of outcomes", "src/insight/bounds.ts", insightBounds],
  ["a shop's own words", "src/embed/own-words.ts", wordsBounds],
  ["a shop's facts", "src/embed/shop-facts.ts", factBounds],
  ["the relay", "src/cobrowse/protocol/bounds.ts", relayBounds],
];

/** One row a bound: where it holds, its name, the most that is taken, and why. */
export function boundRows(): [door: string, name: string, most: number, why: string][] {
  return doors.flatMap(([door, file, bounds]) => {
    const source = readFileSync(new URL(`../../${file}`, import.meta.url), "utf8");
    const whys = new Map(
      [...source.matchAll(/\/\*\* ([^*]+?) ?\*\/\n {2}(\w+):/g)].map(([, why = "", name = ""]) => [
        name,
        why,
      ]),
    );
    return Object.entries(bounds).map(([name, most]): [string, string, number, string] => [
      door,
      name,
      most,
      whys.get(name) ?? "",
    ]);
  });
}

/** `npm run bench -- bounds`: all bounds of what comes from outside, as a table in Markdown. */
export function printBounds(): void {
  console.log(boundTable());
}

/** The same as text. */
export function boundTable(): string {
  const rows = boundRows().map(
    ([door, name, most, why]) => `| ${door} | \`${name}\` | ${most.toLocaleString("en-GB")} | ${why} |`,
  );
  return ["| of | bound | at most | what it is |", "| --- | --- | ---: | --- |", ...rows].join("\n");
}
