/** The answers of side questions, as locales/<tag>/asides.yaml has them. */
export type Asides = Record<
  string,
  {
    says: string;
    drawing?: string;
    tank?: string;
    priced?: string;
    /** What is said of each fact that a shop may give, by the fact's name; all that are given are said, in this order. */
    facts?: Record<string, string>;
    /** What a fact is put together of. */
    parts?: Record<string, string>;
  }
>;

/** What is said to a side question, and the id of the drawing beside it. */
export type Aside = { text: string; drawing: string | null };

/** What may be told at any time, by turn: its name and its answers in words. */
export type Said = Record<string, { title: string; answers: Record<string, string> }>;

/** What an answer depends on: the machine, a price as the shop gives it, and its facts by name, in words. */
export type AsideAbout = { hasTank?: boolean; part?: string; price?: string; facts?: Record<string, string> };

/**
 * The answer of a side question, for this machine and with the shop's own price and facts where it gives them; null
 * for an entry that there is not.
 */
export function asideOf(
  asides: Asides,
  entry: string,
  { hasTank, part, price, facts = {} }: AsideAbout = {},
): Aside | null {
  const found = Object.hasOwn(asides, entry) ? asides[entry] : undefined;
  if (!found) return null;
  if (found.priced && part && price)
    return { text: found.priced.replace("{{part}}", part).replace("{{price}}", price), drawing: null };
  const given = Object.entries(found.facts ?? {}).filter(([name]) => Object.hasOwn(facts, name));
  const quoted = given.map(([name, text]) => text.replace(`{{${name}}}`, () => facts[name] ?? ""));
  if (quoted[0]) return { text: quoted.join(" "), drawing: null };
  if (hasTank && found.tank) return { text: found.tank, drawing: null };
  return { text: found.says, drawing: found.drawing ?? null };
}
