import { dangersOf } from "../flow/index.ts";
import type { Texts, View } from "./actions.ts";
import { linesOf } from "./lines.ts";
import { metaOf, type Session } from "./session.ts";
import type { Notice } from "./turn.ts";
import { turnOf } from "./turn-of.ts";

/** Everything a screen draws of a session. */
export function viewOf(session: Session, texts: Texts, now: string, notices: Notice["id"][]): View {
  const { kind, outcome, check } = metaOf(session);
  return {
    turn: turnOf(session, texts, now),
    lines: linesOf(session, texts),
    notices: notices.map((id) => ({ id, text: texts(`notices.${id}`) })),
    dangers: dangersOf(session.flow).map((id) => ({
      id,
      text: texts(`checks.opening.danger.answers.${id}`),
    })),
    canReportIce: check !== null || kind === "model" || outcome === "part" || outcome === "professional",
  };
}
