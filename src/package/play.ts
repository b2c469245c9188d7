import { readFileSync } from "node:fs";
import { parseCatalogue } from "../catalogue/index.ts";
import { readFlow, readLocales } from "../workbench/build/index.ts";
import { createOpening, createPlay, type Play, type Wishes } from "../workbench/play/index.ts";

export type { Play, PlayLine } from "../workbench/play/index.ts";

/** What a session begins with: the language, a model number, a scenario to start in, the present moment (RFC 3339). */
export type PlayWishes = Wishes & {
  /** A catalogue as JSON has it, or a file's address. Without one, parts are named by their kind. */
  catalogue?: unknown;
};

/**
 * A session without a screen, for Node: `first` is the turn it opens with, `take(line)` answers with a line of JSON and
 * gives the next turn or an `error`, `isOver()` tells an ending. demo/docs/play.md has every line.
 * @throws Error in one sentence where a wish cannot be used, or the catalogue's file cannot be read
 */
export function openPlay({ catalogue, ...wishes }: PlayWishes = {}): Play {
  const json = catalogue instanceof URL ? JSON.parse(readFileSync(catalogue, "utf8")) : catalogue;
  const parts = parseCatalogue(json ?? { parts: [], models: [] }).catalogue;
  const data = { flow: readFlow(), locales: readLocales(), catalogue: parts };
  const options = createOpening(data, {}, () => new Date().toISOString())(wishes);
  if (typeof options === "string") throw new Error(options);
  return createPlay(options);
}
