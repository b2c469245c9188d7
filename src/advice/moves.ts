import type { ChartContext } from "../chart/index.ts";
import { holds } from "../chart/index.ts";
import type { MoveRule, Subject } from "./subject.ts";

/** Something a scenario allows now; `isAgain`: a second look at a check that was done. */
export type Move = MoveRule & { isAgain: boolean };

/** An ending with a cause whose proof is recorded. */
export type Proved = { cause: string; due: boolean };

/** What a scenario allows, by what its chart remembers. */
export function movesAt({ diagnosis: { moves } }: Subject, memory: ChartContext): Move[] {
  return moves.flatMap((move): Move[] => {
    if (holds(memory, move.once, now)) return [{ ...move, isAgain: false }];
    return move.again && holds(memory, move.again, now) ? [{ ...move, isAgain: true }] : [];
  });
}

/** What is proved in a scenario. */
export function provedAt(
  { diagnosis: { proofs }, flow: { causes } }: Subject,
  memory: ChartContext,
): Proved[] {
  return proofs.flatMap((cause) => {
    const { proof, claim, part } = causes[cause] ?? {};
    // A part that did not help is not the answer a second time.
    if (part && memory.fitted.some((one) => causes[one]?.part === part)) return [];
    return proof && holds(memory, proof, now) ? [{ cause, due: claim === "due" }] : [];
  });
}

const now = { type: "", at: "" };
