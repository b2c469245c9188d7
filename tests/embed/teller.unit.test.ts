import { describe, expect, test } from "vitest";
import { tellPage } from "../../src/embed/tell-page.ts";
import { healthy } from "../session/drive.ts";
import { answerAll, createMemory } from "./open-controller.ts";
import { openTold } from "./told-page.ts";

const nine = () => ({ now: "2026-01-01T09:00:00Z" });
const toWait = ["none", "no-ice", "plumbed", "nothing", "alive", "lock-off", "off", "switched-on"];
const names = (heard: [string, unknown][]) => heard.map(([name]) => name);

describe("what the page is told", () => {
  test("is a start once, and each answer by its id before the turn that it leads to", () => {
    const panel = openTold(createMemory(), nine());
    const first = panel.turn();
    expect(panel.news()).toEqual([["turn-shown", { turn: first, kind: "choice", scenario: null }]]);
    answerAll(panel as never, "none", "no-ice");
    expect(panel.news()).toEqual([
      ["started", { again: false }],
      ["answered", { turn: "opening.danger", answer: "none", how: "tapped" }],
      ["turn-shown", { turn: "opening.symptom", kind: "choice", scenario: null }],
      ["answered", { turn: "opening.symptom", answer: "no-ice", how: "tapped" }],
      ["turn-shown", { turn: "opening.supply", kind: "choice", scenario: null }],
    ]);
  });

  test("names the scenario once the opening has led to one", () => {
    const panel = openTold(createMemory(), nine());
    answerAll(panel as never, ...toWait.slice(0, 4));
    expect(panel.heard.at(-1)).toEqual([
      "turn-shown",
      expect.objectContaining({ scenario: "no-ice-plumbed" }),
    ]);
  });

  test("never has what was typed, whatever that was taken as", () => {
    const panel = openTold(createMemory(), nine());
    panel.actions.answer("opening.danger", "none", "canary nothing smells");
    panel.actions.tell({ words: "canary it hums", facts: [] });
    panel.actions.tell({
      words: "canary on the mains",
      facts: [{ turn: "opening.supply", answer: "plumbed" }],
    });
    expect(panel.named("answered")).toEqual([
      { turn: "opening.danger", answer: "none", how: "typed" },
      { turn: "opening.supply", answer: "plumbed", how: "typed" },
    ]);
    expect(panel.named("not-found")).toEqual([{ what: "sentence", turn: "opening.symptom" }]);
    expect(JSON.stringify(panel.heard)).not.toContain("canary");
  });

  test("is not an answer that was told before and is put where its turn comes up", () => {
    const panel = openTold(createMemory(), nine());
    panel.actions.tell({ words: "", facts: [{ turn: "opening.symptom", answer: "no-ice" }] });
    panel.actions.answer("opening.danger", "none");
    expect(panel.turn()).toBe("opening.supply");
    expect(panel.named("answered")).toHaveLength(2);
  });

  test("is of a second tap on the same answer nothing", () => {
    const panel = openTold(createMemory(), nine());
    panel.actions.answer("opening.danger", "none");
    panel.news();
    panel.actions.answer("opening.danger", "none");
    expect(panel.heard).toEqual([]);
  });

  test("is going back once, and a change only where the answer differs", () => {
    const panel = openTold(createMemory(), nine());
    answerAll(panel as never, "none", "no-ice", "plumbed");
    panel.news();
    panel.actions.change(1);
    expect(panel.news()).toEqual([
      ["back", { turn: "opening.symptom", drops: 2 }],
      ["turn-shown", expect.objectContaining({ turn: "opening.symptom" })],
    ]);
    panel.actions.answer("opening.symptom", "no-ice");
    expect(names(panel.news())).toEqual(["answered", "turn-shown"]);
    panel.actions.change(1);
    panel.news();
    panel.actions.answer("opening.symptom", "little-ice");
    expect(panel.news().slice(0, 2)).toEqual([
      ["answered", { turn: "opening.symptom", answer: "little-ice", how: "tapped" }],
      ["changed", { turn: "opening.symptom" }],
    ]);
  });

  test("is a danger and the stop that it leads to, once each, however it was reported", () => {
    for (const report of [
      (panel: ReturnType<typeof openTold>) => panel.actions.answer("opening.danger", "gas"),
      (panel: ReturnType<typeof openTold>) => panel.actions.reportDanger("gas"),
    ]) {
      const store = createMemory();
      const panel = openTold(store, nine());
      report(panel);
      panel.tick();
      expect(panel.named("danger")).toEqual([{ danger: "gas" }]);
      expect(panel.named("ended")).toMatchObject([{ outcome: "stopped" }]);
      const again = openTold(store, nine());
      again.tick();
      expect(again.heard).toEqual([]);
    }
  });

  test("is a danger that was reported before the rest of the script came, and its stop", () => {
    const store = createMemory();
    store.mark = { danger: "gas", at: "2026-01-01T09:00:00Z" };
    const panel = openTold(store, nine());
    expect(panel.named("danger")).toEqual([{ danger: "gas" }]);
    expect(panel.named("ended")).toMatchObject([{ outcome: "stopped" }]);
    expect(openTold(store, nine()).heard).toEqual([]);
  });

  test("is a start anew as another start, with its first turn", () => {
    const panel = openTold(createMemory(), nine());
    answerAll(panel as never, "none", "no-ice");
    panel.news();
    panel.actions.restart();
    expect(names(panel.news())).toEqual(["turn-shown"]);
    answerAll(panel as never, "none");
    expect(panel.named("started")).toEqual([{ again: true }]);
  });

  test("is that somebody wants help instead of more checks, and how that ends", () => {
    const panel = openTold(createMemory(), nine());
    answerAll(panel as never, ...toWait.slice(0, 4));
    panel.actions.askForHelp();
    expect(panel.named("help-asked")).toEqual([{ by: "householder", why: "checks" }]);
    expect(panel.named("ended")).toMatchObject([{ outcome: "professional" }]);
  });

  test("is a reading by its instrument and verdict, without its number", () => {
    const panel = openTold(createMemory(), nine());
    for (let turns = 0; turns < 40 && panel.named("reading-taken").length === 0; turns++) {
      const turn = panel.turn() ?? "";
      const answer = healthy[turn] ?? "not-sure";
      if (typeof answer === "string") panel.actions.answer(turn, answer);
      else panel.actions.measure(turn, answer);
    }
    expect(panel.named("reading-taken")).toEqual([
      { turn: "freezer-temperature.read", instrument: "temperature", verdict: "passes" },
    ]);
    expect(JSON.stringify(panel.heard)).not.toContain("-18");
  });
});

