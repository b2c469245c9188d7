import type { CareTime, Preparation } from "../../guide/index.ts";
import type { Kinds } from "./problem.ts";

/** What is said of each kind of fault of a composed chart. States are named as the chart names them. */
export const chartSentences = {
  "unknown-target": ({ state, to }: At & { to: string }) =>
    `"${state}" goes to "${to}", which does not exist.`,
  unreachable: ({ state }: At) => `Nothing leads to "${state}".`,
  "dead-end": ({ state }: At) => `From "${state}" no answer leads to an ending.`,
  "no-way-out": ({ state, lacks }: At & { lacks: "danger" | "help" }) =>
    `At "${state}" there is no way ${lacks === "danger" ? "to report danger" : "to ask for a person"}.`,
  "ungated-hazard": ({ state, hazard, from }: At & { hazard: string; from: string }) =>
    `"${state}" exposes a person to "${hazard}", but can be entered from "${from}" without a gate that covers it.`,
  "gate-kept-open": ({ state }: At) =>
    `"${state}" lies behind a gate, but coming back to it later does not ask that gate again.`,
  "undeclared-hazard": ({ state, station, hazard }: At & { station: string; hazard: string }) =>
    `Check "${state}" works at "${station}", which exposes a person to "${hazard}", but does not say so.`,
  "ungated-care": ({ state, hazard }: At & { hazard: string; time: CareTime; place: number }) =>
    `Step "${state}" of the care exposes a person to "${hazard}", but no gate that covers it stands before it.`,
  "wrong-state": ({ state, of, is }: At & Of & { is: string }) =>
    `"${state}" needs ${name(of)} to be ${is}, and can be met while it is not.`,
  "left-changed": ({ state, to, of }: At & Of & { to: string }) =>
    `"${state}" leads to "${to}" while ${name(of)} is not put back.`,
  "left-untold": ({ state, of }: At & Of) =>
    `"${state}" can be met while ${name(of)} is not put back, and does not speak of it.`,
  "left-unsettled": ({ state, of }: At & Of) =>
    `An answer of check "${state}" does not say how it leaves ${name(of)}, so it would be asked for ever.`,
  "short-too-long": ({ state, gate }: At & { gate: string }) =>
    `"${state}" asks the gate "${gate}" in short although it was not confirmed in full a moment ago.`,
};

type At = { state: string };
type Of = { of: Preparation };

/** A preparation as a sentence names it. */
const name = (of: Preparation) => `the ${of.replace("-", " ")}`;

/** One fault of a composed chart, at a state of it or at a check: data for tools and for one sentence. */
export type ChartFault = Kinds<typeof chartSentences>;

/** The same in words too. */
export type Problem = ChartFault & { message: string };

export function tellOfChart(fault: ChartFault): Problem {
  return { ...fault, message: (chartSentences[fault.code] as (one: ChartFault) => string)(fault) };
}
