import type { Flow, Region } from "../../guide/index.ts";
import type { NameCheck } from "./name-check.ts";
import type { Report } from "./report.ts";

/** Judges every name in a region. */
export function checkRegion(at: NameCheck, { statutes }: Region): void {
  for (const [id, statute] of Object.entries(statutes))
    at.one("limit", "statutes", statute.limit, ["statutes", id, "limit"], ["statutes", id]);
}

/** Languages whose readers would be taken to live in two regions, or that nobody has said where they live. */
export function findUnplaced({ regions }: Pick<Flow, "regions">, tags: string[], report: Report): void {
  const usual = new Map<string, string>();
  for (const [code, { "default-for": languages = [] }] of Object.entries(regions))
    for (const [place, language] of languages.entries()) {
      const other = usual.get(language);
      const spot = { file: `regions/${code}.yaml`, path: ["default-for", place] };
      if (other) report({ code: "doubled-default", ...spot, language, other });
      usual.set(language, code);
    }
  const unplaced = tags.filter((tag) => {
    const [language = "", ...rest] = tag.split("-");
    return !usual.has(language) && !rest.some((part) => Object.hasOwn(regions, part));
  });
  for (const tag of unplaced)
    report({ code: "language-without-region", file: "regions/GB.yaml", path: [], tag });
}
