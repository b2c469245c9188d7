import type { Texts } from "./actions.ts";
import type { Ending } from "./turn.ts";

/** How old a machine may be said to be; `unknown` for who cannot say. */
const ages = ["young", "middle", "old", "unknown"] as const;

/**
 * Whether mending is worth its price, and how that depends on the age of the machine where it does. No sums: only the
 * shop knows those.
 * @param trade who does the work: "" for the householder, null where nobody mends anything
 * @param isWorn whether what is needed is changed in a machine of any age
 */
export function worthOf(trade: string | null, isWorn: boolean, texts: Texts): Pick<Ending, "worth" | "age"> {
  if (trade === null) return { worth: [], age: null };
  const at = trade ? `who.${trade}` : "endings";
  const lines = texts(`${at}.worth`).split("\n").filter(Boolean);
  const unsaid = texts(`${at}.worth-age`);
  if (!unsaid) return { worth: lines, age: null };
  const guarantee = texts("endings.guarantee");
  const worth = [...lines, unsaid, guarantee];
  const worthAt = (age: (typeof ages)[number]) =>
    age === "unknown"
      ? worth
      : [
          ...lines,
          texts(`endings.age.${trade ? "work" : "part"}.${age}`),
          age === "young" ? guarantee : "",
        ].filter(Boolean);
  if (isWorn) return { worth, age: null };
  return {
    worth,
    age: {
      ask: texts("endings.age.ask"),
      options: ages.map((id) => ({ id, text: texts(`endings.age.options.${id}`), worth: worthAt(id) })),
    },
  };
}
