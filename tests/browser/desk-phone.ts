import { WebSocket } from "ws";
import {
  bodiesFor,
  type Client,
  createClient,
  emptyRoom,
  type SharedRoom,
  type Told,
  withRecord,
} from "../../src/cobrowse/client/index.ts";
import { createLog, createMemoryStore, createRelay, type Relay } from "../../src/cobrowse/relay/index.ts";
import {
  advance,
  createJournal,
  type Journal,
  type Session,
  type Standing,
  standingOf,
} from "../../src/session/index.ts";
import { key, shop } from "../cobrowse/relay/agents.ts";

/** A relay on a free port of this machine, for pages of this origin. */
export async function startRelayFor(origin: string): Promise<{ relay: Relay; port: number }> {
  const relay = await createRelay({
    ...{ key, shop, origins: [origin], proxies: 0, now: Date.now, chance: Math.random },
    store: createMemoryStore(),
    log: createLog({ write: () => {} }),
  });
  const host = "127.0.0.1";
  const { port } = await relay.listen({ host, port: 0, watchHost: host, watchPort: 0 });
  return { relay, port };
}

/** A householder's side of a room, without a page: it opens the room, lets agents in and shares a session's journal. */
export class DeskPhone {
  room: SharedRoom = emptyRoom;
  code = "";
  readonly #client: Client;
  #standing: Standing | null = null;
  #carried: string[] = [];
  #ids = 0;
  readonly #waiting = new Set<() => void>();

  constructor(port: number, origin: string) {
    this.#client = createClient({ type: "open", v: 1 }, null, {
      dial: (on) => {
        const socket = new WebSocket(`ws://127.0.0.1:${port}/rooms`, { origin });
        socket.on("open", on.up);
        socket.on("message", (data) => on.text(data.toString()));
        socket.on("close", on.down);
        socket.on("error", () => {});
        return { send: (text) => socket.send(text), close: () => socket.close() };
      },
      now: Date.now,
      after: (milliseconds, work) => {
        const timer = setTimeout(work, milliseconds);
        return () => clearTimeout(timer);
      },
      keep: () => {},
      told: (told) => this.#hear(told),
    });
  }

  #hear(told: Told | { type: "line" }): void {
    if (told.type === "code") this.code = told.code;
    if (told.type === "record") this.room = withRecord(this.room, told.record);
    for (const look of this.#waiting) look();
  }

  /** Resolves once something holds of what was heard. */
  until<Found>(find: (phone: DeskPhone) => Found | undefined | false | null | ""): Promise<Found> {
    return new Promise((resolve) => {
      const look = () => {
        const found = find(this);
        if (!found) return;
        this.#waiting.delete(look);
        resolve(found);
      };
      this.#waiting.add(look);
      look();
    });
  }

  /** Lets in the agent who asks. */
  async admit(): Promise<void> {
    const asking = await this.until(({ room }) => room.people.find(({ is }) => is === "asking"));
    this.steer("admit", asking.id);
  }

  steer(kind: string, body = ""): void {
    this.#client.say(kind, body, "steering");
  }

  write(text: string): void {
    this.#client.say("line", text);
  }

  /** Says what became of the agent's latest suggestion. */
  async answer(kind: string, is: "taken" | "declined" | "past"): Promise<void> {
    const said = await this.until(({ room }) =>
      room.said.findLast((one) => one.by === "agent" && one.suggestion.kind === kind && !one.is),
    );
    this.#client.say("heard", JSON.stringify({ to: said.seq, is }));
  }

  /** Shares a session as its device would: what is new of its journal, or what was taken back. */
  share(session: Session): Journal {
    const before = this.#standing ?? standingOf(createJournal(session.log.started, session.log.model));
    const at = session.log.events.at(-1)?.at ?? session.log.started;
    this.#standing = advance(before, session.log, at, () => `e${this.#ids++}`);
    const { journal } = this.#standing;
    for (const body of bodiesFor(journal, this.#carried)) {
      this.#carried.push(body);
      this.#client.say("entry", body);
    }
    return journal;
  }

  close(): void {
    this.#client.close();
  }
}
