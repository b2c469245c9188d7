import { readSource } from "../../src/workbench/build/yaml-source.ts";
import { type FileProblem, verifyFolder } from "../../src/workbench/verify/index.ts";
import { readOnce } from "../read-once.ts";
import { smallFlow, smallTexts } from "./small-flow/index.ts";

/** A copy of the small flow's files in which one thing is changed. */
export type Planted = {
  /** `checks/…` and so on for a file of the flow, `locales/…` for a text file. */
  file: string;
  /** Text to look for; empty adds to the end of the file, or makes a new one. */
  find: string;
  /** What stands there instead; a `¦` marks where the problem is to be reported and is taken out. */
  put: string;
};

const flows = smallFlow();
const locales = smallTexts();
const partKinds = Object.keys(readSource("parts.yaml", flows["parts.yaml"] ?? "").data as object);

/** Everything wrong with the small flow as it is. */
export const untouched = verifyFolder({ flows, locales, partKinds, read: readOnce });

/**
 * The problems that come with the changes and were not there before, and the marked places, in the order of the
 * changes. @throws Error where the text to be changed is no longer in the files
 */
export function plant(...changes: Planted[]): { found: FileProblem[]; marked: Marked[] } {
  const files: Record<"flows" | "locales", Record<string, string>> = {
    flows: { ...flows },
    locales: { ...locales },
  };
  const marked = changes.flatMap(({ file, find, put }) => {
    const [where, path] = file.startsWith("locales/")
      ? (["locales", file.slice(8)] as const)
      : (["flows", file] as const);
    const before = files[where][path] ?? "";
    if (find && !before.includes(find)) throw new Error(`${file} no longer holds ${JSON.stringify(find)}`);
    const after = find ? before.replace(find, () => put) : before + put;
    files[where][path] = after.replace("¦", "");
    const lines = after.slice(0, after.indexOf("¦")).split("\n");
    return after.includes("¦")
      ? [{ file: path, line: lines.length, column: (lines.at(-1) ?? "").length + 1 }]
      : [];
  });
  const found = verifyFolder({ ...files, partKinds, read: readOnce });
  return {
    found: found.filter(
      (one) => !untouched.some((old) => old.message === one.message && old.file === one.file),
    ),
    marked,
  };
}

export type Marked = { file: string; line: number; column: number };

/** The problems that a folder without a file has. */
export function without(file: string): FileProblem[] {
  const { [file]: _, ...rest } = flows;
  return verifyFolder({ flows: rest, locales, partKinds, read: readOnce }).filter(
    (one) => !untouched.some((old) => old.message === one.message && old.file === one.file),
  );
}

/** A fault, planted in a copy of the small flow: its name, its code, words of its message, what is changed. */
export type Fault = [name: string, code: string, says: string, ...changes: Planted[]];

/** Texts for what a fault adds, so that none is missing. */
export function inEnglish(file: string, put: string): Planted[] {
  return [{ file: `locales/en-GB/${file}.yaml`, find: "", put }];
}

export function newCheck(head: string, tells = "clears: [cold]"): Planted[] {
  return [
    {
      file: "checks/my-check.yaml",
      find: "",
      put: `${head}\nstation: cold\naccess: inside\nminutes: 1\ntools: []\nstart: look\nturns:\n  look: { answers: { yes: { to: done, ${tells} } } }\n`,
    },
    ...inEnglish(
      "checks/my-check",
      "name: Mine\nwhy: Because.\nlook: { ask: Is it?, how: Look., answers: { yes: It is } }\n",
    ),
  ];
}
