import type { OnLine } from "../../src/cobrowse/client/index.ts";

type Sent = { type: string; lane?: "carried" | "steering"; n?: number; kind?: string; body?: string };
type Line = { on: OnLine; peer: string; isUp: boolean };

/**
 * A relay with one room for each code, which takes whatever it is given and shows it to everybody, as far as its own
 * protocol goes; time stands still in it. What every desk has sent stays to be looked at.
 */
export function createFakeRelay() {
  const sent: Sent[] = [];
  const log: object[] = [];
  const lines: Line[] = [];
  const kept = { carried: 0, steering: 1 };
  let refusal = "";
  let isPaused = false;

  const tell = (line: Line, message: object) => line.isUp && line.on.text(JSON.stringify(message));
  const record = (from: string, kind: string, body = "", n = 1) => {
    const one = { type: "record", seq: log.length + 1, from, n, at: 1000 * log.length, kind, body };
    log.push(one);
    for (const line of lines) tell(line, one);
  };

  function hear(line: Line, text: string): void {
    const message = JSON.parse(text) as Sent;
    sent.push(message);
    if (message.type === "join" || message.type === "return") {
      if (refusal) return void tell(line, { type: "no", why: refusal });
      const secret = message.type === "join" ? { secret: "s" } : {};
      tell(line, { type: "welcome", room: "r", peer: line.peer, endsIn: 7_200_000, ...kept, ...secret });
      if (message.type === "join") {
        record("h", "opened");
        record(line.peer, "joined", "Ash");
      } else for (const one of log) tell(line, one);
      return void tell(line, { type: "all", seq: log.length });
    }
    if (message.type === "ask") return void tell(line, { type: "all", seq: log.length });
    const { lane = "carried", n = 0, kind = "", body = "" } = message;
    if (isPaused && lane === "carried") return void tell(line, { type: "wait", lane, n, why: "paused" });
    kept[lane] = n;
    record(line.peer, kind, body, n);
    tell(line, { type: "kept", lane, n, seq: log.length });
  }

  return {
    sent,
    dial: (on: OnLine) => {
      const line: Line = { on, peer: "a1", isUp: false };
      lines.push(line);
      queueMicrotask(() => {
        line.isUp = true;
        on.up();
      });
      return {
        send: (text: string) => hear(line, text),
        close: () => {
          line.isUp = false;
        },
      };
    },
    /** What the householder does. */
    does: (kind: string, body = "") => {
      if (kind === "pause" || kind === "resume") isPaused = kind === "pause";
      record("h", kind, body);
    },
    refuse: (why: string) => {
      refusal = why;
    },
    drop: () => {
      for (const line of lines) {
        line.isUp = false;
        line.on.down();
      }
    },
  };
}
