import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type BasketRequest, createBasket } from "../../src/embed/basket.ts";

const part = { number: "B-1", name: "Ice bin", model: "AB-12" };
type Asked = BasketRequest & { added(): void; failed(): void };

function createStorage() {
  const kept = new Map<string, string>();
  const storage = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  } as Storage;
  return { kept, storage };
}

/** A page with a panel; what the page was asked for is in `asked`. */
function openPage(storage: Storage) {
  const host = new EventTarget();
  const asked: Asked[] = [];
  host.addEventListener("fridgeside-basket", (event) => asked.push((event as CustomEvent<Asked>).detail));
  const basket = createBasket("panel", () => storage);
  const ask = (wanted = part) => basket.ask(host, wanted);
  const askAgain = (wanted = part) => basket.askAgain(host, wanted);
  return { ...basket, ask, askAgain, asked, stateOf: (wanted = part) => basket.stateOf(wanted) };
}

beforeEach(() => {
  vi.useFakeTimers({ now: new Date("2026-01-01T09:00:00Z") });
});
afterEach(() => {
  vi.useRealTimers();
});

describe("the page's basket", () => {
  test("is asked for a part with its number, name and model, and believed when it says 'added'", () => {
    const page = openPage(createStorage().storage);
    page.ask();
    expect(page.stateOf()).toBe("adding");
    expect(page.asked).toMatchObject([part]);
    page.asked[0]?.added();
    expect(page.stateOf()).toBe("added");
  });

  test("is never asked twice for a part that was not answered or was added", () => {
    const page = openPage(createStorage().storage);
    page.ask();
    page.ask();
    vi.advanceTimersByTime(60_000);
    page.ask();
    page.asked[0]?.added();
    page.ask();
    page.askAgain();
    expect(page.asked).toHaveLength(1);
  });

  test("that says nothing for ten seconds is silent, and whoever watches is told", () => {
    const page = openPage(createStorage().storage);
    const changed = vi.fn();
    page.watch(changed);
    page.ask();
    changed.mockClear();
    vi.advanceTimersByTime(10_001);
    expect(changed).toHaveBeenCalled();
    expect(page.stateOf()).toBe("silent");
  });

  test("counts an 'added' that comes a minute late", () => {
    const page = openPage(createStorage().storage);
    page.ask();
    vi.advanceTimersByTime(60_000);
    page.asked[0]?.added();
    expect(page.stateOf()).toBe("added");
  });

  test("counts the first request's late 'added' though a second one failed meanwhile", () => {
    const page = openPage(createStorage().storage);
    page.ask();
    vi.advanceTimersByTime(11_000);
    page.askAgain();
    expect(page.asked).toHaveLength(2);
    page.asked[0]?.added();
    page.asked[1]?.failed();
    expect(page.stateOf()).toBe("added");
  });

  test("is taken at its first word for one request", () => {
    const page = openPage(createStorage().storage);
    page.ask();
    page.asked[0]?.failed();
    page.asked[0]?.added();
    expect(page.stateOf()).toBe("failed");
  });

  test("that failed can be asked again", () => {
    const page = openPage(createStorage().storage);
    page.ask();
    page.asked[0]?.failed();
    page.ask();
    expect(page.asked).toHaveLength(2);
  });

  test("keeps two machines apart that take the same part", () => {
    const page = openPage(createStorage().storage);
    page.ask();
    expect(page.stateOf({ ...part, model: "ZZ-9" })).toBe("new");
  });
});

describe("a part that was asked for, after a reload or in another tab", () => {
  test("is still in the basket", () => {
    const { storage } = createStorage();
    const page = openPage(storage);
    page.ask();
    page.asked[0]?.added();
    const later = openPage(storage);
    expect(later.stateOf()).toBe("added");
    later.ask();
    expect(later.asked).toEqual([]);
  });

  test("is not asked for again while nobody knows what became of it", () => {
    const { storage } = createStorage();
    openPage(storage).ask();
    const later = openPage(storage);
    expect(later.stateOf()).toBe("adding");
    later.ask();
    vi.advanceTimersByTime(11_000);
    expect(later.stateOf()).toBe("silent");
    later.ask();
    expect(later.asked).toEqual([]);
    later.askAgain();
    expect(later.asked).toHaveLength(1);
  });

  test("is free again after 'start again'", () => {
    const { storage, kept } = createStorage();
    const page = openPage(storage);
    page.ask();
    page.asked[0]?.added();
    page.clear();
    expect(page.stateOf()).toBe("new");
    expect(kept.size).toBe(0);
  });

  test("that was asked for at a time to come counts as not answered", () => {
    const { storage } = createStorage();
    openPage(storage).ask();
    vi.setSystemTime(new Date("2025-01-01T09:00:00Z"));
    expect(openPage(storage).stateOf()).toBe("silent");
  });
});

describe("what is kept of it", () => {
  test("has bounds, and the latest stays", () => {
    const { storage, kept } = createStorage();
    const page = openPage(storage);
    for (let count = 0; count < 100; count++) page.ask({ ...part, number: `${count}`.repeat(20) });
    expect([...kept.values()].join().length).toBeLessThan(10_000);
    expect(openPage(storage).stateOf({ ...part, number: "99".repeat(20) })).toBe("adding");
  });

  test.each(["{oops", "7", "[]", "null", '{"x":1}', '[["a",{}]]', "x".repeat(100_000)])(
    "%.12s in its place counts as nothing",
    (text) => {
      const { storage, kept } = createStorage();
      kept.set("fridgeside:panel:basket", text);
      const page = openPage(storage);
      expect(page.stateOf()).toBe("new");
      page.ask();
      expect(page.stateOf()).toBe("adding");
    },
  );

  test("lies in memory where storage is denied", () => {
    const denied = () => {
      throw new DOMException("denied", "SecurityError");
    };
    const basket = createBasket("panel", denied);
    const asked = vi.fn();
    const host = new EventTarget();
    host.addEventListener("fridgeside-basket", asked);
    basket.ask(host, part);
    basket.ask(host, part);
    expect(asked).toHaveBeenCalledTimes(1);
    expect(basket.stateOf(part)).toBe("adding");
  });
});
