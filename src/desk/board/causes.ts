import { movesAt } from "../../advice/index.ts";
import type { ChartContext } from "../../chart/index.ts";
import { anythingElse } from "../../guide/index.ts";
import { memoryOf, metaOf, type Session } from "../../session/index.ts";
import { linesOf, type Texts } from "../../turn/index.ts";
import { subjectOf } from "./subject-of.ts";

/** One thing that a cause rests on: a finding for or against it, or a check that would say more and was not done yet. */
export type Ground = { is: "for" | "against" | "untried"; text: string };

/** A cause with how likely it is, in whole per cent, and what that rests on. */
export type CauseRow = { id: string; name: string; percent: number; grounds: Ground[] };

/** So many causes are named, each of so many per cent at least; all others are one row. */
const [most, least] = [5, 2];

/** So many findings for and against a cause, and checks that are not done, are said. */
const mostGrounds = 3;

/**
 * A finding counts as evidence from this weight on, in decibans, tenths of a power of ten: about the least that a person
 * takes notice of (I. J. Good, Weight of evidence: a brief survey, 1985).
 */
const noticeable = 1;

/** What it most likely is, the likeliest first, and last the share of all that is not named. Empty where nothing is believed yet. */
export function causesOf(session: Session, texts: Texts): CauseRow[] {
  const memory = memoryOf(session);
  const chances = session.adviser?.chances(memory) ?? [];
  const sorted = [...chances].sort((a, b) => b.chance - a.chance);
  const named = sorted
    .filter(({ cause, chance }) => cause !== anythingElse && chance * 100 >= least)
    .slice(0, most);
  const rest = sorted.reduce((sum, one) => (named.includes(one) ? sum : sum + one.chance), 0);
  if (!named[0]) return [];
  const weights = weightsOf(session, memory);
  const rows = named.map(
    ({ cause, chance }): CauseRow => ({
      id: cause,
      name: causeName(cause, texts),
      percent: Math.round(chance * 100),
      grounds: groundsOf(session, cause, weights, texts),
    }),
  );
  if (named.length === sorted.length) return rows;
  return [
    ...rows,
    { id: "", name: texts("desk.causes.others"), percent: Math.round(rest * 100), grounds: [] },
  ];
}

/** A cause in a few words: the first sentence of what it is. */
export function causeName(cause: string, texts: Texts): string {
  const [first = ""] = texts(`causes.${cause}.is`).split(/(?<=\.) /);
  return first.replace(/\.$/, "");
}

/** By check and cause, the weight of what the check showed: how far the cause's log odds would move without it. */
type Weights = Map<string, Map<string, number>>;

/** The weight of each check's evidence, in decibans, given all other evidence: log O(H|EG) - log O(H|G), times ten. */
export function weightsOf(session: Session, memory: ChartContext): Weights {
  const { adviser } = session;
  const subject = subjectOf(session);
  if (!adviser || !subject) return new Map();
  // The opening says which causes there are at all.
  const opening = new Set(subject.diagnosis.openings.turns.map(checkOf));
  const checks = [...new Set(Object.keys(memory.findings).map(checkOf))].filter(
    (check) => !opening.has(check) && adviser.explain(memory, check) !== null,
  );
  const now = new Map(adviser.chances(memory).map(({ cause, chance }) => [cause, chance]));
  return new Map(
    checks.map((check) => {
      const others = Object.entries(memory.findings).filter(([turn]) => checkOf(turn) !== check);
      const without = adviser.chances({ ...memory, findings: Object.fromEntries(others) });
      return [
        check,
        new Map(without.map(({ cause, chance }) => [cause, logOdds(now.get(cause) ?? 0) - logOdds(chance)])),
      ];
    }),
  );
}

const logOdds = (chance: number) => 10 * Math.log10(chance / (1 - chance));

function groundsOf(session: Session, cause: string, weights: Weights, texts: Texts): Ground[] {
  const weighed = [...weights].map(([check, by]) => ({ check, weight: by.get(cause) ?? 0 }));
  const strongest = (is: "for" | "against") => {
    const sign = is === "for" ? 1 : -1;
    return weighed
      .filter(({ weight }) => weight * sign >= noticeable)
      .sort((a, b) => (b.weight - a.weight) * sign)
      .slice(0, mostGrounds)
      .flatMap(({ check }): Ground[] => {
        const text = foundBy(check, session, texts);
        return text ? [{ is, text }] : [];
      });
  };
  const untried = untriedFor(session, cause).map(
    (check): Ground => ({
      is: "untried",
      text: texts(check === metaOf(session).check ? "desk.causes.now" : "desk.causes.untried", {
        check: texts(`checks.${check}.name`),
      }),
    }),
  );
  return [...strongest("for"), ...strongest("against"), ...untried];
}

/** Checks that could be done now and tell this cause from another one. */
function untriedFor(session: Session, cause: string): string[] {
  const subject = subjectOf(session);
  const memory = memoryOf(session);
  if (!subject) return [];
  const { check: here } = metaOf(session);
  const open = movesAt(subject, memory).flatMap(({ check, isAgain, waits }) =>
    isAgain || waits ? [] : [check],
  );
  const checks = here && !open.includes(here) && !memory.done.includes(here) ? [here, ...open] : open;
  return checks
    .filter((check) => session.adviser?.explain(memory, check)?.splits?.includes(cause))
    .slice(0, mostGrounds);
}

/** What a check has found, as the thread says it. */
function foundBy(check: string, session: Session, texts: Texts): string {
  const line = linesOf(session, texts).findLast(
    ({ turn }) => checkOf(turn) === check && !turn.includes(".gate-"),
  );
  return line ? texts("desk.found", { title: line.title, answer: line.answer }) : "";
}

const checkOf = (turn: string) => turn.split(".")[0] ?? "";
