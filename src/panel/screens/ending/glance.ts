import type { PathMark, Texts, Turn } from "../../../turn/index.ts";
import { showList } from "../reading/index.ts";

export type Glance = { kind: "found" | "ruled-out" | "not-tried"; text: string }[];

/** The evidence for a part, or for whoever comes: what speaks for the cause, what is cleared, where nobody has looked. */
export function glanceOf({ ending, path }: Turn, texts: Texts): Glance {
  if (!ending?.part && ending?.outcome !== "professional") return [];
  const proving = ending.evidence.filter(({ proves }) => proves);
  // Of many the first and the last two, which have settled it; all of them stand below.
  const found = proving
    .filter((_, place) => place === 0 || place >= proving.length - 2)
    .map(({ check, found }) => ({ kind: "found" as const, text: `${check}: ${found}` }));
  // A look that found nothing rules out no station that something likely is still at.
  const open = ending.likely.map(({ station }) => station);
  const marks = path.filter(({ station, state }) => state === "unseen" || !open.includes(station));
  const at = (...states: PathMark["state"][]) =>
    marks.flatMap(({ station, state }) => (states.includes(state) ? [texts(`thread.at.${station}`)] : []));
  const say = (kind: Glance[number]["kind"], stations: string[]): Glance =>
    stations[0] ? [{ kind, text: texts(`thread.${kind}`, { stations: showList(texts, stations) }) }] : [];
  return [...found, ...say("ruled-out", at("clear", "fixed")), ...say("not-tried", at("unseen"))];
}
