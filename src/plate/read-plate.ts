import { codeDistance, codeText, editCosts, type FindResult } from "../catalogue/index.ts";
import { codesInLines, type PrintedLine } from "./codes-in-lines.ts";
import { despeckle, evenLight } from "./even-light.ts";
import { type Grey, quarterTurn } from "./grey.ts";
import { lieOf, rotate } from "./straighten.ts";

type Model = Extract<FindResult, { kind: "exact" }>["model"];

/** What reads a picture's lines of print, and what a shop's catalogue says to a code as it was read. */
export type Tools = {
  read(picture: Grey): Promise<PrintedLine[]>;
  find(code: string): Promise<FindResult>;
};

/**
 * A model whose code may stand on the plate, with what was read there and how far apart the two are, in tenths of an
 * edit: 0 where they are the same.
 */
export type PlateMatch = { model: Model; read: string; distance: number };

/** Codes of one reading that are looked up: with a catalogue in many files each may take a file or two. */
const mostLookups = 12;

/** Matches that are given; three fit a phone's screen and can still be compared with the plate. */
export const mostMatches = 3;

/** Half the side of what a shade is held against, in pixels of a picture of `readSide`: tuned on drawn photos. */
const reach = 50;

/** How the picture is turned and cleaned, one try after the other, until one gives a code that the shop has. */
const tries: { quarters: number; isCleaned: boolean }[] = [
  { quarters: 0, isCleaned: false },
  { quarters: 2, isCleaned: false },
  { quarters: 0, isCleaned: true },
  { quarters: 1, isCleaned: false },
  { quarters: 3, isCleaned: false },
  { quarters: 2, isCleaned: true },
];

/**
 * Reads a photo of a rating plate: straightened, evenly lit, as it is and turned, until a line holds a code of the
 * catalogue or all ways were tried. It takes nothing: the matches, the nearest first, are for a person to choose from.
 * @param isWanted asked before every try; where it says no, what was found so far is given
 * @throws whatever the tools throw
 */
export async function readPlate(picture: Grey, tools: Tools, isWanted = () => true): Promise<PlateMatch[]> {
  const lie = lieOf(picture);
  const level = rotate(lie.isUpended ? quarterTurn(picture, 1) : picture, lie.lean);
  const asked = new Map<string, FindResult>();
  const found = new Map<string, PlateMatch & { seen: number }>();
  for (const { quarters, isCleaned } of tries) {
    if (!isWanted()) break;
    const clean = isCleaned ? despeckle(level) : level;
    const lines = await tools.read(evenLight(quarterTurn(clean, quarters), reach));
    for (const read of codesInLines(lines, mostLookups)) {
      const result = asked.get(codeText(read)) ?? (await tools.find(read));
      asked.set(codeText(read), result);
      for (const match of matchesOf(result, read)) {
        const known = found.get(match.model.code);
        const seen = (known?.seen ?? 0) + 1;
        const nearer = known && known.distance <= match.distance ? known : match;
        found.set(match.model.code, { ...nearer, seen });
      }
    }
    if ([...found.values()].some(({ distance }) => distance <= editCosts.lookAlike)) break;
  }
  return [...found.values()]
    .sort((a, b) => a.distance - b.distance || b.seen - a.seen || (a.model.code < b.model.code ? -1 : 1))
    .slice(0, mostMatches)
    .map(({ model, read, distance }) => ({ model, read, distance }));
}

function matchesOf(result: FindResult, read: string): PlateMatch[] {
  if (result.kind === "exact") return [{ model: result.model, read, distance: 0 }];
  if (result.kind !== "near") return [];
  return result.candidates.map(({ model }) => ({
    model,
    read,
    distance: codeDistance(codeText(read), codeText(model.code)),
  }));
}
