import { describe, expect, test } from "vitest";
import type { ChartConfig, StateConfig, Transition } from "../../src/chart/index.ts";
import { composeChart } from "../../src/compile/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import { verifyChart } from "../../src/workbench/verify/index.ts";
import { ownFlow } from "../own-flow.ts";
import { smallFlowOf } from "../workbench/small-flow/index.ts";

const own = ownFlow;
/** Most violations are planted in a small flow: it is walked many times as fast. */
const small = smallFlowOf();
const scenario = "no-ice";

const problemsOf = (flow: Flow, config?: ChartConfig) =>
  verifyChart(flow, config).map(({ code, state }) => `${code} ${state}`);
const damaged = (damage: (copy: Flow) => void) => {
  const copy = structuredClone(small);
  damage(copy);
  return problemsOf(copy);
};
const damagedChart = (damage: (config: ChartConfig) => void) => {
  const config = structuredClone(composeChart(small));
  damage(config);
  return problemsOf(small, config);
};
const stateAt = (config: ChartConfig, check: string, turn: string): StateConfig => {
  const state = config.states[scenario]?.states?.[check]?.states?.[turn];
  if (!state) throw new Error(`No state ${check}/${turn}`);
  return state;
};
const leadTo = (state: StateConfig, event: string, target: string) => {
  state.on = { ...state.on, [event]: { target: `#${scenario}/${target}` } };
};
/** Every way of every state below. */
const waysBelow = (state: StateConfig): Transition[] => [
  ...(state.always ?? []),
  ...Object.values(state.on ?? {}).flat(),
  ...Object.values(state.states ?? {}).flatMap(waysBelow),
];

test("our own chart and the small one have every turn in the state that it needs, and nothing of ours left unsaid", () => {
  expect(problemsOf(own)).toEqual([]);
  expect(problemsOf(small)).toEqual([]);
});

describe("a turn in the wrong state is found", () => {
  test("where a hazardous turn has lost its gate", () => {
    const found = damaged((copy) => {
      delete copy.checks["fill-tube"]?.gates;
    });
    expect(found).toEqual(
      expect.arrayContaining([
        `ungated-hazard ${scenario}/fill-tube/look`,
        `wrong-state ${scenario}/fill-tube/look`,
      ]),
    );
  });

  test("where a gate no longer has the plug pulled that its steps need out", () => {
    const found = damaged((copy) => {
      const gate = copy.gates["back-panel"];
      if (gate) gate.leaves = { water: "closed" };
    });
    expect(found).toContain(`wrong-state ${scenario}/fill-tube/look`);
  });

  test("where another way leads past the gate, or the plug is put in on the way", () => {
    const past = damagedChart((config) => {
      leadTo(stateAt(config, "too-full", "look"), "answered.room", "fill-tube/look");
    });
    expect(past).toContain(`wrong-state ${scenario}/fill-tube/look`);
    const plugged = damaged((copy) => {
      const answer = copy.checks["fill-tube"]?.turns.look?.answers?.frozen;
      if (answer) answer.leaves = { plug: "in" };
    });
    expect(plugged).toContain(`wrong-state ${scenario}/fill-tube/thaw`);
  });

  test("where ice is waited for with the tap closed, its check that opens it gone", () => {
    const found = damaged((copy) => {
      delete copy.checks["tap-reopen"];
    });
    expect(found).toContain(`left-changed ${scenario}/choosing`);
    const straight = damagedChart((config) => {
      leadTo(stateAt(config, "fill-tube", "look"), "answered.clear", "last-wait/wait");
    });
    expect(straight).toContain(`wrong-state ${scenario}/last-wait/wait`);
  });

  test("where the wait no longer says what it needs: the flow as it came is asked too", () => {
    const copy = structuredClone(small);
    delete copy.checks["last-wait"]?.turns.wait?.needs;
    expect(problemsOf(small, composeChart(copy))).toContain(`wrong-state ${scenario}/last-wait/wait`);
  });
});

describe("something of ours that is forgotten is found", () => {
  test("where a search ends with the plug out and nobody was asked to put it back", () => {
    const found = damagedChart((config) => {
      const choosing = config.states[scenario]?.states?.choosing;
      choosing?.always?.unshift({ target: "#professional" });
    });
    expect(found).toContain(`left-changed ${scenario}/choosing`);
  });

  test("where an ending does not speak of the plug", () => {
    const found = damagedChart((config) => {
      const meta = config.states.professional?.meta;
      if (meta?.tells) meta.tells = meta.tells.filter((one) => one !== "plug");
    });
    expect(found).toEqual(["left-untold professional"]);
  });

  test("where an answer leaves it nobody knows how: it would be asked for ever", () => {
    const found = damaged((copy) => {
      const answer = copy.checks["put-back"]?.turns.all?.answers?.back;
      if (answer) delete answer.leaves;
    });
    expect(found).toContain("left-unsettled put-back");
  });
});

describe("a gate in short for whoever has not just confirmed it in full is found", () => {
  const short = `short-too-long ${scenario}/supply-line/short-water-supply`;

  test("where a reload is not noted", () => {
    const found = damagedChart((config) => {
      for (const way of waysBelow({ id: "", states: config.states }))
        for (const { params } of way.actions ?? []) delete params.returns;
    });
    expect(found).toContain(short);
  });

  test("where only one turn keeps a reload to itself", () => {
    const found = damagedChart((config) => {
      delete stateAt(config, "too-full", "look").on?.["session-resumed"];
    });
    expect(found.every((one) => one.startsWith("short-too-long"))).toBe(true);
    expect(found).not.toEqual([]);
  });

  test("where it is asked in short without that guard, or its guard is of another gate or of hours", () => {
    const guards = [
      undefined,
      {
        type: "fresh",
        params: { gate: "back-panel", minutes: 15, leaves: { water: "closed", plug: "out" } },
      },
      { type: "fresh", params: { gate: "water-supply", minutes: 600, leaves: { water: "closed" } } },
    ];
    for (const guard of guards) {
      const found = damagedChart((config) => {
        for (const state of ["gate-water-supply", "short-water-supply"])
          for (const way of waysBelow(stateAt(config, "supply-line", state)))
            if (way.guard?.type === "fresh") {
              if (guard) way.guard = guard;
              else delete way.guard;
            }
      });
      expect(found).toContain(short);
    }
  });
});
