import { dataAddress } from "virtual:desk";
import { restoreChart } from "../chart/index.ts";
import { createScenarioFiles, type StartFile } from "../loading/index.ts";
import { createGuide } from "../session/index.ts";
import { createTexts, type Resource, type Texts } from "../turn/index.ts";
import { createFollow, type Follow } from "./follow.ts";

/** What a desk reads conversations by, in one language. */
export type DeskGuide = { texts: Texts; follow: Follow };

/**
 * Fetches what conversations are read by, from where the panel's lies.
 * @param own the desk's own texts
 * @throws Error where it does not come
 */
export async function openDeskGuide(language: string, own: Resource, get: typeof fetch): Promise<DeskGuide> {
  const response = await get(dataAddress(language));
  if (!response.ok) throw new Error(`${response.status} for the texts of ${language}`);
  const data = (await response.json()) as StartFile;
  const guide = createGuide({ ...data, chart: restoreChart(data.chart) });
  const texts = createTexts(data.resources, language, data.flow);
  texts.add(own);
  const beside = (file: string) => new URL(file, dataAddress(language)).href;
  const addresses = Object.fromEntries(Object.entries(data.files).map(([id, file]) => [id, beside(file)]));
  const scenarios = createScenarioFiles(addresses, { guide, language, texts }, get);
  return { texts, follow: createFollow(guide, texts, scenarios.load) };
}
