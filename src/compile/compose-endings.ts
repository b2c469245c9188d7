import type { StateConfig } from "../chart/index.ts";
import { everyPreparation } from "../guide/index.ts";

/** The four endings. A part asks for the model code first, unless the shop's page gave one. */
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
