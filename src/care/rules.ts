import type { Guard } from "../condition/index.ts";
import type { CareTime, GateRule } from "../guide/index.ts";

/** What is said of some machines alone, its condition spelled out. */
type ForSome = { when?: Guard };

/** A step as a phone has it: with the gate that stands before it, by its own lines. */
export type CareStepRule = ForSome & {
  id: string;
  gate?: { id: string } & Pick<GateRule, "signal" | "items" | "facts">;
};

/** flows/care.yaml made ready for a phone. */
export type CareRules = { filter: (ForSome & { part: string; months: string }) | null } & Record<
  CareTime,
  CareStepRule[]
>;
