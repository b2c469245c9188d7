import { expect, test } from "vitest";
import { memoryOf, metaOf, type Session, startSession } from "../../src/session/index.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { at, flowOf } from "./drive.ts";
import { reach } from "./reach.ts";

const flow = ownFlow;
const guide = guideFor(flow);
const start = () => startSession(guide, at(0));
const findingsOf = (session: Session) =>
  Object.entries(memoryOf(session).findings).map(([turn, { answer }]) => `${turn}: ${answer}`);

test("stands at the turn asked for, by the same answers every time", () => {
  const [one, other] = [reach(start(), "door-seal.strip-again"), reach(start(), "door-seal.strip-again")];
  expect(metaOf(one).turn).toBe("door-seal.strip-again");
  expect(one.log).toEqual(other.log);
});

test("answers as on a sound machine where that leads there", () => {
  const healthy = reach(start(), "fixed.end", { "opening.symptom": "no-ice" });
  expect(findingsOf(healthy)).toContain("reset.test: moved-wet");
  expect(findingsOf(healthy)).not.toContainEqual(expect.stringMatching(/not-sure|cannot/));
});

test("keeps to what is named, and tries other answers for the rest", () => {
  const answers = { "opening.symptom": "little-ice", "flow-test.run": flowOf(5) };
  const part = reach(start(), "part.model", answers, "filter-clogged");
  expect(memoryOf(part).cause).toBe("filter-clogged");
  expect(findingsOf(part)).toEqual(
    expect.arrayContaining(["opening.symptom: little-ice", "flow-test.run: fails"]),
  );
});

test("goes on from where a session stands", () => {
  const first = reach(start(), "ice-bin.look");
  const then = reach(first, "fill-tube.look");
  expect(then.log.events.slice(0, first.log.events.length)).toEqual(first.log.events);
  expect(metaOf(then).turn).toBe("fill-tube.look");
});

test("names the turn that no way leads to", () => {
  const other = { "opening.symptom": "too-warm" };
  expect(() => reach(start(), "pump-run.prime", other, undefined, 40)).toThrow(
    "No way to pump-run.prime was found",
  );
  expect(() => reach(start(), "part.model", other, "pump-faulty", 40)).toThrow("part.model for pump-faulty");
});
