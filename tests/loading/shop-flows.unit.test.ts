import { describe, expect, test } from "vitest";
import { fetchShopFlows } from "../../src/loading/shop-flows.ts";
import {
  type Any,
  answer,
  built,
  edited,
  file,
  oneSentence,
  type Packed,
  packed,
  told,
  toldOf,
  toldOfFlow,
} from "../embed/packed-flows.ts";

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
  const second = ["start", "resources"].flatMap((key) => below([key]));
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
