import { createInstance } from "i18next";
import type { Limits } from "../flow/index.ts";
import { fromCelsius } from "../measurement/index.ts";
import type { Texts } from "./actions.ts";

/** Texts of one language by file name, as in locales/<language>/. */
export type Resource = { [key: string]: string | Resource };

/**
 * Texts in one language, falling back to en-GB; every limit of flows/limits.yaml can be named in a text
 * (`{{ice-return-hours}}`) and appears in the reader's unit. A key without a text gives an empty string.
 * @param language BCP 47 tag with a folder in locales/
 */
export function createTexts(resources: Record<string, Resource>, language: string, limits: Limits): Texts {
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
  return (key, values) => {
    if (values) return i18n.t(key, { ...shown, ...values });
    const text = known.get(key) ?? i18n.t(key, shown);
    known.set(key, text);
    return text;
  };
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

/**
 * Writes numbers as the language does, with a true minus sign and at most so many decimals. Thousands stay together:
 * what is shown can be typed as it stands, and '1,500' could not.
 */
export function createNumbers(language: string): (value: number, digits: number) => string {
  return (value, digits) => {
    // −0.4 without decimals is a plain 0, not −0.
    const shown = Math.abs(value) < 0.5 / 10 ** digits ? 0 : value;
    const format = new Intl.NumberFormat(language, { maximumFractionDigits: digits, useGrouping: false });
    return format.format(shown).replace("-", "\u2212");
  };
}
