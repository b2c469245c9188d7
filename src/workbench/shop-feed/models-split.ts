import { hasWords } from "./model-codes.ts";

/** What may stand between the models of a cell. */
export const splitSigns = [",", ";", "|", "\n", "/"] as const;
export type SplitSign = (typeof splitSigns)[number];

/** Between which signs a column's models stand, and why; or what is unclear, with a cell that shows it. */
export type Split = { signs: readonly SplitSign[]; why: string } | { unsure: string };

/** These stand in no code (common practice, no source), so where they are they part. */
const always: readonly SplitSign[] = ["\n", "|", ";", ","];

const spoken: Record<SplitSign, string> = { ",": ",", ";": ";", "|": "|", "\n": "newline", "/": "/" };

/** The signs as they are said on a command line: `,` or `,/` or `newline`, and `none` for one model a cell. */
export function readSplit(written: string): readonly SplitSign[] | null {
  if (written === "none") return [];
  const left = written.replaceAll("newline", "\n").replaceAll("\\n", "\n");
  const signs = [...new Set(left)];
  return signs.length > 0 && signs.every((one) => splitSigns.includes(one as SplitSign))
    ? (signs as SplitSign[])
    : null;
}

export function saySplit(signs: readonly SplitSign[]): string {
  return signs.length > 0 ? signs.map((one) => spoken[one]).join("") : "none";
}

/** A cell's pieces, blanks around them gone, each once and none of them empty. */
export function splitCell(cell: string, signs: readonly SplitSign[]): string[] {
  let pieces = signs.includes("\n") ? cell.split(/[\r\n]+/) : [cell];
  // Most cells have single blanks only, and a feed has millions of pieces: blanks are mended before they are many.
  pieces = pieces.map((piece) => piece.replace(/\s\s+|[^\S ]/g, " "));
  for (const sign of signs) pieces = pieces.flatMap((piece) => piece.split(sign));
  const own = new Set(pieces.map((piece) => piece.trim()));
  own.delete("");
  return [...own];
}

/** Whether a piece could be a whole code by itself: a letter and a digit, or a long number. */
const isWhole = (piece: string) =>
  /^[\p{L}\p{N}.\- ]{4,}$/u.test(piece) && (/^(?=.*\d)(?=.*\p{L})/u.test(piece) || /^\d{5,}$/.test(piece));

/** A code's ending for a country, a colour or an issue, which many makers put behind a slash. */
const isEnding = (piece: string) => /^(\d{1,2}|\p{L}{1,3}|\p{L}\d|\d\p{L})$/u.test(piece);

/**
 * Finds what stands between the models of a column, by looking at all of it. A slash parts codes in one shop and belongs
 * to them in the next; where the column does not tell, nothing is guessed: two models as one, or one as two, would sell
 * a part for a machine that it does not fit.
 */
export function findSplit(cells: readonly string[]): Split {
  const strong = always.filter((sign) => cells.some((cell) => hasBetween(cell, sign)));
  // A model stands in many cells, and tells as much as one.
  const each = new Set<string>();
  for (const cell of cells) for (const token of splitCell(cell, strong)) each.add(token);
  const tokens = [...each];
  const run = findRun(tokens);
  if (run) return { unsure: `"${run}" may be several models with blanks between.` };
  const slashed = tokens.filter((token) => token.includes("/"));
  const why = strong.length > 0 ? "it stands between codes" : "one model stands in each cell";
  if (slashed.length === 0) return { signs: strong, why };
  const judged = judgeSlash(tokens, slashed, strong.length > 0);
  if ("unsure" in judged) return judged;
  return judged.parts
    ? { signs: [...strong, "/"], why: judged.why }
    : { signs: strong, why: `${why}; ${judged.why}` };
}

const hasBetween = (cell: string, sign: SplitSign) =>
  (cell.includes(sign) || (sign === "\n" && cell.includes("\r"))) && splitCell(cell, [sign]).length > 1;

function judgeSlash(
  tokens: readonly string[],
  slashed: readonly string[],
  hasStrong: boolean,
): { parts: boolean; why: string } | { unsure: string } {
  const alone = new Set(tokens.filter((token) => !token.includes("/")));
  const lists = slashed.filter((token) => splitCell(token, ["/"]).every(isWhole));
  const asList = lists.length === slashed.length;
  const counts = new Set(slashed.map((token) => token.split("/").length));
  if (asList && !hasStrong && counts.size >= 2 && Math.max(...counts) >= 3)
    return { parts: true, why: "a slash stands between whole codes, now few and now many" };
  const standing = slashed.find((token) => isTold(token, alone));
  if (asList && !hasStrong && slashed.every((token) => isTold(token, alone)))
    return { parts: true, why: "a slash stands between codes that stand alone elsewhere" };
  const like = slashed.find((token) => isTwoAlike(token));
  const short = slashed.find((token) => isShortened(token));
  const open = hasStrong ? undefined : lists[0];
  const doubtful = standing ?? like ?? short ?? open;
  if (doubtful !== undefined)
    return { unsure: `"${doubtful}" may be one model with a slash in it, or several.` };
  return { parts: false, why: `a slash belongs to the code, as in "${slashed[0]}"` };
}

/** Whether most pieces stand alone in other places. */
function isTold(token: string, alone: ReadonlySet<string>): boolean {
  const pieces = splitCell(token, ["/"]);
  const known = pieces.filter((piece) => isWhole(piece) && alone.has(piece)).length;
  return pieces.length > 1 && known * 2 >= pieces.length && known > 0;
}

/** `WX430A/WX431A`: whole codes that begin alike are two of a series. */
function isTwoAlike(token: string): boolean {
  const [first = "", ...others] = splitCell(token, ["/"]);
  return others.some((other) => isWhole(first) && isWhole(other) && first.slice(0, 3) === other.slice(0, 3));
}

/** `WX430/431`: the second may be a model whose beginning was left out. */
function isShortened(token: string): boolean {
  const [first = "", ...others] = splitCell(token, ["/"]);
  const end = /\d+\p{L}?$/u.exec(first)?.[0] ?? "";
  return others.some(
    (other) => !isEnding(other) && /^\d+\p{L}?$/u.test(other) && other.length <= end.length && isWhole(first),
  );
}

/** A piece with three whole codes side by side, or two that begin alike. */
function findRun(tokens: readonly string[]): string | undefined {
  return tokens.find((token) => {
    // One with words in it is no code anyway.
    if (hasWords(token)) return false;
    const pieces = token.split(" ").filter((piece) => isWhole(piece) && piece.length > 4);
    const alike = pieces.some((one, at) =>
      pieces.slice(at + 1).some((two) => one.slice(0, 3) === two.slice(0, 3)),
    );
    return pieces.length >= 3 || alike;
  });
}
