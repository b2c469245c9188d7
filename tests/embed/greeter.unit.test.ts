import { beforeEach, describe, expect, test } from "vitest";
import { guideFor } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { at } from "../session/drive.ts";
import { answerAll, createMemory, entriesOf, open } from "./open-controller.ts";

const guide = guideFor(ownFlow);
let store: ReturnType<typeof createMemory>;
const tab = () => open(store, { now: at(0) }, null, undefined, undefined, { guide });
const told = (answer: string, words = "") => ({ words, facts: [{ turn: "opening.symptom", answer }] });

beforeEach(() => {
  store = createMemory();
});

describe("The complaint, asked for before anything was answered", () => {
  test("is kept as told, and danger is asked about next", () => {
    const panel = tab();
    expect(panel.turn()).toBe("opening.symptom");
    answerAll(panel, "no-ice");
    expect(panel.turn()).toBe("opening.danger");
    expect(entriesOf(store)).toEqual([{ type: "told", ...told("no-ice") }]);
  });

  test("is not asked again: not after danger was ruled out, and not by a later visit", () => {
    answerAll(tab(), "no-ice");
    const later = tab();
    expect(later.turn()).toBe("opening.danger");
    answerAll(later, "none");
    expect(later.turn()).toBe("opening.supply");
  });

  test("is changed by its line, and the new one counts", () => {
    const panel = tab();
    answerAll(panel, "no-ice");
    panel.actions.change(0);
    expect(panel.turn()).toBe("opening.symptom");
    answerAll(panel, "leaking", "none");
    expect(panel.turn()).toBe("opening.leak");
  });

  test("is changed by a sentence as well as by a tap", () => {
    const panel = tab();
    answerAll(panel, "no-ice");
    panel.actions.change(0);
    panel.actions.tell(told("leaking", "there is a puddle"));
    expect(panel.turn()).toBe("opening.danger");
  });

  test("that was answered before the engine was there is told, with what came after it", async () => {
    const panel = tab();
    const given = (turn: string, answer: string) => ({ type: "answered" as const, turn, answer, at: at(0) });
    await panel.takeEarly([given("opening.symptom", "no-ice"), given("opening.danger", "none")]);
    expect(panel.turn()).toBe("opening.supply");
  });

  test("leads round no danger", () => {
    const panel = tab();
    answerAll(panel, "no-ice", "sparks");
    expect(panel.views.at(-1)?.turn?.ending?.outcome).toBe("stopped");
    expect(store.mark?.danger).toBe("sparks");
  });

  test("is asked for again after a new start", () => {
    const panel = tab();
    answerAll(panel, "no-ice", "none");
    panel.actions.restart();
    expect(panel.turn()).toBe("opening.symptom");
  });
});
