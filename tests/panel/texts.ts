/// <reference types="vite/client" />
import type { Texts } from "../../src/turn/index.ts";

type Table = { [name: string]: string | Table };

/**
 * A small stand-in for the real look-up, with the same rules: `file.key`, en-GB behind every language,
 * `{{name}}` filled in, `_one` and `_other` chosen by `count`. An unknown key throws, so that a test sees it.
 */
function textsFrom(files: Record<string, Table>, fallback: Record<string, Table>): Texts {
  const find = (key: string): string | undefined => {
    const [file = "", name = ""] = key.split(/\.(.*)/s);
    return textAt(files[file], name) ?? textAt(fallback[file], name);
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

/** The text under a dotted name. */
function textAt(table: Table | undefined, name: string): string | undefined {
  const found = name
    .split(".")
    .reduce<Table | string | undefined>(
      (each, part) => (typeof each === "object" ? each[part] : undefined),
      table,
    );
  return typeof found === "string" ? found : undefined;
}

const files = import.meta.glob<Table>(
  "../../locales/*/{ui,measure,photo,statutes,part,parts,composer,thread,carry,live,care}.yaml",
  {
    eager: true,
    import: "default",
  },
);
const tablesOf = (locale: string) =>
  Object.fromEntries(
    [
      "ui",
      "measure",
      "photo",
      "statutes",
      "part",
      "parts",
      "composer",
      "thread",
      "carry",
      "live",
      "care",
    ].map((file) => [file, files[`../../locales/${locale}/${file}.yaml`] ?? {}]),
  );

/** The texts of a language as a panel gets them. */
export function textsOf(locale: string): Texts {
  return textsFrom(tablesOf(locale), tablesOf("en-GB"));
}
