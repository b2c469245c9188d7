import { describe, expect, test } from "vitest";
import { createLogStore } from "../../src/embed/log-store.ts";
import { createSharedLog } from "../../src/embed/shared-log.ts";
import { createLog, type Log } from "../../src/session/index.ts";
import { at } from "../session/drive.ts";
import { SharedStorage } from "./two-tabs.ts";

const logOf = (count: number): Log => ({
  ...createLog("1", at(0)),
  events: Array.from({ length: count }, (_, place) => ({ type: "help-asked" as const, at: at(place) })),
});

/** Nothing beside the log. */
const alone = { consent: null, about: null };

function pair() {
  const storage = new SharedStorage();
  let ids = 0;
  const tab = () =>
    createSharedLog(
      createLogStore("a", () => storage.place),
      () => `${ids++}`,
    );
  return { storage, one: tab(), other: tab() };
}

describe("a log that two tabs share", () => {
  test("is news to the other tab once, and no news to the one that wrote it", () => {
    const { one, other } = pair();
    one.write(logOf(1), alone);
    expect(one.readNews()).toBeNull();
    expect(other.readNews()).toMatchObject({ log: logOf(1), isHeir: true });
    expect(other.readNews()).toBeNull();
  });

  test("tells a tab whether what it wrote was seen by whoever wrote after it", () => {
    const { storage, one, other } = pair();
    one.write(logOf(1), alone);
    other.readNews();
    other.write(logOf(2), alone);
    expect(one.readNews()?.isHeir).toBe(true);
    storage.state = "full";
    one.write(logOf(3), alone);
    storage.state = "open";
    other.write(logOf(4), alone);
    expect(one.readNews()).toMatchObject({ log: logOf(4), isHeir: false });
  });

  test("may be one that an earlier version has kept, or no log at all", () => {
    const { storage, one } = pair();
    storage.kept.set("fridgeside:a", JSON.stringify(logOf(2)));
    expect(one.readNews()).toMatchObject({ log: logOf(2), consent: null, isHeir: true });
    for (const spoilt of ["{oops", "null", '{"revisions":[7]}', JSON.stringify({ ...logOf(1), format: 9 })]) {
      storage.kept.set("fridgeside:a", spoilt);
      expect(one.readNews()).toBeNull();
    }
    storage.kept.set("fridgeside:a", JSON.stringify({ ...logOf(3), revisions: "all", consent: 7 }));
    expect(one.readNews()).toMatchObject({ log: logOf(3), consent: null });
  });

  test("keeps what a person agreed to beside it", () => {
    const { one, other } = pair();
    one.write(logOf(1), { ...alone, consent: { at: at(5), model: "AB-1" } });
    expect(other.readNews()?.consent).toEqual({ at: at(5), model: "AB-1" });
  });

  test("keeps beside it which model a page has named, and moves one there that an earlier version took at its word", () => {
    const { storage, one, other } = pair();
    one.write(logOf(1), { ...alone, about: "AB-1" });
    expect(other.readNews()).toMatchObject({ about: "AB-1", log: { model: null } });
    storage.kept.set("fridgeside:a", JSON.stringify({ ...logOf(2), model: "CD-2" }));
    expect(one.readNews()).toMatchObject({ about: "CD-2", log: { model: null } });
  });
});
