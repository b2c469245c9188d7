import { describe, expect, test } from "vitest";
import { createInsight, type Sending } from "../../src/embed/insight.ts";
import { insightBounds, readLine } from "../../src/insight/index.ts";
import { readFlow } from "../../src/workbench/build/index.ts";
import { healthy } from "../session/drive.ts";
import { answerAll, createMemory } from "./open-controller.ts";
import { openTold } from "./told-page.ts";

/** What a browser took, and when it is to try again. */
function createBrowser(takes: { beacon: boolean | "throws"; post: boolean }) {
  const sent: { by: string; lines: string[] }[] = [];
  const later: (() => void)[] = [];
  const note = (by: string, body: string) => sent.push({ by, lines: body.trimEnd().split("\n") });
  const sending: Sending = {
    beacon: (_, body) => {
      if (takes.beacon === "throws") throw new TypeError("no beacons here");
      if (takes.beacon) note("beacon", body);
      return takes.beacon;
    },
    post: async (_, body) => {
      if (!takes.post) throw new TypeError("no network");
      note("post", body);
      return true;
    },
    later: (work) => void later.push(work),
  };
  return { sent, later, sending };
}

const flow = readFlow();

const settled = () => new Promise((done) => setImmediate(done));

function begin(takes: Parameters<typeof createBrowser>[0] = { beacon: true, post: true }) {
  const browser = createBrowser(takes);
  const person = { agrees: true };
  const insight = createInsight("https://shop.example/collect", () => person.agrees, browser.sending);
  const clock = { now: "2026-01-01T09:00:00Z" };
  const panel = openTold(createMemory(), clock, {}, insight.hears);
  return { ...browser, takes, person, insight, clock, panel };
}

describe("outcomes", () => {
  test("are sent together at an end, each a line by the schema", () => {
    const { panel, clock, sent } = begin();
    answerAll(panel as never, "none", "no-ice", "plumbed", "nothing");
    panel.actions.tell({ words: "canary words", facts: [] });
    clock.now = "2026-01-01T09:07:10Z";
    panel.actions.askForHelp();
    expect(sent).toHaveLength(1);
    expect(sent[0]?.lines.map(readLine)).toEqual([
      { format: 1, what: "started" },
      { format: 1, what: "not-understood", scenario: "no-ice-plumbed", turn: "power.light" },
      {
        ...{ format: 2, what: "ended", scenario: "no-ice-plumbed", outcome: "professional" },
        ...{ cause: null, part: null, minutes: 7, answers: 4, seen: [], vain: [] },
      },
    ]);
    expect(JSON.stringify(sent)).not.toContain("canary");
  });

  test("say what each check came to by its id, whatever was measured or answered in the opening", () => {
    const { panel, insight, sent } = begin();
    for (let turns = 0; turns < 30 && panel.turn() !== "part.model"; turns++) {
      const turn = panel.turn() ?? "";
      const answer = healthy[turn] ?? "not-sure";
      if (typeof answer === "string") panel.actions.answer(turn, answer);
      else panel.actions.measure(turn, answer);
    }
    panel.actions.askForHelp();
    insight.send();
    const end = sent.flatMap(({ lines }) => lines.map(readLine)).find((line) => line?.what === "ended");
    const { seen } = end as unknown as { seen: string[] };
    expect(seen).toContain("power.alive");
    expect(new Set(seen.map((one) => one.split(".")[0])).size).toBe(seen.length);
    for (const one of seen) {
      const [check = "", outcome = ""] = one.split(".");
      expect(Object.keys(flow.checks[check]?.outcomes ?? {}), one).toContain(outcome);
    }
    expect(seen.join()).not.toMatch(/opening|gate/);
  });

  test("count no wait and no night as minutes", () => {
    const { panel, clock, sent } = begin();
    answerAll(panel as never, "none", "no-ice", "plumbed", "nothing");
    clock.now = "2026-01-02T09:00:00Z";
    answerAll(panel as never, "alive");
    clock.now = "2026-01-02T09:04:00Z";
    panel.actions.askForHelp();
    expect(readLine(sent[0]?.lines.at(-1) ?? "")).toMatchObject({ minutes: 4 });
  });

  test("say where somebody has left, and that they came back", () => {
    const { panel, insight, sent } = begin();
    answerAll(panel as never, "none");
    panel.teller.look(true);
    insight.send();
    panel.teller.look(false);
    insight.send();
    expect(sent.flatMap(({ lines }) => lines).map(readLine)).toMatchObject([
      { what: "started" },
      { what: "left", turn: "opening.symptom", kind: "choice", answers: 1 },
      { what: "returned", turn: "opening.symptom" },
    ]);
  });

  test("have only lines that a reader takes, over a whole search", () => {
    const { panel, insight, sent } = begin();
    for (let turns = 0; turns < 60; turns++) {
      const turn = panel.turn() ?? "";
      const answer = healthy[turn] ?? "not-sure";
      if (typeof answer === "string") panel.actions.answer(turn, answer);
      else panel.actions.measure(turn, answer);
      panel.teller.look(true);
      panel.teller.look(false);
    }
    insight.send();
    const lines = sent.flatMap((batch) => batch.lines);
    expect(lines.length).toBeGreaterThan(40);
    for (const line of lines) expect(readLine(line), line).not.toBeNull();
  });
});

