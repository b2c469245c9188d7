import { beforeAll, describe, expect, test } from "vitest";
import { type LogEvent, record } from "../../src/session/index.ts";
import { ownFlow } from "../own-flow.ts";
import { copyOf, isOver, standOf } from "./walker.ts";
import { causeOf, hazardsOf, story, takeWalks, unsaidAt } from "./walking.ts";

const flow = ownFlow;

/** Whether an event has had something of the machine changed: a gate confirmed, or an answer that leaves it so. */
function changesSomething(event: LogEvent): boolean {
  if (event.type !== "answered") return false;
  const [check = "", turn = ""] = event.turn.split(".");
  const { answers, "not-sure": unsure } = flow.checks[check]?.turns[turn] ?? {};
  const outcome = event.answer === "not-sure" ? unsure || undefined : answers?.[event.answer];
  return event.answer === "ready" || outcome?.leaves !== undefined;
}

/**
 * Turns that were asked more often than they may be: a check once, a second time only where it has no gate; a gate once in
 * short and once in full. Things are put back as often as a gate or an answer has had them changed.
 */
function askedTooOften(events: LogEvent[]): string[] {
  const changed = events.filter(changesSomething).length;
  const asked = events.flatMap((event) => ("turn" in event ? [event.turn] : []));
  return [...new Set(asked)].filter((turn) => {
    const [id = "", name = ""] = turn.split(".");
    const check = flow.checks[id];
    const times = asked.filter((one) => one === turn).length;
    const gates = check?.turns[name]?.gates ?? check?.gates ?? [];
    const most = check?.restores ? changed : gates.length && !name.startsWith("gate-") ? 1 : 2;
    return check && !check.repeats && times > most;
  });
}

/** What must hold for people who only answer, whatever they answer. */
export function describeAnswering(count: number, seed: number): void {
  describe(`${count} people who only answer (seed ${seed})`, () => {
    const unended: string[] = [];
    const ungated: string[] = [];
    const unproved: string[] = [];
    const askedTwice: string[] = [];
    const garbled: string[] = [];
    const strayed: string[] = [];
    const unsaid: string[] = [];
    const scenarios = new Set<string>();
    let refusals = 0;

    beforeAll(() => {
      for (const walk of takeWalks(count, seed, false, 1000)) {
        const { events } = walk.last.log;
        if (!isOver(walk.last) || events.length > 40) unended.push(story(walk));
        const { open } = hazardsOf(walk);
        if (open.length) ungated.push(`${open}\n${story(walk)}`);
        const ending = causeOf(walk.last);
        if (ending && !ending.proved) unproved.push(`${ending.cause}\n${story(walk)}`);
        if (unsaidAt(walk.last).length) unsaid.push(`${unsaidAt(walk.last)}\n${story(walk)}`);
        const twice = askedTooOften(events);
        if (twice.length) askedTwice.push(`${twice}\n${story(walk)}`);
        let again = walk.start;
        let before = 0;
        for (const { session, refused } of walk.steps) {
          const { length } = session.log.events;
          if (length !== before + (refused ? 0 : 1)) garbled.push(story(walk));
          const event = session.log.events.at(-1);
          if (refused) refusals++;
          else if (event) again = record(again, copyOf(event)).session;
          before = length;
          const [scenario = ""] =
            typeof session.snapshot.value === "object" ? Object.keys(session.snapshot.value) : [];
          scenarios.add(scenario);
        }
        if (standOf(again) !== standOf(walk.last)) strayed.push(story(walk));
      }
    }, 900_000);

    test("come to an ending within 40 turns, never stuck", () => {
      expect(unended).toEqual([]);
    });

    test("meet no hazard without its gate, and get no part and no cause without its proof", () => {
      expect(ungated).toEqual([]);
      expect(unproved).toEqual([]);
    });

    test("leave nothing closed, unplugged or pulled out that the ending does not speak of", () => {
      expect(unsaid).toEqual([]);
    });

    test("are asked nothing twice behind a gate, and nothing three times", () => {
      expect(askedTwice).toEqual([]);
    });

    test("add one event to the log with every answer that is taken, and none with one that is refused", () => {
      expect(garbled).toEqual([]);
      expect(refusals).toBeGreaterThan(count / 10);
    });

    test("stand where the replay of their log stands", () => {
      expect(strayed).toEqual([]);
    });

    test("come through every scenario", () => {
      expect([...scenarios]).toEqual(expect.arrayContaining(Object.keys(flow.scenarios)));
    });
  });
}
