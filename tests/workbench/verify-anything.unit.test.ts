import fc from "fast-check";
import { expect, test } from "vitest";
import { ownFlows, readYamlFiles } from "../../src/workbench/build/flows-folder.ts";
import { ownLocales } from "../../src/workbench/build/locales-folder.ts";
import { verifyFolder } from "../../src/workbench/verify/index.ts";
import { readOnce } from "../read-once.ts";
import { counts } from "../soak/counts.ts";
import { smallFlow, smallTexts } from "./small-flow/index.ts";

/** What a hand can do to a line: lose it, double it, push it in, cut it short, or mistype a word in it. */
const hands: ((line: string, at: number) => string[])[] = [
  () => [],
  (line) => [line, line],
  (line) => [`  ${line}`],
  (line, at) => [line.slice(0, at % (line.length + 1))],
  (line, at) => [line.replace(/[a-z]{4,}/, (word) => word.slice(0, at % 4) + word.slice((at % 4) + 1))],
  (line) => [line.replace(/: (.*)$/, ": [$1]")],
  (line) => [line.replace(/: .*$/, ": constructor")],
];

test.each([
  { name: "a small flow", flows: smallFlow(), locales: smallTexts(), numRuns: counts.slips },
  {
    name: "the project's flow",
    flows: readYamlFiles(ownFlows),
    locales: readYamlFiles(ownLocales),
    numRuns: counts.ownSlips,
  },
])(
  "whatever a hand does to the files of $name, the verifier answers, and every place it names exists",
  ({ flows, locales, numRuns }) => {
    const slip = fc.record({
      file: fc.constantFrom(...Object.keys(flows)),
      line: fc.nat(400),
      hand: fc.nat(hands.length - 1),
      at: fc.nat(60),
    });
    let named = 0;
    fc.assert(
      fc.property(fc.array(slip, { minLength: 1, maxLength: 3 }), (slips) => {
        const changed = { ...flows };
        for (const { file, line, hand, at } of slips) {
          const lines = (changed[file] ?? "").split("\n");
          const where = line % lines.length;
          lines.splice(where, 1, ...(hands[hand]?.(lines[where] ?? "", at) ?? []));
          changed[file] = lines.join("\n");
        }
        for (const { file, line, column } of verifyFolder({ flows: changed, locales, read: readOnce })) {
          const lines = (changed[file] ?? locales[file] ?? "").split("\n");
          expect(line).toBeLessThanOrEqual(lines.length);
          expect(column).toBeLessThanOrEqual((lines[line - 1] ?? "").length + 1);
          named++;
        }
      }),
      { numRuns, seed: 418 },
    );
    expect(named).toBeGreaterThan(numRuns / 2);
  },
);
