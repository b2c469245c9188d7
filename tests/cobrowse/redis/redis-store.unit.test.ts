import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { relayBounds as bounds } from "../../../src/cobrowse/protocol/index.ts";
import type { Draft, Stored } from "../../../src/cobrowse/protocol/room/index.ts";
import { openRedisStore, type Store } from "../../../src/cobrowse/relay/index.ts";
import { noRedis, type OwnRedis, startRedis, withRedis } from "./redis-server.ts";

const minute = 60_000;

describe.skipIf(noRedis)(`the store of several relays, ${withRedis},`, () => {
  let redis: OwnRedis;
  let one: Store;
  let other: Store;
  let nth = 0;
  const open = () => openRedisStore({ url: redis.url, shop: "s", seal: (name) => name, onState: () => {} });
  beforeAll(async () => {
    redis = await startRedis();
    [one, other] = [open(), open()];
  });
  afterAll(async () => {
    await Promise.all([one.close(), other.close()]);
    await redis.remove();
  });
  const draft = (n: number, kind = "entry", from = "h"): Draft => ({ from, n, kind, body: `${n}` });
  const basis = (seen: number, until: number | null = null) => ({ seen, until });
  /** A room that was opened, by a name of its own. */
  const opened = async () => {
    const room = `room-${nth++}`;
    const until = Date.now() + 10 * minute;
    await one.append(room, { ...draft(1, "opened"), sealed: "digest" }, 5, basis(0, until));
    return { room, until };
  };
  const left = async (room: string) =>
    Promise.all([`s:log:${room}`, `s:room:${room}`].map((name) => redis.ask("PTTL", `fridgeside:${name}`)));

  test("numbers a message once, says what is missing, and gives back the first that was said", async () => {
    const { room } = await opened();
    expect(await one.append(room, draft(1), 6, basis(1))).toEqual({
      type: "fresh",
      stored: { seq: 2, at: 6, ...draft(1) },
    });
    const again = await other.append(room, { ...draft(1), body: "else" }, 7, basis(1));
    expect(again).toEqual({ type: "known", stored: { seq: 2, at: 6, ...draft(1) } });
    expect(await other.append(room, draft(3), 8, basis(2))).toEqual({ type: "missing", last: 1 });
    await other.append(room, draft(2), 8, basis(2));
    // Any of them, not the last alone.
    expect(await one.append(room, draft(1), 9, basis(3))).toMatchObject({
      type: "known",
      stored: { seq: 2 },
    });
    expect(await other.after(room, 0)).toEqual([
      { seq: 1, at: 5, ...draft(1, "opened"), sealed: "digest" },
      { seq: 2, at: 6, ...draft(1) },
      { seq: 3, at: 8, ...draft(2) },
    ]);
    expect(await other.after(room, 1)).toHaveLength(2);
  });

  test("takes nothing that was judged before somebody steered the room, and what was judged after", async () => {
    const { room } = await opened();
    await one.append(room, draft(2, "pause"), 6, basis(1));
    expect(await other.append(room, draft(1, "line", "a1"), 7, basis(1))).toEqual({ type: "moved" });
    expect(await other.append(room, draft(3, "resume"), 7, basis(1))).toEqual({ type: "moved" });
    expect((await other.append(room, draft(1, "line", "a1"), 7, basis(2))).type).toBe("fresh");
    // What is only carried holds up nobody.
    expect((await one.append(room, draft(1), 8, basis(2))).type).toBe("fresh");
  });

  test("counts every entry once a room is nearly full, so that no two relays fill it twice", async () => {
    const { room } = await opened();
    const numbers = Array.from({ length: bounds.entries - 1 }, (_, place) => place + 1);
    await Promise.all(numbers.map((n) => one.append(room, draft(n), 6, basis(1))));
    expect((await one.append(room, draft(bounds.entries), 6, basis(bounds.entries))).type).toBe("fresh");
    expect(await other.append(room, draft(1, "line", "a1"), 6, basis(bounds.entries))).toEqual({
      type: "moved",
    });
  });

  test("begins no room by anything but its opening, and goes on with none of which something was lost", async () => {
    expect(await one.append("nowhere", draft(1), 5, basis(0))).toEqual({ type: "lost" });
    expect(await one.seat("nowhere", "h")).toBe(null);
    expect(await one.watch("nowhere")).toEqual([]);
    const { room } = await opened();
    expect(await one.append(room, draft(1), 5, basis(2))).toEqual({ type: "lost" });
    expect(await redis.ask("EXISTS", "fridgeside:s:room:nowhere")).toBe(0);
  });

  test("has Redis end a room, by the instant that the last step of steering came to", async () => {
    const { room, until } = await opened();
    const expectLeft = async (from: number) => {
      const before = Date.now();
      const spans = await left(room);
      const after = Date.now();
      for (const span of spans) {
        expect(span).toBeLessThanOrEqual(from - before + 2);
        expect(span).toBeGreaterThanOrEqual(from - after - 2);
      }
    };
    await expectLeft(until);
    await one.append(room, draft(1), 6, basis(1));
    await one.seat(room, "h");
    await expectLeft(until);
    const later = until + 100 * minute;
    await one.append(room, draft(1, "joined", "a1"), 6, basis(2, later));
    await expectLeft(later);
    await one.append(room, draft(2, "end"), 6, basis(3, Date.now() - 1));
    expect(await one.after(room, 0)).toEqual([]);
    expect(await left(room)).toEqual([-2, -2]);
  });

  test("forgets a room with all that was said in it", async () => {
    const { room } = await opened();
    await other.forget(room);
    expect(await left(room)).toEqual([-2, -2]);
  });

  test("tells each relay that watches a room of all that comes, each once and in order, and no other", async () => {
    const { room } = await opened();
    const told: string[] = [];
    let heard = () => {};
    const follower = (name: string) => ({
      kept: (_: string, { seq }: Stored) => {
        told.push(`${name} ${seq}`);
        heard();
      },
      seated: (_: string, peer: string, place: number) => void told.push(`${name} ${peer} ${place}`),
      lost: () => {},
    });
    const ends = [one.follow(follower("one")), other.follow(follower("other"))];
    expect((await one.watch(room)).map(({ seq }) => seq)).toEqual([1]);
    for (let n = 1; n <= 3; n++) await other.append(room, draft(n), 6, basis(1));
    await one.catchUp(room);
    expect(told).toEqual(["one 2", "one 3", "one 4"]);
    expect((await other.watch(room)).map(({ seq }) => seq)).toEqual([1, 2, 3, 4]);
    const places = [await one.seat(room, "h"), await other.seat(room, "h")];
    await one.catchUp(room);
    expect(places).toEqual([1, 2]);
    expect(told.slice(3).sort()).toEqual(["one h 1", "one h 2", "other h 1", "other h 2"]);
    one.unwatch(room);
    await other.append(room, draft(4), 6, basis(4));
    await one.catchUp(room);
    while (!told.includes("other 5"))
      await new Promise<void>((done) => {
        heard = done;
      });
    expect(told).not.toContain("one 5");
    for (const end of ends) end();
  });

  test("finds a code once, and not after it has ended", async () => {
    await one.keepCode("digest", { room: "r", seq: 7 }, Date.now() + minute);
    const both = await Promise.all([one.takeCode("digest", 0), other.takeCode("digest", 0)]);
    expect(both.filter(Boolean)).toEqual([{ room: "r", seq: 7 }]);
    await one.keepCode("digest", { room: "r", seq: 7 }, Date.now() - 1);
    expect(await one.takeCode("digest", 0)).toBe(null);
  });
});
