import type { FirstTurn, Texts } from "../turn/index.ts";

/** Looks up what the first file knows, a text that names a number in the form that the language has for it. */
export function createFirstTexts({ language, texts }: FirstTurn): Texts {
  const form = (count: unknown) => new Intl.PluralRules(language).select(Number(count));
  return (key, values) => {
    const text = texts[key] ?? texts[`${key}_${form(values?.["count"])}`] ?? "";
    return text.replace(/{{(\w+)}}/g, (_, name) => `${values?.[name]}`);
  };
}
