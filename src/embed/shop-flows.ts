import * as z from "zod/mini";
import { composeChart, type Flow, findOpenHazards } from "../flow/index.ts";
import { breath } from "./breath.ts";
import type { EngineData } from "./engine.ts";

const anything = z.looseObject({});
const shape = z.looseObject({
  format: z.literal(1),
  flow: z.looseObject({ version: z.string(), checks: anything, scenarios: anything, gates: anything }),
  resources: anything,
  drawings: anything,
});

/**
 * Fetches a shop's own flows, as `fridgeside pack` wrote them, and checks them at the door: shape, chart and gates.
 * @param folder an absolute address
 * @param known the built-in flow, by which hazards are judged
 * @throws Error in words for the page's developer where they cannot be used
 */
export async function fetchShopFlows(
  folder: string,
  language: string,
  known: Flow,
  get: (address: string) => Promise<Response>,
): Promise<EngineData> {
  const address = new URL(`${language}.json`, folder.replace(/\/?$/, "/")).href;
  const response = await get(address);
  if (!response.ok) throw new Error(`${response.status} for ${address}`);
  const parsed = shape.safeParse(await response.json());
  if (!parsed.success) throw new Error(`${address} is not what "fridgeside pack" writes`);
  const data = parsed.data as unknown as EngineData;
  const open = findOpenHazards(data.flow, known);
  if (open.length) throw new Error(`${address} has hazards without a gate (${open.join(", ")})`);
  // One at a time: all of them at once would hold up a slow phone.
  for (const scenario of Object.keys(data.flow.scenarios)) {
    await breath();
    composeChart(data.flow, [scenario]);
  }
  return data;
}
