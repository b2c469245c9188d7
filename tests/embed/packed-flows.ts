import { createPacks } from "../../src/cli/pack-command.ts";
import type { Flow } from "../../src/guide/index.ts";
import { fetchShopFlows } from "../../src/loading/shop-flows.ts";
import type { BuiltIn, PackData } from "../../src/pack/index.ts";
import { createPanelData, knownDangers } from "../../src/workbench/build/panel-data.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";

export const whole = ownFlow;
export const locales = ownTexts;
export const built = {
  ...createPanelData(whole, locales)["en-GB"]?.start,
  known: knownDangers(whole),
} as BuiltIn;

/** Two scenarios of ours, one of them with gates: a file as large as all of them would be judged as slowly. */
export const { "no-ice-plumbed": plumbed, "odd-taste": taste } = whole.scenarios;
export const flow = { ...whole, scenarios: { "no-ice-plumbed": plumbed, "odd-taste": taste } } as Flow;
export const packOf = (some: Flow) => createPacks(some, locales)["en-GB"] as Packed;
export const packed = JSON.stringify(packOf(flow));
export type Packed = PackData;
export type Any = Record<string, unknown>;

/** A pack after an edit. */
export function edited(edit: (data: Packed) => void): Packed {
  const data: Packed = JSON.parse(packed);
  edit(data);
  return data;
}

/** The scenario with gates, in a pack. */
export const gated = ({ scenarios }: Packed) =>
  scenarios.find(({ id }) => id === "no-ice-plumbed") as Packed["scenarios"][0];
/** The turns of a check behind a gate. */
export const turnsOf = (data: Packed, check: string) =>
  gated(data).chart.states["no-ice-plumbed"]?.states?.[check]?.states ?? {};

export const file = "https://shop.example/flows/en-GB.json";
export const answer = (body: string | object, settings?: ResponseInit) => async () =>
  new Response(typeof body === "string" ? body : JSON.stringify(body), settings);

/** What the panel says of a file in place of a pack; "taken" where it uses it. */
export const told = (get: typeof fetch): Promise<string> =>
  fetchShopFlows("https://shop.example/flows", "en-GB", built, get).then(
    () => "taken",
    (problem: Error) => problem.message,
  );
export const toldOf = (edit: (data: Packed) => void) => told(answer(edited(edit)));

/** What it says of flows that somebody packed past the verifier, after an edit. */
export const toldOfFlow = (edit: (flow: Flow) => void) => {
  const copy = structuredClone(flow);
  edit(copy);
  return told(answer(packOf(copy)));
};

/** One sentence about the file, without the full stop that the panel adds. */
export const oneSentence = /^https:\/\/shop\.example\/flows\/en-GB\.json [^\n]{5,400}[^.\n]$/;
