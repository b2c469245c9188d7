import { describe, expect, test } from "vitest";
import { createAdviser, movesAt } from "../../src/advice/index.ts";
import { createMemory } from "../../src/chart/index.ts";
import { compileFlow, composeChart } from "../../src/compile/index.ts";
import { amongAfter, createInput } from "../../src/compile/model-of.ts";
import { openingWays, scenariosAhead } from "../../src/compile/openings.ts";
import { createModel, readModel } from "../../src/diagnosis/index.ts";
import {
  scenariosAhead as aheadOf,
  createGuide,
  metaOf,
  record,
  ScenarioMissing,
  type Session,
  startSession,
} from "../../src/session/index.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { at, take } from "../session/drive.ts";

const flow = ownFlow;
const compiled = compileFlow(flow);
const { start, scenarios } = compiled;
const ways = openingWays(start.chart);

describe("a compiled flow", () => {
  test("is plain JSON, so that a build can write it down", () => {
    expect(JSON.parse(JSON.stringify(compiled))).toEqual(JSON.parse(JSON.stringify(compileFlow(flow))));
    expect(JSON.stringify(compiled)).not.toContain("null,null");
  });

  test("leaves the sources of its limits at the workbench", () => {
    expect(JSON.stringify(compiled)).not.toContain("confidence");
    for (const [id, { value, unit }] of Object.entries(flow.limits))
      expect(start.flow.limits[id]).toEqual({ value, unit });
  });

  test("has in its charts what the verifier judged as one: every state of a scenario, and the same endings", () => {
    const { states } = composeChart(flow);
    for (const { id, chart } of scenarios) {
      expect(chart.states[id]).toEqual(states[id]);
      const { part, professional } = chart.states;
      expect(professional).toEqual(start.chart.states.professional);
      // Of the ways back from a part each has its own.
      const card = part?.states?.["card"];
      const before = { ...part, states: { ...part?.states, card: { ...card, on: undefined } } };
      expect(before).toEqual(start.chart.states.part);
      const ways = (one?: typeof card) => [one?.on?.["trouble-returned"] ?? []].flat();
      expect(ways(card)).not.toEqual([]);
      expect(ways(states.part?.states?.["card"])).toEqual(expect.arrayContaining(ways(card)));
    }
  });
});

describe.each(scenarios.map((one) => [one.id, one] as const))("the tables of %s", (id, { diagnosis }) => {
  test("make the model that flows/ make, after every opening that leads there", () => {
    const openings = ways.filter(({ to }) => to === id);
    expect(openings.length).toBeGreaterThan(0);
    // Many openings leave the same of flows/: the model of that is made once.
    const told = new Set<string>();
    for (const { memory } of openings) {
      const answers = Object.entries(memory.findings).map(([turn, { answer }]) => [turn, answer]);
      const among = amongAfter(flow, id, Object.fromEntries(answers));
      const { causes, weights, checks } = among;
      const { turns, entries, models } = diagnosis.openings;
      const key = turns.map((turn) => memory.findings[turn]?.answer ?? "").join(" ");
      const tables = models[entries[key] ?? 0];
      const both = JSON.stringify([among, tables]);
      if (told.has(both)) continue;
      told.add(both);
      const input = createInput(flow, id, checks);
      const byWords = createModel({
        ...input,
        causes: input.causes.flatMap((one) => {
          const weight = weights[causes.indexOf(one.id)];
          return weight === undefined ? [] : [{ ...one, weight }];
        }),
      });
      expect(readModel(diagnosis.tables, tables)).toEqual(byWords);
    }
  });

  test("know a way to prove every cause that a part puts right here, where its checks are asked", () => {
    const parts = diagnosis.tables.causes.filter(({ remedy }) => remedy === "part");
    for (const { id: cause, proofs } of parts) expect(proofs, cause).toBeDefined();
  });
});

describe("a session on a guide whose scenarios are loaded as they come", () => {
  const opened = (guide = createGuide(start)) =>
    ["none", "no-ice", "plumbed"].reduce<Session>(take, startSession(guide, at(0)));
  const last = { type: "answered", turn: "opening.changed", answer: "nothing", at: at(9) } as const;

  test("says which one it lacks, and has changed nothing", () => {
    const session = opened();
    expect(() => record(session, last)).toThrow(ScenarioMissing);
    try {
      record(session, last);
    } catch (problem) {
      expect((problem as ScenarioMissing).scenario).toBe("no-ice-plumbed");
    }
    expect(metaOf(session).turn).toBe("opening.changed");
  });

  test("takes a danger without any", () => {
    const { session } = record(opened(), { type: "danger-reported", danger: "gas", at: at(9) });
    expect(metaOf(session).outcome).toBe("stopped");
  });

  test("knows the few that it can still come to", () => {
    expect(aheadOf(startSession(createGuide(start), at(0)))).toEqual([]);
    expect(aheadOf(opened())).toEqual(["after-change", "no-ice-plumbed"]);
    expect(aheadOf(record(opened(guideFor(flow)), last).session)).toEqual([]);
  });

  test("never goes on in another than it was told of", () => {
    const ahead = scenariosAhead(ways, start.scenarios);
    expect(Object.keys(ahead).length).toBeGreaterThan(5);
    for (const { answers, to } of ways.filter((way) => start.scenarios.includes(way.to)))
      for (const [begins, left] of Object.entries(ahead))
        if (`${answers.join(" ")} `.startsWith(`${begins} `)) expect(left).toContain(to);
  });
});

test("an adviser asked twice about the same memory says the same, and changes nothing", () => {
  for (const scenario of scenarios) {
    const memory = Object.freeze(createMemory());
    const adviser = createAdviser(scenario, memory);
    const advice = adviser.advise(memory);
    expect(adviser.advise(memory)).toEqual(advice);
    const allowed = movesAt(scenario, memory).map(({ check }) => check);
    if (advice.check) expect(allowed).toContain(advice.check);
  }
});
