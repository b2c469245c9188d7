import type { Path } from "../../guide/index.ts";
import type { Folder } from "./folder.ts";
import type { Named, Names } from "./names.ts";
import { nearest, offer } from "./nearest.ts";
import type { FileProblem } from "./problem.ts";

/** A change that makes a faulty file whole enough to judge the rest: a value put in, or taken out. */
export type Mend = { file: string; path: Path; value?: unknown };

/** Holds names against what there is, within one file. */
export type Referee = {
  names: Names;
  /**
   * Reports a name that nothing has; it is then judged as if the suggestion stood there, or `drop` were not.
   * @returns false where the name leads nowhere even so
   */
  refer(kind: Named, id: string, path: Path, subject: string, drop?: Path): boolean;
  referAll(kind: Named, ids: string[], path: Path, subject: string): void;
  /** Reports anything else that is wrong at a place. */
  report(code: string, path: Path, message: string, suggestion?: string | null, part?: "key"): void;
  mend(path: Path, value?: unknown): void;
};

/** A referee for each file, with one list of problems for all. */
export function createReferee(folder: Folder, names: Names) {
  const problems: FileProblem[] = [];
  const mends: Mend[] = [];
  const within = (file: string): Referee => {
    const report: Referee["report"] = (code, path, message, suggestion = null, part) => {
      const place = folder.sources.get(file)?.placeOf(path, part) ?? { file, line: 1, column: 1 };
      const { words, field } = offer(suggestion);
      problems.push({ ...place, code, message: message + words, ...field });
    };
    const mend: Referee["mend"] = (path, ...value) => {
      mends.push(value.length ? { file, path, value: value[0] } : { file, path });
    };
    const refer: Referee["refer"] = (kind, id, path, subject, drop) => {
      const ids = names.idsOf(kind);
      if (!ids || ids.includes(id)) return true;
      const suggestion = nearest(id, ids);
      const isKey = path.at(-1) === id;
      const message = `${subject} "${id}", which ${lacks[kind] ?? "does not exist"}.`;
      report(codes[kind] ?? `unknown-${kind}`, path, message, suggestion, isKey ? "key" : undefined);
      if (suggestion && !isKey) mend(path, suggestion);
      else if (drop) mend(drop);
      return Boolean(suggestion || drop);
    };
    return {
      names,
      refer,
      referAll: (kind, ids, path, subject) => {
        for (const [place, id] of ids.entries()) refer(kind, id, [...path, place], subject, [...path, place]);
      },
      report,
      mend,
    };
  };
  return { problems, mends, within };
}

const codes: Partial<Record<Named, string>> = {
  part: "part-without-entry",
  likelihood: "unknown-word",
  prior: "unknown-word",
};
const lacks: Partial<Record<Named, string>> = {
  part: "has no entry in parts.yaml",
  likelihood: "is no word for a likelihood in words.yaml",
  prior: "is no word for a prior in words.yaml",
};
