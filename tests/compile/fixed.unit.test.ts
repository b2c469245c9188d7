import { describe, expect, test } from "vitest";
import { composeScenario } from "../../src/compile/compose.ts";
import { foldGuard, type Guard } from "../../src/condition/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import { memoryOf, metaOf, record, startSession } from "../../src/session/index.ts";
import { graphOf } from "../../src/workbench/verify/graph.ts";
import { ownFlow } from "../own-flow.ts";
import { type Answers, at, celsius, follow, healthy, inTradeOrder, take } from "../session/drive.ts";

const flow = ownFlow;
const start = () => startSession(inTradeOrder(flow), at(0), "TR-01");

/** Guards that hold only where the freezer was not last read too warm, or was read again. */
const isSafe = (guard: Guard | undefined): boolean =>
  guard !== undefined &&
  foldGuard<boolean>(guard, {
    word: ({ type, params }) => type === "verdict" && params.turn === "freezer-now.read",
    all: (parts) => parts.some(Boolean),
    any: (parts) => parts.every(Boolean),
    not: () => false,
  });
const deniesWarm = (guard: Guard | undefined): boolean => {
  if (!guard) return false;
  if (guard.type === "all") return (guard.params as { of: Guard[] }).of.some(deniesWarm);
  if (guard.type !== "not") return false;
  const { of } = guard.params as { of: Guard };
  return of.type === "last-read";
};

/** Ways of a scenario that end as fixed whatever the freezer was last read at. */
function unguarded(some: Flow, id: string): string[] {
  const scenario = some.scenarios[id];
  if (!scenario) throw new Error(`There is no scenario "${id}"`);
  return graphOf(composeScenario(some, scenario)).edges.flatMap(({ from, to, event, way }) =>
    to === "fixed" && from !== "fixed" && !deniesWarm(way?.guard) && !isSafe(way?.guard)
      ? [`${from} ${event}`]
      : [],
  );
}

const readsFreezer = Object.values(flow.scenarios).flatMap(({ id, checks }) =>
  checks.some(({ check }) => check.startsWith("freezer-")) ? [id] : [],
);

describe("while the freezer was last read too warm", () => {
  test.each(readsFreezer)("nothing in %s ends as fixed", (id) => {
    expect(unguarded(flow, id)).toEqual([]);
  });

  test("something would, were the question taken out of the flow", () => {
    const { confirms: _, ...rest } = flow.checks["freezer-now"] as Flow["checks"][string];
    const planted = { ...flow, checks: { ...flow.checks, "freezer-now": rest } };
    for (const id of readsFreezer) expect(unguarded(planted, id)).not.toEqual([]);
  });

  const tooWarm: Answers = {
    ...healthy,
    "freezer-temperature.read": celsius(-11.5),
    "freezer-temperature.colder": "set-colder",
    "reset.find": "cannot",
    "wait-for-ice.wait": "ice-came",
  };

  test("ice that came back brings one more reading, and a cold one the ending", () => {
    const session = follow(start(), tooWarm, "freezer-now.read");
    expect(metaOf(session).turn).toBe("freezer-now.read");
    const fixed = take(session, celsius(-18));
    expect([metaOf(fixed).outcome, memoryOf(fixed).cause]).toEqual(["fixed", "freezer-warm"]);
  });

  test("a warm one goes on with the search", () => {
    const session = take(follow(start(), tooWarm, "freezer-now.read"), celsius(-11.5));
    expect(metaOf(session).outcome).toBeUndefined();
    expect(metaOf(session).turn).not.toBe("freezer-now.read");
  });

  test("'the ice is back', told at any turn, is asked about the same, and is no way out of an ending", () => {
    const session = follow(start(), tooWarm, "wait-for-ice.wait");
    const told = record(session, { type: "ice-returned", at: at(300) }).session;
    expect(metaOf(told).turn).toBe("freezer-now.read");
    const called = record(session, { type: "help-asked", at: at(300) }).session;
    expect(record(called, { type: "ice-returned", at: at(301) }).refusal).toBe("not-now");
  });
});

describe("a leak", () => {
  /** Every way through the watch that ends as fixed, as its turns in order. */
  function* dryWays(
    { turns, start: first }: Flow["checks"][string],
    turn = first,
    before: string[] = [],
  ): Generator<string[]> {
    const rule = turns[turn];
    const all = [
      ...Object.values(rule?.answers ?? {}),
      ...(rule?.then ? [{ to: rule.then }] : []),
      ...[rule?.["not-sure"], rule?.cannot].flatMap((one) => one || []),
    ];
    for (const { to } of all) {
      if (to === "fixed") yield [...before, turn];
      else if (turns[to] && !before.includes(to))
        yield* dryWays({ turns, start: first } as never, to, [...before, turn]);
    }
  }
  const watch = flow.checks["watch-leak"] as Flow["checks"][string];
  const hours = (turn: string) => {
    const { value = 0, unit } = flow.limits[watch.turns[turn]?.lasts ?? ""] ?? {};
    return unit === "h" ? value : value / 60;
  };

  test("counts as mended only after a fill with the water on, or a day in which the machine fills by itself", () => {
    const ways = [...dryWays(watch)];
    expect(ways.length).toBeGreaterThan(1);
    for (const way of ways) {
      const waits = way.filter((turn) => watch.turns[turn]?.kind === "wait");
      for (const turn of waits) expect(watch.turns[turn]?.needs).toEqual({ water: "open", plug: "in" });
      expect(way[0]).toBe("fill");
      // Through `filled`: somebody stood beside the machine while it filled.
      expect(way.includes("filled") || hours(waits.at(-1) ?? "") === 24).toBe(true);
    }
  });

  test("that was slow is watched for a day", () => {
    const { filled } = watch.turns;
    expect(filled?.answers?.["was-slow"]?.to).toBe("wait-longer");
    expect(filled?.["not-sure"]).toEqual({ to: "wait-longer" });
    expect(hours("wait-longer")).toBe(24);
  });
});
