import type { Logger } from "pino";
import { type Bucket, relayBounds as bounds, type Put, takeOne, type Why } from "../protocol/index.ts";
import { endOf, judge, laneOf, readFirst, readLater, type Verdict } from "../protocol/room/index.ts";
import { type Code, type Entered, enter, makeCode, type Porch } from "./entering.ts";
import { closeCodes, hangUp, type Line, tell } from "./line.ts";
import type { Metrics } from "./metrics.ts";
import type { Live, Seat } from "./rooms.ts";
import { StoreAway } from "./store.ts";

/** What the hub is told about one connection. */
export type Connection = {
  /** One message came. */
  receive(text: string): void;
  /** Some of what was sent has left. */
  drained(): void;
  /** The line is gone. */
  closed(): void;
};

/** Everybody who is connected. */
export type Hub = {
  connect(line: Line, address: string): Connection;
  /** Lines, and rooms that somebody may come back to. */
  counts(): { lines: number; rooms: number };
  /** To be called every few seconds. */
  tick(): Promise<void>;
  /** Says goodbye to everybody, each with another span to come back in; `to` is where, if not here. */
  leave(chance: () => number, to?: string): void;
};

type Here = {
  line: Line;
  since: number;
  bucket: Bucket;
  dropped: number;
  waiting: number;
  turn: Promise<void>;
  live?: Live;
  seat?: Seat;
  /** The entry whose code was said on this line. */
  coded: number;
  isOver: boolean;
};

/**
 * Joins lines and rooms. It knows no socket, so that tests can hand it lines that drop, double and mix up.
 * @param log gets events and the relay's own words, nothing that anybody typed
 */
