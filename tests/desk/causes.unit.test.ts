import { describe, expect, test } from "vitest";
import { causesOf, weightsOf } from "../../src/desk/board/index.ts";
import { subjectOf } from "../../src/desk/board/subject-of.ts";
import { memoryOf, type Session, startSession } from "../../src/session/index.ts";
import { at } from "../session/drive.ts";
import { guide, texts, walkTo } from "./followed.ts";

const session = walkTo("flow-test.run");

/**
 * The weight of evidence by its other definition, as a factor of likelihoods: log P(E|HG) / P(E|not-H G), in decibans
 * (I. J. Good, Probability and the Weighing of Evidence, 1950, chapter 6). Nothing of it asks for odds.
 */
function factorOf(session: Session, check: string, cause: string): number {
  const memory = memoryOf(session);
  const chances = (findings: typeof memory.findings) =>
    session.adviser?.chances({ ...memory, findings }) ?? [];
  const others = Object.entries(memory.findings).filter(([turn]) => !turn.startsWith(`${check}.`));
  const before = chances(Object.fromEntries(others));
  const after = new Map(chances(memory.findings).map((one) => [one.cause, one.chance]));
  // Likelihoods up to a factor that all share, which cancels: posterior over prior.
  const likely = new Map(before.map(({ cause, chance }) => [cause, (after.get(cause) ?? 0) / chance]));
  const not = before.filter((one) => one.cause !== cause);
  const weight = not.reduce((sum, { chance }) => sum + chance, 0);
  const expected = not.reduce((sum, one) => sum + one.chance * (likely.get(one.cause) ?? 0), 0) / weight;
  return 10 * Math.log10((likely.get(cause) ?? 0) / expected);
}

describe("what a cause rests on", () => {
  test("is weighed as the factor by which it makes a cause likelier than all others", () => {
    const weights = weightsOf(session, memoryOf(session));
    expect(weights.size).toBeGreaterThan(8);
    for (const [check, by] of weights)
      for (const [cause, weight] of by) expect(weight).toBeCloseTo(factorOf(session, check, cause), 6);
  });

  test("is for it where its odds have risen by that, against it where they have fallen, and else not said", () => {
    const weights = weightsOf(session, memoryOf(session));
    for (const { id, grounds } of causesOf(session, texts)) {
      const shown = (is: string) => grounds.filter((one) => one.is === is).length;
      const weighed = [...weights.values()].map((by) => by.get(id) ?? 0);
      expect(shown("for")).toBe(Math.min(3, weighed.filter((one) => one >= 1).length));
      expect(shown("against")).toBe(Math.min(3, weighed.filter((one) => one <= -1).length));
    }
  });

  test("names checks that could be done now and would tell, and the one that they are at", () => {
    const untried = causesOf(session, texts)
      .flatMap(({ grounds }) => grounds)
      .filter(({ is }) => is === "untried")
      .map(({ text }) => text);
    expect(untried).toContain("Water flow: looking now");
    expect(untried.some((one) => one.endsWith(": not tried"))).toBe(true);
    // What was done is not among them.
    expect(untried.some((one) => one.startsWith("Ice bin"))).toBe(false);
  });
});

describe("the causes", () => {
  test("are the likeliest ones, and the share of all others; together they are everything", () => {
    const rows = causesOf(session, texts);
    const percents = rows.map(({ percent }) => percent);
    expect(percents.reduce((sum, one) => sum + one, 0)).toBeGreaterThanOrEqual(97);
    expect(percents.reduce((sum, one) => sum + one, 0)).toBeLessThanOrEqual(103);
    const named = percents.slice(0, -1);
    expect(named).toEqual([...named].sort((a, b) => b - a));
    expect(rows.at(-1)).toMatchObject({ id: "", name: "Anything else", grounds: [] });
  });

  test("are as likely as the adviser of the session has them", () => {
    const chances = session.adviser?.chances(memoryOf(session)) ?? [];
    for (const { id, percent } of causesOf(session, texts).slice(0, -1))
      expect(percent).toBe(Math.round((chances.find(({ cause }) => cause === id)?.chance ?? 0) * 100));
  });

  test("are none in the opening, where nothing is believed yet", () => {
    const opening = startSession(guide, at(0));
    expect(subjectOf(opening)).toBeNull();
    expect(causesOf(opening, texts)).toEqual([]);
  });
});
