import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { createSeals, openRedisStore } from "../../../src/cobrowse/relay/index.ts";
import { key, shop } from "../relay/agents.ts";
import { call, comeBack, joinRoom, openRoom, type Running, records, startRelay } from "../relay/sockets.ts";
import { noRedis, type OwnRedis, startRedis, withRedis } from "./redis-server.ts";

/* What a Redis does to the relays that share it: it goes, comes back, is slow to, is full, or has forgotten. */

describe.skipIf(noRedis)(`a relay, ${withRedis},`, () => {
  let redis: OwnRedis;
  let relays: Running[];
  let states: string[];
  let heard: () => void;
  beforeEach(async () => {
    [states, heard] = [[], () => {}];
    redis = await startRedis(true);
    const onState = (state: string, why = "") => {
      states.push(`${state} ${why}`.trim());
      heard();
    };
    const open = () => openRedisStore({ url: redis.url, shop, seal: createSeals(key).name, onState });
    relays = [await startRelay({ store: open() }), await startRelay({ store: open() })];
  });
  afterEach(async () => {
    await Promise.all(relays.map(({ relay }) => relay.close()));
    await redis.remove();
  });
  const until = async (isSo: () => boolean) => {
    while (!isSo())
      await new Promise<void>((done) => {
        heard = done;
      });
  };
  const states_ = (state: string) => states.filter((one) => one.startsWith(state)).length;
  const ready = async (one = relays[0] as Running) =>
    (await fetch(`http://127.0.0.1:${one.watchPort}/ready`)).status;

  const meetApart = async () => {
    const [one, other] = relays as [Running, Running];
    const phone = await openRoom(one);
    const desk = await joinRoom(other, phone.code);
    while ((await phone.hear("record")).kind !== "joined");
    phone.put("admit", desk.peer);
    await phone.hear("kept");
    await records(desk, 3);
    return { phone, desk };
  };

  test("acknowledges nothing while Redis is away, and everything once it is back: nothing lost, nothing twice", async () => {
    const { phone, desk } = await meetApart();
    phone.put("entry", "before");
    await phone.hear("kept");
    await desk.hear("record");
    await redis.kill();
    await until(() => states_("away") === 2);
    expect(await ready()).toBe(503);
    phone.put("entry", "meanwhile");
    desk.put("line", "from the desk");
    const kept = phone.heard.length;
    // Read slowly, so that it says LOADING for a while.
    const delayed = ["--key-load-delay", "60000", "--loading-process-events-interval-bytes", "1024"];
    await redis.start(...delayed);
    expect(phone.heard.slice(kept).join()).not.toContain("kept");
    await until(() => states_("back") === 4);
    // Whether the relay waited for it or the sender says it again, it has one place.
    phone.put("entry", "meanwhile", 2);
    desk.put("line", "from the desk", 1);
    phone.put("entry", "after", 3);
    const seen = await records(desk, 3);
    expect(seen.map(({ seq }) => seq)).toEqual([5, 6, 7]);
    expect(seen.map(({ body }) => body).sort()).toEqual(["after", "from the desk", "meanwhile"]);
    expect(await ready()).toBe(200);
    expect((await records(await comeBack(relays[1] as Running, phone, 4), 3)).map(({ seq }) => seq)).toEqual([
      5, 6, 7,
    ]);
  });

  test("reads what was published while its line to Redis was cut", async () => {
    const { phone, desk } = await meetApart();
    const room = `fridgeside:${shop}:${phone.room}`;
    // Kept and published while no relay heard anything.
    const entry = JSON.stringify({ from: "h", n: 1, at: 1, kind: "entry", body: "said in between" });
    await redis.ask("RPUSH", `fridgeside:${shop}:log:${phone.room}`, entry);
    await redis.ask("CLIENT", "KILL", "TYPE", "pubsub");
    expect(await desk.hear("record")).toMatchObject({ seq: 4, body: "said in between" });
    await until(() => states_("back") === 4);
    expect((await redis.ask("PUBSUB", "NUMSUB", room)) as unknown[]).toEqual([room, 2]);
  });

  test("reads what is missing before an entry that comes too early", async () => {
    const { phone, desk } = await meetApart();
    const [log, room] = [`fridgeside:${shop}:log:${phone.room}`, `fridgeside:${shop}:${phone.room}`];
    const entry = (n: number) => JSON.stringify({ from: "h", n, at: 1, kind: "entry", body: `${n}` });
    // As by a Redis that has lost the first of two messages to this relay.
    await redis.ask("RPUSH", log, entry(1), entry(2));
    await redis.ask("PUBLISH", room, `5 ${entry(2)}`);
    expect((await records(desk, 2)).map(({ seq, body }) => `${seq} ${body}`)).toEqual(["4 1", "5 2"]);
  });

  test("says of a room that Redis has forgotten that it is unknown, and does not begin it anew", async () => {
    const { phone, desk } = await meetApart();
    await redis.ask("FLUSHALL");
    phone.put("entry", "to nobody");
    expect((await phone.hear("no")).why).toBe("unknown");
    expect(await redis.ask("EXISTS", `fridgeside:${shop}:log:${phone.room}`)).toBe(0);
    desk.put("line", "to nobody");
    expect((await desk.hear("no")).why).toBe("unknown");
  });

  test("says the same to who has seen more of a room than Redis has kept", async () => {
    const { phone } = await meetApart();
    await redis.ask("RPOP", `fridgeside:${shop}:log:${phone.room}`);
    const store = openRedisStore({ url: redis.url, shop, seal: (name) => name, onState: () => {} });
    const third = await startRelay({ store });
    relays.push(third);
    const back = await call(third);
    back.say({ type: "return", v: 1, room: phone.room, peer: "h", secret: phone.secret, after: 3 });
    expect((await back.hear("no")).why).toBe("unknown");
  });

  test("is not ready while Redis takes nothing, though it answers", async () => {
    const { phone } = await meetApart();
    await redis.ask("CONFIG", "SET", "maxmemory", "1");
    phone.put("entry", "to a full Redis");
    await until(() => states.includes("away OOM"));
    expect(await ready()).toBe(503);
    await redis.ask("CONFIG", "SET", "maxmemory", "0");
    phone.put("entry", "to a full Redis", 1);
    expect((await phone.hear("kept")).seq).toBe(4);
  });
});
