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
  return {
    ...makeReady(session, texts, now),
    lines: linesOf(session, texts),
    notices: notices.map((id) => noticeOf(id, texts, asideSince)),
    dangers: dangers.map((id) => ({
      id,
      text: texts(`checks.opening.danger.answers.${id}`),
    })),
  };
}

type Ready = { turn: Turn; ways: View["ways"] };

/** A session never changes, and neither does what is drawn of it until the day does. */
const ready = new WeakMap<Session, { texts: Texts; day: string; of: Ready }>();

/**
 * What takes longest of a view: `viewOf` finds it ready.
 * @param now RFC 3339; only its day matters
 */
export function makeReady(session: Session, texts: Texts, now: string): Ready {
  const day = now.slice(0, 10);
  const known = ready.get(session);
  if (known?.texts === texts && known.day === day) return known.of;
  const of = { turn: turnOf(session, texts, now), ways: waysOf(session, now) };
  ready.set(session, { texts, day, of });
  return of;
}

/** What was made ready of a session holds for the same one at another instant, but for a wait, which says its end. */
export function handOn(from: Session, to: Session): void {
  const known = ready.get(from);
  if (known && !known.of.turn.wait) ready.set(to, known);
}

function waysOf({ flow, snapshot }: Session, at: string): View["ways"] {
  const events: [View["ways"][number], string][] = [
    ["danger", `danger-reported.${flow.dangers[0]}`],
    ["ice", "ice-returned"],
    ["help", "help-asked"],
  ];
  return events.filter(([, type]) => snapshot.can({ type, at } as never)).map(([way]) => way);
}

function noticeOf(id: Notice["id"], texts: Texts, asideSince: string): Notice {
  const notice = { id, text: texts(`notices.${id}`) };
  if (id === "forgotten") return { ...notice, goOn: texts("resumed.undo") };
  if (id !== "set-aside" && id !== "carried") return notice;
  const { format } = new Intl.DateTimeFormat(texts("ui.locale"), { dateStyle: "long" });
  return { ...notice, goOn: texts("resumed.go-on", { date: format(Date.parse(asideSince)) }) };
}
