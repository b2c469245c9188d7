/// <reference types="vite/client" />
import type { Texts } from "../../src/session/index.ts";

type Table = Record<string, string>;

/**
 * A small stand-in for the real look-up, with the same rules: `file.key`, en-GB behind every language,
 * `{{name}}` filled in, `_one` and `_other` chosen by `count`. An unknown key throws, so that a test sees it.
 */
function textsFrom(files: Record<string, Table>, fallback: Record<string, Table>): Texts {
  const find = (key: string): string | undefined => {
    const [file = "", name = ""] = key.split(/\.(.*)/s);
    return files[file]?.[name] ?? fallback[file]?.[name];
  };
  return (key, values = {}) => {
    const plural =
      typeof values["count"] === "number" ? new Intl.PluralRules("en").select(values["count"]) : "";
    const text = find(`${key}_${plural}`) ?? find(key);
    if (text === undefined) throw new Error(`No text "${key}" in locales/`);
    return text.replace(/\{\{(\w+)\}\}/g, (_, name: string) => {
      if (values[name] === undefined) throw new Error(`"${key}" wants a value for "${name}"`);
      return `${values[name]}`;
    });
  };
}

const files = import.meta.glob<Table>("../../locales/*/{ui,measure,part}.yaml", {
  eager: true,
  import: "default",
});
const tablesOf = (locale: string) =>
  Object.fromEntries(
    ["ui", "measure", "part"].map((file) => [file, files[`../../locales/${locale}/${file}.yaml`] ?? {}]),
  );

/** The texts of a language as a panel gets them. */
export function textsOf(locale: string): Texts {
  return textsFrom(tablesOf(locale), tablesOf("en-GB"));
}
