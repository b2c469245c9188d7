import { faults } from "./faults/index.ts";
import { judge, namesOf, type Verdict } from "./judge.ts";
import type { Visit } from "./visit.ts";

/** What of a home's conversation goes into the tables. Plain data, so that another process can send it. */
export type Outcome = {
  seed: string;
  faults: string[];
  symptom: string;
  verdict: Verdict;
  ended: string;
  names: "true" | "late" | "false" | "none";
  parts: number;
  wrongParts: number;
  minutes: number;
  hours: number;
  turns: number;
  fullGates: number;
  shortGates: number;
  askedTwice: number;
  hazards: string[];
  unknown: string[];
  leftBehind: string[];
};

const knownCauses = new Set(faults.flatMap(({ names }) => names));

export function outcomeOf(visit: Visit): Outcome {
  const { home, state, ending } = visit;
  const verdict = judge(home, state, ending);
  const strange = (ending?.causes ?? [])
    .filter((cause) => !knownCauses.has(cause))
    .map((cause) => `cause ${cause}`);
  return {
    seed: home.seed,
    faults: home.faults.map(({ id }) => id),
    symptom: home.complaint.symptom,
    verdict,
    ended: ending ? [ending.outcome, ending.part ?? ending.who ?? ""].filter(Boolean).join(" ") : "none",
    names: ending ? namesOf(home, state, ending) : "none",
    parts: ending?.outcome === "part" ? 1 : 0,
    wrongParts: verdict === "wrong-part" ? 1 : 0,
    minutes: visit.minutes,
    hours: visit.hours,
    turns: visit.turns.length,
    fullGates: visit.fullGates,
    shortGates: visit.shortGates,
    askedTwice: visit.askedTwice,
    hazards: visit.hazards,
    unknown: [...visit.unknown, ...strange],
    leftBehind: visit.leftBehind,
  };
}

/** The figures of many homes. Shares are of all homes unless their name says otherwise. */
export function sumUp(outcomes: readonly Outcome[]) {
  const count = outcomes.length || 1;
  const share = (is: (one: Outcome) => boolean) => outcomes.filter(is).length / count;
  const mean = (of: (one: Outcome) => number) => outcomes.reduce((sum, one) => sum + of(one), 0) / count;
  const turns = outcomes.map((one) => one.turns).sort((a, b) => a - b);
  const calls = outcomes.filter(({ ended }) => ended.startsWith("professional"));
  const among = (name: Outcome["names"]) =>
    calls.filter(({ names }) => names === name).length / (calls.length || 1);
  const parts = outcomes.reduce((sum, one) => sum + one.parts, 0);
  const wrong = outcomes.reduce((sum, one) => sum + one.wrongParts, 0);
  return {
    homes: outcomes.length,
    right: share(({ verdict }) => verdict === "right"),
    needless: share(({ verdict }) => verdict === "needless" || verdict === "stopped-needlessly"),
    wrongPartsOfHomes: share(({ wrongParts }) => wrongParts > 0),
    wrongPartsOfParts: parts ? wrong / parts : 0,
    notFixed: share(({ verdict }) => verdict === "not-fixed"),
    wrongTrade: share(({ verdict }) => verdict === "wrong-trade"),
    noEnding: share(({ verdict }) => verdict === "no-ending"),
    missedHazards: outcomes.filter(({ verdict }) => verdict === "missed-hazard").length,
    hazardousSteps: outcomes.reduce((sum, one) => sum + one.hazards.length, 0),
    leftBehind: outcomes.filter(({ leftBehind }) => leftBehind.length).length,
    calls: calls.length / count,
    namesTrue: among("true"),
    namesFalse: among("false"),
    namesNone: among("none"),
    minutes: mean(({ minutes }) => minutes),
    hours: mean(({ hours }) => hours),
    turns: mean((one) => one.turns),
    turns90: turns[Math.floor(turns.length * 0.9)] ?? 0,
    askedTwice: mean(({ askedTwice }) => askedTwice),
    fullGates: mean(({ fullGates }) => fullGates),
  };
}

export type Figures = ReturnType<typeof sumUp>;
