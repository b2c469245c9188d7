import { describe, expect, test } from "vitest";
import { composeScenario } from "../../src/compile/compose.ts";
import { foldGuard, type Guard } from "../../src/condition/index.ts";
import { memoryOf, metaOf, record, replay, type Session, startSession } from "../../src/session/index.ts";
import { graphOf } from "../../src/workbench/verify/graph.ts";
import { proved } from "../compile/written-paths.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { type Answers, at, healthy, inTradeOrder, take } from "./drive.ts";
import { soundAnswer } from "./reach.ts";

const flow = ownFlow;
const { greets: _, ...opening } = flow.opening;
const ofParts = Object.entries(proved).filter(([cause]) => flow.causes[cause]?.remedy === "part");
const partOf = (session: Session) => flow.causes[memoryOf(session).cause ?? ""]?.part;

/** Answers on until an ending, as on a machine that is sound but for what `answers` says. */
function goOn(start: Session, answers: Answers): Session {
  let session = start;
  for (let turns = 0; metaOf(session).kind !== "ending"; turns++) {
    if (turns > 80) throw new Error(`It never ends: ${metaOf(session).turn}`);
    session = take(session, answers[metaOf(session).turn] ?? soundAnswer(session));
  }
  return session;
}

/** Every word of a guard. */
const guards = (guard?: Guard): Guard[] =>
  guard
    ? foldGuard<Guard[]>(guard, {
        word: (one) => [one],
        all: (all) => all.flat(),
        any: (all) => all.flat(),
        not: (one) => one,
      })
    : [];

/** The part was fitted, and it still happens. */
function stillHappens(session: Session): Session {
  const { session: next, refusal } = record(session, { type: "trouble-returned", at: at(2000) });
  expect(refusal).toBeNull();
  return next;
}

test("no chart has a way to a part that was fitted without help", () => {
  for (const scenario of Object.values(flow.scenarios)) {
    const toParts = graphOf(composeScenario(flow, scenario)).edges.filter(
      ({ from, to }) => from.endsWith("/choosing") && to.startsWith("part"),
    );
    for (const { way } of toParts) {
      const cause = way?.actions?.[0]?.params.cause ?? "";
      expect(JSON.stringify(way?.guard)).toContain('{"type":"not","params":{"of":{"type":"fitted"');
      expect(guards(way?.guard).find(({ type }) => type === "fitted")?.params.causes).toContain(cause);
    }
  }
});

describe.each([
  ["in the trade's order", inTradeOrder(flow)],
  ["by the diagnosis", guideFor({ ...flow, opening })],
])("a part that was fitted without help, %s", (_name, guide) => {
  const named = ofParts.flatMap(([cause, [answers]]) => {
    const card = goOn(startSession(guide, at(0), "TR-01"), { ...healthy, ...answers });
    return memoryOf(card).cause === cause ? [{ cause, answers, card }] : [];
  });

  test("is one of several", () => {
    expect(named.length).toBeGreaterThan(3);
  });

  test.each(named)(
    "for $cause is named no second time, and the search goes on",
    ({ cause, answers, card }) => {
      const after = stillHappens(card);
      expect(memoryOf(after)).toMatchObject({ fitted: [cause] });
      const end = goOn(after, { ...healthy, ...answers });
      expect(metaOf(end).outcome).toBeDefined();
      if (metaOf(end).outcome === "part") {
        expect(partOf(end)).not.toBe(partOf(card));
        expect(memoryOf(end).cause).not.toBe(cause);
      }
      const again = replay(guide, end.log);
      expect(again.dropped).toBe(0);
      expect(memoryOf(again.session)).toEqual(memoryOf(end));
    },
  );

  test.each(named)("for $cause makes what it would have put right unlikely", ({ cause, card }) => {
    const chanceIn = (session: Session) =>
      (session.adviser?.chances(memoryOf(session)) ?? []).find((one) => one.cause === cause)?.chance ?? 0;
    const before = chanceIn(card);
    if (before > 0) expect(chanceIn(stillHappens(card))).toBeLessThan(before);
  });
});
