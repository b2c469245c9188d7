import {
  bodiesFor,
  createClient,
  emptyRoom,
  type Means,
  type Person,
  type SharedRoom,
  withRecord,
} from "../cobrowse/client/index.ts";
import { version } from "../cobrowse/protocol/index.ts";
import { toRelayAddress } from "../loading/index.ts";
import { type Fate, type LiveRoom, machineTurn, type OpenSuggestion, offerOf } from "../turn/index.ts";
import { type KeptLive, readKeptLive } from "./live-kept.ts";
import { dialSocket } from "./live-line.ts";
import type { LiveMeans, OpenedLive } from "./live-means.ts";
import { shownOf } from "./live-shown.ts";

/* What carries a search to the shop's people. In a file of its own, fetched when somebody asks for one of them. */

/** So many suggestions are on screen at a time; those before are past. */
const mostOpen = 3;

/** Why there is nothing to come back to; and what a line is ended for that is dialled anew. */
const [over, passing] = [
  ["ended", "gone", "unknown"],
  ["flood", "silent"],
];

const later: Means["after"] = (span, work) => {
  const timer = setTimeout(work, span);
  return () => clearTimeout(timer);
};

/**
 * Opens a room, or comes back to the one that was kept. The journal leaves this device once somebody was let in and the
 * whole log of the room is here, and not while it is paused.
 */
