import { createInstance } from "i18next";
import type { FlowSlice } from "../chart/index.ts";
import type { Limits } from "../guide/index.ts";
import { fromCelsius, fromKilopascals } from "../measuring/index.ts";
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
  { limits, region }: Pick<FlowSlice, "limits" | "region">,
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
  const shown = limitTexts(limits, language, region.units);
  // Every turn says all earlier ones again: on a slow phone, finding and parsing every text anew is felt.
  const parsed = new Map<string, string[]>();
  const written = new Map<string, string>();
  const plain = (key: string) =>
    i18n.languages.map((tag) => i18n.getResource(tag, "translation", key)).find((one) => one !== undefined);
  const piecesOf = (key: string, count?: string | number): string[] => {
    const id = `${key} ${count}`;
    const known = parsed.get(id);
    if (known) return known;
    const found = count === undefined ? plain(key) : undefined;
    const text =
      typeof found === "string" ? found : i18n.t(key, { count: count as number, skipInterpolation: true });
    const pieces = text.split(/{{\s*([\w-]+)\s*}}/);
    parsed.set(id, pieces);
    return pieces;
  };
  const write = (key: string, values?: Record<string, string | number>) =>
    piecesOf(key, values?.count)
      .map((piece, at) => (at % 2 ? (values?.[piece] ?? shown[piece] ?? `{{${piece}}}`) : piece))
      .join("");
  const texts: Texts = (key, values) => {
    if (values) return write(key, values);
    const text = written.get(key) ?? write(key);
    written.set(key, text);
    return text;
  };
  return Object.assign(texts, {
    add(more: Resource) {
      i18n.addResourceBundle(language, "translation", more, true);
      // What was asked for before it came was found to be missing.
      parsed.clear();
      written.clear();
    },
  });
}

/**
 * Each limit as a text would write it: temperatures and pressures with their unit and a space at which no line breaks
 * (SI Brochure 5.4.3 asks for the space), everything else as a bare number.
 */
function limitTexts(
  limits: Limits,
  language: string,
  units: FlowSlice["region"]["units"],
): Record<string, string> {
  const number = createNumbers(language);
  const [scale = "C"] = units.temperature;
  const [gauge = "kPa"] = units.pressure;
  const write = ({ value, unit }: Limits[string]) => {
    if (unit === "°C") return `${number(fromCelsius(value, scale), 0)}\u00a0°${scale}`;
    if (unit === "kPa")
      return `${number(fromKilopascals(value, gauge), gauge === "bar" ? 1 : 0)}\u00a0${gauge}`;
    return number(value, 2);
  };
  return Object.fromEntries(Object.entries(limits).map(([id, limit]) => [id, write(limit)]));
}
