/** The answers of side questions, as locales/<tag>/asides.yaml has them. */
export type Asides = Record<string, { says: string; tank?: string; priced?: string }>;

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
): string | null {
  const found = Object.hasOwn(asides, entry) ? asides[entry] : undefined;
  if (!found) return null;
  if (found.priced && part && price)
    return found.priced.replace("{{part}}", part).replace("{{price}}", price);
  return (hasTank && found.tank) || found.says;
}
