import { type Match, matchCondition, type Plate, type Unread } from "./condition.ts";
import type { Catalogue, Fitment, Part } from "./schema.ts";

/**
 * The part of one kind for one model, as far as the shop's catalogue ties it to that model. `unread`: which of its
 * parts fits depends on something else on the plate, which nobody has read yet or nobody can read.
 */
export type FitResult =
  | { kind: "part"; part: Part; alternatives: Part[] }
  | { kind: "no-part" }
  | { kind: "unknown-model" }
  | ({ kind: "unread" } & Unread);

/** Lower is offered first: what can be sent today, then what the machine's maker sells. */
function rank(part: Part): number {
  const origins = ["original", undefined, "compatible"];
  return (part.stock === "out-of-stock" ? origins.length : 0) + origins.indexOf(part.origin);
}

/**
 * Finds the part of a kind that fits a model. A part that is out of stock is still the right part; equals
 * keep the order of the shop's feed. Where a part fits only some machines of the model, nothing is offered before the
 * plate tells which: what was read and found to be missing (null) leaves the parts that fit all of them.
 * @param code the code of a model of this catalogue as `findModel` gave it, never what was typed
 */
export function partFor(catalogue: Catalogue, code: string, kind: string, plate: Plate = {}): FitResult {
  if (!catalogue.models.has(code)) return { kind: "unknown-model" };
  const fitments = (catalogue.fitments.get(code) ?? []).filter(({ part }) => part.kind === kind);
  const matched = fitments.map((fitment) => ({ ...fitment, match: matchCondition(fitment.when, plate) }));
  const unread = unreadOf(matched, plate);
  const fitting = [...new Set(matched.filter(({ match }) => match === "fits").map(({ part }) => part))];
  const [part, ...alternatives] = fitting.sort((a, b) => rank(a) - rank(b));
  if (unread && (!part || unread.isOpen)) return { kind: "unread", ...unread.what };
  return part ? { kind: "part", part, alternatives } : { kind: "no-part" };
}

/** What still decides between parts, and whether it is worth asking for; a person who could not read it is not asked again. */
function unreadOf(matched: (Fitment & { match: Match })[], plate: Plate) {
  const waiting = (match: Match) => matched.filter((fitment) => fitment.match === match);
  const variants = waiting("unread-variant").flatMap(({ when }) => when?.variant ?? []);
  if (variants.length > 0)
    return {
      what: { about: "variant" as const, choices: [...new Set(variants)].sort() },
      isOpen: plate.variant === undefined,
    };
  if (waiting("unread-serial").length > 0)
    return { what: { about: "serial" as const }, isOpen: plate.serial !== null };
  return null;
}
