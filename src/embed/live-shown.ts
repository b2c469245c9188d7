import type { Person, SharedRoom } from "../cobrowse/client/index.ts";
import type { LiveRoom } from "../turn/index.ts";

/** Who is there and what was written, as a screen shows it. @param unsaid lines that the relay has not acknowledged yet */
export function shownOf(
  { people, said }: SharedRoom,
  unsaid: readonly string[],
): Pick<LiveRoom, "asking" | "inside" | "lines"> {
  const named = (which: Person["is"]) =>
    people.flatMap(({ id, name, is }) => (is === which ? { id, name } : []));
  const nameOf = (id: string) => people.find((one) => one.id === id)?.name ?? "";
  const lines = said.flatMap((one) => {
    if (one.by === "householder") return { id: `${one.seq}`, name: null, text: one.text };
    if (one.suggestion.kind !== "line") return [];
    return { id: `${one.seq}`, name: nameOf(one.from), text: one.suggestion.text };
  });
  const own = unsaid.map((text, at) => ({ id: `new ${at}`, name: null, text }));
  return { asking: named("asking"), inside: named("in"), lines: [...lines, ...own] };
}
