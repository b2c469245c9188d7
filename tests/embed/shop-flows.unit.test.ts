import { describe, expect, test } from "vitest";
import { createPacks } from "../../src/cli/pack-command.ts";
import { fetchShopFlows } from "../../src/embed/shop-flows.ts";
import type { Flow } from "../../src/guide/index.ts";
import type { BuiltIn, PackData } from "../../src/pack/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";
import { createPanelData, knownDangers } from "../../src/workbench/build/panel-data.ts";

const whole = readFlow();
const locales = readLocales();
const built = {
  ...createPanelData(whole, locales)["en-GB"]?.start,
  known: knownDangers(whole),
} as BuiltIn;

/** Two scenarios of ours, one of them with gates: a file as large as all of them would be judged as slowly. */
const { "no-ice-plumbed": plumbed, "odd-taste": taste } = whole.scenarios;
const flow = { ...whole, scenarios: { "no-ice-plumbed": plumbed, "odd-taste": taste } } as Flow;
const packOf = (some: Flow) => createPacks(some, locales)["en-GB"] as Packed;
const packed = JSON.stringify(packOf(flow));
type Packed = PackData;
type Any = Record<string, unknown>;

/** A pack after an edit. */
function edited(edit: (data: Packed) => void): Packed {
  const data: Packed = JSON.parse(packed);
  edit(data);
  return data;
}

/** The scenario with gates, in a pack. */
const gated = ({ scenarios }: Packed) =>
  scenarios.find(({ id }) => id === "no-ice-plumbed") as Packed["scenarios"][0];
/** The turns of a check behind a gate. */
const turnsOf = (data: Packed, check: string) =>
  gated(data).chart.states["no-ice-plumbed"]?.states?.[check]?.states ?? {};

const file = "https://shop.example/flows/en-GB.json";
const answer = (body: string | object, settings?: ResponseInit) => async () =>
  new Response(typeof body === "string" ? body : JSON.stringify(body), settings);

/** What the panel says of a file in place of a pack; "taken" where it uses it. */
const told = (get: typeof fetch): Promise<string> =>
  fetchShopFlows("https://shop.example/flows", "en-GB", built, get).then(
    () => "taken",
    (problem: Error) => problem.message,
  );
const toldOf = (edit: (data: Packed) => void) => told(answer(edited(edit)));

/** What it says of flows that somebody packed past the verifier, after an edit. */
const toldOfFlow = (edit: (flow: Flow) => void) => {
  const copy = structuredClone(flow);
  edit(copy);
  return told(answer(packOf(copy)));
};

/** One sentence about the file, without the full stop that the panel adds. */
const oneSentence = /^https:\/\/shop\.example\/flows\/en-GB\.json [^\n]{5,400}[^.\n]$/;

