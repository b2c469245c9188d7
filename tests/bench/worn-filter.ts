import type { Answers } from "../session/drive.ts";

/** A worn filter that cannot be bypassed: every station of the water's way is looked at before the part is named. */
export const wornFilter: { answers: Answers; model: string } = {
  answers: {
    "opening.symptom": "no-ice",
    "reset.test": "moved-dry",
    "filter-age.fitted": { kind: "filter-age", fitted: { by: "month", month: "2024-01" } },
    "flow-test.run": { kind: "flow", runs: [{ volume: 60, unit: "ml", seconds: 10 }] },
    "flow-without-filter.have": "no-plug",
  },
  model: "WXM 431AB8/1",
};
