import { describe, expect, test } from "vitest";
import { journalAt } from "../../demo/gallery/journal.js";
import { parseJournal, standingOf } from "../../src/session/index.ts";
import { ownFlow as flow, ownTexts } from "../own-flow.ts";
import { allTurns } from "./find-sessions.ts";
import { comeTo, readGallery, standOf } from "./read-gallery.ts";

const gallery = readGallery();
const stale = "The chart has changed: npm run gallery writes the gallery anew (some minutes)";

describe("the gallery", () => {
  test("has every turn of the chart and every ending, with each cause and each danger", () => {
    const names = gallery.places.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(names, stale).toEqual(expect.arrayContaining(allTurns()));
    const dangers = Object.entries(flow.opening.turns["danger"]?.answers ?? {}).filter(
      ([, { danger }]) => danger,
    );
    expect(dangers.length).toBeGreaterThan(3);
    for (const [danger] of dangers) expect(names, stale).toContain(`stopped.end ${danger}`);
  });

  // In March it was written; later in the year dates that were given must not have come nearer to a limit.
  test.each(["2026-03-02T09:00:00Z", "2027-10-31T00:30:00Z"])(
    "leads a panel that is opened at %s to each turn that a place is named for",
    (now) => {
      const astray = gallery.places.flatMap((place) => {
        const session = comeTo(gallery, place, Date.parse(now));
        const { turn, cause } = standOf(session);
        const [wanted, special = ""] = place.name.split(" ");
        const isThere = turn === wanted && (!(special in flow.causes) || cause === special);
        return isThere ? [] : [`${place.name}: it comes to ${turn} ${cause ?? ""}`];
      });
      expect(astray, stale).toEqual([]);
    },
  );

  test("keeps journals as a panel does, left a moment ago, and dates as far back as they were", () => {
    const now = Date.parse("2027-06-15T12:00:00Z");
    const dates = new Set<string>();
    for (const { after } of gallery.places) {
      const journal = parseJournal(journalAt(gallery, after, now));
      expect(journal).not.toBeNull();
      if (!journal) continue;
      const { events, started } = standingOf(journal).log;
      expect(Date.parse(events.at(-1)?.at ?? started)).toBe(now);
      for (const [, date = ""] of JSON.stringify(events).matchAll(/"(\d{4}-\d\d-\d\d)"/g)) dates.add(date);
    }
    // A month and a day before the session, which may have gone on for days; and two years more.
    expect([...dates].some((date) => date > "2027-05-10")).toBe(true);
    expect([...dates].every((date) => date < "2027-05-19" && date > "2025-05-01")).toBe(true);
  });

  test("is offered in the languages that there are", () => {
    expect(gallery.languages.sort()).toEqual(Object.keys(ownTexts).sort());
  });

  test("has a step for each way and none that leads nowhere", () => {
    const used = new Set<number>();
    for (const { after } of gallery.places)
      for (let at = after; at !== null; at = gallery.steps[at]?.[0] ?? null) used.add(at);
    expect(used.size).toBe(gallery.steps.length);
  });
});