export function openLive({
  relay,
  place,
  journal,
  view,
  texts,
  emit,
  changed,
  ...means
}: LiveMeans): OpenedLive {
  const { dial = dialSocket, now = Date.now, after = later } = means;
  const first: KeptLive = { end: null, code: null, seen: 0, isOver: false };
  let kept = readKeptLive(place.read(), now()) ?? first;
  let shared: SharedRoom = emptyRoom;
  let hasAll = false;
  let is: LiveRoom["is"] = "coming";
  let isUp = false;
  let isFull = false;
  let left = "";
  /** What is said of its end was taken off the screen. */
  let isDismissed = false;
  /** Bodies that were said and have not come back in the log yet. */
  const pending: Record<string, string[]> = { entry: [], line: [] };
  const fates = new Map<number, Fate>();

  const keep = (more: Partial<KeptLive>) => {
    kept = { ...kept, ...more };
    place.write(JSON.stringify(kept));
  };
  const client = createClient({ type: "open", v: version }, kept.end, {
    now,
    after,
    keep: (end) => keep({ end }),
    dial: (on, to) => dial(to && toRelayAddress(to) === relay ? to : relay, on),
    told(told) {
      if (told.type === "line") isUp = told.isUp;
      else if (told.type === "welcome") is = kept.isOver ? "ended" : "open";
      else if (told.type === "code") keep({ code: { text: told.code, until: now() + told.endsIn } });
      else if (told.type === "record") take(told.record);
      else if (told.type === "full") isFull = true;
      else if (told.type === "all" && !hasAll) {
        hasAll = true;
        for (const kind of Object.keys(pending)) pending[kind] = waiting(kind);
      } else if (told.type === "no") leave(told.why);
      look();
    },
  });
  client.hold(true);

  const waiting = (kind: string) =>
    client.unheard("carried").flatMap((one) => (one.kind === kind ? one.body : []));
  const people = (which: Person["is"]) => shared.people.filter((one) => one.is === which);
  const isPaused = () => {
    const wish = client.unheard("steering").findLast(({ kind }) => kind === "pause" || kind === "resume");
    return wish ? wish.kind === "pause" : shared.isPaused;
  };
  const isSharing = () =>
    is === "open" && hasAll && !isDismissed && !kept.isOver && people("in").length > 0 && !isPaused();

  function take(record: Parameters<typeof withRecord>[1]): void {
    const before = people("in");
    shared = withRecord(shared, record);
    const { kind, from, seq } = record;
    if (from === "h" && hasAll) pending[kind]?.shift();
    const gone = before.find(({ id }) => people("gone").some((one) => one.id === id));
    if (gone) left = gone.name;
    if (kind === "admit") left = "";
    if (kind === "joined") keep({ code: null });
    // After a reload the log is told from its beginning.
    if (seq <= kept.seen) return;
    keep({ seen: seq });
    if (kind === "admit") emit("joined", "agent", "let-in");
    if (gone)
      emit("left", from === gone.id ? "agent" : "householder", kind === "leave" ? "left" : "turned-away");
  }

  function leave(why: string): void {
    if (passing.includes(why)) return;
    if (why === "replaced") is = "elsewhere";
    else {
      if (people("in").length > 0 && !kept.isOver) emit("left", "relay", "over");
      const ended = shared.people.length > 0 ? "ended" : "unused";
      is = over.includes(why) ? ended : "unable";
      place.write(null);
      // Nobody waits a quarter of an hour for a relay that has no room.
      client.close();
    }
  }

  /** Says one thing that is to be carried; until it comes back in the log it counts as said all the same. */
  function put(kind: string, body: string): boolean {
    const isSaid = client.say(kind, body);
    if (isSaid) pending[kind]?.push(body);
    return isSaid;
  }

  function answer(id: number, fate: Fate): void {
    if (fates.has(id)) return;
    fates.set(id, fate);
    client.say("heard", JSON.stringify({ to: id, is: fate }));
  }

  function openOnes(): OpenSuggestion[] {
    const inside = people("in");
    return shared.said.flatMap((one) => {
      const from = inside.find(({ id }) => id === one.from);
      if (one.by !== "agent" || one.suggestion.kind === "line" || one.is || fates.has(one.seq)) return [];
      return from ? { id: one.seq, name: from.name, suggested: one.suggestion } : [];
    });
  }

  /** What can't be taken any more is answered: as taken, where just that was answered by the turn's own button. */
  function passOver(): void {
    const shown = view();
    const open = openOnes();
    for (const { id } of open.slice(0, -mostOpen)) answer(id, "past");
    if (!hasAll || !shown?.turn || shown.turn.turn === machineTurn) return;
    for (const { id, suggested } of open) {
      if (offerOf(suggested, shown, texts)) continue;
      const given = journal().entries.findLast(
        ({ event }) => event.type === "answered" && "turn" in suggested && event.turn === suggested.turn,
      )?.event;
      const isTaken =
        given?.type === "answered" && "answer" in suggested && given.answer === suggested.answer;
      answer(id, isTaken ? "taken" : "past");
    }
  }

  function look(): void {
    client.hold(!isSharing());
    if (isSharing()) {
      for (const body of waiting("heard")) note(body);
      const bodies = bodiesFor(journal(), [...shared.carried, ...(pending["entry"] ?? [])]);
      for (const body of isFull ? [] : bodies) {
        put("entry", body);
      }
      passOver();
    }
    changed();
  }

  /** What was answered before a reload and has not been heard yet. */
  function note(body: string): void {
    const { to, is: fate } = JSON.parse(body);
    if (!fates.has(to)) fates.set(to, fate);
  }

  function steer(kind: string, body = ""): void {
    client.say(kind, body, "steering");
    look();
  }

  function room(): LiveRoom | null {
    if (kept.isOver || isDismissed) return null;
    const { code } = kept;
    const open = isSharing() ? openOnes() : [];
    return {
      ...shownOf(shared, pending["line"] ?? []),
      ...{ is, isUp, code, left, isFull, open },
      isPaused: isPaused(),
    };
  }

  return {
    room,
    look,
    wake: client.wake,
    close: client.close,
    letIn: (id) => steer("admit", id),
    turnAway: (id) => steer("turn-away", id),
    pause: (isWanted) => steer(isWanted ? "pause" : "resume"),
    newCode() {
      keep({ code: null });
      steer("code");
    },
    end() {
      isDismissed = true;
      if (is === "open") {
        emit("left", "householder", "ended");
        // Without a line the relay hears of it on the next one, after a reload too.
        keep({ isOver: true });
        steer("end");
        return;
      }
      client.close();
      // What another tab has is that tab's.
      if (is !== "elsewhere") place.write(null);
      changed();
    },
    write(text) {
      const isSaid = isSharing() && put("line", text);
      changed();
      return isSaid;
    },
    answer(id, fate) {
      answer(id, fate);
      look();
    },
  };
}
