import type { TurnMeta } from "../chart/index.ts";
import { memoryOf, type Session } from "../session/index.ts";
import type { Texts } from "./actions.ts";

/**
 * Why this check comes now and no other, in words: which two explanations it tells apart, or that it is a second look
 * before somebody is called. Said where a check begins; empty where no belief stands behind the choice.
 */
export function becauseOf(session: Session, meta: TurnMeta, texts: Texts): string {
  const { check, chosen } = meta;
  if (!check || !chosen) return "";
  const memory = memoryOf(session);
  if (memory.again.includes(check)) return texts("explain.again");
  const pair = session.adviser?.explain(memory, check)?.splits;
  if (!pair) return "";
  const [a = "", b = ""] = pair.map((cause) => texts(`causes.${cause}.is`).replace(/\.$/, ""));
  return a && b ? texts("explain.splits", { a, b }) : "";
}
