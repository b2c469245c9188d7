import type { Catalogue, Part } from "./schema.ts";

/** The part of one kind for one model, as far as the shop's catalogue ties it to that model. */
export type FitResult =
  | { kind: "part"; part: Part; alternatives: Part[] }
  | { kind: "no-part" }
  | { kind: "unknown-model" };

/** Lower is offered first: what can be sent today, then what the machine's maker sells. */
function rank(part: Part): number {
  const origins = ["original", undefined, "compatible"];
  return (part.stock === "out-of-stock" ? origins.length : 0) + origins.indexOf(part.origin);
}

/**
 * Finds the part of a kind that fits a model. A part that is out of stock is still the right part; equals
 * keep the order of the shop's feed.
 * @param code the code of a model of this catalogue as `findModel` gave it, never what was typed
 */
export function partFor(catalogue: Catalogue, code: string, kind: string): FitResult {
  if (!catalogue.models.has(code)) return { kind: "unknown-model" };
  const [part, ...alternatives] = (catalogue.partsByModel.get(code) ?? [])
    .filter((each) => each.kind === kind)
    .sort((a, b) => rank(a) - rank(b));
  return part ? { kind: "part", part, alternatives } : { kind: "no-part" };
}
