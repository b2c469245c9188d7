import type { PathMark, Texts, Turn } from "../../../turn/index.ts";
import { showList } from "../reading/index.ts";

export type Glance = { kind: "found" | "ruled-out" | "not-tried"; text: string }[];

/** As many findings speak for a cause in one glance; all of them stand below. */
const MOST_FOUND = 2;

/** The evidence for a part, or for whoever comes: what speaks for the cause, what is cleared, where nobody has looked. */
export function glanceOf({ ending, path }: Turn, texts: Texts): Glance {
  if (!ending?.part && ending?.outcome !== "professional") return [];
  const found = ending.evidence
    .filter(({ proves }) => proves)
    .slice(0, MOST_FOUND)
    .map(({ check, found }) => ({ kind: "found" as const, text: `${check}: ${found}` }));
  const at = (...states: PathMark["state"][]) =>
    path.flatMap(({ station, state }) => (states.includes(state) ? [texts(`thread.at.${station}`)] : []));
  const say = (kind: Glance[number]["kind"], stations: string[]): Glance =>
    stations[0] ? [{ kind, text: texts(`thread.${kind}`, { stations: showList(texts, stations) }) }] : [];
  return [...found, ...say("ruled-out", at("clear", "fixed")), ...say("not-tried", at("unseen"))];
}
