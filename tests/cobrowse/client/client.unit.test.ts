import { describe, expect, test } from "vitest";
import {
  type Client,
  createClient,
  type KeptEnd,
  type OnLine,
  type Told,
} from "../../../src/cobrowse/client/index.ts";

type Dialled = { on: OnLine; to: string | undefined; sent: { type: string }[]; isClosed: boolean };

/** A client on lines and a clock that a test moves. */
function open(kept: KeptEnd | null = null, isRefused = () => false) {
  let now = 1_000_000;
  let timers: { at: number; work: () => void }[] = [];
  const lines: Dialled[] = [];
  const told: (Told | { type: "line"; isUp: boolean })[] = [];
  const disk = { kept };
  const client: Client = createClient({ type: "open", v: 1 }, kept, {
    now: () => now,
    keep: (next) => {
      disk.kept = structuredClone(next);
    },
    told: (one) => void told.push(one),
    after: (span, work) => {
      const timer = { at: now + span, work };
      timers.push(timer);
      return () => {
        timers = timers.filter((one) => one !== timer);
      };
    },
    dial: (on, to) => {
      if (isRefused()) throw new Error("not allowed here");
      const line: Dialled = { on, to, sent: [], isClosed: false };
      lines.push(line);
      return {
        send: (text) => void line.sent.push(JSON.parse(text)),
        close: () => {
          line.isClosed = true;
        },
      };
    },
  });
  /** Lets time go by; whatever is due on the way is done. */
  const pass = (span: number) => {
    const end = now + span;
    for (;;) {
      const [next] = timers.filter(({ at }) => at <= end).sort((a, b) => a.at - b.at);
      if (!next) break;
      timers = timers.filter((one) => one !== next);
      now = Math.max(now, next.at);
      next.work();
    }
    now = end;
  };
  const last = () => lines.at(-1) as Dialled;
  const hear = (message: object) => last().on.text(JSON.stringify(message));
  const up = (carried = 0, steering = 1) => {
    last().on.up();
    hear({ type: "welcome", room: "r", peer: "h", secret: "s", carried, steering, endsIn: 7_200_000 });
  };
  const areUp = () => told.flatMap((one) => (one.type === "line" ? one.isUp : []));
  return { client, lines, told, disk, pass, last, hear, up, areUp };
}

const put = (kind: string, n: number, body = "", lane = "carried") => ({ type: "put", lane, n, kind, body });

