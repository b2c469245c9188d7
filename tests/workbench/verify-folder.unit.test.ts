import { describe, expect, test } from "vitest";
import { ownFlows, readYamlFiles } from "../../src/workbench/build/flows-folder.ts";
import { ownLocales } from "../../src/workbench/build/locales-folder.ts";
import { readSource } from "../../src/workbench/build/yaml-source.ts";
import { verifyFolder } from "../../src/workbench/verify/index.ts";
import { codes } from "../../src/workbench/verify/words.ts";
import { plant, untouched, without } from "./planted.ts";
import { flaws } from "./planted-flaws.ts";
import { slips } from "./planted-slips.ts";

const faults = [...slips, ...flaws];

test("the project's own flows and texts have no problem", () => {
  const flows = readYamlFiles(ownFlows);
  const partKinds = Object.keys(readSource("parts.yaml", flows["parts.yaml"] ?? "").data as object);
  const found = verifyFolder({ flows, locales: readYamlFiles(ownLocales), partKinds, read: readSource });
  expect(found).toEqual([]);
});

test("the small flow that the faults are planted in has none either", () => {
  expect(untouched).toEqual([]);
});

describe("a planted fault is seen, alone, where it stands:", () => {
  test.each(faults)("%s", (_, code, says, ...changes) => {
    const { found, marked } = plant(...changes);
    expect(found).toMatchObject([{ code, ...marked[0] }]);
    expect(found[0]?.message).toContain(says);
  });

  test("each kind of fault that the verifier can tell is among them", () => {
    expect(codes.length).toBeGreaterThan(20);
    // No file can do these: tests/chart/preparations plants them in the chart.
    const inChart = ["left-untold", "short-too-long"];
    const planted = new Set([...faults.map(([, code]) => code), "missing-file", ...inChart]);
    expect(codes.filter((code) => !planted.has(code))).toEqual([]);
  });
});

test("a file that is missing is named, and nothing is said of what cannot be judged without it", () => {
  expect(without("parts.yaml")).toMatchObject([
    { code: "missing-file", file: "parts.yaml", line: 1, column: 1 },
  ]);
});

test("a region that is no default is not missed, and the last resort is", () => {
  expect(without("regions/US.yaml")).toEqual([]);
  expect(without("regions/GB.yaml")).toMatchObject([{ code: "missing-file", file: "regions/GB.yaml" }]);
});

test("a text that one language lacks is asked for where the complete language has it", () => {
  const { found } = plant({ file: "locales/fr/stations.yaml", find: "", put: "filter: filtre\n" });
  const keys = found.map(({ message }) => message);
  expect(keys).toContain('There is no text "stations.cold" in fr.');
  expect(keys).toContain('There is no text "dangers.gas.heading" in fr.');
  expect(keys.filter((key) => key.includes('"stations.filter"') || key.includes("en-US"))).toEqual([]);
});

test("all faults are told at once, in the order of files and lines", () => {
  const some = ["an answer that leads nowhere", "a limit without a source", "a check that loses its gate"];
  const { found } = plant(
    ...faults.filter(([name]) => some.includes(name)).flatMap(([, , , ...changes]) => changes),
  );
  expect(found.map(({ code, file }) => `${file} ${code}`)).toEqual([
    "checks/fill-tube.yaml ungated-hazard",
    "checks/too-full.yaml unknown-target",
    "limits.yaml limit-without-source",
  ]);
});
