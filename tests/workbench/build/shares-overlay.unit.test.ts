import { describe, expect, test } from "vitest";
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
