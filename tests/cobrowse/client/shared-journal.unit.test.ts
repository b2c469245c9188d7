import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bodiesFor, journalIn } from "../../../src/cobrowse/client/index.ts";
import { fits } from "../../../src/cobrowse/protocol/index.ts";
import {
  append,
  compact,
  createJournal,
  type Journal,
  parseJournal,
  standingOf,
} from "../../../src/session/index.ts";

const at = (minute: number) => new Date(Date.UTC(2026, 0, 1) + minute * 60_000).toISOString();
const answered = (answer: string) => ({ type: "answered" as const, turn: "ice-bin.look", answer });

type Step = "answer" | "tell" | "take-back" | "start-again" | "compact" | "new" | "long";

/** A journal after one more thing has happened to it. */
function grown(journal: Journal, step: Step, place: number): Journal {
  const entry = (event: Parameters<typeof append>[1]["event"]) =>
    append(journal, { id: `${place}`, at: at(place), event });
  const ids = standingOf(journal).ids;
  switch (step) {
    case "answer":
      return entry(answered(`${place}`));
    case "tell":
      return entry({ type: "told", words: "x".repeat(400), facts: [] });
    case "take-back":
      return entry({ type: "took-back", entries: ids.slice(-2), held: [] });
    case "start-again":
      return entry({ type: "started-again" });
    case "compact":
      return compact(standingOf(journal)).journal;
    case "new":
      return createJournal(at(place));
    // As many ids as one message does not hold.
    case "long":
      return entry({
        type: "took-back",
        entries: Array.from({ length: 400 }, (_, id) => `long-${id}-gone`),
        held: [],
      });
  }
}

const steps = fc.array(
  fc.constantFrom<Step>(
    "answer",
    "answer",
    "answer",
    "tell",
    "take-back",
    "start-again",
    "compact",
    "new",
    "long",
  ),
  { maxLength: 60 },
);

describe("a journal that is carried", () => {
  test("is the journal again, whatever happens to it; as it is in force where an entry is too long", () => {
    fc.assert(
      fc.property(steps, (all) => {
        let journal = createJournal(at(0));
        const carried: string[] = [];
        for (const [place, step] of all.entries()) {
          journal = grown(journal, step, place + 1);
          for (const body of bodiesFor(journal, carried)) {
            expect(fits("entry", body)).toBe(true);
            carried.push(body);
          }
          // Nothing is said twice.
          expect(bodiesFor(journal, carried)).toEqual([]);
          const there = parseJournal(journalIn(carried));
          const isLong = journal.entries.some(({ event }) => event.type === "took-back" && event.entries[99]);
          if (isLong) expect(standingOf(there as Journal).log).toEqual(standingOf(journal).log);
          else expect(there).toEqual(journal);
        }
      }),
    );
  });

  test("is one short message an answer", () => {
    let journal = grown(createJournal(at(0)), "answer", 1);
    const carried = bodiesFor(journal, []);
    journal = grown(journal, "answer", 2);
    const more = bodiesFor(journal, carried);
    expect(more).toHaveLength(1);
    expect(more[0]?.length).toBeLessThan(200);
    expect(more[0]).not.toContain('"1"');
  });

  test("is carried anew where its times were corrected meanwhile", () => {
    const before = grown(createJournal(at(0)), "answer", 1);
    const moved = { ...before, entries: before.entries.map((entry) => ({ ...entry, at: at(9) })) };
    const carried = bodiesFor(before, []);
    expect(journalIn([...carried, ...bodiesFor(moved, carried)])).toEqual(moved);
  });

  test("is none where nothing was carried, or nothing that can be read", () => {
    expect(journalIn([])).toBeNull();
    expect(journalIn(["{", "null", '{"entries":[]}', "7"])).toBeNull();
  });

  test("is there all the same beside what nobody can read", () => {
    const journal = grown(createJournal(at(0)), "answer", 1);
    expect(journalIn(["{", ...bodiesFor(journal, []), "nonsense", '{"entries":7}'])).toEqual(journal);
  });
});