export function createHub(porch: Porch, metrics: Metrics, log: Logger): Hub {
  const { rooms, now } = porch;
  const everybody = new Set<Here>();

  const refuse = (here: Here, why: Why, wait?: number) => {
    if (here.isOver) return;
    here.isOver = true;
    metrics.count("connections_refused_total", why);
    log.info({ why, room: here.live && shortOf(here.live) }, "hung up");
    hangUp(here.line, why, wait);
  };
  const giveCode = ({ line }: Here, { code, until }: Code) =>
    tell(line, { type: "code", code, endsIn: until - now() });

  const welcome = (here: Here, entered: Entered) => {
    const { live, peer, place, secret, code } = entered;
    const seat: Seat = {
      peer,
      line: here.line,
      place,
      sent: Math.min(entered.after, live.records.length),
      asks: true,
      askFrom: 0,
      fullSince: null,
    };
    Object.assign(here, { live, seat });
    rooms.seat(live, seat);
    const last = live.room.members.get(peer)?.last ?? { carried: 0, steering: 0 };
    const endsIn = Math.max(0, endOf(live.room) - now());
    const base = { type: "welcome", room: live.id, peer, ...last, endsIn } as const;
    tell(here.line, secret === undefined ? base : { ...base, secret });
    if (code) giveCode(here, code);
    rooms.pump(live, seat);
  };

  const first = async (here: Here, text: string, address: string) => {
    const message = readFirst(text);
    if (!message) return refuse(here, "malformed");
    const entered = await enter(porch, message, address);
    if ("why" in entered) {
      if (/^(no-such|unknown)/.test(entered.why)) metrics.count("codes_failed_total", entered.why);
      return refuse(here, entered.why, entered.wait);
    }
    if (message.type === "open") metrics.count("rooms_opened_total");
    if (message.type === "join") metrics.count("agents_joined_total");
    log.info({ did: message.type, room: shortOf(entered.live), peer: entered.peer }, "came in");
    // Whoever has hung up meanwhile comes back with the next line.
    if (everybody.has(here) && !here.isOver) welcome(here, entered);
  };

  const keep = async (here: Here, live: Live, seat: Seat, { lane, n, kind, body }: Put) => {
    const kept = await rooms.keep<Exclude<Verdict, "take">>(live, (room) => {
      const draft = { from: seat.peer, n, kind, body };
      // What was kept is kept, whatever is allowed by now: its sender only has not heard of it. By the number of one lane
      // nothing of the other is.
      if (laneOf(kind) === lane && n <= (room.members.get(seat.peer)?.last[lane] ?? 0)) return draft;
      const verdict = judge(room, seat.peer, lane, kind, now());
      return verdict === "take" ? draft : { no: verdict };
    });
    if (!kept) return refuse(here, "unknown");
    if (kept.type === "missing") return tell(here.line, { type: "missing", lane, last: kept.last });
    if (kept.type === "no") {
      const { no } = kept;
      return "wait" in no ? tell(here.line, { type: "wait", lane, n, why: no.wait }) : refuse(here, no.no);
    }
    const { stored } = kept;
    if (stored.kind !== kind || stored.body !== body) return refuse(here, "number-taken");
    metrics.count(kept.type === "fresh" ? "entries_kept_total" : "entries_repeated_total");
    tell(here.line, { type: "kept", lane, n, seq: stored.seq });
    // Whoever asked may not have heard of the code, where it was kept and the relay was killed: once more on each line.
    if (kind !== "code" || live.room.code?.seq !== stored.seq || here.coded === stored.seq) return;
    here.coded = stored.seq;
    giveCode(here, await makeCode(porch, { room: live.id, seq: stored.seq }));
  };

  const later = async (here: Here, live: Live, seat: Seat, text: string) => {
    const message = readLater(text);
    if (!message) return refuse(here, "malformed");
    if (message.type === "put") return rooms.inTurn(live, () => keep(here, live, seat, message));
    const isBack = message.after < seat.sent;
    if (!isBack || now() >= seat.askFrom) {
      if (isBack) seat.askFrom = now() + bounds.askAgain;
      seat.sent = Math.min(message.after, live.records.length);
    }
    seat.asks = true;
    rooms.pump(live, seat);
  };

  const read = async (here: Here, text: string, address: string) => {
    const { live, seat } = here;
    if (here.isOver) return;
    try {
      await (live && seat ? later(here, live, seat, text) : first(here, text, address));
    } catch (problem) {
      // It was not acknowledged, so its sender says it again: on this line, once the store is back.
      if (problem instanceof StoreAway) {
        metrics.count("messages_unkept_total");
        if (!here.seat) here.line.cut();
        return;
      }
      // The store has failed. Nothing was acknowledged; everybody finds another relay or waits for this one.
      log.error({ problem: problem instanceof Error ? problem.name : "unknown" }, "could not keep a message");
      here.line.cut();
    }
  };

  return {
    connect: (line, address) => {
      const bucket = { level: bounds.burst, at: now() };
      const turn = Promise.resolve();
      const here: Here = {
        line,
        since: now(),
        bucket,
        dropped: 0,
        waiting: 0,
        turn,
        coded: 0,
        isOver: false,
      };
      everybody.add(here);
      metrics.count("connections_opened_total");
      return {
        receive: (text) => {
          const left = here.waiting < bounds.burst * 2 ? takeOne(here.bucket, now(), bounds) : null;
          if (here.isOver) return;
          if (!left) {
            metrics.count("messages_dropped_total");
            if (++here.dropped > bounds.dropped) refuse(here, "flood");
            return;
          }
          Object.assign(here, { bucket: left, dropped: 0, waiting: here.waiting + 1 });
          here.turn = here.turn.then(() => read(here, text, address)).then(() => void here.waiting--);
        },
        drained: () => {
          const { live, seat } = here;
          if (live && seat && live.seats.get(seat.peer) === seat) rooms.pump(live, seat);
        },
        closed: () => {
          everybody.delete(here);
          here.isOver = true;
          if (here.live && here.seat) rooms.leave(here.live, here.seat);
        },
      };
    },
    counts: () => ({ lines: everybody.size, rooms: rooms.count() }),
    tick: async () => {
      for (const here of everybody)
        if (!here.seat && now() > here.since + bounds.firstMessage) refuse(here, "silent");
      await rooms.tick();
    },
    leave: (chance, to) => {
      for (const { line } of everybody) {
        tell(line, { type: "moving", wait: Math.floor(chance() * bounds.comeBack), ...(to && { to }) });
        line.close(closeCodes.moving, "moving");
      }
    },
  };
}

/** Enough of a room's name to follow it through the log. */
function shortOf({ id }: Live): string {
  return id.slice(0, 6);
}
