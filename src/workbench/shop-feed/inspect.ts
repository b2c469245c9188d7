import { type Guess, guessMapping, type Said } from "./guess-mapping.ts";
import { type ShopFitments, type ShopTables, type Understood, understand } from "./understand.ts";

/** A part as the first rows give it, with its models. */
export type ShownPart = Pick<ShopFitments, "line" | "part" | "models"> & { count: number };

/** What a shop's feed seems to be. Without `understood` something has to be said first: `guess.needs`. */
export type Inspection = {
  guess: Guess;
  understood?: Understood;
  fitments: number;
  shown: readonly ShownPart[];
};

const mostShown = 10;
const mostModels = 4;

/** Guesses how a feed is to be read, and reads it so, to show what would come of it. @param kinds of the trade */
export function inspectFeed(tables: ShopTables, said: Said, kinds: readonly string[]): Inspection {
  const guess = guessMapping(tables, said, kinds);
  const shown: (ShownPart & { models: string[] })[] = [];
  let fitments = 0;
  if (guess.needs.length > 0) return { guess, fitments, shown };
  const understood = understand(tables, guess.mapping, kinds, ({ line, part, models }) => {
    fitments += models.length;
    const last = shown.at(-1);
    // Elements of XML may stand in one line.
    if (last?.line === line) {
      last.count += models.length;
      last.models.push(...models.slice(0, mostModels - last.models.length));
    } else if (shown.length < mostShown)
      shown.push({ line, part, models: models.slice(0, mostModels), count: models.length });
  });
  return { guess, understood, fitments, shown };
}
