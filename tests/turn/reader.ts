import { type Flow, type Region, regionIn } from "../../src/guide/index.ts";

/** What the texts of a language have to know of a flow: its limits, and where the readers live. */
export const readerOf = (
  { limits, regions }: Flow,
  tag = "en-GB",
): { limits: Flow["limits"]; region: Region } => ({
  limits,
  region: regionIn(regions, tag),
});
