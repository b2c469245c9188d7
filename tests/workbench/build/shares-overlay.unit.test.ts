import { describe, expect, test } from "vitest";
import { compileFlow } from "../../../src/compile/index.ts";
import {
  ownFlows,
  readFlow,
  readShares,
  readYamlFiles,
  withShares,
} from "../../../src/workbench/build/index.ts";

const files = readYamlFiles(ownFlows);

describe("other shares of causes", () => {
  test("change these numbers alone, each in its place", () => {
    const changed = withShares(files, { "door-blocked": 31.5, "seal-worn": 2 });
    const differing = Object.keys(files).flatMap((path) => {
      const [was = [], is = []] = [files[path]?.split("\n"), changed[path]?.split("\n")];
      expect(is).toHaveLength(was.length);
      return was.flatMap((line, place) => (line === is[place] ? [] : [`${line} -> ${is[place]}`]));
    });
    expect(differing).toEqual(["  share: 24 ->   share: 31.5", "  share: 10 ->   share: 2"]);
  });

  test("leave every gate, check, proof and limit of a flow as it is", () => {
    const { version: _, machine, ...rest } = readFlow();
    const { version: __, machine: other, ...same } = readFlow(ownFlows, { "door-blocked": 31.5 });
    expect(same).toEqual(rest);
    expect(other.causes["door-blocked"]).toEqual({ ...machine.causes["door-blocked"], share: 31.5 });
    expect({ ...other, causes: {} }).toEqual({ ...machine, causes: {} });
  });

  test("come with rates of error, and change nothing else of the file of limits", () => {
    const changed = withShares(files, { "error-look": 0.21, "error-listen": 0.3 });
    const [was = [], is = []] = [files, changed].map((one) => one["choosing.yaml"]?.split("\n") ?? []);
    const differing = was.flatMap((line, at) => (line === is[at] ? [] : [is[at]]));
    expect(differing).toHaveLength(2);
    expect(differing.join("\n")).toMatch(/error-listen: { value: 0\.3,[\s\S]*|value: 0\.21,/);
    const { version: _, limits, ...rest } = readFlow();
    const { version: __, limits: other, ...same } = readFlow(ownFlows, { "error-look": 0.21 });
    expect(same).toEqual(rest);
    expect(other["error-look"]?.value).toBe(0.21);
    expect({ ...other, "error-look": null }).toEqual({ ...limits, "error-look": null });
  });

  test("leave every chart, gate, hazard and limit that a phone gets as it is", () => {
    const shares = { "door-blocked": 300, "error-look": 0.4, "error-reading": 0.3 };
    const [own, learnt] = [readFlow(), readFlow(ownFlows, shares)].map(compileFlow);
    const isRate = (id: string) => ["error-look", "error-reading"].includes(id);
    // Beliefs differ, and with them which causes are worth a word; nothing else does.
    const rulesOf = (one = own) => ({
      chart: one?.start.chart,
      limits: Object.entries(one?.start.flow.limits ?? {}).filter(([id]) => !isRate(id)),
      dangers: one?.start.flow.dangers,
      scenarios: one?.scenarios.map(({ chart, flow: { causes: _, ...flow }, diagnosis }) => {
        const { tables: __, openings: ___, ...rules } = diagnosis;
        return { chart, flow, rules };
      }),
    });
    expect(learnt?.scenarios.map(({ diagnosis }) => diagnosis.tables)).not.toEqual(
      own?.scenarios.map(({ diagnosis }) => diagnosis.tables),
    );
    expect(JSON.stringify(rulesOf(learnt)) === JSON.stringify(rulesOf(own))).toBe(true);
  });

  test.each(["gate-short-minutes", "wrong-part-cost", "named-most", "negligible-share"])(
    "have no place for a limit that is no rate of error: %s",
    (limit) => {
      expect(() => withShares(files, { [limit]: 0.2 })).toThrow(`"${limit}" has a share`);
    },
  );

  test.each([0, -0.1, 0.51, 3])("of errors are above 0 and up to a half: %d is not", (rate) => {
    expect(() => readShares(`error-look: ${rate}`)).toThrow("a line for each cause");
  });

  test("of a cause that there is not are refused by its name", () => {
    expect(() => withShares(files, { "door-bocked": 3 })).toThrow('"door-bocked" has a share');
  });

  test.each([
    "door-blocked: 0",
    "door-blocked: -1",
    "door-blocked: 1001",
    "door-blocked: often",
    "door-blocked: { share: 3 }",
    "door-blocked: .inf",
    "- door-blocked",
    "Door Blocked: 3",
  ])("are a number for each cause, and nothing else: %s", (text) => {
    expect(() => readShares(text)).toThrow("a line for each cause");
  });
});
