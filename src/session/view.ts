import { dangersOf } from "../flow/index.ts";
import type { Texts, View } from "./actions.ts";
import { linesOf } from "./lines.ts";
import type { Session } from "./session.ts";
import type { Notice } from "./turn.ts";
import { turnOf } from "./turn-of.ts";

/** Everything a screen draws of a session. */
export function viewOf(session: Session, texts: Texts, now: string, notices: Notice["id"][]): View {
  const dangers = dangersOf(session.flow);
  const events: [View["ways"][number], string][] = [
    ["danger", `danger-reported.${dangers[0]}`],
    ["ice", "ice-returned"],
    ["help", "help-asked"],
  ];
  return {
    turn: turnOf(session, texts, now),
    lines: linesOf(session, texts),
    notices: notices.map((id) => ({ id, text: texts(`notices.${id}`) })),
    dangers: dangers.map((id) => ({
      id,
      text: texts(`checks.opening.danger.answers.${id}`),
    })),
    ways: events.filter(([, type]) => session.snapshot.can({ type, at: now } as never)).map(([way]) => way),
  };
}
