import type { Path } from "../../condition/index.ts";
import type { Named, Names } from "./names.ts";
import type { Report } from "./report.ts";
import { nearest } from "./suggest.ts";
import type { Fault, Role } from "./words.ts";

/** A change that makes a faulty file whole enough to judge the rest: a value put in, or taken out. */
export type Repair = { file: string; path: Path; value?: unknown };

type Within<One> = One extends unknown ? Omit<One, "file"> : never;

/** Holds names against what there is, within one file. */
export type NameCheck = {
  names: Names;
  /**
   * Reports a name that nothing has; it is then judged as if the suggestion stood there, or `drop` were not.
   * @returns false where the name leads nowhere even so
   */
  one(kind: Named, role: Role, id: string, path: Path, drop?: Path): boolean;
  /** The same for each of a list at `path`. */
  each(kind: Named, role: Role, ids: string[] | undefined, path: Path): void;
  /** Reports anything else that is wrong at a place. */
  report(fault: Within<Fault>): void;
  repair(path: Path, value?: unknown): void;
};

const codes = {
  part: "part-without-entry",
  likelihood: "unknown-word",
  prior: "unknown-word",
} as const;

/** The checks of names in a file, whose repairs are added to `repairs`. */
export function createNameCheck(file: string, names: Names, report: Report, repairs: Repair[]): NameCheck {
  const repair: NameCheck["repair"] = (path, ...value) => {
    repairs.push(value.length ? { file, path, value: value[0] } : { file, path });
  };
  const one: NameCheck["one"] = (kind, role, id, path, drop) => {
    const ids = names.idsOf(kind);
    if (!ids || ids.includes(id)) return true;
    const suggestion = nearest(id, ids);
    const isKey = path.at(-1) === id;
    const code = kind in codes ? codes[kind as keyof typeof codes] : (`unknown-${kind}` as "unknown-check");
    report({ code, file, path, id, role, kind, suggestion, ...(isKey ? { at: "key" } : {}) });
    if (suggestion && !isKey) repair(path, suggestion);
    else if (drop) repair(drop);
    return Boolean(suggestion || drop);
  };
  return {
    names,
    one,
    each: (kind, role, ids = [], path) => {
      for (const [place, id] of ids.entries()) one(kind, role, id, [...path, place], [...path, place]);
    },
    report: (fault) => report({ ...fault, file } as Fault),
    repair,
  };
}
