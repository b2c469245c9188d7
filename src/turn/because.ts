import type { TurnMeta } from "../chart/index.ts";
import { memoryOf, type Session } from "../session/index.ts";
import type { Texts } from "./actions.ts";

/**
 * Why this check comes now and no other, in words: which two explanations it tells apart, or that it is a second look
 * before somebody is called. Said where a check begins; empty where no belief stands behind the choice.
 */
export function becauseOf(session: Session, meta: TurnMeta, texts: Texts): string {
  const { flow, snapshot, charts } = session;
  const check = flow.checks[meta.check ?? ""];
  const opens = check?.gates?.length ? `gate-${check.gates[0]}` : check?.start;
  if (!check || meta.turn !== `${check.id}.${opens}` || meta.kind === "wait") return "";
  const memory = memoryOf(session);
  if (memory.again.includes(check.id)) return texts("explain.again");
  const [scenario = ""] = Object.keys(snapshot.value);
  const entry = flow.scenarios[scenario]?.checks.find((one) => one.check === check.id);
  if (!entry || entry.first) return "";
  const pair = charts.adviser.explain(scenario, memory, check.id)?.splits;
  if (!pair) return "";
  const [a = "", b = ""] = pair.map((cause) => texts(`causes.${cause}.is`).replace(/\.$/, ""));
  return a && b ? texts("explain.splits", { a, b }) : "";
}
