import type { SharedRoom } from "../../cobrowse/client/index.ts";
import { memoryOf, metaOf, type Session } from "../../session/index.ts";
import type { Texts, View } from "../../turn/index.ts";

/** What a conversation waits for, most urgent first. */
export const urgencies = ["danger", "open", "waiting", "paused", "asking", "over"] as const;

/** A conversation as a line of the list. `share`: how far it is, 0 to 1. */
export type RoomLine = { is: (typeof urgencies)[number]; name: string; waits: string; share: number };

export type RoomState = {
  room: SharedRoom;
  /** Who the agent is in the room; null before the relay has said. */
  me: string | null;
  /** The conversation so far, and what is on the householder's screen; null before anything of it has come. */
  session: Session | null;
  view: View | null;
  /** Why there is nothing to come back to, as a key of the desk's texts; null while there is. */
  over: string | null;
  /** Milliseconds since 1970. */
  now: number;
};

/** What a conversation is called, what it waits for and how far it is. */
export function roomLineOf({ room, me, session, view, over, now }: RoomState, texts: Texts): RoomLine {
  const name = modelIn(session) ?? texts("desk.list.no-model");
  const share = shareOf(session, view);
  const mine = room.people.find(({ id }) => id === me);
  const line = (is: RoomLine["is"], waits: string): RoomLine => ({ is, name, waits, share });
  const turn = view?.turn;
  // A danger wins over all else, over an end of the line as well: somebody may have to ring them up.
  if (turn?.ending?.outcome === "stopped")
    return line("danger", texts("desk.list.danger", { what: turn.heading }));
  if (over || room.isEnded) return line("over", whyOver(over ?? "ended", texts));
  if (mine?.is === "gone") return line("over", texts("desk.over.turned-away"));
  if (!mine || mine.is === "asking") return line("asking", texts("desk.list.asking"));
  if (room.isPaused) return line("paused", texts("desk.list.paused"));
  if (!turn) return line("asking", texts("desk.list.nothing"));
  if (turn.wait) return line("waiting", timeLeft(Date.parse(turn.wait.until) - now, texts));
  return line(turn.ending ? "waiting" : "open", turn.heading);
}

const whyOver = (why: string, texts: Texts) => texts(`desk.over.${why}`) || texts("desk.over.other");

/** The most urgent first; otherwise in the order in which they were joined. */
export function sorted<One extends { line: RoomLine }>(rooms: readonly One[]): One[] {
  const rank = ({ line }: One) => urgencies.indexOf(line.is);
  return [...rooms].sort((a, b) => rank(a) - rank(b));
}

/** The model number that the householder has confirmed; null before that. */
export function modelIn(session: Session | null): string | null {
  return session ? memoryOf(session).model : null;
}

/** Answered, as a share of that and of what is still expected; all of it at an ending. */
function shareOf(session: Session | null, view: View | null): number {
  if (!session || !view?.turn) return 0;
  if (metaOf(session).outcome) return 1;
  const { turns } = memoryOf(session);
  return turns / (turns + Math.max(1, view.turn.left || 8));
}

function timeLeft(milliseconds: number, texts: Texts): string {
  const minutes = Math.max(0, Math.ceil(milliseconds / 60_000));
  const hours = Math.floor(minutes / 60);
  if (minutes === 0) return texts("desk.list.wait-over");
  return hours
    ? texts("desk.list.wait-hours", { hours, minutes: minutes % 60 })
    : texts("desk.list.wait-minutes", { minutes });
}
