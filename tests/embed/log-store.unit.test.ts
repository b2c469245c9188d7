import { describe, expect, test } from "vitest";
import { createLogStore } from "../../src/embed/log-store.ts";

const denied = () => {
  throw new DOMException("denied", "SecurityError");
};

function createStorage(kept: Map<string, string> = new Map()): Storage {
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  } as Storage;
}

describe("where the log is kept", () => {
  test("what was written is read again by a later visit", () => {
    const storage = createStorage();
    expect(createLogStore("a", () => storage).write("one")).toBe(true);
    expect(createLogStore("a", () => storage).read()).toBe("one");
  });

  test("a log set aside lies beside the one in use, and a new start clears both", () => {
    const kept = new Map<string, string>();
    const store = createLogStore("a", () => createStorage(kept));
    store.setAside({ events: [1, 2] });
    store.write("one");
    expect(store.read()).toBe("one");
    expect([...kept.values()]).toContain('{"events":[1,2]}');
    store.clear();
    expect(kept.size).toBe(0);
  });

  test("each panel of a page that shows the session looks after a write, until it is gone", async () => {
    const store = createLogStore("a", () => createStorage());
    const looked: string[] = [];
    const ends = ["one", "two"].map((panel) => store.watch(() => looked.push(panel)));
    store.write("one");
    // Not in the middle of what the writer does.
    expect(looked).toEqual([]);
    await Promise.resolve();
    expect(looked).toEqual(["one", "two"]);
    ends[0]?.();
    store.write("two");
    await Promise.resolve();
    expect(looked).toHaveLength(2);
  });

  test("two panels of one site do not see each other", () => {
    const storage = createStorage();
    createLogStore("a", () => storage).write("one");
    expect(createLogStore("b", () => storage).read()).toBeNull();
  });

  test("denied storage says so and keeps the log in memory", () => {
    const store = createLogStore("a", denied);
    expect(store.write("one")).toBe(false);
    expect(store.read()).toBe("one");
    store.clear();
    expect(store.read()).toBeNull();
  });

  test("a full storage says so", () => {
    const full = { ...createStorage(), setItem: denied } as Storage;
    expect(createLogStore("a", () => full).write("one")).toBe(false);
  });

  test("a storage that fills up does not bring an older log back", () => {
    const storage = createStorage();
    const store = createLogStore("a", () => storage);
    store.write("one");
    storage.setItem = denied;
    store.write("two");
    expect(store.read()).toBe("two");
  });

  test("what another tab writes takes the place of a copy in memory", () => {
    const kept = new Map<string, string>();
    const storage = createStorage(kept);
    const store = createLogStore("a", () => storage);
    storage.setItem = denied;
    store.write("mine");
    kept.set("fridgeside:a", "theirs");
    expect(store.read()).toBe("theirs");
  });

  test("sessions set aside outlast one in use, and spoilt ones count as none", () => {
    const kept = new Map<string, string>();
    const store = createLogStore("a", () => createStorage(kept));
    store.writeAside([{ events: [1] }]);
    store.write("one");
    expect(createLogStore("a", () => createStorage(kept)).readAside()).toEqual([{ events: [1] }]);
    for (const spoilt of ["{oops", '{"a":1}', "7"]) {
      kept.set("fridgeside:a:aside", spoilt);
      expect(store.readAside()).toEqual([]);
    }
  });

  test("sessions set aside where nothing can be kept stay as long as the page", () => {
    const store = createLogStore("a", denied);
    store.writeAside([{ events: [1] }]);
    expect(store.readAside()).toEqual([{ events: [1] }]);
    store.clear();
    expect(store.readAside()).toEqual([]);
  });
});