describe("a page that is loaded again", () => {
  test("tells that somebody has come back, and nothing that was told before", () => {
    const store = createMemory();
    answerAll(openTold(store, nine()) as never, "none", "no-ice", "plumbed");
    const back = openTold(store, nine());
    expect(back.news()).toEqual([["returned", { turn: "opening.changed" }]]);
    answerAll(back as never, "nothing");
    expect(names(back.news())).toEqual(["answered", "turn-shown"]);
  });

  test("tells nothing of a search that had ended", () => {
    const store = createMemory();
    answerAll(openTold(store, nine()) as never, "gas");
    expect(openTold(store, nine()).heard).toEqual([]);
  });
});

describe("two tabs", () => {
  test("tell each thing in the one in which it was done", () => {
    const store = createMemory();
    const one = openTold(store, nine());
    const other = openTold(store, nine());
    one.news();
    other.news();
    answerAll(one as never, "none", "no-ice");
    other.tick();
    expect(other.turn()).toBe("opening.supply");
    expect(other.heard).toEqual([]);
    answerAll(other as never, "plumbed");
    one.tick();
    expect(one.turn()).toBe(other.turn());
    const all = [...one.named("answered"), ...other.named("answered")];
    expect(all.map(({ turn }) => turn)).toEqual(["opening.danger", "opening.symptom", "opening.supply"]);
    expect([...one.named("started"), ...other.named("started")]).toHaveLength(1);
  });

  test("are left once: by the one that was used last", () => {
    const store = createMemory();
    const one = openTold(store, nine());
    const other = openTold(store, nine());
    answerAll(one as never, "none");
    other.tick();
    for (const tab of [one, other]) tab.teller.look(true);
    expect(one.named("left")).toEqual([{ turn: "opening.symptom", kind: "choice", scenario: null }]);
    expect(other.named("left")).toEqual([]);
  });
});

