import { flowBounds } from "./bounds.ts";
import { all, any, type Guard, not, type Statement } from "./guard.ts";
import type { Condition } from "./schema.ts";

/** Steps from the top of a file to a value in it. */
export type Path = readonly (string | number)[];

/** What to make of each kind of condition, from what was made of those inside it; `path` leads to the part. */
export type Algebra<T> = {
  statement(statement: Statement, path: Path): T;
  /** A condition by its name. */
  named(name: string, path: Path): T;
  all(parts: T[]): T;
  any(parts: T[]): T;
  not(part: T): T;
};

/** Goes through a condition from the inside out: the one place that knows how flow files write one. */
export function fold<T>(condition: Condition, to: Algebra<T>, path: Path = []): T {
  const each = (list: Condition[], word: string) =>
    list.map((one, place) => fold(one, to, [...path, word, place]));
  if (typeof condition === "string") return to.statement({ type: condition, params: {} }, path);
  if ("all" in condition) return to.all(each(condition.all, "all"));
  if ("any" in condition) return to.any(each(condition.any, "any"));
  if ("not" in condition) return to.not(fold(condition.not, to, [...path, "not"]));
  if ("is" in condition) return to.named(condition.is, path);
  const at = (type: Statement["type"]) => [...path, type];
  if ("done" in condition)
    return to.statement({ type: "done", params: { check: condition.done } }, at("done"));
  if ("found" in condition)
    return to.statement({ type: "found", params: { causes: condition.found } }, at("found"));
  if ("remedied" in condition)
    return to.statement({ type: "remedied", params: { causes: condition.remedied } }, at("remedied"));
  if ("verdict" in condition)
    return to.statement({ type: "verdict", params: condition.verdict }, at("verdict"));
  return to.statement({ type: "answered", params: condition.answered }, at("answered"));
}

/** A named condition that has no meaning: nobody wrote it, it leans on itself, or it is too long once spelled out. */
export class NoMeaning extends Error {
  readonly id: string;
  constructor(id: string) {
    super(`Condition "${id}" has no meaning`);
    this.id = id;
  }
}

/** The meanings of named conditions. */
export type Named = Readonly<Record<string, Condition>>;

/**
 * An algebra that takes a named condition for what it means.
 * @throws NoMeaning for a name that has none, when it is met
 */
export function spellOut<T>(to: Omit<Algebra<T>, "named">, named: Named): Algebra<T> {
  const within: string[] = [];
  let length = 0;
  // A few names that each lean on the next twice are more than any phone can spell out.
  const counted =
    <From extends unknown[]>(make: (...from: From) => T) =>
    (...from: From) => {
      const name = within.at(-1);
      if (name !== undefined && ++length > flowBounds.spelled) throw new NoMeaning(name);
      return make(...from);
    };
  const spelled: Algebra<T> = {
    statement: counted(to.statement),
    all: counted(to.all),
    any: counted(to.any),
    not: counted(to.not),
    named(name) {
      const meaning = Object.hasOwn(named, name) ? named[name] : undefined;
      if (meaning === undefined || within.includes(name)) throw new NoMeaning(name);
      within.push(name);
      const made = fold(meaning, spelled);
      within.pop();
      return made;
    },
  };
  return spelled;
}

/**
 * A condition as a guard of the chart, named conditions spelled out.
 * @throws NoMeaning for a name that has none, which the verifier reports before anyone gets here
 */
export function guardOf(condition: Condition, named: Named): Guard {
  const guards = {
    statement: (statement: Statement): Guard => statement,
    all: (parts: Guard[]) => all(...parts),
    any: (parts: Guard[]) => any(...parts),
    not,
  };
  return fold(condition, spellOut(guards, named));
}

/** The names of other conditions that stand in a condition, each with the path to where it stands. */
export function namesIn(condition: Condition): { name: string; path: Path }[] {
  type Names = ReturnType<typeof namesIn>;
  return fold<Names>(condition, {
    statement: () => [],
    named: (name, path) => [{ name, path }],
    all: (parts) => parts.flat(),
    any: (parts) => parts.flat(),
    not: (part) => part,
  });
}
