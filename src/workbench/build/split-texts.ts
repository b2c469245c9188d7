import type { Resource } from "../../turn/index.ts";

/** Ids by the first part of the keys of their texts, such as those of `checks`. */
export type Ids = Record<string, Set<string>>;

/**
 * Texts cut up by who calls for them. What belongs to no id of a flow is shared, and so is what the opening calls for.
 * @param opening its ids; what nobody calls for by its id is shared as well
 * @param scenarios the ids of each scenario
 */
export function splitTexts(
  texts: Resource,
  opening: Ids,
  scenarios: Ids[],
): { shared: Resource; own: Resource[] } {
  const isShared = (kind: string, id: string) =>
    !opening[kind] || opening[kind].has(id) || !scenarios.some((ids) => ids[kind]?.has(id));
  const pick = (isWanted: (kind: string, id: string) => boolean): Resource =>
    Object.fromEntries(
      Object.entries(texts).flatMap(([kind, held]): [string, string | Resource][] => {
        if (typeof held === "string") return isWanted(kind, "") ? [[kind, held]] : [];
        const some = Object.entries(held).filter(([id]) => isWanted(kind, id));
        return some.length ? [[kind, Object.fromEntries(some)]] : [];
      }),
    );
  return {
    shared: pick(isShared),
    own: scenarios.map((ids) => pick((kind, id) => !isShared(kind, id) && (ids[kind]?.has(id) ?? false))),
  };
}
