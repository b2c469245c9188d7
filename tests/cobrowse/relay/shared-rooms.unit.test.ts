import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { createMemoryStore, type Store } from "../../../src/cobrowse/relay/index.ts";
import { createRooms } from "../../../src/cobrowse/relay/rooms.ts";
import { comeBack, joinRoom, openRoom, type Running, records, startRelay } from "./sockets.ts";

/* Two relays on one store, of which one hears late what the other has had kept. */

let one: Running;
let late: Running;
/** What the late relay has not heard yet. */
let unheard: (() => void)[];
const hearAll = () => {
  for (const tell of unheard.splice(0)) tell();
};

/** Says of an append what a script says: that others were faster. By the time of the answer they were heard. */
function lateStore(store: Store): Store {
  return {
    ...store,
    isShared: true,
    follow: (follower) =>
      store.follow({
        ...follower,
        kept: (room, stored) => void unheard.push(() => follower.kept(room, stored)),
      }),
    catchUp: async () => hearAll(),
    append: async (room, draft, at, basis) => {
      if (!unheard.length) {
        const placed = await store.append(room, draft, at, basis);
        hearAll();
        return placed;
      }
      hearAll();
      return { type: "moved" };
    },
  };
}

beforeEach(async () => {
  unheard = [];
  const store = createMemoryStore();
  [one, late] = [await startRelay({ store }), await startRelay({ store: lateStore(store) })];
});
afterEach(async () => {
  await Promise.all([one.relay.close(), late.relay.close()]);
});

describe("a relay that hears late of what was kept", () => {
  test("lets somebody back in who joined at the other a moment ago", async () => {
    const phone = await openRoom(one);
    const back = await comeBack(late, phone, 1);
    const desk = await joinRoom(one, phone.code);
    expect(unheard.length).toBeGreaterThan(0);
    expect((await comeBack(late, desk, 0)).peer).toBe("a1");
    expect((await back.hear("record")).kind).toBe("joined");
  });

  test("judges again what it had judged before a pause, and keeps it back", async () => {
    const phone = await openRoom(one);
    const desk = await joinRoom(one, phone.code);
    phone.put("admit", desk.peer);
    const agent = await comeBack(late, desk, 0);
    await records(agent, 3);
    phone.put("pause", "");
    while ((await phone.hear("record")).kind !== "pause");
    agent.put("line", "hello");
    expect(await agent.hear("wait")).toEqual({ type: "wait", lane: "carried", n: 1, why: "paused" });
    expect((await one.store.after(phone.room, 4)).map(({ kind }) => kind)).toEqual([]);
  });
});

test("a room that nobody is in any more is left to the store that others share, half a minute later", async () => {
  let now = 0;
  const left: string[] = [];
  const store: Store = { ...createMemoryStore(), isShared: true, unwatch: (room) => void left.push(room) };
  await store.append("r", { from: "h", n: 1, kind: "opened", body: "" }, now, { seen: 0, until: null });
  const rooms = createRooms(
    store,
    () => now,
    () => {},
  );
  await rooms.find("r");
  now = 29_999;
  await rooms.tick();
  expect([rooms.count(), left]).toEqual([1, []]);
  now = 30_000;
  await rooms.tick();
  expect([rooms.count(), left]).toEqual([0, ["r"]]);
  expect(await store.after("r", 0)).toHaveLength(1);
  expect((await rooms.find("r"))?.records).toHaveLength(1);
});
