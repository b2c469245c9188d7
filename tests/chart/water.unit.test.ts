import { describe, expect, test } from "vitest";
import type { ChartConfig } from "../../src/chart/index.ts";
import { composeChart } from "../../src/compile/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { verifyChart } from "../../src/workbench/verify/index.ts";

const flow = readFlow();
const damaged = (damage: (copy: Flow) => void) => {
  const copy = structuredClone(flow);
  damage(copy);
  return verifyChart(copy).map(({ code, state }) => `${code} ${state}`);
};
const damagedChart = (damage: (config: ChartConfig) => void) => {
  const config = structuredClone(composeChart(flow));
  damage(config);
  return verifyChart(flow, config).map(({ code, state }) => `${code} ${state}`);
};

describe("a tap that we had closed", () => {
  test("is open again, or spoken of, wherever water is waited for or measured and wherever a search ends", () => {
    expect(verifyChart(flow)).toEqual([]);
  });

  test("left closed over a wait, with the check that opens it dropped from the chart, is found", () => {
    const found = damaged((copy) => {
      delete copy.checks["tap-reopen"];
    });
    expect(found).toContain("water-left-closed no-ice-plumbed/wait-for-ice/wait");
    expect(found).toContain("water-left-closed no-ice-plumbed/choosing");
  });

  test("left closed over a measurement that a way leads straight to is found", () => {
    const found = damagedChart((copy) => {
      const look = copy.states["no-ice-plumbed"]?.states?.["fill-tube"]?.states?.look;
      if (look?.on) look.on["answered.clear"] = { target: "#no-ice-plumbed/flow-test/run" };
    });
    expect(found).toContain("water-left-closed no-ice-plumbed/flow-test/run");
  });

  test("closed again by the gate of a measurement that was left and come back to is found", () => {
    const found = damagedChart((copy) => {
      const entering = copy.states["no-ice-plumbed"]?.states?.["flow-without-filter"]?.states?.entering;
      for (const way of entering?.always ?? []) way.target = "#no-ice-plumbed/flow-without-filter/run";
    });
    expect(found).toContain("water-left-closed no-ice-plumbed/flow-without-filter/run");
  });

  test("is not opened before a wait that no longer says that it needs the water", () => {
    const { needs: _, ...wait } = flow.checks["wait-for-ice"]?.turns.wait ?? {};
    const copy = structuredClone(flow);
    Object.assign(copy.checks["wait-for-ice"]?.turns ?? {}, { wait });
    // Judged by what the flow as it came says of the wait, the edit is found out.
    const told = verifyChart(flow, composeChart(copy)).map(({ code, state }) => `${code} ${state}`);
    expect(told).toContain("water-left-closed no-ice-plumbed/wait-for-ice/wait");
  });

  test("that an ending says nothing of is found", () => {
    const found = damagedChart((copy) => {
      delete copy.states.professional?.meta?.tells;
    });
    expect(found).toEqual(["water-untold professional"]);
  });

  test("that an answer leaves nobody knows how is found: it would be asked for ever", () => {
    const found = damaged((copy) => {
      const answer = copy.checks["tap-reopen"]?.turns.open?.answers?.opened;
      if (answer) delete answer.leaves;
    });
    expect(found).toEqual(["water-unsettled tap-reopen"]);
  });
});