describe("a client", () => {
  test("dials at once, says first who it is, and tells that it is welcome", () => {
    const { last, up, told, areUp } = open();
    expect(last().sent).toEqual([]);
    up();
    expect(last().sent).toEqual([{ type: "open", v: 1 }]);
    expect(told).toContainEqual({ type: "welcome", peer: "h", endsIn: 7_200_000 });
    expect(areUp()).toEqual([true]);
  });

  test("dials anew after 1, 2, 4 … seconds, 30 at most, and after 1 again once it was welcome", () => {
    const { lines, pass, last, up } = open();
    const pauses: number[] = [];
    for (let tries = 0; tries < 7; tries++) {
      last().on.down();
      const before = lines.length;
      let waited = 0;
      for (; lines.length === before; waited += 1000) pass(1000);
      pauses.push(waited / 1000);
    }
    expect(pauses).toEqual([1, 2, 4, 8, 16, 30, 30]);
    up();
    last().on.down();
    pass(1000);
    expect(lines).toHaveLength(9);
  });

  test("comes back with its secret and the last number it has", () => {
    const { hear, last, up, pass } = open();
    up();
    hear({ type: "record", seq: 1, from: "h", n: 1, at: 1, kind: "opened", body: "" });
    last().on.down();
    pass(1000);
    last().on.up();
    expect(last().sent).toEqual([{ type: "return", v: 1, room: "r", peer: "h", secret: "s", after: 1 }]);
  });

  test("keeps what it says before it sends it, and a page that is loaded anew sends it again", () => {
    const before = open();
    before.client.say("line", "too early");
    before.up();
    before.client.say("line", "Hello");
    expect(before.disk.kept?.senders.carried.queue.map(({ body }) => body)).toEqual(["too early", "Hello"]);
    const after = open(before.disk.kept);
    after.last().on.up();
    after.hear({ type: "welcome", room: "r", peer: "h", carried: 1, steering: 1, endsIn: 1 });
    expect(after.last().sent.slice(1)).toEqual([put("line", 2, "Hello")]);
  });

  test("says nothing that is longer than the relay takes", () => {
    const { client, last, up } = open();
    up();
    expect(client.say("entry", "x".repeat(5000))).toBe(false);
    expect(last().sent).toHaveLength(1);
  });

  test("sends nothing that is carried while it is held, but steers", () => {
    const { client, last, up } = open();
    client.hold(true);
    up();
    client.say("line", "Hello");
    client.say("pause", "", "steering");
    expect(last().sent.slice(1)).toEqual([put("pause", 2, "", "steering")]);
    expect(client.unheard("carried").map(({ body }) => body)).toEqual(["Hello"]);
    client.hold(false);
    expect(last().sent.slice(2)).toEqual([put("line", 1, "Hello")]);
  });

  test("hangs up and dials anew where no welcome comes within ten seconds, whatever else does", () => {
    const { hear, lines, last, pass } = open();
    last().on.up();
    hear({ type: "all", seq: 0 });
    pass(13_000);
    expect(lines[0]?.isClosed).toBe(true);
    expect(lines).toHaveLength(2);
  });

  test("asks every half minute, and dials anew where nothing answers for fifteen seconds", () => {
    const { up, last, pass, lines, areUp } = open();
    up();
    pass(32_000);
    expect(last().sent.at(-1)).toEqual({ type: "ask", after: 0 });
    pass(18_000);
    expect(lines).toHaveLength(2);
    expect(areUp()).toEqual([true, false]);
  });

  test("does not wait for its next try once there may be a connection again", () => {
    const { client, lines, last, pass } = open();
    for (let tries = 0; tries < 4; tries++) {
      last().on.down();
      pass(20_000);
    }
    last().on.down();
    const before = lines.length;
    client.wake();
    expect(lines).toHaveLength(before + 1);
  });

  test("waits as long as a relay that moves asks for, and dials where that has told it to", () => {
    const { hear, up, last, pass, lines } = open();
    up();
    hear({ type: "moving", wait: 4000, to: "wss://other.example/rooms" });
    last().on.down();
    pass(3000);
    expect(lines).toHaveLength(1);
    pass(2000);
    expect(last().to).toBe("wss://other.example/rooms");
  });

  test("goes back to its own relay where the other one is not there", () => {
    const { hear, up, last, pass } = open();
    up();
    hear({ type: "moving", wait: 0, to: "wss://other.example/rooms" });
    last().on.down();
    pass(1000);
    last().on.down();
    pass(4000);
    expect(last().to).toBeUndefined();
  });

  test.each(["ended", "gone", "unknown", "replaced", "no-such-code", "malformed", "never-heard-of"])(
    "hangs up for good when it is told '%s'",
    (why) => {
      const { hear, up, last, pass, lines, told } = open();
      up();
      hear({ type: "no", why });
      pass(60_000);
      expect(last().isClosed).toBe(true);
      expect(lines).toHaveLength(1);
      expect(told).toContainEqual({ type: "no", why });
    },
  );

  test("tries again after 'busy', when it is told to", () => {
    const { hear, last, pass, lines } = open();
    last().on.up();
    hear({ type: "no", why: "busy", wait: 50_000 });
    last().on.down();
    pass(49_000);
    expect(lines).toHaveLength(1);
    pass(2000);
    expect(lines).toHaveLength(2);
  });

  test("goes on trying where the page does not let it dial", () => {
    let isRefused = true;
    const { lines, pass } = open(null, () => isRefused);
    expect(lines).toHaveLength(0);
    isRefused = false;
    pass(1000);
    expect(lines).toHaveLength(1);
  });

  test("hears nothing on a line that it has given up, and nothing that is none of the protocol", () => {
    const { last, lines, pass, told, up, hear } = open();
    last().on.down();
    pass(1000);
    lines[0]?.on.up();
    lines[0]?.on.text('{"type":"code","code":"X","endsIn":1}');
    expect(lines[0]?.sent).toEqual([]);
    up();
    hear({ type: "kept", lane: "__proto__", n: 1, seq: 1 });
    last().on.text("{");
    expect(told.map(({ type }) => type)).toEqual(["line", "welcome"]);
  });

  test("is still once it is closed", () => {
    const { client, up, last, pass, lines } = open();
    up();
    client.close();
    expect(last().isClosed).toBe(true);
    pass(120_000);
    client.wake();
    expect(lines).toHaveLength(1);
  });
});
