import type { Cause, Check, Model } from "./model.ts";
import {
  costOfCalling,
  costOfSelling,
  isRecorded,
  type Position,
  type Stakes,
  type State,
  setUpMinutes,
  unasked,
} from "./position.ts";

/**
 * What is allowed in the real position: by check, whether it may be asked; by cause, whether it is {@link isProven},
 * {@link isDue} or neither.
 */
export type Leave = { allowed: Uint8Array; proven: Uint8Array };

export const isProven = 1;
export const isDue = 2;

export function leaveOf(model: Model, allowed: readonly string[], { proven, due }: State): Leave {
  return {
    allowed: Uint8Array.from(model.checks, ({ id }) => Number(allowed.includes(id))),
    proven: Uint8Array.from(model.causes, ({ id }) =>
      proven.includes(id) ? isProven : due.includes(id) ? isDue : 0,
    ),
  };
}

/** True where a check can be asked in this position, real or imagined. */
export function isOpen(check: Check, place: number, { shown }: Position, { allowed }: Leave): boolean {
  return shown[place] === unasked && (allowed[place] === 1 || isRecorded(check.needs, shown));
}

/** What asking a check costs, all prepared: attention, and the waiting that some of its outcomes take. */
export function costOfLooking({ minutes, outcomes }: Check, { chances }: Position, stakes: Stakes): number {
  let hours = 0;
  for (const outcome of outcomes) {
    if (!outcome.hours) continue;
    for (let cause = 0; cause < chances.length; cause++)
      hours += outcome.hours * (chances[cause] as number) * (outcome.chances[cause] as number);
  }
  return minutes * stakes.minute + hours * stakes.hour;
}

/** The same, with the minutes of preparing what is not prepared. */
export function costOfAsking(check: Check, at: Position, stakes: Stakes): number {
  return costOfLooking(check, at, stakes) + setUpMinutes(check.setUp, at.held) * stakes.minute;
}

/** The expected cost of ending now: by a professional, or by a part that may be sold. */
export function costOfStopping(model: Model, at: Position, stakes: Stakes, { proven }: Leave): number {
  let least = costOfCalling(model, at.chances, at.mended, stakes);
  for (let cause = 0; cause < proven.length; cause++) {
    const { proofs, remedy, claim } = model.causes[cause] as Cause;
    if (remedy !== "part") continue;
    const recorded = isRecorded(proofs, at.shown);
    const sure = proven[cause] === isProven || (recorded && claim === "proved");
    if (sure || recorded || proven[cause] === isDue)
      least = Math.min(least, costOfSelling(model, at, cause, !sure, stakes));
  }
  return least;
}
