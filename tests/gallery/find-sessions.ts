import { memoryOf, metaOf, replay, type Session, startSession } from "../../src/session/index.ts";
import { flow, freshSession, guide } from "../browser/expected.ts";
import { at, inTradeOrder } from "../session/drive.ts";
import { waysTo } from "../session/reach.ts";

/** So many ways are tried to each turn; most are come to at once. */
const mostTries = 400;

/**
 * Every turn that the flow data names, endings included; a list that nobody keeps by hand. Gates come up again before
 * the turns behind them.
 */
export function allTurns(): string[] {
  const checks = [flow.opening, ...Object.values(flow.checks)];
  const turns = checks.flatMap(({ id, turns }) => Object.keys(turns).map((turn) => `${id}.${turn}`));
  const causes = Object.values(flow.scenarios).flatMap(({ proofs }) =>
    proofs.map((id) => `${flow.causes[id]?.remedy === "part" ? "part.model" : "professional.end"} ${id}`),
  );
  return [...new Set([...turns, ...causes, "fixed.end", "professional.end", "stopped.end"])].sort();
}

/**
 * One session at every turn; an ending with a proof counts once for each cause. The real advice leads there; where it
 * never comes to a turn, the trade's order does, as a log may that was kept while other advice was given. Takes minutes.
 * @throws Error naming the turns that were not met
 */
export function findSessions(): Map<string, Session> {
  const found = new Map<string, Session>();
  const byList = startSession(inTradeOrder(flow), at(0));
  for (const start of [freshSession(), byList])
    for (const name of allTurns()) if (!found.has(name)) lookFor(name, start, found);
  const missing = allTurns().filter((turn) => !found.has(turn));
  if (missing.length > 0) throw new Error(`No session came to ${missing.join(", ")}`);
  return new Map(allTurns().map((turn): [string, Session] => [turn, found.get(turn) as Session]));
}

/** Goes ways to a turn until it is met; whatever they come past is found as well. */
function lookFor(name: string, start: Session, found: Map<string, Session>): void {
  const [turn = "", cause] = name.split(" ");
  const ways = waysTo(start, { turn, cause });
  for (let tries = 0; tries < mostTries && !found.has(name); tries++)
    for (const session of ways.next().value?.along ?? [])
      for (const met of namesOf(session))
        if (!found.has(met) && standsThere(session)) found.set(met, session);
}

/** The panel goes by the log alone, with the advice that it has. */
function standsThere(session: Session): boolean {
  if (session.guide === guide) return true;
  const again = replay(guide, session.log).session;
  return `${namesOf(again)}` === `${namesOf(session)}`;
}

function namesOf(session: Session): string[] {
  const { turn } = metaOf(session);
  const { cause } = memoryOf(session);
  return cause ? [turn, `${turn} ${cause}`] : [turn];
}
