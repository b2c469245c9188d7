import { describe, expect, test } from "vitest";
import { gated, type Packed, toldOf, turnsOf } from "./packed-flows.ts";

describe("a chart that was edited after it was packed is refused", () => {
  test.each<[what: string, edit: (data: Packed) => void, says: string]>([
    [
      "where a check begins behind its gate",
      (data) => {
        const check = gated(data).chart.states["no-ice-plumbed"]?.states?.["fill-tube"];
        if (check) check.initial = "look";
      },
      "without a gate",
    ],
    [
      "where a way from outside leads past a gate",
      (data) => {
        const [way] = gated(data).chart.states["no-ice-plumbed"]?.states?.choosing?.always ?? [];
        if (way) way.target = "#no-ice-plumbed/fill-tube/look";
      },
      "without a gate",
    ],
    [
      "where who declines a gate comes past it",
      (data) => {
        const on = turnsOf(data, "fill-tube")["gate-plug-out"]?.on ?? {};
        on["answered.cannot"] = { target: "#no-ice-plumbed/fill-tube/look" };
      },
      "without a gate",
    ],
    [
      "where the second of two gates is left out",
      (data) => {
        const on = turnsOf(data, "supply-line")["gate-water-supply"]?.on ?? {};
        on["answered.ready"] = { target: "#no-ice-plumbed/supply-line/entering" };
      },
      "without a gate",
    ],
    [
      "where a turn leads back past the gate to `entering`",
      (data) => {
        const on = turnsOf(data, "fill-tube").look?.on ?? {};
        on["answered.clear"] = { target: "#no-ice-plumbed/fill-tube/entering" };
      },
      "without a gate",
    ],
    [
      "where answers from behind a gate outlast a change",
      (data) => gated(data).flow.lasting.push("fill-tube"),
      "without a gate",
    ],
    [
      "where coming back does not ask the gate again",
      (data) => Reflect.deleteProperty(turnsOf(data, "fill-tube").look?.on ?? {}, "session-resumed"),
      "without a gate",
    ],
    [
      "where the hazardous turn stands under the name of another check",
      (data) => {
        const { look } = turnsOf(data, "fill-tube");
        const harmless = turnsOf(data, "ice-bin").look;
        if (look?.meta && harmless) harmless.meta = look.meta;
      },
      'asks "fill-tube.look" at no-ice-plumbed/ice-bin/look',
    ],
    [
      "where a danger is not taken in a scenario",
      (data) =>
        Reflect.deleteProperty(gated(data).chart.states["no-ice-plumbed"]?.on ?? {}, "danger-reported.gas"),
      'does not stop everywhere for the danger "gas"',
    ],
    [
      "where a turn takes a danger for something else",
      (data) => {
        const on = turnsOf(data, "ice-bin").look?.on ?? {};
        on["danger-reported.gas"] = { target: "#no-ice-plumbed/choosing" };
      },
      "takes a danger at no-ice-plumbed/ice-bin/look by itself",
    ],
    [
      "where something leads on from a danger",
      (data) => {
        const { stopped } = gated(data).chart.states;
        if (stopped) stopped.on = { "ice-returned": { target: "#fixed" } };
      },
      "leads on from a danger",
    ],
    [
      "where it has a word that is no guard",
      (data) => {
        const [way] = gated(data).chart.states["no-ice-plumbed"]?.states?.choosing?.always ?? [];
        if (way) way.guard = { type: "raining", params: {} };
      },
      'shape at "scenarios.0.chart',
    ],
    [
      "where it does something of its own",
      (data) => Object.assign(gated(data).chart.states["no-ice-plumbed"] ?? {}, { invoke: { src: "x" } }),
      'shape at "scenarios.0.chart',
    ],
    [
      "where it takes any event at all",
      (data) => Object.assign(turnsOf(data, "ice-bin").look?.on ?? {}, { "*": { target: "#fixed" } }),
      'shape at "scenarios.0.chart',
    ],
    [
      "where a way leads nowhere",
      (data) => Reflect.deleteProperty(gated(data).chart.states["no-ice-plumbed"]?.states ?? {}, "ice-bin"),
      'names "no-ice-plumbed/ice-bin" at no-ice-plumbed/choosing',
    ],
  ])("%s", async (_, edit, says) => {
    expect(await toldOf(edit)).toContain(says);
  });
});

describe("tables that no belief can reckon with are refused", () => {
  test.each<[what: string, edit: (data: Packed) => void, says: string]>([
    [
      "a likelihood of nothing",
      (data) => Object.assign(gated(data).diagnosis.tables.likelihoods, { 0: 0 }),
      'shape at "scenarios.0.diagnosis.tables.likelihoods.0',
    ],
    [
      "a likelihood that is not there",
      (data) => {
        const outcome = gated(data).diagnosis.tables.checks[0]?.outcomes[0];
        if (outcome) Object.assign(outcome, { likely: outcome.likely.replace(/./, "~") });
      },
      "numbers that no belief can reckon with",
    ],
    [
      "too few likelihoods",
      (data) => {
        const outcome = gated(data).diagnosis.tables.checks[0]?.outcomes[0];
        if (outcome) Object.assign(outcome, { likely: outcome.likely.slice(1) });
      },
      "numbers that no belief can reckon with",
    ],
    [
      "a prior below nothing",
      (data) => Object.assign(gated(data).diagnosis.tables.causes[0] ?? {}, { weight: -1 }),
      'shape at "scenarios.0.diagnosis.tables.causes.0.weight',
    ],
    [
      "a model beside them",
      (data) => gated(data).diagnosis.openings.models[0]?.causes.push(999),
      "that lead beside its tables",
    ],
    [
      "a cause that nobody knows",
      (data) => Reflect.deleteProperty(gated(data).flow.causes, "bin-full"),
      'names "bin-full" ',
    ],
  ])("%s", async (_, edit, says) => {
    expect(await toldOf(edit)).toContain(says);
  });
});
