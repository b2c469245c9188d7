import type { Note, StateConfig } from "../chart/index.ts";
import { everyPreparation } from "../guide/index.ts";
import { cameBack } from "./compose-gate.ts";

/** The endings that every scenario shares. A part asks for the model code first, unless the shop's page gave one. */
export function composeEndings(): Record<string, StateConfig> {
  return {
    fixed: ending("fixed"),
    professional: ending("professional"),
    stopped: ending("stopped"),
    part: {
      id: "part",
      initial: "deciding",
      states: {
        deciding: {
          id: "part/deciding",
          always: [
            { target: "#part/card", guard: { type: "modelled", params: {} } },
            { target: "#part/model" },
          ],
        },
        model: {
          id: "part/model",
          meta: { turn: "part.model", kind: "model", check: null },
          on: { "model-given": { target: "#part/card", actions: [{ type: "remember", params: {} }] } },
        },
        card: {
          id: "part/card",
          meta: { turn: "part.card", kind: "ending", check: null, outcome: "part", tells: everyPreparation },
        },
      },
    },
  };
}

function ending(outcome: "fixed" | "professional" | "stopped"): StateConfig {
  return {
    id: outcome,
    meta: { turn: `${outcome}.end`, kind: "ending", check: null, outcome, tells: everyPreparation },
  };
}

/**
 * Where nobody waits now for what was put right: an ending for today, left in either direction.
 * @param minutes what the scenario's own wait lasts
 */
export function composeLater(scenario: string, minutes: number, goesOn: Note): StateConfig {
  const target = `#${scenario}/choosing`;
  const { forgets = [] } = goesOn;
  return {
    id: `${scenario}/later`,
    meta: {
      turn: "later.end",
      kind: "ending",
      check: null,
      outcome: "later",
      tells: everyPreparation,
      lasts: minutes,
    },
    on: {
      "session-resumed": cameBack(`#${scenario}/later`),
      "trouble-returned": [
        {
          target,
          guard: { type: "elapsed", params: { turn: "later.end", minutes } },
          actions: [{ type: "remember", params: goesOn }],
        },
        // Sooner, time has said nothing yet: the search goes on with what was put right still to be waited for.
        { target, actions: [{ type: "remember", params: { forgets, returns: true } }] },
      ],
    },
  };
}
