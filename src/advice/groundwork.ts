import type { Flow, Groundwork } from "../guide/index.ts";
import { proofStepsOf } from "./proof-steps.ts";
import { routesOf } from "./routes-of.ts";

/** Of flows that come without it: a flow is read once and asked often. */
const laid = new WeakMap<Flow, Groundwork>();

/** What the diagnosis builds on. The build lays it; a flow that did not come through the build gets it here. */
export function groundworkOf(flow: Flow): Groundwork {
  const known = flow.groundwork ?? laid.get(flow) ?? layGroundwork(flow);
  if (!flow.groundwork) laid.set(flow, known);
  return known;
}

/** Works out what follows from the flow alone, whatever is answered. A slow phone takes an eighth of a second for it. */
export function layGroundwork(flow: Flow): Groundwork {
  const mapped = <From, To>(all: Record<string, From>, to: (one: From, id: string) => To) =>
    Object.fromEntries(Object.entries(all).map(([id, one]) => [id, to(one, id)]));
  return {
    routes: mapped(flow.checks, (check) =>
      mapped(routesOf(flow, check), ({ fixes, hours }) => ({ fixes, hours })),
    ),
    proofs: mapped(flow.causes, ({ proof }) => (proof ? proofStepsOf(flow, proof) : [])),
    needs: mapped(flow.scenarios, ({ checks }) =>
      Object.fromEntries(
        checks.map(({ check }) => {
          const entries = checks.filter((entry) => entry.check === check);
          const free = entries.some(({ when }) => !when);
          return [check, free ? [] : entries.flatMap(({ when }) => (when ? proofStepsOf(flow, when) : []))];
        }),
      ),
    ),
  };
}
