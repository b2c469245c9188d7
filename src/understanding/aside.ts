/** The answers of side questions, as locales/<tag>/asides.yaml has them. */
export type Asides = Record<string, { says: string; drawing?: string; tank?: string; priced?: string }>;

/** What is said to a side question, and the id of the drawing beside it. */
export type Aside = { text: string; drawing: string | null };

/** What may be told at any time, by turn: its name and its answers in words. */
export type Said = Record<string, { title: string; answers: Record<string, string> }>;

/** What an answer depends on: the machine, and a price as the shop gives it. */
export type AsideAbout = { hasTank?: boolean; part?: string; price?: string };

/**
 * The answer of a side question, for this machine and with the shop's own price where it gives one; null for an entry
 * that there is not.
 */
export function asideOf(
  asides: Asides,
  entry: string,
  { hasTank, part, price }: AsideAbout = {},
): Aside | null {
  const found = Object.hasOwn(asides, entry) ? asides[entry] : undefined;
  if (!found) return null;
  if (found.priced && part && price)
    return { text: found.priced.replace("{{part}}", part).replace("{{price}}", price), drawing: null };
  if (hasTank && found.tank) return { text: found.tank, drawing: null };
  return { text: found.says, drawing: found.drawing ?? null };
}
