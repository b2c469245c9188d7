import type { ChartConfig } from "../../chart/index.ts";
import { confirmerOf, partsOfCheck, restorersOf } from "../../compile/index.ts";
import type { Check, Flow, Scenario } from "../../guide/index.ts";
import { wordsOf, wrap } from "./condition-words.ts";
import { measures, widthOf } from "./measures.ts";
import { type PlacedCheck, placeTurns } from "./place-turns.ts";
import { turnBoxes } from "./turn-boxes.ts";

/** A check in its place: what heads it, and its turns; no turns where they were drawn further up. */
export type PlacedRow = {
  y: number;
  height: number;
  number: number;
  check: string;
  when: string[];
  heading: string;
  /** Hazards that need care, as one line; empty where there are none. */
  hazards: string;
  turns: PlacedCheck | null;
  /** Where the turns start, from the row's top. */
  inset: number;
};

/** Checks at one station that follow each other. */
export type PlacedGroup = { station: string; y: number; height: number; width: number; rows: PlacedRow[] };

export type Page = {
  scenario: string;
  width: number;
  height: number;
  /** Text of the opening's way in, and of the proofs that end the search. */
  when: string[];
  proofs: string[];
  groups: PlacedGroup[];
  otherwise: string;
  /** Where the checks begin and where the endings stand. */
  top: number;
  endings: number;
};

/** Left edges: of the conditions, of the line that runs through all checks, and of the checks. */
export const columns = { when: 20, spine: 282, check: 322 };
const letters = 38;
const space = 14;
const { line } = measures;

/** Places a whole scenario on one page: checks below each other in the trade's order, framed by station. */
export function placePage(flow: Flow, config: ChartConfig, id: string): Page {
  const scenario = flow.scenarios[id] as Scenario;
  const when = wrap(`when ${wordsOf(scenario.when)}`, 110);
  const proofs = scenario.proofs.flatMap((cause) => proofLines(flow, cause));
  const top = 96 + line * (when.length + proofs.length);
  const groups: PlacedGroup[] = [];
  let y = top;
  const entries: { check: string; when?: string[] }[] = scenario.checks.map(({ check, when }) =>
    when === undefined ? { check } : { check, when: wrap(`when ${wordsOf(when)}`, letters) },
  );
  // In no scenario's order: the chart itself puts them before whatever needs things back, and before an ending.
  for (const { id, restores } of restorersOf(flow, scenario))
    entries.push({
      check: id,
      when: wrap(`before what needs it back, or an ending: ${restores.join(", ")}`, letters),
    });
  const confirmer = confirmerOf(flow, scenario);
  if (confirmer?.confirms)
    entries.push({
      check: confirmer.id,
      when: wrap(`before all is well, where the ${confirmer.confirms.place} was last read too warm`, letters),
    });
  for (const [at, entry] of entries.entries()) {
    const check = flow.checks[entry.check] as Check;
    const again = entries.findIndex((one) => one.check === entry.check);
    const parts = partsOfCheck(check).flatMap((part) => config.states[id]?.states?.[part.id] ?? []);
    const turns =
      again === at && parts.length
        ? placeTurns(turnBoxes(parts, Object.values(config.states[id]?.states ?? {})))
        : null;
    let group = groups.at(-1);
    if (group?.station !== check.station) {
      y += space;
      group = { station: check.station, y, height: line + space, width: 0, rows: [] };
      groups.push(group);
      y += line + space;
    }
    const hazards = hazardWords(flow, check);
    const inset = line * (hazards ? 2 : 1) + 6;
    const said = entry.when ?? [];
    const height = Math.max(line * (said.length + 1), inset + (turns?.height ?? 0)) + space;
    const heading = turns ? headingOf(check) : `${check.id}, as in ${again + 1}`;
    group.rows.push({
      y,
      height,
      number: at + 1,
      check: check.id,
      when: said,
      heading,
      hazards,
      turns,
      inset,
    });
    y += height;
    group.height = y - group.y;
    group.width = Math.max(group.width, widthOf([heading, hazards]), turns?.width ?? 0);
  }
  const widest = Math.max(0, ...groups.map(({ width }) => width));
  const endings = y + space * 2;
  const otherwise = `otherwise: ${scenario.otherwise.to} (${scenario.otherwise.who})`;
  return {
    scenario: id,
    width: Math.max(columns.check + widest + 40, 1000),
    height: endings + 150,
    when,
    proofs,
    groups,
    otherwise,
    top,
    endings,
  };
}

function proofLines(flow: Flow, cause: string): string[] {
  const rule = flow.causes[cause];
  const ending = rule?.remedy === "part" ? `part: ${rule.part}` : `professional: ${rule?.who}`;
  return wrap(`${cause} (${ending}) when ${rule?.proof ? wordsOf(rule.proof) : ""}`, 150);
}

function headingOf({ id, minutes, tools, repeats }: Check): string {
  return [id, `${minutes} min`, ...tools, ...(repeats ? ["as often as its condition holds"] : [])].join(
    " \u00b7 ",
  );
}

function hazardWords(flow: Flow, check: Check): string {
  const hazards = new Set([...(flow.access[check.access] ?? []), ...(check.hazards ?? [])]);
  return [...hazards].map((hazard) => `${flow.hazards[hazard]?.signal ?? "warning"}: ${hazard}`).join(", ");
}
