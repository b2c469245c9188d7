import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readCode } from "../../../src/cobrowse/protocol/room/index.ts";
import { tokenFor } from "./agents.ts";
import { call, comeBack, joinRoom, meet, openRoom, type Running, records, startRelay } from "./sockets.ts";

/* What people try who are not meant to, over real sockets. Each test comes from addresses of its own. */

let running: Running;
let now = Date.now();
beforeAll(async () => {
  running = await startRelay({ now: () => now });
});
afterAll(() => running.relay.close());

/** Why the relay hung up on a first message. */
async function refusal(first: object | string, from: string): Promise<string> {
  const caller = await call(running, from);
  caller.say(first);
  const { why } = await caller.hear("no");
  await caller.closed;
  return why;
}
const join = (code: string, token = tokenFor()) => ({ type: "join", v: 1, code, token });

describe("guessing a code", () => {
  test("is stopped after five tries a minute from one address", async () => {
    const from = "198.51.100.1";
    for (let nth = 0; nth < 5; nth++) expect(await refusal(join("00000000"), from)).toBe("no-such-code");
    const { code } = await openRoom(running, "198.51.100.2");
    expect(await refusal(join(code), from)).toBe("too-often");
  });

  test("locks an agent after ten failures, wherever they come from", async () => {
    const token = tokenFor({ sub: "guesser" });
    for (let nth = 0; nth < 10; nth++)
      expect(await refusal(join("00000000", token), `198.51.101.${nth}`)).toBe("no-such-code");
    const { code } = await openRoom(running, "198.51.100.3");
    expect(await refusal(join(code, token), "198.51.101.99")).toBe("locked");
    now += 16 * 60_000;
  });

  test("finds nothing by a code that was used, or that another has replaced", async () => {
    const phone = await openRoom(running, "198.51.100.4");
    await joinRoom(running, phone.code, "198.51.100.5");
    expect(await refusal(join(phone.code), "198.51.100.6")).toBe("no-such-code");
    phone.put("code", "");
    const { code: second } = await phone.hear("code");
    phone.put("code", "");
    const { code: third } = await phone.hear("code");
    expect(await refusal(join(second), "198.51.100.6")).toBe("no-such-code");
    // As somebody types it who heard it over the phone.
    const typed = ` ${third.toLowerCase().replaceAll("0", "o").replaceAll("1", "l")} `;
    expect(readCode(typed)).toBe(readCode(third));
    expect((await joinRoom(running, typed, "198.51.100.6")).peer).toBe("a2");
  });

  test("finds nothing by a code that is ten minutes old", async () => {
    const { code } = await openRoom(running, "198.51.100.7");
    now += 600_000;
    expect(await refusal(join(code), "198.51.100.8")).toBe("no-such-code");
  });
});

describe("a token", () => {
  const cases: [string, () => string][] = [
    ["that has expired", () => tokenFor({ exp: Math.floor(now / 1000) - 1 })],
    ["that is not valid yet", () => tokenFor({ nbf: Math.floor(now / 1000) + 60 })],
    ["of another shop", () => tokenFor({ shop: "another" })],
    ["signed with another key", () => tokenFor({}, { with: new Uint8Array(32) })],
    ["for no algorithm", () => tokenFor({}, { header: { alg: "none" } })],
    ["without its signature", () => tokenFor().replace(/[^.]*$/, "")],
    ["of which a letter was changed", () => tokenFor().replace(/^(.{50})./, "$1_")],
    ["that never ends", () => tokenFor({ exp: undefined })],
    ["of nobody", () => ""],
  ];
  test.each(cases)("%s lets nobody in", async (what, token) => {
    const phone = await openRoom(running, `203.0.113.${what.length}`);
    expect(await refusal(join(phone.code, token()), `203.0.113.${100 + what.length}`)).toBe("no-such-token");
  });
});

describe("a connection", () => {
  test.each([
    ["of a foreign page", { origin: "https://shop.example.evil" }, "/rooms", 403],
    ["of a page over plain HTTP", { origin: "http://shop.example" }, "/rooms", 403],
    ["of no page", { origin: undefined }, "/rooms", 403],
    ["with something in its address", {}, "/rooms?secret=1", 404],
    ["elsewhere", {}, "/", 404],
  ])("%s is not taken", async (_, own, path, status) => {
    await expect(call(running, "203.0.113.1", own, path)).rejects.toThrow(`${status}`);
  });

  test("is not compressed, whatever is offered", async () => {
    const caller = await call(running, "203.0.113.2", { perMessageDeflate: true });
    expect(caller.socket.extensions).toBe("");
    caller.socket.close();
  });

  test.each([
    ["no JSON", "entry"],
    ["a later message", { type: "ask", after: 0 }],
    ["a claimed role", { type: "open", v: 1, role: "agent" }],
    ["names of prototypes", '{"type":"open","v":1,"__proto__":{"v":1},"constructor":1}'],
    ["deep nesting", "[".repeat(4000)],
  ])("that begins with %s is ended", async (_, first) => {
    expect(await refusal(first, "203.0.113.3")).toBe("malformed");
  });

  test("that sends something binary is ended", async () => {
    const caller = await call(running, "203.0.113.4");
    caller.socket.send(Buffer.from('{"type":"open","v":1}'));
    expect((await caller.hear("no")).why).toBe("malformed");
  });

  test("that sends more than 4 kB at once is ended before it is read", async () => {
    const { phone } = await meet(running, "203.0.113.5");
    phone.put("entry", "x".repeat(4100));
    expect(await phone.closed).toBe(1009);
  });

  test("that floods is cut, and what it flooded is not kept", async () => {
    const { phone } = await meet(running, "203.0.113.6");
    for (let nth = 0; nth < 300; nth++) phone.put("entry", "x");
    expect((await phone.hear("no")).why).toBe("flood");
    const kept = (await running.store.after(phone.room, 0)).filter(({ kind }) => kind === "entry");
    expect(kept.length).toBeLessThanOrEqual(25);
  });
});

