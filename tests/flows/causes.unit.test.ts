import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Condition } from "../../src/condition/index.ts";
import { ownFlow } from "../own-flow.ts";

const flow = ownFlow;
const causes = Object.entries(flow.causes);
const turnsOf = [flow.opening, ...Object.values(flow.checks)].flatMap(({ id, turns }) =>
  Object.entries(turns).map(([turn, rule]) => ({ turn: `${id}.${turn}`, rule })),
);
const outcomes = turnsOf.flatMap(({ rule }) =>
  [
    ...Object.values(rule.answers ?? {}),
    ...Object.values(rule.verdicts ?? {}),
    rule["not-sure"] || undefined,
    rule.cannot || undefined,
  ].filter((outcome) => outcome !== undefined),
);

describe("a cause", () => {
  const found = outcomes.flatMap(({ finds }) => finds ?? []);
  const remedied = outcomes.flatMap(({ remedies }) => remedies ?? []);
  const endedAt = outcomes.flatMap(({ to, finds }) => (to === "professional" && finds ? [finds] : []));

  test.each(causes.filter(([, { proof, remedy }]) => !proof && remedy !== "professional"))(
    "%s, without a proof, is put right by a check or ends at once",
    (id) => {
      expect([...remedied, ...endedAt]).toContain(id);
    },
  );

  test.each(causes.filter(([, { proof }]) => proof))("%s, with a proof, ends some scenario", (id) => {
    const ending = Object.values(flow.scenarios).flatMap(({ proofs }) => proofs);
    expect(ending).toContain(id);
  });

  test.each(causes.filter(([, { remedy }]) => remedy === "part"))(
    "%s, a part's, names a part that there is, and a proof",
    (_, rule) => {
      expect(Object.keys(flow.parts)).toContain(rule.part);
      expect(rule.proof).toBeDefined();
    },
  );

  test.each(causes.filter(([, { remedy }]) => remedy === "professional"))(
    "%s, a professional's, says whose",
    (_, { who }) => {
      expect(who).toBeTruthy();
    },
  );

  test.each(causes)("%s sits at a station of the ice path", (_, { station }) => {
    expect(flow.stations.order).toContain(station);
  });

  test("is named by every outcome that finds or puts right anything", () => {
    expect(Object.keys(flow.causes)).toEqual(expect.arrayContaining([...found, ...remedied]));
  });
});

describe("a part", () => {
  const { parts } = JSON.parse(readFileSync(new URL("../../demo/catalogue.json", import.meta.url), "utf8"));
  const sold: string[] = parts.map(({ kind }: { kind: string }) => kind);

  test.each(causes.flatMap(([, { part }]) => part ?? []))(
    "of the kind %s is sold in the demo shop",
    (kind) => {
      expect(sold).toContain(kind);
    },
  );

  test.each(Object.entries(flow.parts))("%s names an access that there is", (_, { access }) => {
    expect(Object.keys(flow.access)).toContain(access);
  });

  test("that is fitted behind the back panel or with the machine pulled out is a professional's to fit", () => {
    const risky = Object.values(flow.parts).filter(
      ({ access }) => access === "back-panel" || access === "pulled-out",
    );
    expect(risky.map(({ fitting }) => fitting)).toEqual(risky.map(() => "professional"));
  });
});

describe("a name in the flows", () => {
  const checks = Object.values(flow.checks);

  test("of an access, a hazard, a gate or a station means something, for an unknown one guards nobody", () => {
    const accesses = [...checks.map(({ access }) => access), ...Object.values(flow.stations.access)];
    expect(Object.keys(flow.access)).toEqual(expect.arrayContaining(accesses));
    const hazards = [
      ...checks.flatMap((check) => check.hazards ?? []),
      ...Object.values(flow.access).flat(),
      ...Object.values(flow.gates).flatMap(({ covers }) => covers),
    ];
    expect(Object.keys(flow.hazards)).toEqual(expect.arrayContaining(hazards));
    expect(Object.keys(flow.gates)).toEqual(
      expect.arrayContaining(checks.flatMap(({ gates }) => gates ?? [])),
    );
    const stations = [
      ...checks.map(({ station }) => station),
      ...Object.keys(flow.stations.access),
      ...outcomes.flatMap(({ clears, suspects }) => [...(clears ?? []), ...(suspects ?? [])]),
    ];
    expect(flow.stations.order).toEqual(expect.arrayContaining(stations));
  });

  test("of a turn, an answer, a check, a cause or a condition means something, in every condition", () => {
    const all: Condition[] = [
      ...Object.values(flow.conditions),
      ...Object.values(flow.causes).flatMap(({ proof }) => proof ?? []),
      ...Object.values(flow.scenarios).flatMap(({ when, checks: listed }) => [
        when,
        ...listed.flatMap((entry) => entry.when ?? []),
      ]),
    ];
    expect(all.flatMap(unknownNames)).toEqual([]);
  });

  test("of a limit or a following turn means something, wherever a turn waits", () => {
    for (const check of checks)
      for (const rule of Object.values(check.turns)) {
        if (rule.kind !== "wait") continue;
        expect(Object.keys(flow.limits)).toContain(rule.lasts);
        expect(Object.keys(check.turns)).toContain(rule.then);
        expect(["h", "min"]).toContain(flow.limits[rule.lasts ?? ""]?.unit);
      }
  });
});

/** The names in a condition that nothing in flows/ has. */
function unknownNames(condition: Condition): string[] {
  if (typeof condition === "string") return [];
  if ("all" in condition) return condition.all.flatMap(unknownNames);
  if ("any" in condition) return condition.any.flatMap(unknownNames);
  if ("not" in condition) return unknownNames(condition.not);
  if ("is" in condition) return condition.is in flow.conditions ? [] : [condition.is];
  if ("done" in condition) return condition.done in flow.checks ? [] : [condition.done];
  if ("found" in condition) return condition.found.filter((cause) => !(cause in flow.causes));
  if ("remedied" in condition) return condition.remedied.filter((cause) => !(cause in flow.causes));
  const { turn, is } = "answered" in condition ? condition.answered : condition.verdict;
  const [check = "", state = ""] = turn.split(".");
  if (state.startsWith("gate-")) {
    const known = flow.checks[check]?.gates?.includes(state.slice(5));
    return known ? is.filter((answer) => !["ready", "cannot"].includes(answer)) : [turn];
  }
  const rule = turnsOf.find((one) => one.turn === turn)?.rule;
  if (!rule) return [turn];
  const answers = Object.keys(("answered" in condition ? rule.answers : rule.verdicts) ?? {});
  const known = "answered" in condition ? [...answers, "not-sure", "cannot"] : answers;
  return is.filter((answer) => !known.includes(answer)).map((answer) => `${turn} ${answer}`);
}
