import { join } from "node:path";
import { describe, expect, test } from "vitest";
import {
  greetingOf,
  type Held,
  metaOf,
  putBack,
  type Session,
  startSession,
} from "../../src/session/index.ts";
import { createTexts, greetedView, viewOf } from "../../src/turn/index.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { at, take } from "../session/drive.ts";
import { readerOf } from "./reader.ts";

const flow = ownFlow;
const start = startSession(guideFor(flow), at(0));
const locales = readLocales(join(import.meta.dirname, "../../locales"));
const texts = createTexts(locales, "en-GB", readerOf(flow));
const complaint: Held = {
  id: "told",
  event: { type: "answered", turn: "opening.symptom", answer: "leaking", at: at(0) },
};

const shown = (session: Session, held: Held[] = [], isAgain = false) =>
  greetedView(viewOf(session, texts, at(0), []), session, held, texts, isAgain);

describe("Before anything was answered", () => {
  test("the complaint is asked for, with the way out of a danger named beside it", () => {
    const { turn, dangers, ways } = shown(start);
    expect(turn).toMatchObject({ turn: "opening.symptom", heading: "Hello. What's going wrong?" });
    expect(turn?.answers.map(({ id }) => id)).toEqual([
      ...Object.keys(flow.opening.turns["symptom"]?.answers ?? {}),
      "not-sure",
    ]);
    expect(turn?.note).toContain("Danger");
    expect(dangers.length).toBeGreaterThan(3);
    expect(ways).toContain("danger");
  });

  test("the chart asks about danger first all the same", () => {
    expect(metaOf(start).turn).toBe("opening.danger");
  });

  test("danger comes next, with the complaint as the line that was said", () => {
    const { turn, lines } = shown(start, [complaint]);
    expect(turn?.turn).toBe("opening.danger");
    expect(lines).toEqual([
      expect.objectContaining({ title: "What happens", answer: "Water where it shouldn't be" }),
    ]);
    expect(shown(start, [complaint], true).turn?.turn).toBe("opening.symptom");
  });

  test("a complaint that was said is not asked again, and stands before the danger that was ruled out after it", () => {
    const next = putBack(take(start, "none"), [complaint], at(1));
    expect(metaOf(next).turn).toBe("opening.leak");
    expect(shown(next).lines.map(({ turn }) => turn)).toEqual(["opening.symptom", "opening.danger"]);
  });

  test("no complaint leads round a danger", () => {
    for (const answer of Object.keys(flow.opening.turns["symptom"]?.answers ?? {})) {
      const held = [{ ...complaint, event: { ...complaint.event, answer } as Held["event"] }];
      expect(putBack(start, held, at(1))).toBe(start);
      expect(metaOf(putBack(take(start, "sparks"), held, at(1))).outcome).toBe("stopped");
    }
  });
});

test("Nobody is greeted once something was answered, taken back or stopped", () => {
  expect(greetingOf(take(start, "none"))).toBeNull();
  expect(greetingOf(take(start, "gas"))).toBeNull();
});

test("A flow in which no turn greets begins with the chart's first", () => {
  const { greets: _, ...opening } = flow.opening;
  const plain = startSession(guideFor({ ...flow, opening }), at(0));
  expect(greetingOf(plain)).toBeNull();
  expect(shown(plain).turn?.turn).toBe("opening.danger");
});
