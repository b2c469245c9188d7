import { everyPreparation, type Preparation, preparations } from "../guide/index.ts";
import { holds } from "./guards.ts";
import type { ChartContext } from "./memory.ts";
import type { FlowSlice } from "./slice.ts";

/** What is to be said of something that we had changed and that is not put back yet. */
export type LeftWord = "back" | "open-first" | "open-again" | "keep-closed" | "until-part" | "danger";

/** What was changed by us and is so still, in the order in which it is put back. */
export function changedIn({ prepared }: ChartContext): Preparation[] {
  return everyPreparation.filter((one) => {
    const { ours, left } = preparations[one];
    return prepared[one]?.is === ours || prepared[one]?.is === left;
  });
}

/**
 * What is to be said of what was changed by us, at an ending, at a turn that needs it put back, or at one that does so.
 * @param outcome the ending's, or null at a turn
 */
export function leftWords(
  flow: FlowSlice,
  memory: ChartContext,
  among: readonly Preparation[],
  outcome: string | null,
): [Preparation, LeftWord][] {
  const wordFor = (one: Preparation): LeftWord => {
    if (outcome === "stopped") return "danger";
    return one === "water" ? waterWord(flow, memory, outcome) : "back";
  };
  return changedIn(memory).flatMap((one) => (among.includes(one) ? [[one, wordFor(one)]] : []));
}

/** A tap is to be opened again, or stays closed for a leak. */
function waterWord(flow: FlowSlice, memory: ChartContext, outcome: string | null): LeftWord {
  const found = Object.keys(flow.causes).some(
    (id) => flow.causes[id]?.keeps && (memory.causes[id] === "found" || memory.cause === id),
  );
  // Who says that a leak is over has the water back.
  const searching = outcome !== "fixed" && holds(memory, flow.searches, { type: "", at: "" });
  if (found || searching) return outcome === "part" ? "until-part" : "keep-closed";
  return outcome ? "open-again" : "open-first";
}