describe("a page that is hidden", () => {
  test("in the midst of a search was left once, and come back to once", () => {
    const panel = openTold(createMemory(), nine());
    answerAll(panel as never, "none");
    for (const isHidden of [true, true, false, false]) panel.teller.look(isHidden);
    expect(names(panel.heard).filter((name) => /left|returned/.test(name))).toEqual(["left", "returned"]);
  });

  test("before any answer, or after an ending, is left by nobody", () => {
    const panel = openTold(createMemory(), nine());
    panel.teller.look(true);
    panel.teller.look(false);
    answerAll(panel as never, "gas");
    panel.teller.look(true);
    expect(panel.named("left")).toEqual([]);
  });
});

test("every event has a type by which a page listens", () => {
  const host = new EventTarget() as HTMLElement;
  const turns: string[] = [];
  host.addEventListener("fridgeside-left", ({ detail }) => turns.push(detail.turn));
  // @ts-expect-error: a page that mistakes a detail is told so when it is compiled
  host.addEventListener("fridgeside-left", ({ detail }) => turns.push(detail.words));
  tellPage(host, "fridgeside-left", { turn: "a.b", kind: "choice", scenario: null });
  expect(turns[0]).toBe("a.b");
});

describe("a model code", () => {
  const lookFor = (typed: string, kind: string) => {
    const panel = openTold(createMemory(), nine());
    panel.teller.looked(typed, { kind, typed } as never);
    return panel;
  };

  test("is not found where the shop's list has not what somebody stood by", async () => {
    const { happeningsOf } = await import("../../src/embed/happenings.ts");
    const entry = (typed: string) => ({
      id: "a",
      seq: 1,
      by: "householder" as const,
      at: "2026-01-01T09:00:00Z",
      event: { type: "model-given" as const, turn: "part.model", code: null, typed },
    });
    const told = (typed: string, isUnknown: boolean) => {
      const added = [entry(typed)];
      const journal = { format: 2 as const, model: null, started: "2026-01-01T09:00:00Z", entries: added };
      const known = { isUnknown: () => isUnknown, verdictOf: () => "", dangers: [], turn: "part.model" };
      return happeningsOf(journal, added, known).map(({ name }) => name);
    };
    expect(told("ZZ 123", true)).toContain("fridgeside-not-found");
    expect(told("ZZ 123", false)).not.toContain("fridgeside-not-found");
  });

  test("that is looked for alone is told of to nobody", () => {
    expect(lookFor("ZZ 123", "unknown").named("not-found")).toEqual([]);
  });
});

describe("a part", () => {
  test("is shown once for an ending, by the shop's number or by its kind alone", () => {
    const ended = { outcome: "part" as const, cause: "bin-cracked", part: "ice-bin", model: "ZZ1" };
    const panel = openTold(createMemory(), nine());
    panel.teller.fitted("ice-bin", { kind: "part", part: { number: "B-1" }, alternatives: [] } as never);
    expect(panel.named("part-shown")).toEqual([]);
    panel.teller.ended(ended, true);
    panel.teller.fitted("water-filter", { kind: "no-part" });
    for (let times = 0; times < 2; times++)
      panel.teller.fitted("ice-bin", { kind: "part", part: { number: "B-1" }, alternatives: [] } as never);
    panel.teller.ended({ ...ended, model: null }, true);
    expect(panel.named("part-shown")).toEqual([
      { kind: "ice-bin", model: "ZZ1", number: "B-1" },
      { kind: "ice-bin", model: null, number: null },
    ]);
  });
});
