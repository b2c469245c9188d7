import { layGroundwork } from "../advice/index.ts";
import type { Flow } from "../guide/index.ts";

/**
 * The flow as a phone gets it: the same data without the sources of its limits, and with the groundwork of its diagnosis laid. The chart is composed from it on
 * the phone by the same function that the build verified it with: composed, it would be 6.6 kB of brotli instead of 3.9.
 */
export function slimFlow(flow: Flow): Flow {
  const limits = Object.fromEntries(
    Object.entries(flow.limits).map(([id, { value, unit }]) => [id, { value, unit }]),
  );
  return { ...flow, limits: limits as Flow["limits"], groundwork: layGroundwork(flow) };
}
