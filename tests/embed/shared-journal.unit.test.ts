import { describe, expect, test } from "vitest";
import * as door from "../../src/embed/door.ts";
import { createLogStore } from "../../src/embed/log-store.ts";
import { createSharedJournal } from "../../src/embed/shared-journal.ts";
import { createLog, type Journal, journalOf } from "../../src/session/index.ts";
import { at } from "../session/drive.ts";
import { SharedStorage } from "./two-tabs.ts";

const journalWith = (count: number): Journal =>
  journalOf({
    ...createLog(at(0)),
    events: Array.from({ length: count }, (_, place) => ({ type: "help-asked" as const, at: at(place) })),
  });

/** Such a log as earlier versions kept. */
const oldLog = (count: number) => ({
  format: 1,
  flow: "1",
  model: null as string | null,
  started: at(0),
  events: Array.from({ length: count }, (_, place) => ({ type: "help-asked", at: at(place) })),
});

/** Nothing beside the journal. */
const alone = { consent: null, about: null };

function pair() {
  const storage = new SharedStorage();
  let ids = 0;
  const tab = () =>
    createSharedJournal(
      createLogStore("a", () => storage.place),
      () => `${ids++}`,
      () => door,
    );
  return { storage, one: tab(), other: tab() };
}

describe("a journal that two tabs share", () => {
  test("is news to the other tab once, and no news to the one that wrote it", () => {
    const { one, other } = pair();
    one.write(journalWith(1), alone);
    expect(one.readNews()).toBeNull();
    expect(other.readNews()).toMatchObject({ journal: journalWith(1), isHeir: true });
    expect(other.readNews()).toBeNull();
  });

  test("tells a tab whether what it wrote was seen by whoever wrote after it", () => {
    const { storage, one, other } = pair();
    one.write(journalWith(1), alone);
    other.readNews();
    other.write(journalWith(2), alone);
    expect(one.readNews()?.isHeir).toBe(true);
    storage.state = "full";
    one.write(journalWith(3), alone);
    storage.state = "open";
    other.write(journalWith(4), alone);
    expect(one.readNews()).toMatchObject({ journal: journalWith(4), isHeir: false });
  });

  test("may be a log that an earlier version has kept, or nothing of the kind", () => {
    const { storage, one } = pair();
    storage.kept.set("fridgeside:a", JSON.stringify(oldLog(2)));
    expect(one.readNews()).toMatchObject({ journal: journalWith(2), consent: null, isHeir: true });
    for (const spoilt of [
      "{oops",
      "null",
      '{"revisions":[7]}',
      JSON.stringify({ ...journalWith(1), format: 9 }),
    ]) {
      storage.kept.set("fridgeside:a", spoilt);
      expect(one.readNews()).toBeNull();
    }
    storage.kept.set("fridgeside:a", JSON.stringify({ ...journalWith(3), revisions: "all", consent: 7 }));
    expect(one.readNews()).toMatchObject({ journal: journalWith(3), consent: null });
  });

  test("is not written over by one that is too long to be read again", () => {
    const { one, other } = pair();
    one.write(journalWith(1), alone);
    other.readNews();
    expect(other.write(journalWith(1001), alone)).toBe(false);
    expect(one.readNews()).toBeNull();
  });

  test("keeps what a person agreed to beside it", () => {
    const { one, other } = pair();
    one.write(journalWith(1), { ...alone, consent: { at: at(5), model: "AB-1" } });
    expect(other.readNews()?.consent).toEqual({ at: at(5), model: "AB-1" });
  });

  test("keeps beside it which model a page has named, and moves one there that an earlier version took at its word", () => {
    const { storage, one, other } = pair();
    one.write(journalWith(1), { ...alone, about: "AB-1" });
    expect(other.readNews()).toMatchObject({ about: "AB-1", journal: { model: null } });
    storage.kept.set("fridgeside:a", JSON.stringify({ ...oldLog(2), model: "CD-2" }));
    expect(one.readNews()).toMatchObject({ about: "CD-2", journal: { model: null } });
  });
});
