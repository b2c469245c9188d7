import type { Session } from "../session/index.ts";
import type { Texts, View } from "./actions.ts";
import { linesOf } from "./lines.ts";
import type { Notice, Turn } from "./turn.ts";
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
    turn: readyTurn(session, texts, now),
    lines: linesOf(session, texts),
    notices: notices.map((id) => noticeOf(id, texts, asideSince)),
    dangers: dangers.map((id) => ({
      id,
      text: texts(`checks.opening.danger.answers.${id}`),
    })),
    ways: events.filter(([, type]) => session.snapshot.can({ type, at: now } as never)).map(([way]) => way),
  };
}

/** A session never changes, and neither does its turn until the day does: it can be made ready before it is shown. */
const ready = new WeakMap<Session, { texts: Texts; day: string; turn: Turn }>();

function readyTurn(session: Session, texts: Texts, now: string): Turn {
  const day = now.slice(0, 10);
  const known = ready.get(session);
  if (known?.texts === texts && known.day === day) return known.turn;
  const turn = turnOf(session, texts, now);
  ready.set(session, { texts, day, turn });
  return turn;
}

function noticeOf(id: Notice["id"], texts: Texts, asideSince: string): Notice {
  const notice = { id, text: texts(`notices.${id}`) };
  if (id !== "set-aside") return notice;
  const { format } = new Intl.DateTimeFormat(texts("ui.locale"), { dateStyle: "long" });
  return { ...notice, goOn: texts("resumed.go-on", { date: format(Date.parse(asideSince)) }) };
}
