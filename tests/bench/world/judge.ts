import type { Fault } from "./faults/index.ts";
import type { Home } from "./home.ts";
import type { State } from "./state.ts";
import { troublesOf } from "./troubles.ts";
import type { Ended } from "./visit.ts";

/** How a conversation ended, held against what is really wrong when it ends. */
export type Verdict =
  | "right"
  | "needless"
  | "wrong-part"
  | "not-fixed"
  | "wrong-trade"
  | "missed-hazard"
  | "stopped-needlessly"
  | "no-ending";

/** Parts that a household puts in by itself; calling somebody for one of these is needless. */
const selfFitted = new Set(["water-filter", "door-seal", "ice-bin", "water-tank"]);

export function judge(home: Home, state: State, ended: Ended | null): Verdict {
  if (!ended) return "no-ending";
  if (ended.outcome === "stopped") return home.hazard || home.wetPlug ? "right" : "stopped-needlessly";
  if (home.hazard) return "missed-hazard";
  const troubles = troublesOf(state, home.machine);
  const left = home.faults.filter((fault) => fault.isThere(state));
  if (ended.outcome === "part")
    return left.some(({ parts }) => parts?.includes(ended.part ?? "")) ? "right" : "wrong-part";
  if (ended.outcome === "professional") {
    const real = troubles.length ? left : [];
    if (
      real.some((fault) => fault.trades?.some((trade) => trade === ended.who) && isBeyond(fault, home, state))
    )
      return "right";
    const needsTrade = real.some((fault) => isBeyond(fault, home, state) && !isForAdvice(fault));
    return needsTrade ? "wrong-trade" : "needless";
  }
  // 'It works again', or 'give it time, and come back if it does not'.
  return troubles.includes(home.complaint.trouble) ? "not-fixed" : "right";
}

/** Nothing is broken, and nobody has to come: a cold garage, a damp day. */
const isForAdvice = ({ trades, parts }: Fault) => !parts && trades?.length === 1 && trades[0] === "shop";

/** True where these people can't put it right by themselves, whatever they are told. */
export function isBeyond(fault: Fault, { machine, person }: Home, state: State): boolean {
  if (!fault.trades) return !fault.self && !fault.parts?.every((part) => selfFitted.has(part));
  if (fault.parts?.length && fault.parts.every((part) => selfFitted.has(part)) && fault.id !== "leak-filter")
    return fault.id === "tank-float" && state.float === "lost";
  if (!fault.self) return true;
  if (fault.id === "line-kinked" && state.kinkStays) return true;
  if (fault.id === "leak-joint") return true;
  if (fault.id === "jam") return state.jam === "fast";
  if (fault.id === "condenser-dust") return !machine.frontGrille;
  if (fault.self === "tap") return !machine.tapInReach;
  if (fault.self === "move") return !person.movesMachine;
  if (fault.self === "panel") return !(person.movesMachine && person.takesPanelOff);
  return fault.trades.includes("shop");
}

/** Of the causes that an ending names: a true one among the first two, false ones alone, or none at all. */
export function namesOf(home: Home, state: State, { causes }: Ended): "true" | "late" | "false" | "none" {
  if (!causes.length) return "none";
  const left = home.faults.filter((fault) => fault.isThere(state));
  const isTrue = (cause: string) => left.some(({ names }) => names.includes(cause));
  if (causes.slice(0, 2).some(isTrue)) return "true";
  return causes.some(isTrue) ? "late" : "false";
}
