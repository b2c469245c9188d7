// @vitest-environment happy-dom
import { join } from "node:path";
import { render } from "preact";
import { act } from "preact/test-utils";
import { describe, expect, test } from "vitest";
import { compileGuide } from "../../src/compile/index.ts";
import { Panel } from "../../src/panel/frame/index.ts";
import {
  type Held,
  isStopped,
  type LogEvent,
  metaOf,
  putBack,
  record,
  type Session,
  startSession,
} from "../../src/session/index.ts";
import {
  createFirstTurns,
  createTexts,
  type FirstTurn,
  type Given,
  greetedView,
  leadAfter,
  leadOf,
  openingView,
  stopView,
  type Texts,
  type View,
  viewOf,
} from "../../src/turn/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";
import { readerOf } from "../turn/reader.ts";

const root = join(import.meta.dirname, "../..");
const locales = readLocales(join(root, "locales"));
const flow = readFlow(join(root, "flows"));
const guide = compileGuide(flow);
const turns = createFirstTurns(guide, locales, flow.regions);
const at = "2026-01-01T00:00:00Z";

/** Answers by any way through the opening that shows each of its turns at least once, as far as the first file goes. */
function waysThrough(first: FirstTurn, given: Given[] = []): Given[][] {
  const { turn, answers = [] } = openingView(first, given).turn ?? {};
  const on = answers.flatMap(({ id }) => {
    const next: Given[] = [...given, { type: "answered", turn: turn ?? "", answer: id, at }];
    const lead = leadAfter(first, next);
    return lead && lead[0] !== "!" ? waysThrough(first, next) : [];
  });
  return [given, ...on];
}

/** What the engine makes of the same answers: what greets was answered with comes where its turn does. */
function sessionAfter(given: Given[]): { session: Session; held: Held[] } {
  let session = startSession(guide, at);
  const held: Held[] = [];
  for (const event of given)
    if (event.turn === guide.flow.greets && session.log.events.length === 0) held.push({ id: "told", event });
    else session = putBack(record(session, event).session, held, at);
  return { session, held };
}

/** Shows the panel as the first file does, taps every way out and every line, and tells which texts it asked for. */
async function textsAskedBy(first: FirstTurn): Promise<string[]> {
  const asked = new Set<string>();
  const texts: Texts = (key, values) => {
    asked.add(values && "count" in values ? `${key}_other` : key);
    return key;
  };
  const page = document.createElement("div");
  const longest = waysThrough(first).reduce((most, way) => (way.length > most.length ? way : most));
  const steps = longest.map((_, place) => openingView(first, longest.slice(0, place)));
  const view = openingView(first, longest);
  const common = { actions: { change: () => {} } as never, services: {} as never, texts, screens: null };
  for (const kind of ["slow", "lost"] as const)
    for (const shown of [...steps, { ...view, turn: null }, stopView(first, "general")])
      for (const trouble of [null, { kind, shop: "", link: null }])
        await act(() => render(<Panel view={shown} {...common} trouble={trouble} />, page));
  await act(() => render(<Panel view={view} {...common} />, page));
  for (const name of ["ui.danger", "ui.menu", "ui.restart"]) {
    const button = [...page.querySelectorAll("button")].find(({ textContent }) => textContent === name);
    await act(() => button?.click());
  }
  return [...asked].sort();
}

describe("what the first file knows by heart", () => {
  test("is the opening of every language", () => {
    expect(Object.keys(turns).sort()).toEqual(Object.keys(locales).sort());
  });

  test.each(Object.entries(turns))(
    "%s: is all that the panel says before the engine has come",
    async (_, turn) => {
      const known = Object.keys(turn.texts).filter((key) => !key.endsWith("_one"));
      expect(await textsAskedBy(turn)).toEqual(known.sort());
      expect(Object.values(turn.texts).filter((text) => !text)).toEqual([]);
    },
  );

  test.each(Object.entries(turns))(
    "%s: by every way through it each turn looks as the engine draws it, earlier answers too",
    (tag, first) => {
      const texts = createTexts(locales, tag, readerOf(flow, tag));
      const ways = waysThrough(first);
      const seen = new Set<string>();
      for (const given of ways) {
        const { session, held } = sessionAfter(given);
        const drawn = openingView(first, given);
        seen.add(drawn.turn?.turn ?? "");
        const whole = greetedView(viewOf(session, texts, at, []), session, held, texts);
        // Help comes with the engine.
        expect(told(drawn)).toEqual(told({ ...whole, ways: whole.ways.filter((way) => way !== "help") }));
      }
      expect([...seen].sort()).toEqual(
        Object.keys(flow.opening.turns)
          .map((turn) => `opening.${turn}`)
          .sort(),
      );
      expect(ways.length).toBeGreaterThan(20);
    },
  );

  test.each(Object.entries(turns))(
    "%s: an answer without a lead is one that leaves the opening",
    (_, first) => {
      for (const given of waysThrough(first).slice(1)) {
        const { session: before } = sessionAfter(given);
        for (const answer of [...(metaOf(before).answers ?? []), "not-sure"]) {
          const { turn } = metaOf(before);
          const { session } = sessionAfter([...given, { type: "answered", turn, answer, at }]);
          const lead = leadAfter(first, [...given, { type: "answered", turn, answer, at }]);
          const isOpening = metaOf(session).turn.startsWith("opening.");
          expect([turn, answer, lead?.[0] === "!", Boolean(lead)]).toEqual([
            turn,
            answer,
            isStopped(session),
            isOpening || isStopped(session),
          ]);
        }
      }
    },
  );

  test("has no lead for what it never heard of", () => {
    const first = turns["en-GB"] as FirstTurn;
    for (const [turn, answer] of [
      ["opening.danger", "toString"],
      ["constructor", "none"],
      ["opening.danger", "__proto__"],
      ["lock-off.off", "none"],
    ] as const)
      expect(leadOf(first, turn, answer)).toBeUndefined();
  });
});

