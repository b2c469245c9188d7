import { describe, expect, test } from "vitest";
import { checksOf, createInput } from "../../src/advice/model-of.ts";
import { slimFlow } from "../../src/compile/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";

const flow = readFlow();
const built = JSON.parse(JSON.stringify(slimFlow(flow)));
const scenarios = Object.keys(flow.scenarios);

describe("the groundwork of the diagnosis", () => {
  test("comes with the flow that a phone gets, so that the phone does not lay it", () => {
    expect(flow.groundwork).toBeUndefined();
    expect(Object.keys(built.groundwork.needs)).toEqual(scenarios);
  });

  test.each(scenarios)("is the same whether the build or the phone has laid it: %s", (scenario) => {
    const everything = Object.keys(flow.checks);
    const askable = checksOf(flow, scenario, {});
    for (const checks of [everything, askable])
      expect(createInput(built, scenario, checks)).toEqual(createInput(flow, scenario, checks));
  });

  test("knows a way to prove every cause that a part puts right", () => {
    const proved = Object.entries(flow.causes).filter(([, { remedy }]) => remedy === "part");
    expect(proved.length).toBeGreaterThan(10);
    for (const [cause] of proved) expect(built.groundwork.proofs[cause], cause).not.toEqual([]);
  });
});
