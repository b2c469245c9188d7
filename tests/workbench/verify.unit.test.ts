import { describe, expect, test } from "vitest";
import type { ChartConfig, StateConfig } from "../../src/chart/index.ts";
import { composeChart } from "../../src/compile/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import { graphOf, verifyChart } from "../../src/workbench/verify/index.ts";
import { ownFlow } from "../own-flow.ts";
import { dominatorsOf, immediateDominators, type Successors } from "./dominators.ts";

const flow = ownFlow;
const scenario = "no-ice-plumbed";

describe("the whole chart", () => {
  test("has no problems", () => {
    expect(verifyChart(flow)).toEqual([]);
  });

  test("has every hazardous turn dominated by a confirmed gate for each of its hazards", () => {
    const steps = hazardousTurns(flow, composeChart(flow));
    expect(steps.length).toBeGreaterThan(10);
    expect(steps.filter(({ dominated }) => !dominated)).toEqual([]);
  });

  test("asks its gate again in every turn behind one, so that no gate stays open over a closed page", () => {
    const { leaves, edges } = graphOf(composeChart(flow));
    for (const [leaf, { meta }] of leaves) {
      const turn = flow.checks[meta?.check ?? ""]?.turns[meta?.turn.split(".")[1] ?? ""];
      const gates = turn?.gates ?? flow.checks[meta?.check ?? ""]?.gates;
      if (!meta || !gates?.length) continue;
      const home = leaf.slice(0, leaf.lastIndexOf("/"));
      if (!gates || meta?.kind === "ending") continue;
      const back = edges.filter(({ from, event }) => from === leaf && event === "session-resumed");
      expect(back.map(({ to }) => to)).toEqual([`${home}/gate-${gates[0]}`]);
    }
  });
});

describe("a damaged flow", () => {
  const damagedFlow = (damage: (copy: Flow) => void) => {
    const copy = structuredClone(flow);
    damage(copy);
    return verifyChart(copy).map(({ code, state }) => `${code} ${state}`);
  };

  test("fails when a check loses its gate", () => {
    const found = damagedFlow((copy) => {
      delete checkOf(copy, "fill-tube").gates;
    });
    expect(found).toContain(`ungated-hazard ${scenario}/fill-tube/look`);
  });

  test("fails when one of two gates is taken away", () => {
    const found = damagedFlow((copy) => {
      checkOf(copy, "supply-line").gates = ["pulled-out"];
    });
    expect(found).toContain(`ungated-hazard ${scenario}/supply-line/look`);
  });

  test("fails when a gate no longer covers a hazard of the steps behind it", () => {
    const found = damagedFlow((copy) => {
      for (const id of ["back-panel", "pulled-out", "plug-out"]) {
        const gate = copy.gates[id];
        if (gate) gate.covers = gate.covers.filter((hazard) => hazard !== "mains-electricity");
      }
    });
    expect(found).toContain(`ungated-hazard ${scenario}/inlet-valve/screen`);
    expect(found).toContain(`ungated-hazard ${scenario}/fill-tube/thaw`);
  });

  test("fails when a check behind the back panel claims to work inside the freezer", () => {
    const found = damagedFlow((copy) => {
      const check = checkOf(copy, "inlet-valve");
      check.access = "inside";
      delete check.gates;
    });
    expect(found).toContain("undeclared-hazard inlet-valve");
  });

  test("fails when a check names a hazard that nobody described: unknown counts as dangerous", () => {
    const found = damagedFlow((copy) => {
      checkOf(copy, "ice-bin").hazards = ["hot-glue"];
    });
    expect(found).toContain(`ungated-hazard ${scenario}/ice-bin/look`);
  });

  test("fails when a turn takes no answer at all, although danger and help can still be called", () => {
    const found = damagedFlow((copy) => {
      const { turns } = checkOf(copy, "too-full");
      turns.rearrange = { answers: {}, "not-sure": false, cannot: false };
    });
    expect(found).toContain(`dead-end ${scenario}/too-full/rearrange`);
  });

  test("fails when no danger is marked in the opening, so that none could be reported later", () => {
    const found = damagedFlow((copy) => {
      for (const outcome of Object.values(copy.opening.turns.danger?.answers ?? {})) delete outcome.danger;
    });
    expect(found).toContain(`no-way-out ${scenario}/door-seal/look`);
  });
});

