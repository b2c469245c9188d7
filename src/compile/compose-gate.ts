import type { Note, StateConfig, Transition, TurnMeta } from "../chart/index.ts";
import { type Guard, not } from "../condition/index.ts";
import { type Check, type Flow, limitOf, type Opening, type TurnRule } from "../guide/index.ts";
import type { FixedWays } from "./fixed.ts";
import { hazardsOfTurn } from "./hazards.ts";
import type { Part } from "./parts-of-check.ts";

/** Where something is composed: a part of a check in a scenario, or the opening. */
export type Place = {
  flow: Flow;
  check: Check | Opening;
  part: Part;
  parts: Part[];
  base: string;
  scenario: string | null;
  fixedAt: FixedWays;
};

/** A gate in full, and in short for whoever confirmed it in full a moment ago. */
export function composeGate(place: Place, gate: string, onward: string): Record<string, StateConfig> {
  const { flow, check, part, base } = place;
  const { leaves, dangers = [], picture = "" } = flow.gates[gate] ?? {};
  const turn = `${check.id}.gate-${gate}`;
  const full = `#${base}/gate-${gate}`;
  const minutes = limitOf(flow.limits, "gate-short-minutes");
  const fresh: Guard = { type: "fresh", params: { gate, minutes, leaves: leaves ?? {} } };
  const isFirst = gate === part.gates[0];
  const meta: TurnMeta = { ...metaOf(place, turn, "gate"), hazards: [], gate, picture };
  const declined: Note = { turn, answer: "cannot", done: check.id, returnTo: null, refuses: gate };
  const stops = dangers.map((danger) => [
    `answered.${danger}`,
    { target: "#stopped", actions: [remember({ turn, answer: danger, danger, cause: null })] },
  ]);
  const others = {
    ...Object.fromEntries(stops),
    "answered.cannot": { target: exit(place), actions: [remember(declined)] },
    // Whoever comes back confirms the first gate again: the tap may have been opened meanwhile.
    "session-resumed": {
      target: `#${base}/gate-${part.gates[0]}`,
      actions: [remember({ returns: true })],
    },
  };
  return {
    [`gate-${gate}`]: {
      id: `${base}/gate-${gate}`,
      always: [{ target: `#${base}/short-${gate}`, guard: fresh }],
      meta: { ...meta, answers: ["ready", ...dangers] },
      on: {
        "answered.ready": {
          target: onward,
          actions: [remember({ turn, answer: "ready", ...(leaves ? { leaves } : {}), confirms: gate })],
        },
        ...others,
        ...(isFirst ? { "session-resumed": cameBack(full) } : {}),
      },
    },
    [`short-${gate}`]: {
      id: `${base}/short-${gate}`,
      meta: { ...meta, short: true, answers: ["ready", "changed", ...dangers] },
      on: {
        // Asked a moment ago and answered much later, it is asked in full.
        "answered.ready": [
          { target: onward, guard: fresh, actions: [remember({ turn, answer: "ready" })] },
          { target: full, guard: not(fresh), actions: [remember({ turn, answer: "ready", returns: true })] },
        ],
        "answered.changed": { target: full, actions: [remember({ turn, answer: "changed", returns: true })] },
        ...others,
      },
    },
  };
}

/** Whoever comes back to a turn that needs no gate stays there, and no gate is short for them any more. */
export function cameBack(target: string): Transition {
  const guard = { type: "any-confirmed", params: {} };
  return { target, guard, actions: [remember({ returns: true })] };
}

/** What a turn says of itself, whatever it asks. */
export function metaOf(place: Place, turn: string, kind: TurnMeta["kind"], rule?: TurnRule): TurnMeta {
  const { flow, check, part, parts, scenario } = place;
  if (!scenario || !("access" in check)) return { turn, kind, check: null };
  const [gate] = part.gates;
  const opens = part === parts[0] && turn === `${check.id}.${gate ? `gate-${gate}` : check.start}`;
  const entry = flow.scenarios[scenario]?.checks.find((one) => one.check === check.id);
  return {
    turn,
    kind,
    check: check.id,
    station: check.station,
    hazards: rule ? hazardsOfTurn(flow, check, rule) : [],
    minutes: check.minutes,
    tools: check.tools,
    ...(gate && kind !== "gate" ? { gated: true } : {}),
    ...(opens && kind !== "wait" && entry && !entry.first ? { chosen: true } : {}),
  };
}

/** Where a check leads when it is done. */
export function exit({ scenario }: Place): string {
  return scenario ? `#${scenario}/choosing` : "#routing";
}

export function remember(params: Note): { type: string; params: Note } {
  return { type: "remember", params };
}
