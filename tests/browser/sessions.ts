import type { Reading } from "../../src/measurement/index.ts";
import { memoryOf, metaOf, type Session, startSession } from "../../src/session/index.ts";
import { type Answers, at, celsius, fittedOn, flowOf, healthy, runsOut, take } from "../session/drive.ts";
import { flow } from "./expected.ts";

/** Every turn that the flow data names, gates and endings included; a list that nobody keeps by hand. */
export function allTurns(): string[] {
  const checks = [flow.opening, ...Object.values(flow.checks)];
  const turns = checks.flatMap(({ id, turns }) => Object.keys(turns).map((turn) => `${id}.${turn}`));
  const gates = Object.values(flow.checks).flatMap(({ id, gates = [] }) =>
    gates.map((gate) => `${id}.gate-${gate}`),
  );
  const causes = Object.values(flow.scenarios).flatMap(({ proofs }) =>
    proofs.map((id) => `${flow.causes[id]?.remedy === "part" ? "part.model" : "professional.end"} ${id}`),
  );
  return [...turns, ...gates, ...causes, "fixed.end", "professional.end", "stopped.end"].sort();
}

/**
 * One session at every turn. From a machine that a look finds nothing wrong with, each answer of each turn is tried
 * where that turn first comes up; an ending with a proof counts once for each cause.
 * @throws Error naming the turns that were not met
 */
export function sessionsAtEveryTurn(): Map<string, Session> {
  const found = new Map<string, Session>();
  // A filter that is due only matters together with little water, hence a second start.
  const old = { ...healthy, "filter-age.fitted": fittedOn("2024-02-01"), "flow-test.run": flowOf(6) };
  const plans: Answers[] = [healthy, old];
  for (const plan of plans) {
    const met: Session[] = [];
    for (const session of sessionsAlong(plan)) {
      const names = namesOf(session).filter((name) => !found.has(name));
      if (names.length === 0) continue;
      for (const name of names) found.set(name, session);
      met.push(session);
    }
    for (const session of met)
      for (const answer of answersAt(session)) plans.push({ ...plan, [metaOf(session).turn]: answer });
  }
  const missing = allTurns().filter((turn) => !found.has(turn));
  if (missing.length > 0) throw new Error(`No session came to ${missing.join(", ")}`);
  return found;
}

/** The sessions that one plan leads through, the ending last. Without a plan for a turn the search goes on. */
function sessionsAlong(plan: Answers): Session[] {
  const along = [startSession(flow, at(0))];
  for (;;) {
    const session = along.at(-1) as Session;
    const { turn, kind } = metaOf(session);
    // A plan that leads round in a circle is left.
    if (kind === "ending" || kind === "model" || along.length > 60) return along;
    along.push(take(session, plan[turn] ?? answersAt(session)[0] ?? "cannot"));
  }
}

/** What can be answered at a turn, first what keeps the search going. */
function answersAt(session: Session): (string | Reading)[] {
  const { kind, turn, instrument, answers = [] } = metaOf(session);
  if (kind === "gate") return ["ready", "cannot"];
  if (instrument === "flow") return [flowOf(25), flowOf(6)];
  if (instrument === "temperature") return [celsius(-18), celsius(-5)];
  if (instrument) return [fittedOn("2026-02-01"), fittedOn("2024-02-01")];
  const [check = "", name = ""] = turn.split(".");
  const rule = (flow.checks[check] ?? flow.opening).turns[name];
  const goesOn = (answer: string) =>
    flow.checks[check]?.turns[rule?.answers?.[answer]?.to ?? ""] !== undefined;
  const isOver = (answer: string) => /fixed|professional|stopped/.test(rule?.answers?.[answer]?.to ?? "");
  const own = [...answers].sort(
    (a, b) => Number(isOver(a)) - Number(isOver(b)) || Number(goesOn(b)) - Number(goesOn(a)),
  );
  const standing = ["not-sure", "cannot"].filter((id) =>
    session.snapshot.can({ type: `answered.${id}`, at: at(0) } as never),
  );
  return [...(kind === "wait" ? [runsOut] : []), ...own, ...standing];
}

function namesOf(session: Session): string[] {
  const { turn } = metaOf(session);
  const { cause } = memoryOf(session);
  return cause ? [turn, `${turn} ${cause}`] : [turn];
}
