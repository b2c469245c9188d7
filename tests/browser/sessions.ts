import { memoryOf, metaOf, type Session, startSession } from "../../src/session/index.ts";
import { at } from "../session/drive.ts";
import { diceOf, wander } from "../session/walker.ts";
import { flow } from "./expected.ts";

/** Walks enough for every turn of the flow, the rarest included; the seeds make them the same each time. */
const mostWalks = 4000;

/** Every turn that the flow data names, gates and endings included; a list that nobody keeps by hand. */
export function allTurns(): string[] {
  const checks = [flow.opening, ...Object.values(flow.checks)];
  const turns = checks.flatMap((check) => Object.keys(check.turns).map((turn) => `${check.id}.${turn}`));
  const gates = Object.values(flow.checks).flatMap(({ id, gates = [] }) => gates.map((gate) => `${id}.gate-${gate}`));
  const causes = Object.entries(flow.causes).flatMap(([id, { proof, remedy }]) =>
    proof ? [`${remedy === "part" ? "part.card" : "professional.end"} ${id}`] : [],
  );
  return [...turns, ...gates, ...causes, "part.model", "fixed.end", "professional.end", "stopped.end"].sort();
}

/** One session at every turn, found by random walks; an ending with a proof counts once for each cause. */
export function sessionsAtEveryTurn(): Map<string, Session> {
  const wanted = new Set(allTurns());
  const found = new Map<string, Session>();
  for (let walk = 0; wanted.size > 0 && walk < mostWalks; walk++) {
    const dice = diceOf(numbersFrom(walk));
    let session = startSession(flow, at(0));
    for (let step = 1; step < 60; step++) {
      session = wander(session, step, dice, false).session;
      for (const name of namesOf(session)) if (wanted.delete(name)) found.set(name, session);
      if (metaOf(session).kind === "ending") break;
    }
  }
  if (wanted.size > 0) throw new Error(`No walk came to ${[...wanted].join(", ")}`);
  return found;
}

function namesOf(session: Session): string[] {
  const { turn } = metaOf(session);
  const { cause } = memoryOf(session);
  return cause ? [turn, `${turn} ${cause}`] : [turn];
}

/** Repeatable numbers: a linear congruential generator with the constants of Numerical Recipes, from memory. */
function numbersFrom(seed: number): number[] {
  let state = (seed * 2_654_435_761) >>> 0;
  return Array.from({ length: 400 }, () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state >>> 8;
  });
}
