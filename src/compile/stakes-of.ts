import type { Stakes } from "../diagnosis/index.ts";
import type { Flow } from "../guide/index.ts";
import { waitOf } from "./wait-for-ice.ts";

/** The stakes of a scenario in minutes of attention, from the limits and from its own wait: a day for ice, a moment for a dispenser. */
export function stakesOf(flow: Flow, scenario: string): Stakes {
  const of = (id: string) => {
    const limit = flow.limits[id];
    if (!limit) throw new Error(`There is no limit "${id}"`);
    return limit.value;
  };
  const rule = flow.scenarios[scenario];
  const wait = rule && waitOf(flow, rule);
  return {
    minute: 1,
    hour: of("cost-wait-hour"),
    wrongPart: of("cost-wrong-part"),
    callOut: of("cost-call-out"),
    secondVisit: of("cost-second-visit"),
    waitHours: (wait?.minutes ?? 0) / 60,
    waitMinutes: wait?.check.minutes ?? 0,
    success: of("fix-success"),
    sameLook: of("second-look-same"),
    belief: of("belief-part"),
    beliefDue: of("belief-due"),
  };
}