describe("without the person's yes", () => {
  test("nothing is gathered, and nothing of it is sent once they agree", () => {
    const { panel, insight, person, sent } = begin();
    person.agrees = false;
    answerAll(panel as never, "none", "no-ice", "plumbed", "nothing");
    person.agrees = true;
    insight.send();
    expect(sent).toEqual([]);
  });

  test("what waits is dropped where they withdraw it, though it were sent again", async () => {
    const { panel, insight, person, sent, later, takes } = begin({ beacon: false, post: false });
    answerAll(panel as never, "none");
    insight.send();
    person.agrees = false;
    await settled();
    person.agrees = true;
    takes.beacon = true;
    insight.send();
    for (const again of later) again();
    expect(sent).toEqual([]);
  });
});

describe("where a browser takes no beacon", () => {
  test.each([false, "throws" as const])("outcomes are posted instead: %s", async (beacon) => {
    const { panel, sent } = begin({ beacon, post: true });
    answerAll(panel as never, "gas");
    await settled();
    expect(sent.map(({ by }) => by)).toEqual(["post"]);
    expect(sent[0]?.lines).toHaveLength(2);
  });

  test("and no post, they are tried again with what has come since, three times by themselves", async () => {
    const { panel, sent, later, takes } = begin({ beacon: false, post: false });
    answerAll(panel as never, "gas");
    await settled();
    for (let tries = 0; tries < 5; tries++) {
      later.splice(0).forEach((again) => {
        again();
      });
      await settled();
    }
    expect(later).toHaveLength(0);
    expect(sent).toEqual([]);
    takes.post = true;
    panel.actions.restart();
    answerAll(panel as never, "gas");
    await settled();
    expect(sent).toHaveLength(1);
    expect(sent[0]?.lines).toHaveLength(4);
  });

  test("no more wait than fit into one batch, the newest", async () => {
    const { panel, insight, sent, takes } = begin({ beacon: false, post: false });
    answerAll(panel as never, "none");
    for (let times = 0; times < 100; times++) {
      panel.teller.look(true);
      panel.teller.look(false);
      await settled();
    }
    takes.beacon = true;
    insight.send();
    expect(sent[0]?.lines).toHaveLength(insightBounds.waiting);
    expect(sent[0]?.lines.at(-1)).toContain("returned");
    expect(JSON.stringify(sent).length).toBeLessThan(insightBounds.batch);
  });
});

describe("a model code that was not found", () => {
  const typedAs = (typed: string, turn = "part.model") => {
    const browser = createBrowser({ beacon: true, post: true });
    const insight = createInsight("https://shop.example/collect", () => true, browser.sending);
    const events = [{ type: "model-given", turn, code: null, typed, at: "2026-01-01T09:00:00Z" }];
    const session = { guide: { loaded: new Map() }, log: { started: "2026-01-01T09:00:00Z", events } };
    insight.hears("fridgeside-not-found", { what: "model", turn }, session as never);
    insight.send();
    return browser.sent.flatMap(({ lines }) => lines.map(readLine));
  };

  test("is sent as the shop would look it up", () => {
    expect(typedAs("zq-77 b/4")).toEqual([
      { format: 1, what: "model-missing", scenario: null, code: "ZQ77B4" },
    ]);
  });

  test.each([
    "01632 960 123",
    "Jo Bloggs",
    "my fridge is the 2nd one on the left",
    "X1",
    `A1${"9".repeat(40)}`,
  ])("stays on the phone where it may be something else: %s", (typed) => {
    expect(typedAs(typed)).toEqual([]);
  });
});
