import { findModel, type parseCatalogue, partFor } from "../../catalogue/index.ts";
import { compileFlow, guideOf, inRegion } from "../../compile/index.ts";
import { type Flow, regionIn } from "../../guide/index.ts";
import type { Guide } from "../../session/index.ts";
import { createTexts, type Resource, type Texts } from "../../turn/index.ts";
import type { Wishes } from "./conversations.ts";
import { confirmedCode, type PlayOptions } from "./session.ts";

/** What conversations are made of: checked flows, the texts by language, and a checked catalogue. */
export type PlayData = {
  flow: Flow;
  locales: Record<string, Resource>;
  catalogue: ReturnType<typeof parseCatalogue>["catalogue"];
};

/**
 * Makes the options of conversations that share flow, charts, texts and catalogue; or says in one sentence what of the
 * wishes cannot be used.
 * @param asked what holds for all of them; what a conversation wishes itself comes first
 * @param now the present moment (RFC 3339) for those that name none
 */
export function createOpening(
  { flow, locales, catalogue }: PlayData,
  asked: Wishes,
  now: () => string,
): (wishes: Wishes) => PlayOptions | string {
  const compiled = compileFlow(flow);
  const known = new Map<string, { guide: Guide; texts: Texts }>();
  const openIn = (language: string) => {
    const guide = guideOf(inRegion(compiled, regionIn(flow.regions, language)));
    return { guide, texts: createTexts(locales, language, guide.flow) };
  };
  return (wishes) => {
    const wanted = { ...asked, ...wishes };
    const { scenario = null, locale, model: typed, variant, serial } = wanted;
    const language = locale ?? "en-GB";
    if (!Object.hasOwn(locales, language))
      return `--locale: "${language}" has no texts. There are: ${Object.keys(locales).join(", ")}`;
    if (scenario && !Object.hasOwn(flow.scenarios, scenario))
      return `--scenario: "${scenario}" is none. There are: ${Object.keys(flow.scenarios).join(", ")}`;
    if (wanted.now && Number.isNaN(Date.parse(wanted.now)))
      return `--now: "${wanted.now}" is no RFC 3339 time`;
    const model = typed ? confirmedCode(findModel(catalogue, typed)) : null;
    if (typed && !model) return `--model: "${typed}" is not in the catalogue, or not exactly`;
    const { guide, texts } = known.get(language) ?? openIn(language);
    known.set(language, { guide, texts });
    const plate = { ...(variant ? { variant } : {}), ...(serial ? { serial } : {}) };
    return {
      guide,
      locales,
      language,
      texts,
      model,
      scenario: scenario || null,
      now: wanted.now ?? now(),
      partFor: (code, kind) => partFor(catalogue, code, kind, plate),
      findModel: (code) => findModel(catalogue, code),
    };
  };
}
