import type { FlowSlice } from "../chart/index.ts";
import type { Limits } from "../guide/index.ts";
import { fromCelsius, type TemperatureUnit } from "../measuring/index.ts";
import type { Texts } from "./actions.ts";
import { createNumbers, formOf } from "./formats.ts";

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
  const texts = { ...resources };
  const tags = [...new Set([language, language.split("-")[0] ?? "", "en-GB"])];
  const shown = limitTexts(limits, language, region.units.temperature[0] ?? "C");
  // Every turn says all earlier ones again: on a slow phone, finding and parsing every text anew is felt.
  const parsed = new Map<string, string[]>();
  const written = new Map<string, string>();
  const find = (key: string, count?: string | number): string => {
    for (const tag of tags) {
      const counted = count === undefined ? undefined : textAt(texts[tag], `${key}_${formOf(tag, count)}`);
      const text = counted ?? textAt(texts[tag], key);
      if (text !== undefined) return text;
    }
    return "";
  };
  const piecesOf = (key: string, count?: string | number): string[] => {
    const id = `${key} ${count}`;
    const known = parsed.get(id);
    if (known) return known;
    const pieces = find(key, count).split(/{{\s*([\w-]+)\s*}}/);
    parsed.set(id, pieces);
    return pieces;
  };
  const write = (key: string, values?: Record<string, string | number>) =>
    piecesOf(key, values?.count)
      .map((piece, at) => (at % 2 ? (values?.[piece] ?? shown[piece] ?? `{{${piece}}}`) : piece))
      .join("");
  const say: Texts = (key, values) => {
    if (values) return write(key, values);
    const text = written.get(key) ?? write(key);
    written.set(key, text);
    return text;
  };
  return Object.assign(say, {
    add(more: Resource) {
      texts[language] = merge(texts[language] ?? {}, more);
      // What was asked for before it came was found to be missing.
      parsed.clear();
      written.clear();
    },
  });
}

/** The text that a key such as `ui.cancel` leads to; undefined where it leads to none. */
function textAt(texts: Resource | undefined, key: string): string | undefined {
  let at: string | Resource | undefined = texts;
  for (const step of key.split("."))
    at = typeof at === "object" && Object.hasOwn(at, step) ? at[step] : undefined;
  return typeof at === "string" ? at : undefined;
}

/** Neither is changed. Where both have a text, the second has the word. */
function merge(some: Resource, more: Resource): Resource {
  const added = Object.entries(more).map(([key, text]) => {
    const there = Object.hasOwn(some, key) ? some[key] : undefined;
    return [key, typeof text === "object" && typeof there === "object" ? merge(there, text) : text];
  });
  return { ...some, ...Object.fromEntries(added) };
}

/** Each limit as a text would write it: temperatures with their unit, everything else as a bare number. */
function limitTexts(limits: Limits, language: string, scale: TemperatureUnit): Record<string, string> {
  const number = createNumbers(language);
  return Object.fromEntries(
    Object.entries(limits).map(([id, { value, unit }]) => [
      id,
      unit === "°C" ? `${number(fromCelsius(value, scale), 0)} °${scale}` : number(value, 2),
    ]),
  );
}