describe("a damaged chart", () => {
  const step = `${scenario}/fill-tube/look`;
  const damaged = (damage: (config: ChartConfig) => void) => {
    const config = structuredClone(composeChart(flow));
    damage(config);
    return config;
  };
  const problemsOf = (config: ChartConfig) =>
    verifyChart(flow, config).map(({ code, state }) => `${code} ${state}`);
  const dominatedIn = (config: ChartConfig) =>
    hazardousTurns(flow, config).find(({ leaf }) => leaf === step)?.dominated;

  test("fails when the hub leads straight into a hazardous turn", () => {
    const config = damaged((copy) => {
      stateOf(copy, scenario, "choosing").always?.unshift({ target: `#${step}` });
    });
    expect(problemsOf(config)).toContain(`ungated-hazard ${step}`);
    expect(dominatedIn(config)).toBe(false);
  });

  test("fails when another check's hazardous turn, its own gate confirmed, leads straight in", () => {
    const config = damaged((copy) => {
      leadTo(stateOf(copy, scenario, "inlet-valve", "screen"), "answered.clean", step);
    });
    expect(problemsOf(config)).toContain(`ungated-hazard ${step}`);
    expect(dominatedIn(config)).toBe(false);
  });

  test("fails when saying 'cannot' at the gate leads into the step", () => {
    const config = damaged((copy) => {
      leadTo(stateOf(copy, scenario, "fill-tube", "gate-plug-out"), "answered.cannot", step);
    });
    expect(problemsOf(config)).toContain(`ungated-hazard ${step}`);
    expect(dominatedIn(config)).toBe(false);
  });

  test("fails when coming back to a step skips its gate", () => {
    const config = damaged((copy) => {
      leadTo(stateOf(copy, scenario, "fill-tube", "thaw"), "session-resumed", step);
    });
    expect(problemsOf(config)).toContain(`ungated-hazard ${step}`);
  });

  test("fails when coming back to a step enters at the second of two gates", () => {
    const config = damaged((copy) => {
      const second = `${scenario}/supply-line/gate-pulled-out`;
      leadTo(stateOf(copy, scenario, "supply-line", "look"), "session-resumed", second);
    });
    expect(problemsOf(config)).toContain(`ungated-hazard ${scenario}/supply-line/look`);
  });

  test("fails when coming back to a step, or to the second of two gates, asks nothing", () => {
    for (const place of [
      ["fill-tube", "thaw"],
      ["supply-line", "gate-pulled-out"],
    ]) {
      const config = damaged((copy) => {
        delete stateOf(copy, scenario, ...place).on?.["session-resumed"];
      });
      expect(problemsOf(config)).toContain(`gate-kept-open ${scenario}/${place.join("/")}`);
    }
  });

  test("fails when a change of answers in the opening could jump behind the panel", () => {
    const config = damaged((copy) => {
      leadTo(stateOf(copy, "opening", "changed"), "answered.nothing", step);
    });
    expect(problemsOf(config)).toContain(`ungated-hazard ${step}`);
    expect(dominatedIn(config)).toBe(false);
  });

  test("fails at a dead end", () => {
    const config = damaged((copy) => {
      const scenarioState = stateOf(copy, scenario);
      const cellar = {
        id: `${scenario}/cellar`,
        meta: { turn: "cellar.stand", kind: "choice", check: null },
      };
      Object.assign(scenarioState.states ?? {}, { cellar });
      leadTo(stateOf(copy, scenario, "too-full", "look"), "answered.room", `${scenario}/cellar`);
    });
    // Whoever reports ice there is led on, so that the walks pass through it: they find what else it lacks.
    expect(problemsOf(config)).toContain(`dead-end ${scenario}/cellar`);
  });

  test("fails at a state that nothing leads to", () => {
    const config = damaged((copy) => {
      leadTo(stateOf(copy, scenario, "too-full", "look"), "answered.packed", `${scenario}/choosing`);
    });
    expect(problemsOf(config)).toEqual([`unreachable ${scenario}/too-full/rearrange`]);
  });

  test("fails at a target that does not exist, and names both ends", () => {
    const config = damaged((copy) => {
      leadTo(stateOf(copy, scenario, "too-full", "look"), "answered.room", `${scenario}/atic`);
    });
    const problems = verifyChart(flow, config);
    expect(problems).toEqual([
      {
        code: "unknown-target",
        state: `${scenario}/too-full/look`,
        to: `${scenario}/atic`,
        message: `"${scenario}/too-full/look" goes to "${scenario}/atic", which does not exist.`,
      },
    ]);
  });

  test("fails where danger can no longer be reported or a person asked", () => {
    const config = damaged((copy) => {
      const { on } = stateOf(copy, scenario);
      for (const event of Object.keys(on ?? {})) if (event !== "ice-returned") delete on?.[event];
    });
    const problems = verifyChart(flow, config);
    expect(new Set(problems.map(({ code }) => code))).toEqual(new Set(["no-way-out"]));
    expect(problems.map(({ message }) => message)).toContain(
      `At "${scenario}/door-seal/feel" there is no way to report danger.`,
    );
    expect(problems.map(({ message }) => message)).toContain(
      `At "${scenario}/door-seal/feel" there is no way to ask for a person.`,
    );
  });
});

