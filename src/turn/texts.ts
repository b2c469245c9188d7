import { createInstance } from "i18next";
import type { Limits } from "../guide/index.ts";
import { fromCelsius } from "../measurement/index.ts";
import type { Texts } from "./actions.ts";
import { createNumbers } from "./formats.ts";

/** Texts of one language by file name, as in locales/<language>/. */
export type Resource = { [key: string]: string | Resource };

/** Texts that more are added to, as they come: those of a scenario, once it is near. */
export type GrowingTexts = Texts & { add(more: Resource): void };

/**
 * Texts in one language, falling back to en-GB; every limit of flows/limits.yaml can be named in a text
 * (`{{ice-return-hours}}`) and appears in the reader's unit. A key without a text gives an empty string.
 * @param language BCP 47 tag with a folder in locales/
 */
export function createTexts(
  resources: Record<string, Resource>,
  language: string,
  limits: Limits,
): GrowingTexts {
  const i18n = createInstance({
    lng: language,
    fallbackLng: "en-GB",
    initAsync: false,
    resources: Object.fromEntries(
      Object.entries(resources).map(([tag, texts]) => [tag, { translation: texts }]),
    ),
    // preact writes text nodes: escaping here would show "&amp;" to the reader.
    interpolation: { escapeValue: false },
    returnEmptyString: true,
    parseMissingKeyHandler: () => "",
  });
  void i18n.init();
  const shown = limitTexts(limits, language, i18n.t("measure.temperature-units").startsWith("F") ? "F" : "C");
  // Every turn tells all earlier ones again: on a slow phone, looking every text up anew is felt.
  const known = new Map<string, string>();
  let own = resources[language] ?? {};
  const texts: Texts = (key, values) => {
    if (values) return i18n.t(key, { ...shown, ...values });
    const text = known.get(key) ?? plainText(own, key) ?? i18n.t(key, shown);
    known.set(key, text);
    return text;
  };
  return Object.assign(texts, {
    add(more: Resource) {
      own = mergeTexts(own, more);
      i18n.addResourceBundle(language, "translation", own);
      // What was asked for before it came was found to be missing.
      known.clear();
    },
  });
}

/** Both sets of texts in one; where both have a text it is the second's. */
function mergeTexts(some: Resource, more: Resource): Resource {
  const merged = Object.entries(more).map(([key, text]): [string, string | Resource] => {
    const before = Object.hasOwn(some, key) ? some[key] : undefined;
    return [key, typeof before === "object" && typeof text === "object" ? mergeTexts(before, text) : text];
  });
  return { ...some, ...Object.fromEntries(merged) };
}

/** A text that stands as it is written, or undefined where something has to be put into it or it has to be looked for. */
function plainText(texts: Resource, key: string): string | undefined {
  let found: string | Resource | undefined = texts;
  for (const part of key.split("."))
    found = typeof found === "object" && Object.hasOwn(found, part) ? found[part] : undefined;
  // What i18next would fill in, or take from another text.
  return typeof found === "string" && !/\{\{|\$t\(/.test(found) ? found : undefined;
}

/** Each limit as a text would write it: temperatures with their unit, everything else as a bare number. */
function limitTexts(limits: Limits, language: string, scale: "C" | "F"): Record<string, string> {
  const number = createNumbers(language);
  return Object.fromEntries(
    Object.entries(limits).map(([id, { value, unit }]) => [
      id,
      unit === "°C" ? `${number(fromCelsius(value, scale), 0)} °${scale}` : number(value, 2),
    ]),
  );
}