describe("an agent", () => {
  test.each(["entry", "admit", "pause", "resume", "code", "end", "turn-away"])(
    "may not send %s",
    async (kind) => {
      const { phone, desk } = await meet(running, `203.0.114.${kind.length}`);
      desk.put(kind, desk.peer);
      expect((await desk.hear("no")).why).toBe("not-yours");
      expect((await running.store.after(phone.room, 0)).map(({ from, kind }) => `${from} ${kind}`)).toEqual([
        "h opened",
        "a1 joined",
        "h admit",
      ]);
      now += 61_000;
    },
  );

  test.each([
    ["a sender", '{"type":"put","lane":"carried","n":1,"kind":"line","body":"","from":"h"}'],
    ["a place", '{"type":"put","lane":"carried","n":1,"kind":"line","body":"","seq":1}'],
    ["a kind of the relay's", '{"type":"put","lane":"steering","n":2,"kind":"joined","body":"Ash"}'],
    ["the other lane", '{"type":"put","lane":"steering","n":2,"kind":"line","body":""}'],
  ])("cannot forge %s", async (what, forged) => {
    const { phone, desk } = await meet(running, `203.0.115.${what.length}`);
    desk.say(forged);
    expect((await desk.hear("no")).why).toMatch(/malformed|not-yours/);
    expect(await running.store.after(phone.room, 3)).toEqual([]);
  });

  test.each([
    ["steering", 1, "entry"],
    ["carried", 2, "end"],
    ["carried", 2, "admit"],
  ])(
    "cannot pass the judge on %s with a number %i that is kept there, for %s, which goes on the other",
    async (lane, n, kind) => {
      const { phone, desk } = await meet(running, `203.0.117.${kind.length}`);
      for (const body of ["1", "2"]) desk.put("line", body);
      while ((await desk.hear("kept")).n < 2);
      desk.say({ type: "put", lane, n, kind, body: desk.peer });
      expect((await desk.hear("no")).why).toBe("not-yours");
      const kept = (await running.store.after(phone.room, 3)).map(({ from, kind }) => `${from} ${kind}`);
      expect(kept).toEqual(["a1 line", "a1 line"]);
    },
  );

  test("cannot say something else by a number that is taken", async () => {
    const { desk } = await meet(running, "203.0.116.1");
    desk.put("line", "first");
    await desk.hear("kept");
    desk.put("line", "first", 1);
    expect(await desk.hear("kept")).toMatchObject({ n: 1, seq: 4 });
    desk.put("line", "second", 1);
    expect((await desk.hear("no")).why).toBe("number-taken");
  });

  test("who was not let in hears nothing of the room and says nothing in it", async () => {
    const { phone } = await meet(running, "203.0.116.2");
    phone.put("code", "");
    const { code } = await phone.hear("code");
    const other = await joinRoom(running, code, "203.0.116.3");
    phone.put("entry", "what is said");
    await phone.hear("kept");
    other.put("line", "hello");
    expect(await other.hear("wait")).toMatchObject({ why: "not-admitted" });
    other.say({ type: "ask", after: 0 });
    await other.hear("all");
    expect(other.heard.join()).not.toMatch(/record|what is said/);
  });

  test("cannot pass for the householder by a number that they used on the other lane", async () => {
    for (const [nth, kind] of ["end", "pause", "admit", "code", "entry", "heard"].entries()) {
      const { phone, desk } = await meet(running, `203.0.118.${nth}`);
      const lane = kind === "entry" || kind === "heard" ? "steering" : "carried";
      // Their second number on the lane that the kind is none of; on the other it would be the next.
      desk.put("line", "one");
      desk.put("line", "two");
      while ((await desk.hear("kept")).n < 2);
      desk.say({ type: "put", lane, n: lane === "carried" ? 2 : 1, kind, body: "a1" });
      expect((await desk.hear("no")).why, kind).toBe("not-yours");
      phone.put("line", "still ours");
      let kept = await phone.hear("kept");
      while (kept.lane !== "carried") kept = await phone.hear("kept");
      expect(kept.seq, kind).toBe(6);
    }
  });

  test("cannot take the householder's place, nor another's", async () => {
    const { phone, desk } = await meet(running, "203.0.116.4");
    for (const peer of ["h", "a2", "__proto__"])
      expect(
        await refusal(
          { type: "return", v: 1, room: phone.room, peer, secret: desk.secret, after: 0 },
          "203.0.116.5",
        ),
      ).toBe("unknown");
  });

  test("gets no digest of a secret with what is carried", async () => {
    const { phone, desk } = await meet(running, "203.0.116.6");
    const back = await comeBack(running, desk, 0);
    const seen = await records(back, 3);
    expect(seen.map(({ kind }) => kind)).toEqual(["opened", "joined", "admit"]);
    expect([...phone.heard, ...back.heard].join()).not.toContain("sealed");
  });
});
