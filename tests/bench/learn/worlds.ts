import type { Flow } from "../../../src/guide/index.ts";
import { chanceOf, normal } from "../world/chance.ts";
import { type Apart, type Fault, faults } from "../world/index.ts";

/** The homes that a shop may have. */
export type WorldName = "apart" | "judged";

/** Faults are e-fold commoner or rarer in a third of homes where a shop has other machines and customers (judgement). */
const spread = 1;
/** People of the world misread one look in seven; flows/ says one in ten. */
const slips = { apart: 1.5, judged: 0.67 } as const;

/**
 * `apart`: faults are far commoner or rarer than anybody has written down, and people err more than twice as often as flows/
 * judges. `judged`: causes are as common as flows/ has them, as far as one fault is one cause, and people err about as often.
 */
export function worldOf(name: WorldName, flow: Flow): Apart {
  return {
    slips: slips[name],
    shareOf: name === "judged" ? judged(flow) : (fault) => fault.share * times(fault),
  };
}

const times = ({ id }: Fault) => Math.exp(normal(chanceOf(`a world apart: ${id}`), 0, spread));

/** A cause's share goes to the faults that it names, in proportion to theirs. */
function judged({ machine }: Flow): (fault: Fault) => number {
  const named = new Map<string, number>();
  for (const { names, share } of faults)
    for (const cause of names) named.set(cause, (named.get(cause) ?? 0) + share);
  return ({ names, share }) =>
    names.reduce(
      (sum, cause) => sum + ((machine.causes[cause]?.share ?? 0) * share) / (named.get(cause) ?? 1),
      0,
    );
}