/** What a turn says. The ice path and chips come with the engine, and the first file leaves out what is empty. */
const toldOf = (turn: View["turn"]) =>
  Object.fromEntries(
    Object.entries({ ...turn, path: [], pathText: "", changed: [] }).filter(([, value]) =>
      Array.isArray(value) ? value.length > 0 : value,
    ),
  );

const told = (view: View) => ({
  ...view,
  turn: toldOf(view.turn),
  // Their places are those in the answers given here and those in the log there: what greets comes later in it.
  lines: view.lines.map(({ index: _, drops: __, ...line }) => line),
});

/** A session of the opening with these answers. */
const cameTo = (answers: [turn: string, answer: string][]): Session =>
  answers.reduce(
    (session, [turn, answer]) =>
      record(session, { type: "answered", turn: `opening.${turn}`, answer, at }).session,
    startSession(guide, at),
  );

/** Every danger of the opening, as an answer to it and as reported by the way out. */
const stopping: [string, LogEvent][] = [
  ...Object.entries(flow.opening.turns["danger"]?.answers ?? {})
    .filter(([, outcome]) => outcome.danger)
    .flatMap(([danger]): [string, LogEvent][] => [
      [danger, { type: "answered", turn: "opening.danger", answer: danger, at }],
      [danger, { type: "danger-reported", danger, at }],
    ]),
];

/** Questions that are asked before a stop, by the answers that lead to them, and what stops there. */
const beforeStop: [turn: string, to: [turn: string, answer: string][], stops: string[]][] = [
  ["danger-again", [["danger", "not-sure"]], ["general", "not-sure"]],
  ["hiss", [["danger", "hiss"]], ["gas", "not-sure"]],
  [
    "leak-power",
    [
      ["danger", "none"],
      ["symptom", "leaking"],
      ["leak", "not-sure"],
    ],
    ["water-near-socket", "not-sure"],
  ],
];

describe.each(Object.entries(turns))("%s: a stop that the first file draws", (tag, first) => {
  test.each(stopping)("says of %s what the engine says of it", (danger, event) => {
    const { session } = record(startSession(guide, at), event);
    const { turn, ways } = viewOf(session, createTexts(locales, tag, readerOf(flow, tag)), at, []);
    const drawn = stopView(first, danger);
    expect(toldOf(drawn.turn)).toEqual(toldOf(turn));
    expect(drawn.turn?.ending?.outcome).toBe("stopped");
    expect(drawn.ways).toEqual(ways);
    if (event.type === "answered") expect(leadOf(first, event.turn, event.answer)).toBe(`!${danger}`);
  });

  test.each(beforeStop)("says at %s what the engine says of it", (name, to, stops) => {
    for (const answer of stops) {
      const { session } = record(cameTo(to), { type: "answered", turn: `opening.${name}`, answer, at });
      const { turn } = viewOf(session, createTexts(locales, tag, readerOf(flow, tag)), at, []);
      const lead = leadOf(first, `opening.${name}`, answer) ?? "";
      expect(lead).toBe(`!${answer}`);
      const { heading, body } = stopView(first, lead.slice(1)).turn ?? {};
      expect({ heading, body }).toEqual({ heading: turn?.heading, body: turn?.body });
    }
  });

  test.each(["unheard-of", "constructor", "__proto__", ""])(
    "gives the general advice for a danger that it does not know (%s)",
    (danger) => {
      const texts = createTexts(locales, tag, readerOf(flow, tag));
      const { turn } = stopView(first, danger);
      expect(turn?.heading).toBe(texts("dangers.general.heading"));
      expect(turn?.body.join("\n")).toBe(texts("dangers.general.do"));
    },
  );
});
