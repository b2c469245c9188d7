import { describe, expect, test } from "vitest";
import { readFlow } from "../../src/cli/flows-folder.ts";
import { readLocales } from "../../src/cli/locales-folder.ts";
import { createPanelData } from "../../src/cli/panel-data.ts";
import { fetchShopFlows } from "../../src/embed/shop-flows.ts";

const flow = readFlow();
const packed = JSON.stringify(createPanelData(flow, readLocales())["en-GB"]);
type Packed = { format: number; flow: typeof flow };

/** Fetches what a shop's server answers, after an edit of the packed data. */
function fetchEdited(edit: (data: Packed) => void, folder = "https://shop.example/flows") {
  const data: Packed = JSON.parse(packed);
  edit(data);
  const asked: string[] = [];
  const get = async (address: string) => {
    asked.push(address);
    return new Response(JSON.stringify(data));
  };
  return { asked, data: fetchShopFlows(folder, "en-GB", flow, get) };
}

describe("a shop's own flows", () => {
  test("are fetched from the folder by the language, with and without a slash at its end", async () => {
    for (const folder of ["https://shop.example/flows", "https://shop.example/flows/"]) {
      const { asked, data } = fetchEdited(() => {}, folder);
      expect((await data).flow.version).toBe(flow.version);
      expect(asked).toEqual(["https://shop.example/flows/en-GB.json"]);
    }
  });

  test("are refused where an edit took the gate from a check behind the back panel", async () => {
    const { data } = fetchEdited(({ flow: { checks } }) => {
      const check = checks["fill-tube"];
      if (check) check.gates = [];
    });
    await expect(data).rejects.toThrow(/hazards without a gate \(fill-tube: /);
  });

  test("are refused where an edit calls a hazard harmless, or empties a gate of what it asks", async () => {
    const tame = fetchEdited(({ flow: { hazards, checks } }) => {
      for (const hazard of Object.values(hazards)) hazard.gate = "none";
      for (const check of Object.values(checks)) check.gates = [];
    });
    await expect(tame.data).rejects.toThrow(/hazards without a gate/);
    const empty = fetchEdited(({ flow: { gates } }) => {
      for (const gate of Object.values(gates)) gate.items = [];
    });
    await expect(empty.data).rejects.toThrow(/hazards without a gate/);
  });

  test("are refused where a scenario names a check that is not there", async () => {
    const { data } = fetchEdited(({ flow: { checks } }) => {
      delete checks["ice-bin"];
    });
    await expect(data).rejects.toThrow(/"ice-bin"/);
  });

  test("are refused in words where the file is something else, or is not there", async () => {
    const other = fetchEdited((data) => {
      data.format = 2;
    });
    await expect(other.data).rejects.toThrow(/is not what "fridgeside pack" writes/);
    const missing = fetchShopFlows(
      "https://shop.example/",
      "en-GB",
      flow,
      async () => new Response("", { status: 404 }),
    );
    await expect(missing).rejects.toThrow("404 for https://shop.example/en-GB.json");
  });
});
