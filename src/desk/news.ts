import type { Texts } from "../turn/index.ts";
import { modelIn } from "./board/index.ts";
import type { Change, DeskRoom } from "./room.ts";

/** By room: the turn that was last said. */
const saidOf = new WeakMap<DeskRoom, string>();

/** What a change is worth saying to who can't see it, in a sentence; empty for most. */
export function newsOf(room: DeskRoom, change: Change, texts: Texts): string {
  const { followed, me } = room;
  const name = modelIn(followed?.session ?? null) ?? texts("desk.list.no-model");
  const turn = followed?.view.turn;
  if (change.type === "followed" && turn && saidOf.get(room) !== turn.turn) {
    saidOf.set(room, turn.turn);
    const is = turn.ending?.outcome === "stopped" ? "danger" : "answered";
    return texts(`desk.news.${is}`, { name, turn: turn.heading });
  }
  if (change.type !== "record") return "";
  const { kind, body, from } = change.record;
  if (kind === "admit" && body === me) return texts("desk.news.admitted", { name });
  const isTheirs = !room.shared.people.some(({ id }) => id === from);
  if (kind === "line" && isTheirs) return texts("desk.news.wrote", { name, text: body });
  const steered: Record<string, string> = { pause: "paused", resume: "resumed", end: "ended" };
  const key = Object.hasOwn(steered, kind) ? steered[kind] : undefined;
  return key ? texts(`desk.news.${key}`, { name }) : "";
}
