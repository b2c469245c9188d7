import { describe, expect, test } from "vitest";
import { createPacks } from "../../src/cli/pack-command.ts";
import type { EngineData } from "../../src/embed/engine-data.ts";
import { fetchShopFlows } from "../../src/embed/shop-flows.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";
import { createPanelData } from "../../src/workbench/build/panel-data.ts";

const flow = readFlow();
const locales = readLocales();
const built = createPanelData(flow, locales)["en-GB"] as EngineData;
const packed = JSON.stringify(createPacks(flow, locales)["en-GB"]);
type Packed = EngineData & { madeFor: string };
type Any = Record<string, unknown>;

/** A pack after an edit. */
function edited(edit: (data: Packed) => void): Packed {
  const data: Packed = JSON.parse(packed);
  edit(data);
  return data;
}

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
      expect((await fetchShopFlows(folder, "en-GB", built, get)).flow).toEqual(built.flow);
      expect(asked).toEqual([file]);
    }
  });

  test("are refused where an edit took the gate from a check behind the back panel", async () => {
    const said = await toldOf(({ flow: { checks } }) => {
      const check = checks["fill-tube"];
      if (check) check.gates = [];
    });
    expect(said).toMatch(/hazards without a gate \(fill-tube: /);
  });

  test("are refused where an edit calls a hazard harmless, or empties a gate of what it asks", async () => {
    const tame = await toldOf(({ flow: { hazards, checks } }) => {
      for (const hazard of Object.values(hazards)) hazard.gate = "none";
      for (const check of Object.values(checks)) check.gates = [];
    });
    expect(tame).toMatch(/hazards without a gate/);
    const empty = await toldOf(({ flow: { gates } }) => {
      for (const gate of Object.values(gates)) gate.items = [];
    });
    expect(empty).toMatch(oneSentence);
  });

  test("are refused where the opening no longer asks about a danger", async () => {
    const said = await toldOf(({ flow: { opening } }) => {
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
      `${file} is larger than 2000000 bytes`,
    ],
    ["where the file is huge", answer(" ".repeat(3_000_000)), `${file} is larger than 2000000 bytes`],
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
      answer(edited((data) => Object.assign(data, { format: 2, madeFor: "9.1.0" }))),
      `${file} was made for Fridgeside 9.1.0 in another format, so run "fridgeside pack" again`,
    ],
  ])("%s", async (_, get, says) => {
    expect(await told(get)).toBe(says);
  });

  test.each(["{}", "[]", "null", "7", '"text"', '{"format":1,"flow":{"version":"x","checks":{}}}'])(
    "where the file is %s",
    async (body) => {
      expect(await told(answer(body))).toMatch(oneSentence);
    },
  );

  test.each<[what: string, edit: (data: Packed) => void, says: string]>([
    ["no stations", ({ flow }) => Reflect.deleteProperty(flow, "stations"), 'has no section "flow.stations"'],
    ["no parts", ({ flow }) => Reflect.deleteProperty(flow, "parts"), 'has no section "flow.parts"'],
    ["no drawings", (data) => Reflect.deleteProperty(data, "drawings"), 'has no section "drawings"'],
    [
      "no texts",
      (data) => Reflect.deleteProperty(data.resources, "en-GB"),
      'has no section "resources.en-GB"',
    ],
    [
      "nothing of choosing.yaml",
      ({ flow: { limits } }) => {
        for (const id of ["cost-call-out", "belief-part", "most-answers"]) delete limits[id];
      },
      'has no limit "cost-call-out"',
    ],
    [
      "a limit in another unit",
      ({ flow: { limits } }) => Object.assign(limits["flow-minimum"] ?? {}, { unit: "l/min" }),
      'has the limit "flow-minimum" in another unit than ml/s',
    ],
    [
      "a check that is not there",
      ({ flow: { checks } }) => Reflect.deleteProperty(checks, "ice-bin"),
      'names "ice-bin" at scenarios.',
    ],
    [
      "a condition that stands on itself",
      ({ flow: { conditions } }) => Object.assign(conditions, { plumbed: { is: "plumbed" } }),
      'names "plumbed" at ',
    ],
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
      ({ flow }) => Object.assign(flow.stations, { order: "all" }),
      'at "flow.stations.order"',
    ],
    [
      "a list without end",
      ({ flow }) => Object.assign(flow.stations, { order: Array(5000).fill("tank") }),
      'at "flow.stations.order"',
    ],
    [
      "a picture of a station that there is not",
      ({ flow }) => flow.stations.above.push("roof"),
      'names "roof" at stations.above',
    ],
    [
      "conditions two thousand deep",
      ({ flow }) => {
        let deep: unknown = "unwaited";
        for (let at = 0; at < 2000; at++) deep = { not: deep };
        Object.assign(flow.conditions, { plumbed: deep });
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
  const second = ["flow", "resources", "drawings"].flatMap((key) =>
    Object.keys((data as unknown as Any)[key] as Any).map((inner) => [key, inner]),
  );
  const files = Object.keys(data.resources["en-GB"] ?? {}).map((name) => ["resources", "en-GB", name]);
  const inSections = Object.entries(data.flow).flatMap(([section, held]) =>
    typeof held === "object"
      ? Object.keys(held)
          .slice(0, 1)
          .map((key) => ["flow", section, key])
      : [],
  );
  const paths = [...top, ...second, ...files, ...inSections];

  /** A pack with one place of it changed: left out where `put` is undefined. */
  const changed = (path: string[], put: unknown) =>
    edited((pack) => {
      const holder = path.slice(0, -1).reduce((at, step) => at[step] as Any, pack as unknown as Any);
      const key = path.at(-1) ?? "";
      if (put === undefined) delete holder[key];
      else holder[key] = put;
    });

  test("there are dozens of places to try", () => expect(paths.length).toBeGreaterThan(50));

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
