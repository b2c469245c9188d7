import type { FeedProblem, Place } from "./problem.ts";

/** That one part number takes the place of another, and where the feed says so. */
export type Replacement = Place & { from: string; to: string };

/** A part of the feed as chains need it. */
type Known = { number: string; kind: string };

/** What became of the old numbers. `standIn`: by index of a part, the index of the part that is sold instead. */
export type Superseded = {
  standIn: Uint32Array;
  /** By index of a part on sale, the old numbers that it stands in for. */
  replaces: Map<number, string[]>;
  chains: { count: number; longest: number; loops: number };
};

/** What a number leads to: the index of a part of the feed or −1, and how many steps away. */
type Outcome = { part: number; end: string; steps: number; isLoop: boolean };

/**
 * Follows each chain of replacements to the part on sale, its last one in the feed. Parts of a loop, and what leads
 * into one, stay as they are: nobody knows which of them is the newest. So does a part whose successor is another kind
 * of part.
 */
export function followReplacements(
  parts: readonly Known[],
  indexOf: (number: string) => number | undefined,
  replacements: readonly Replacement[],
  tell: (problem: FeedProblem) => void,
): Superseded {
  const next = new Map<string, Replacement>();
  for (const each of replacements) {
    const first = next.get(each.from);
    if (!first) next.set(each.from, each);
    else if (first.to !== each.to)
      tell({
        code: "replacement-conflict",
        line: each.line,
        column: each.column,
        found: each.to,
        message: `${each.from} is replaced by ${each.to} here and by ${first.to} in line ${first.line}; the first one counts.`,
      });
  }

  const outcomes = new Map<string, Outcome>();
  const chains = { count: 0, longest: 0, loops: 0 };
  const openEnds = new Set<string>();
  for (const start of next.keys()) follow(start);

  const standIn = Uint32Array.from(parts, (_, index) => index);
  const replaces = new Map<number, string[]>();
  const followed = new Set([...next.values()].map(({ to }) => to));
  for (const [number, { part, steps, isLoop }] of outcomes) {
    if (!next.has(number) || isLoop) continue;
    if (!followed.has(number)) {
      chains.count++;
      chains.longest = Math.max(chains.longest, steps);
    }
    if (part < 0 || parts[part]?.number === number) continue;
    const own = indexOf(number);
    if (own !== undefined) standIn[own] = part;
    const olds = replaces.get(part) ?? [];
    olds.push(number);
    replaces.set(part, olds);
  }
  return { standIn, replaces, chains };

  function follow(start: string): void {
    const path: string[] = [];
    const onPath = new Set<string>();
    let number = start;
    while (next.has(number) && !outcomes.has(number) && !onPath.has(number)) {
      onPath.add(number);
      path.push(number);
      number = next.get(number)?.to ?? "";
    }
    const isLoop = onPath.has(number);
    if (isLoop) tellLoop(path.slice(path.indexOf(number)));
    let outcome = outcomes.get(number) ?? {
      part: indexOf(number) ?? -1,
      end: number,
      steps: 0,
      isLoop,
    };
    if (!isLoop) outcomes.set(number, outcome);
    for (const each of path.reverse()) {
      outcome = step(each, outcome);
      outcomes.set(each, outcome);
    }
  }

  function step(number: string, after: Outcome): Outcome {
    const own = indexOf(number) ?? -1;
    const here = { ...after, steps: after.steps + 1 };
    if (after.isLoop) return { ...here, part: own };
    if (own < 0) return here;
    if (after.part < 0) {
      if (!openEnds.has(after.end)) tellOpen(number, after.end);
      openEnds.add(after.end);
      return { ...here, part: own };
    }
    const [old, stand] = [parts[own], parts[after.part]];
    if (old && stand && old.kind !== stand.kind) {
      tellKind(old, stand);
      return { ...here, part: own };
    }
    return here;
  }

  function tellLoop(loop: readonly string[]): void {
    chains.loops++;
    const shown = [...loop.slice(0, 10), ...(loop.length > 10 ? ["…"] : []), loop[0]].join(" → ");
    tell({
      code: "chain-loop",
      ...placeOf(loop[0] ?? ""),
      message: `These parts replace each other in a circle: ${shown}. They stay as they are.`,
    });
  }

  function tellOpen(number: string, end: string): void {
    tell({
      code: "open-chain",
      ...placeOf(number),
      found: end,
      message: `${number} is replaced by ${end}, which this feed does not have, so ${number} stays.`,
    });
  }

  function tellKind(old: Known, stand: Known): void {
    tell({
      code: "replacement-of-other-kind",
      ...placeOf(old.number),
      found: stand.number,
      message: `${old.number} is of the kind "${old.kind}" and its replacement ${stand.number} of "${stand.kind}", so ${old.number} stays.`,
    });
  }

  function placeOf(number: string): Place {
    const { line = 1, column = 1 } = next.get(number) ?? {};
    return { line, column };
  }
}