describe("a shop's own flows", () => {
  test("are fetched from the folder by the language, with and without a slash at its end", async () => {
    for (const folder of ["https://shop.example/flows", "https://shop.example/flows/"]) {
      const asked: unknown[] = [];
      const get: typeof fetch = async (address) => {
        asked.push(address);
        return new Response(packed);
      };
      expect((await fetchShopFlows(folder, "en-GB", built, get)).scenarios).toHaveLength(2);
      expect(asked).toEqual([file]);
    }
  });

  test("are refused where an edit took the gate from a check behind the back panel", async () => {
    const said = await toldOfFlow(({ checks }) => {
      const check = checks["fill-tube"];
      if (check) check.gates = [];
    });
    expect(said).toMatch(/hazards without a gate \(fill-tube: /);
  });

  test("are refused where an edit calls a hazard harmless, or empties a gate of what it asks", async () => {
    const tame = await toldOfFlow(({ hazards, checks }) => {
      for (const hazard of Object.values(hazards)) hazard.gate = "none";
      for (const check of Object.values(checks)) check.gates = [];
    });
    expect(tame).toMatch(/hazards without a gate/);
    const access = await toldOfFlow(({ access, checks }) => {
      for (const place of Object.keys(access)) access[place] = [];
      for (const check of Object.values(checks)) Object.assign(check, { gates: [], hazards: [] });
    });
    expect(access).toMatch(/hazards without a gate/);
    const empty = await toldOfFlow(({ gates }) => {
      for (const gate of Object.values(gates)) gate.items = [];
    });
    expect(empty).toMatch(oneSentence);
  });

  test("are refused where the opening no longer asks about a danger", async () => {
    const said = await toldOfFlow(({ opening }) => {
      delete opening.turns.danger?.answers?.gas;
    });
    expect(said).toBe(`${file} has an opening that does not ask about the danger "gas"`);
  });
});

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
        const on = turnsOf(data, "fill-tube")["gate-back-panel"]?.on ?? {};
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
        if (outcome) Object.assign(outcome, { likely: outcome.likely.replace(/./, "z") });
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

describe("a shop's own flows are refused in one sentence", () => {
  test.each<[what: string, get: typeof fetch, says: string]>([
    ["where there is no file", answer("", { status: 404 }), `${file} was answered with 404`],
    ["where a page stands in its place", answer("<!doctype html><title>Oops</title>"), `${file} is no JSON`],
    ["where the file is empty", answer(""), `${file} is no JSON`],
    ["where the file is cut off", answer(packed.slice(0, 1000)), `${file} is no JSON`],
    [
      "where the file says that it is huge",
      answer("{}", { headers: { "content-length": "50000000" } }),
      `${file} is larger than 5000000 bytes`,
    ],
    ["where the file is huge", answer(" ".repeat(6_000_000)), `${file} is larger than 5000000 bytes`],
    [
      "where there is no connection",
      async () => {
        throw new TypeError("Failed to fetch");
      },
      `${file} cannot be reached`,
    ],
    [
      "where it was packed before packs named a version",
      answer(edited((data) => Reflect.deleteProperty(data, "madeFor"))),
      `${file} does not say which version it was made for, so run "fridgeside pack" again`,
    ],
    [
      "where it was packed for another version",
      answer(edited((data) => Object.assign(data, { format: 3, madeFor: "9.1.0" }))),
      `${file} was made for Fridgeside 9.1.0 in another format, so run "fridgeside pack" again`,
    ],
  ])("%s", async (_, get, says) => {
    expect(await told(get)).toBe(says);
  });

  test.each(["{}", "[]", "null", "7", '"text"', '{"format":2,"madeFor":"x","start":{"flow":{}}}'])(
    "where the file is %s",
    async (body) => {
      expect(await told(answer(body))).toMatch(oneSentence);
    },
  );

  test.each<[what: string, edit: (data: Packed) => void, says: string]>([
    ["no start", (data) => Reflect.deleteProperty(data, "start"), 'has no section "start"'],
    ["no opening", (data) => Reflect.deleteProperty(data.start, "chart"), 'has no section "start.chart"'],
    ["no parts", (data) => Reflect.deleteProperty(data.start.flow, "parts"), 'at "start.flow.parts"'],
    ["no drawings", (data) => Reflect.deleteProperty(data, "drawings"), 'has no section "drawings"'],
    [
      "no texts",
      (data) => Reflect.deleteProperty(data.resources, "en-GB"),
      'has no section "resources.en-GB"',
    ],
    [
      "nothing of choosing.yaml",
      ({ start }) => {
        for (const id of ["cost-call-out", "belief-part", "most-answers"]) delete start.flow.limits[id];
      },
      'has no limit "cost-call-out"',
    ],
    [
      "a limit in another unit",
      ({ start }) => Object.assign(start.flow.limits["flow-minimum"] ?? {}, { unit: "l/min" }),
      'has the limit "flow-minimum" in another unit than ml/s',
    ],
    [
      "a unit that no instrument knows",
      ({ start }) => Object.assign(start.flow.region.units, { mass: ["stone"] }),
      'at "start.flow.region.units.mass.0"',
    ],
    [
      "a law whose limit nobody set",
      ({ start }) =>
        Object.assign(start.flow.region.statutes["supply-pressure"] ?? {}, { limit: "my-limit" }),
      'names "my-limit" at region.statutes',
    ],
    [
      "a law without its words",
      ({ start }) => Object.assign(start.flow.region.statutes["supply-pressure"] ?? {}, { says: "my-law" }),
      'has no text "statutes.my-law"',
    ],
    ["a scenario that is not there", (data) => data.scenarios.pop(), 'names "odd-taste" at scenarios'],
    [
      "a text that nobody wrote",
      (data) => Reflect.deleteProperty((data.resources["en-GB"]?.ui as Any) ?? {}, "danger"),
      'has no text "ui.danger"',
    ],
    [
      "a drawing that holds itself",
      ({ drawings }) => Object.assign(drawings, { pieces: { tap: ["@ tap 0 0"] } }),
      'does not have the right shape at "drawings.pieces.tap.0"',
    ],
    [
      "a text for a list",
      ({ start }) => Object.assign(start.flow.stations, { order: "all" }),
      'at "start.flow.stations.order"',
    ],
    [
      "a list without end",
      ({ start }) => Object.assign(start.flow.stations, { order: Array(5000).fill("tank") }),
      'at "start.flow.stations.order"',
    ],
    [
      "a picture of a station that there is not",
      ({ start }) => start.flow.stations.above.push("roof"),
      'names "roof" at stations.above',
    ],
    [
      "conditions two thousand deep",
      ({ start }) => {
        let deep: unknown = { type: "unwaited", params: {} };
        for (let at = 0; at < 2000; at++) deep = { type: "not", params: { of: deep } };
        Object.assign(start.flow, { searches: deep });
      },
      "",
    ],
  ])("where they have %s", async (_, edit, says) => {
    const said = await toldOf(edit);
    if (says)
      expect(said).toContain(
        `${file} ${says.startsWith("at") ? "does not have the right shape " : ""}${says}`,
      );
    expect(said === "taken" || oneSentence.test(said)).toBe(true);
  });
});

describe("whatever is cut out of a good pack or put in its place", () => {
  const data: Packed = JSON.parse(packed);
  const top = Object.keys(data).map((key) => [key]);
  const below = (path: string[]): string[][] => {
    const held = path.reduce<unknown>((at, step) => Object(at)[step], data);
    return typeof held === "object" ? Object.keys(Object(held)).map((key) => [...path, key]) : [];
  };
  const second = ["start", "resources", "drawings"].flatMap((key) => below([key]));
  const files = below(["resources", "en-GB"]);
  const inSections = [...below(["start"]), ...below(["scenarios", "1"])].flatMap((path) => [
    ...(path[0] === "start" ? [] : [path]),
    ...below(path).slice(0, 1),
  ]);
  const paths = [...top, ...second, ...files, ...inSections];

  /** A pack with one place of it changed: left out where `put` is undefined. */
  const changed = (path: string[], put: unknown) =>
    edited((pack) => {
      const holder = path.slice(0, -1).reduce((at, step) => at[step] as Any, pack as unknown as Any);
      const key = path.at(-1) ?? "";
      if (put === undefined) delete holder[key];
      else holder[key] = put;
    });

  test("there are dozens of places to try", () => expect(paths.length).toBeGreaterThan(40));

  test.each(paths.map((path) => [path.join("."), path] as const))(
    "at %s, the panel takes it or says one sentence, and never fails",
    async (_, path) => {
      for (const put of path.length < 3 ? [undefined, null, {}, "x"] : [undefined, 7]) {
        const said = await told(answer(changed(path, put)));
        expect(said === "taken" || oneSentence.test(said), `${put}: ${said}`).toBe(true);
        // No section can be missing altogether; a version is any text.
        if (path.length < 3 && (put === undefined || put === null)) expect(said).not.toBe("taken");
      }
    },
  );
});
