import type { Condition } from "../../catalogue/index.ts";
import type { Growable } from "./growable.ts";

/** Fitments in the order of the feed: model, part, and condition (from 1; 0 where there is none). */
export type Fitments = { models: Growable; parts: Growable; conditions: Growable };

/** Fitments by model, each pair with the same condition once, in the order of the feed. */
export type Grouped = {
  offsets: Uint32Array;
  partOf: Uint32Array;
  conditions: Map<number, Condition>;
  duplicates: number;
};

/**
 * Sorts fitments by model, counting instead of comparing.
 * @param count how many models there are
 * @param modelFor by model, the one that it is merged into
 * @param standIn by part, the one that is sold instead
 */
export function groupFitments(
  { models, parts, conditions }: Fitments,
  count: number,
  modelFor: Uint32Array,
  standIn: Uint32Array,
  known: readonly Condition[],
): Grouped {
  const starts = new Uint32Array(count + 1);
  const total = models.length;
  for (let at = 0; at < total; at++) add(starts, (modelFor[models.at(at)] ?? 0) + 1, 1);
  for (let model = 0; model < count; model++) add(starts, model + 1, starts[model] ?? 0);
  const next = starts.slice();
  const order = new Uint32Array(total);
  for (let at = 0; at < total; at++) {
    const model = modelFor[models.at(at)] ?? 0;
    order[next[model] ?? 0] = at;
    add(next, model, 1);
  }
  models.clear();

  const offsets = new Uint32Array(count + 1);
  const kept: Map<number, Condition> = new Map();
  const asGiven = createSeen(standIn.length);
  const asSold = createSeen(standIn.length);
  let length = 0;
  let duplicates = 0;
  for (let model = 0; model < count; model++) {
    asGiven.clear();
    asSold.clear();
    for (let place = starts[model] ?? 0; place < (starts[model + 1] ?? 0); place++) {
      const fitment = order[place] ?? 0;
      const given = parts.at(fitment);
      const part = standIn[given] ?? given;
      const condition = conditions.at(fitment);
      if (asGiven.isRepeated(given, condition)) duplicates++;
      else if (!asSold.isRepeated(part, condition)) {
        const when = known[condition - 1];
        if (when) kept.set(length, when);
        // What is kept never overtakes what is read, so the same list serves twice.
        order[length++] = part;
      }
    }
    offsets[model + 1] = length;
  }
  return { offsets, partOf: order.slice(0, length), conditions: kept, duplicates };
}

function add(numbers: Uint32Array, at: number, by: number): void {
  numbers[at] = (numbers[at] ?? 0) + by;
}

/** Remembers the parts of one model; most have no condition, and for those a stamp does. */
function createSeen(count: number) {
  const stamps = new Uint32Array(count);
  const conditional = new Set<number>();
  let stamp = 0;
  return {
    clear() {
      stamp++;
      if (conditional.size > 0) conditional.clear();
    },
    isRepeated(part: number, condition: number): boolean {
      if (condition > 0) {
        const size = conditional.size;
        return conditional.add(condition * count + part).size === size;
      }
      if (stamps[part] === stamp) return true;
      stamps[part] = stamp;
      return false;
    },
  };
}
