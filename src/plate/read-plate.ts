import { codeDistance, codeText, editCosts, type FindResult } from "../catalogue/index.ts";
import { codesInLines, type PrintedLine } from "./codes-in-lines.ts";
import { despeckle, evenLight } from "./even-light.ts";
import { type Grey, quarterTurn, scaleTo } from "./grey.ts";
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

/**
 * How the picture is turned, scaled and cleaned, one try after the other, until one gives a code that the shop has.
 * `side`: pixels of its longer side; the smaller one is read faster and with fewer errors, the larger one helps where
 * the plate is a small part of the photo (bench of plates).
 */
const tries: { quarters: 0 | 1 | 2 | 3; side: 1000 | 1600; isCleaned?: true }[] = [
  { quarters: 0, side: 1000 },
  { quarters: 2, side: 1000 },
  { quarters: 0, side: 1000, isCleaned: true },
  { quarters: 0, side: 1600 },
  { quarters: 1, side: 1000 },
  { quarters: 3, side: 1000 },
];

/** Half the side of what a shade is held against, as a share of the picture's longer side (tuned). */
const reach = 0.032;

/** Letters in lines that the reader is sure of, from which on a picture is taken to be the right way up (tuned). */
const [sureOf, sureLetters] = [75, 25];

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
  let isUpright = false;
  for (const { quarters, side, isCleaned } of tries) {
    if (!isWanted()) break;
    if (isUpright && quarters !== 0) continue;
    // A small picture gains nothing by more than twice its pixels.
    const longer = Math.min(side, 2 * Math.max(level.width, level.height));
    const scaled = scaleTo(level, longer);
    const ready = quarterTurn(
      evenLight(isCleaned ? despeckle(scaled) : scaled, Math.round(reach * longer)),
      quarters,
    );
    const lines = await tools.read(ready);
    if (quarters === 0 && lettersOf(lines) >= sureLetters) isUpright = true;
    for (const read of codesInLines(lines, mostLookups)) {
      const result = asked.get(codeText(read)) ?? (await tools.find(read));
      asked.set(codeText(read), result);
      for (const match of matchesOf(result, read)) {
        const known = found.get(match.model.code);
        const nearer = known && known.distance <= match.distance ? known : match;
        found.set(match.model.code, { ...nearer, seen: (known?.seen ?? 0) + 1 });
      }
    }
    if ([...found.values()].some(({ distance }) => distance <= editCosts.lookAlike)) break;
  }
  return [...found.values()]
    .sort((a, b) => a.distance - b.distance || b.seen - a.seen || (a.model.code < b.model.code ? -1 : 1))
    .slice(0, mostMatches)
    .map(({ model, read, distance }) => ({ model, read, distance }));
}

const lettersOf = (lines: PrintedLine[]) =>
  lines
    .filter(({ sure }) => sure >= sureOf)
    .reduce((sum, { text }) => sum + text.replace(/[^A-Za-z\d]/g, "").length, 0);

function matchesOf(result: FindResult, read: string): PlateMatch[] {
  if (result.kind === "exact") return [{ model: result.model, read, distance: 0 }];
  if (result.kind !== "near") return [];
  return result.candidates.map(({ model }) => ({
    model,
    read,
    distance: codeDistance(codeText(read), codeText(model.code)),
  }));
}
