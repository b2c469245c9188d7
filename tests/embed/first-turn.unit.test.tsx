// @vitest-environment happy-dom
import { join } from "node:path";
import { render } from "preact";
import { act } from "preact/test-utils";
import { describe, expect, test } from "vitest";
import { compileGuide } from "../../src/compile/index.ts";
import { stopsAt, stopView } from "../../src/embed/first-stop.ts";
import { Panel } from "../../src/panel/frame/index.ts";
import { type LogEvent, record, startSession } from "../../src/session/index.ts";
import { createFirstTurns, createTexts, type FirstTurn, viewOf } from "../../src/turn/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";

const root = join(import.meta.dirname, "../..");
const locales = readLocales(join(root, "locales"));
const flow = readFlow(join(root, "flows"));
const guide = compileGuide(flow);
const turns = createFirstTurns(guide, locales);
const at = "2026-01-01T00:00:00Z";

/** Shows the panel as the first file does, taps every way out, and tells which texts it asked for. */
async function textsAskedBy(first: FirstTurn): Promise<string[]> {
  const asked = new Set<string>();
  const texts = (key: string) => {
    asked.add(key);
    return key;
  };
  const page = document.createElement("div");
  const { view } = first;
  const common = { actions: {} as never, services: {} as never, texts, screens: null };
  for (const kind of ["slow", "lost"] as const)
    for (const shown of [view, { ...view, turn: null }, stopView(first, "general")])
      for (const trouble of [null, { kind, shop: "", link: null }])
        await act(() => render(<Panel view={shown} {...common} trouble={trouble} />, page));
  await act(() => render(<Panel view={view} {...common} />, page));
  for (const button of page.querySelectorAll<HTMLButtonElement>("footer > button"))
    await act(() => button.click());
  return [...asked].sort();
}

describe("what the first file knows by heart", () => {
  test("is a first turn for every language", () => {
    expect(Object.keys(turns).sort()).toEqual(Object.keys(locales).sort());
  });

  test.each(Object.entries(turns))(
    "%s: is all that the panel says before the engine has come",
    async (_, turn) => {
      expect(await textsAskedBy(turn)).toEqual(Object.keys(turn.texts).sort());
      expect(Object.values(turn.texts).filter((text) => !text)).toEqual([]);
    },
  );

  test.each(Object.entries(turns))("%s: the first question can be answered", (_, { view }) => {
    expect(view.turn?.kind).toBe("choice");
    expect(view.turn?.answers.length).toBeGreaterThan(1);
    expect(view.turn?.heading).not.toBe("");
  });
});

/** Every danger of the opening, as an answer to it and as reported by the way out, and 'not sure'. */
const stopping: [string, LogEvent][] = [
  ...Object.entries(flow.opening.turns["danger"]?.answers ?? {})
    .filter(([, outcome]) => outcome.danger)
    .flatMap(([danger]): [string, LogEvent][] => [
      [danger, { type: "answered", turn: "opening.danger", answer: danger, at }],
      [danger, { type: "danger-reported", danger, at }],
    ]),
  ["not-sure", { type: "answered", turn: "opening.danger", answer: "not-sure", at }],
];

describe.each(Object.entries(turns))("%s: a stop that the first file draws", (tag, first) => {
  test.each(stopping)("says of %s what the engine says of it", (danger, event) => {
    const { session } = record(startSession(guide, at), event);
    const { turn, ways } = viewOf(session, createTexts(locales, tag, flow.limits), at, []);
    const drawn = stopView(first, danger);
    // The ice path comes with the engine.
    expect(drawn.turn).toEqual({ ...turn, path: [], pathText: "" });
    expect(drawn.turn?.ending?.outcome).toBe("stopped");
    expect(drawn.ways).toEqual(ways);
    expect(stopsAt(first, "opening.danger", danger)).toBe(true);
  });

  test.each(["unheard-of", "constructor", "__proto__", ""])(
    "gives the general advice for a danger that it does not know (%s)",
    (danger) => {
      const texts = createTexts(locales, tag, flow.limits);
      const { turn } = stopView(first, danger);
      expect(turn?.heading).toBe(texts("dangers.general.heading"));
      expect(turn?.body.join("\n")).toBe(texts("dangers.general.do"));
    },
  );

  test("is led to by nothing that is no danger", () => {
    expect(stopsAt(first, "opening.danger", "none")).toBe(false);
    expect(stopsAt(first, "opening.danger", "toString")).toBe(false);
    expect(stopsAt(first, "opening.symptom", "not-sure")).toBe(false);
  });
});
