import { Window } from "happy-dom";
import { beforeAll, describe, expect, test } from "vitest";
import { composeChart } from "../../src/compile/index.ts";
import { answersTurn } from "../../src/instruments/index.ts";
import { drawScxml, stateName } from "../../src/workbench/draw/index.ts";
import { compileGuard } from "../../src/workbench/draw/scxml-guards.ts";
import { graphOf } from "../../src/workbench/verify/index.ts";
import { ownFlow } from "../own-flow.ts";
import { at, celsius, flowOf, fridgeCelsius } from "../session/drive.ts";
import { counts } from "../soak/counts.ts";
import { dataOf, openDocument } from "./scxml-run.ts";
import { createSequences, isElsewhere, type Sequence } from "./sequences.ts";

const flow = ownFlow;
const { leaves } = graphOf(composeChart(flow));
const scenarios = Object.keys(flow.scenarios);
let sequences: ReturnType<typeof createSequences>;

beforeAll(() => {
  sequences = createSequences(flow);
}, 120_000);

/**
 * The document is run by an interpreter that knows nothing of ours (npm `scxml` 2.0.13, an implementation of
 * https://www.w3.org/TR/scxml/), event by event beside our own chart.
 */
describe.each(scenarios)("the SCXML of %s", (scenario) => {
  let runs: Sequence[] = [];
  beforeAll(() => {
    // Two for each turn at least, or much of a large scenario would never be met.
    const turns = [...leaves.entries()].filter(
      ([leaf, { meta }]) => meta && !meta.short && leaf.startsWith(`${scenario}/`),
    );
    runs = sequences(scenario, 20_260_302, Math.max(counts.scxml, 2 * turns.length));
  }, 120_000);
  const nameOf = (leaf: string) =>
    isElsewhere(flow, scenario, leaf) ? (leaf.split("/")[0] ?? "") : stateName(leaf);

  test("visits the same states as our chart, whatever is answered", { timeout: 120_000 }, () => {
    const start = openDocument(drawScxml(flow, scenario), flow.limits);
    for (const run of runs) {
      const document = start();
      const visited = run.map(({ event, advice }) => {
        document.send(event, advice);
        return document.states().join();
      });
      expect(visited, JSON.stringify(run.map(({ event }) => event))).toEqual(
        run.map(({ leaf }) => nameOf(leaf)),
      );
    }
  });

  test("is led through nearly all turns of the scenario, so that being the same says something", () => {
    // A gate in short is the same turn as in full.
    const turnAt = (leaf: string) => leaf.replace("/short-", "/gate-");
    const own = [...leaves.keys()].filter(
      (leaf) => leaf.startsWith(`${scenario}/`) && leaves.get(leaf)?.meta,
    );
    const turns = [...new Set(own.map(turnAt))];
    const met = new Set(runs.flat().map(({ leaf }) => turnAt(leaf)));
    expect(turns.filter((leaf) => met.has(leaf)).length / turns.length).toBeGreaterThan(counts.scxmlTurns);
  });

  test("is handed temperatures of the other place too, which leave our chart, and so the document, where it is", () => {
    const placeOf = (leaf: string) => {
      const meta = leaves.get(leaf)?.meta;
      return meta?.instrument === "temperature" ? [meta.place ?? "freezer"] : [];
    };
    const refused = runs.flatMap((run) =>
      run.flatMap(({ event: { reading }, leaf }, at) => {
        const before = run[at - 1]?.leaf ?? "";
        const [place] = placeOf(before);
        if (!place || reading?.kind !== "temperature" || (reading.place ?? "freezer") === place) return [];
        expect(leaf).toBe(before);
        return [place];
      }),
    );
    const asked = runs.flat().flatMap(({ leaf }) => placeOf(leaf));
    // A place that few runs come to may meet no reading of another one.
    const often = asked.filter((place) => asked.filter((one) => one === place).length >= 8);
    expect([...new Set(refused)]).toEqual(expect.arrayContaining([...new Set(often)]));
  });
});

/** Rules of https://www.w3.org/TR/scxml/ (3.2 to 3.7). */
describe("the document", () => {
  const [scenario = ""] = scenarios;
  const root = new Window();
  const tree = new root.DOMParser().parseFromString(drawScxml(flow, scenario), "application/xml");
  const all = (selector: string) => [...tree.querySelectorAll(selector)];
  const ids = all("state, final").map((one) => one.getAttribute("id") ?? "");

  test("is well-formed and says which standard it follows", () => {
    expect(all("parsererror")).toEqual([]);
    const { documentElement } = tree;
    expect(documentElement.tagName).toBe("scxml");
    expect(documentElement.getAttribute("xmlns")).toBe("http://www.w3.org/2005/07/scxml");
    expect(documentElement.getAttribute("version")).toBe("1.0");
    expect(documentElement.getAttribute("datamodel")).toBe("ecmascript");
  });

  test("names each state once, with a name that XML takes for an id", () => {
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.filter((id) => !/^[A-Za-z_][\w.-]*$/.test(id))).toEqual([]);
  });

  test("leads only to states that it has, and starts each compound state in a state of its own", () => {
    const targets = all("transition").map((one) => one.getAttribute("target") ?? "");
    expect(targets.filter((target) => !ids.includes(target))).toEqual([]);
    const compounds = all("state").filter((one) => one.querySelector("state"));
    for (const one of compounds) {
      const own = [...one.querySelectorAll("state")].map((inner) => inner.getAttribute("id"));
      expect(own).toContain(one.getAttribute("initial"));
    }
  });

  test("ends in a final state where our chart takes no further event, and nowhere else", () => {
    const others = scenarios.filter((one) => one !== scenario);
    expect(
      all("final")
        .map((one) => one.getAttribute("id"))
        .sort(),
    ).toEqual([...others, "stopped"].sort());
  });

  test("holds the scenario's states, those of the opening and the endings, all of them", () => {
    const kept = [...leaves.keys()].filter((leaf) => !isElsewhere(flow, scenario, leaf)).map(stateName);
    const drawn = all("state, final").filter((one) => !one.querySelector("state"));
    const others = scenarios.filter((one) => one !== scenario);
    expect(drawn.map((one) => one.getAttribute("id")).sort()).toEqual([...kept, ...others].sort());
  });
});

test("a scenario that does not exist is refused with the names of those that do", () => {
  expect(() => drawScxml(flow, "no-ise")).toThrow(
    /There is no scenario "no-ise"\. There are: .*no-ice-plumbed/,
  );
});

test("a guard outside the vocabulary is refused, not left out", () => {
  expect(() => compileGuard({ type: "raining", params: {} })).toThrow(
    'The guard "raining" cannot be written as SCXML',
  );
});

test("a name with a quote in it cannot break out of its expression", () => {
  expect(compileGuard({ type: "done", params: { check: "it's\\" } })).toBe("done.indexOf('it\\'s\\\\') >= 0");
});

test("a reading is what a turn asks for in the document where it is so in the chart, the place of a temperature included", () => {
  const turns = Object.values(flow.checks).flatMap((check) => Object.values(check.turns));
  const asked = turns.filter(({ instrument }) => instrument);
  expect(asked.some(({ place }) => place === "fridge")).toBe(true);
  for (const reading of [celsius(-18), fridgeCelsius(3), flowOf(25)])
    for (const { instrument, place } of asked) {
      const cond = compileGuard({ type: "reads", params: { instrument, place, is: "passes" } });
      const data = dataOf({ type: "measured", at: at(0), reading }, flow.limits);
      expect(new Function("_event", `return ${cond}`)({ data }), cond).toBe(
        answersTurn(reading, { instrument, place }),
      );
    }
});
