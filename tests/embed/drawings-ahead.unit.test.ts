import { expect, test } from "vitest";
import { createDrawingsAhead, drawingsOf } from "../../src/embed/drawings-ahead.ts";
import type { Drawing } from "../../src/panel/pictures/index.ts";
import { flow, freshSession, sessionAt } from "../browser/expected.ts";

const inScenario = () => sessionAt("flow-test.run", { "opening.symptom": "no-ice" });

/** Drawings that come once they are let, and are counted; an idle time that comes when it is asked for. */
function open(mayFetch: () => boolean = () => true) {
  const known = new Map<string, Drawing>();
  const asked: string[] = [];
  const idle: (() => void)[] = [];
  let comes = true;
  const look = createDrawingsAhead(
    {
      known,
      load: async (id) => {
        asked.push(id);
        if (comes) known.set(id, {} as Drawing);
      },
    },
    (work) => idle.push(work),
    mayFetch,
  );
  /** Lets idle time after idle time come, until nothing waits for one. */
  const rest = async () => {
    while (idle.length > 0) {
      idle.shift()?.();
      await new Promise((settled) => setTimeout(settled));
    }
  };
  return { look, rest, asked, idle, known, lose: () => (comes = false) };
}

test("the drawings of a scenario are those that its checks, their gates, its parts and the plate have in the flow", () => {
  const session = inScenario();
  const drawings = drawingsOf(session);
  const { checks } = flow.scenarios["no-ice-plumbed"] ?? {};
  const turns = (checks ?? []).flatMap(({ check }) => Object.values(flow.checks[check]?.turns ?? {}));
  const needed = turns.flatMap(({ picture }) => picture ?? []);
  expect(needed.length).toBeGreaterThan(10);
  expect(drawings).toEqual(expect.arrayContaining([...needed, "rating-plate", "plate-french-door"]));
  const parts = Object.values(session.flow.parts).flatMap(({ picture }) => picture ?? []);
  expect(parts).not.toEqual([]);
  expect(drawings).toEqual(expect.arrayContaining(parts));
  expect(new Set(drawings).size).toBe(drawings.length);
});

test("before a scenario is known nothing is fetched", async () => {
  const { look, rest, asked } = open();
  look(freshSession());
  await rest();
  expect(asked).toEqual([]);
});

test("all of them come, one in each idle time, and none twice", async () => {
  const { look, rest, asked, idle } = open();
  look(inScenario());
  look(inScenario());
  expect([asked, idle.length]).toEqual([[], 1]);
  await rest();
  look(inScenario());
  await rest();
  expect(asked).toEqual(drawingsOf(inScenario()));
});

test("nothing is fetched without a connection or where data is to be saved, and all of it once that is over", async () => {
  let may = false;
  const { look, rest, asked } = open(() => may);
  look(inScenario());
  await rest();
  expect(asked).toEqual([]);
  may = true;
  look(inScenario());
  await rest();
  expect(asked).toEqual(drawingsOf(inScenario()));
});

test("one that does not come is asked for once more, and not for ever", async () => {
  const { look, rest, asked, lose } = open();
  lose();
  for (let turn = 0; turn < 5; turn++) {
    look(inScenario());
    await rest();
  }
  expect(asked).toHaveLength(2 * drawingsOf(inScenario()).length);
});
