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
    expect(createLogStore("a", () => storage).write({ events: [1] })).toBe(true);
    expect(createLogStore("a", () => storage).read()).toEqual({ events: [1] });
  });

  test("a log set aside lies beside the one in use, and a new start clears both", () => {
    const kept = new Map<string, string>();
    const store = createLogStore("a", () => createStorage(kept));
    store.setAside({ events: [1, 2] });
    store.write({ events: [1] });
    expect(store.read()).toEqual({ events: [1] });
    expect([...kept.values()]).toContain('{"events":[1,2]}');
    store.clear();
    expect(kept.size).toBe(0);
  });

  test("two panels of one site do not see each other", () => {
    const storage = createStorage();
    createLogStore("a", () => storage).write(1);
    expect(createLogStore("b", () => storage).read()).toBeNull();
  });

  test("denied storage says so and keeps the log in memory", () => {
    const store = createLogStore("a", denied);
    expect(store.write({ events: [] })).toBe(false);
    expect(store.read()).toEqual({ events: [] });
    store.clear();
    expect(store.read()).toBeNull();
  });

  test("a full storage says so", () => {
    const full = { ...createStorage(), setItem: denied } as Storage;
    expect(createLogStore("a", () => full).write(1)).toBe(false);
  });

  test("a storage that fills up does not bring an older log back", () => {
    const storage = createStorage();
    const store = createLogStore("a", () => storage);
    store.write({ events: [1] });
    storage.setItem = denied;
    store.write({ events: [1, 2] });
    expect(store.read()).toEqual({ events: [1, 2] });
  });

  test("spoilt text in storage counts as nothing", () => {
    expect(createLogStore("a", () => createStorage(new Map([["fridgeside:a", "{oops"]]))).read()).toBeNull();
  });
});
