import type { Session } from "../session/index.ts";
import type { Texts, View } from "./actions.ts";
import { linesOf } from "./lines.ts";
import type { Notice } from "./turn.ts";
import { turnOf } from "./turn-of.ts";

/**
 * Everything a screen draws of a session.
 * @param asideSince RFC 3339; the last act in a session that was set aside, for the notice that offers it
 */
export function viewOf(
  session: Session,
  texts: Texts,
  now: string,
  notices: Notice["id"][],
  asideSince = now,
): View {
  const { dangers } = session.flow;
  const events: [View["ways"][number], string][] = [
    ["danger", `danger-reported.${dangers[0]}`],
    ["ice", "ice-returned"],
    ["help", "help-asked"],
  ];
  return {
    turn: turnOf(session, texts, now),
    lines: linesOf(session, texts),
    notices: notices.map((id) => noticeOf(id, texts, asideSince)),
    dangers: dangers.map((id) => ({
      id,
      text: texts(`checks.opening.danger.answers.${id}`),
    })),
    ways: events.filter(([, type]) => session.snapshot.can({ type, at: now } as never)).map(([way]) => way),
  };
}

function noticeOf(id: Notice["id"], texts: Texts, asideSince: string): Notice {
  const notice = { id, text: texts(`notices.${id}`) };
  if (id !== "set-aside") return notice;
  const { format } = new Intl.DateTimeFormat(texts("ui.locale"), { dateStyle: "long" });
  return { ...notice, goOn: texts("resumed.go-on", { date: format(Date.parse(asideSince)) }) };
}
