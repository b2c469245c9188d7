import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { createSeals, openRedisStore, type Store } from "../../../src/cobrowse/relay/index.ts";
import { key, shop, tokenFor } from "../relay/agents.ts";
import { call, comeBack, joinRoom, openRoom, type Running, records, startRelay } from "../relay/sockets.ts";
import { noRedis, type OwnRedis, startRedis, withRedis } from "./redis-server.ts";

/* Two relays over one Redis: whichever of them somebody is on, it is the same room. */

describe.skipIf(noRedis)(`two relays, ${withRedis}`, () => {
  let redis: OwnRedis;
  let one: Running;
  let other: Running;
  const states: string[] = [];
  const open = (): Store =>
    openRedisStore({
      ...{ url: redis.url, shop, seal: createSeals(key).name },
      onState: (state, why) => states.push(why ? `${state} ${why}` : state),
    });
  beforeEach(async () => {
    states.length = 0;
    redis = await startRedis(true);
    [one, other] = [await startRelay({ store: open() }), await startRelay({ store: open() })];
  });
  afterEach(async () => {
    await Promise.all([one.relay.close(), other.relay.close()]);
    await redis.remove();
  });

  /** A phone on the one relay and an agent on the other. */
  const meetApart = async () => {
    const phone = await openRoom(one);
    const desk = await joinRoom(other, phone.code);
    while ((await phone.hear("record")).kind !== "joined");
    phone.put("admit", desk.peer);
    await phone.hear("kept");
    expect((await records(desk, 3)).map(({ kind }) => kind)).toEqual(["opened", "joined", "admit"]);
    return { phone, desk };
  };

  test("carry what is said on either to the other, in one order", async () => {
    const { phone, desk } = await meetApart();
    for (let nth = 1; nth <= 8; nth++) {
      phone.put("entry", `entry ${nth}`);
      desk.put("line", `line ${nth}`);
    }
    const seen = await records(desk, 16);
    expect(seen.map(({ seq }) => seq)).toEqual(seen.map((_, place) => place + 4));
    expect(seen.filter(({ from }) => from === "h").map(({ n }) => n)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    const own: unknown[] = [];
    for (let seq = 0; seq < 19; ) {
      const record = await phone.hear("record");
      seq = record.seq;
      if (seq > 3) own.push(record);
    }
    expect(own).toEqual(seen);
  });

  test("let both come back on the relay that they were not on, and know what is said again", async () => {
    const { phone, desk } = await meetApart();
    phone.put("entry", "first");
    await phone.hear("kept");
    const [back, agent] = [await comeBack(other, phone, 3), await comeBack(one, desk, 4)];
    expect(await back.hear("record")).toMatchObject({ seq: 4, body: "first" });
    back.put("entry", "first", 1);
    expect(await back.hear("kept")).toEqual({ type: "kept", lane: "carried", n: 1, seq: 4 });
    back.put("entry", "second", 2);
    for (const each of [agent, back])
      expect(await each.hear("record")).toMatchObject({ seq: 5, body: "second" });
  });

  test("end the older line of somebody who has come back on the other", async () => {
    const { phone } = await meetApart();
    const back = await comeBack(other, phone, 3);
    expect((await phone.hear("no")).why).toBe("replaced");
    expect(await phone.closed).toBe(4001);
    back.put("entry", "here");
    expect((await back.hear("kept")).seq).toBe(4);
    const again = await comeBack(one, phone, 4);
    expect((await back.hear("no")).why).toBe("replaced");
    again.put("entry", "and here again", 2);
    expect((await again.hear("kept")).seq).toBe(5);
  });

  test("turn nobody away who came in on the other a moment ago, and somebody with another's secret", async () => {
    const { phone } = await meetApart();
    phone.put("code", "");
    const second = await joinRoom(other, (await phone.hear("code")).code);
    expect((await comeBack(one, second, 0)).peer).toBe("a2");
    const thief = await call(one);
    thief.say({ type: "return", v: 1, room: phone.room, peer: "h", secret: second.secret, after: 0 });
    expect((await thief.hear("no")).why).toBe("unknown");
  });

  test("take a code once, whichever of them it is tried on", async () => {
    const { code } = await openRoom(one);
    const tried = await Promise.allSettled([joinRoom(one, code), joinRoom(other, code)]);
    expect(tried.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
  });

  test("count tries and failures together", async () => {
    const from = "198.51.100.1";
    const why = async (running: Running, address: string, token = tokenFor()) => {
      const caller = await call(running, address);
      caller.say({ type: "join", v: 1, code: "00000000", token });
      return (await caller.hear("no")).why;
    };
    for (const relay of [one, other, one, other, one]) expect(await why(relay, from)).toBe("no-such-code");
    expect(await why(other, from)).toBe("too-often");
    const token = tokenFor({ sub: "guesser" });
    for (let nth = 0; nth < 10; nth++) await why(nth % 2 ? one : other, `198.51.101.${nth}`, token);
    expect(await why(one, "198.51.101.99", token)).toBe("locked");
    expect(await why(other, "198.51.101.98", token)).toBe("locked");
  });

  test("hear of those rooms alone that somebody is in", async () => {
    const { phone } = await meetApart();
    const listening = async () =>
      (await redis.ask("PUBSUB", "NUMSUB", `fridgeside:${shop}:${phone.room}`)) as [string, number];
    expect((await listening())[1]).toBe(2);
    await openRoom(one, "192.0.2.9");
    expect((await redis.ask("PUBSUB", "CHANNELS")) as string[]).toHaveLength(2);
  });

  test("leave nothing in Redis by which somebody could come in, and not where they come from", async () => {
    const { phone, desk } = await meetApart();
    const guess = await call(one, "198.51.100.77");
    guess.say({ type: "join", v: 1, code: "00000000", token: tokenFor({ sub: "agent-sub" }) });
    await guess.hear("no");
    phone.put("code", "");
    const { code } = await phone.hear("code");
    const kept: unknown[] = [];
    for (const name of (await redis.ask("KEYS", "*")) as string[]) {
      const type = await redis.ask("TYPE", name);
      const read = { list: ["LRANGE", 0, -1], hash: ["HGETALL"], string: ["GET"] }[`${type}`] as [
        string,
        ...number[],
      ];
      kept.push(name, await redis.ask(read[0], name, ...(read.slice(1) as number[])));
      expect(await redis.ask("PTTL", name), name).toBeGreaterThan(0);
    }
    const text = JSON.stringify(kept);
    expect(text).toContain("joined");
    for (const secret of [
      phone.secret,
      desk.secret,
      phone.code,
      code,
      code.replace("-", ""),
      "198.51.100.77",
      "192.0.2.1",
      "agent-sub",
    ])
      expect(text).not.toContain(secret);
  });
});