function checkOf(copy: Flow, id: string) {
  const check = copy.checks[id];
  if (!check) throw new Error(`No check "${id}"`);
  return check;
}

function stateOf(config: ChartConfig, ...path: string[]): StateConfig {
  let state: StateConfig | undefined;
  let within = config.states;
  for (const name of path) {
    state = within[name];
    within = state?.states ?? {};
  }
  if (!state) throw new Error(`No state "${path.join("/")}"`);
  return state;
}

function leadTo(state: StateConfig, event: string, target: string): void {
  if (!state.on?.[event]) throw new Error(`"${state.id}" takes no "${event}"`);
  state.on[event] = { target: `#${target}` };
}

/**
 * Every turn that exposes a person to a hazard which needs a gate, and whether a confirmed gate for each such
 * hazard dominates it. A confirmed gate is a node of its own, on the way that "ready" takes.
 */
function hazardousTurns(source: Flow, config: ChartConfig): { leaf: string; dominated: boolean }[] {
  const { start, leaves, edges } = graphOf(config);
  const successors: Successors = new Map();
  const connect = (from: string, to: string) => successors.set(from, [...(successors.get(from) ?? []), to]);
  for (const { from, to, event } of edges) {
    const confirmed = leaves.get(from)?.meta?.gate && event === "answered.ready";
    // In full or in short, it is the same gate: that the short one comes only after the full one is proved apart.
    const node = `${from.replace("/short-", "/gate-")} confirmed`;
    if (confirmed) connect(from, node);
    connect(confirmed ? node : from, to);
  }
  const idom = immediateDominators(successors, start);
  return [...leaves].flatMap(([leaf, { meta }]) => {
    const check = source.checks[meta?.check ?? ""];
    if (!check || meta?.gate) return [];
    const turn = check.turns[meta?.turn.split(".")[1] ?? ""];
    const there = [source.access[turn?.access ?? check.access], check.hazards, turn?.hazards];
    const needed = there
      .flatMap((some) => some ?? [])
      .filter((hazard) => source.hazards[hazard]?.gate === "required");
    const covered = dominatorsOf(leaf, idom).flatMap((node) => {
      const gate = node.endsWith(" confirmed") && leaves.get(node.replace(/ confirmed$/, ""))?.meta?.gate;
      return gate ? (source.gates[gate]?.covers ?? []) : [];
    });
    return needed.length ? [{ leaf, dominated: needed.every((hazard) => covered.includes(hazard)) }] : [];
  });
}
