import type { Guard } from "../condition/index.ts";
import type { GateRule, Limits, Region, Signal } from "../guide/index.ts";

/** What is still read of flows/ once its chart is composed: of the opening, or of it and one scenario. */
export type FlowSlice = {
  /** Changes with every edit of flows/. */
  version: string;
  limits: Limits;
  /** Where the readers live. */
  region: Region;
  /** The stations in order, and those that the picture has above its line. */
  stations: { order: string[]; above: string[] };
  /** The turn of the opening that is shown before anything was answered, where it is not the first. */
  greets?: string;
  /** What a person can report at any time. */
  dangers: string[];
  /** Checks and turns whose answers still hold after an earlier one was changed: no gate, tap or wait is part of them. */
  lasting: string[];
  hazards: Record<string, { signal: Signal }>;
  gates: Record<string, Pick<GateRule, "signal" | "covers" | "items" | "facts">>;
  causes: Record<string, CauseSlice>;
  parts: Record<
    string,
    { minutes: number; tools: string[]; hazards: string[]; consumable?: true; picture?: string }
  >;
  /** Whether a leak is searched for: the water stays closed at every ending but a fixed one. */
  searches: Guard;
};

/**
 * `keeps`: the water stays closed until it is mended. `proof`: named conditions are spelled out. `who`: the trade that
 * mends it, or that fits its part.
 */
export type CauseSlice = {
  station: string;
  part?: string;
  who?: string;
  claim?: "proved" | "due";
  proof?: Guard;
  keeps?: boolean;
};
