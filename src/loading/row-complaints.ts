import type { CatalogueProblem } from "../catalogue/index.ts";
import type { Complain } from "./complain.ts";

/** Rows named at most; whoever mends the first of them mends the rest. */
const MOST_NAMED = 20;

export const sentenceOf = (where: string, { path, code, found }: CatalogueProblem) =>
  `${where} ${path}: ${code}${found === undefined ? "" : ` ("${found}")`}`;

/** Names the rows that cannot be used. Bad links are counted instead: a feed has the same fault in all of them. */
export function complainOfRows(
  where: string,
  problems: readonly CatalogueProblem[],
  complain: Complain,
): void {
  const links = problems.filter(({ code }) => code === "unsafe-link");
  const others = problems.filter(({ code }) => code !== "unsafe-link");
  for (const problem of others.slice(0, MOST_NAMED)) complain(sentenceOf(where, problem));
  if (others.length > MOST_NAMED)
    complain(`${where}: ${others.length - MOST_NAMED} more rows can't be used.`, `${where} more`);
  const [example] = links;
  if (example)
    complain(
      `${where}: ${links.length} links or pictures are not http or https addresses and are left out, for example ` +
        sentenceOf("", example).trim(),
      `${where} links`,
    );
}
