import { type Answers, celsius, healthy } from "../session/drive.ts";

/** A worn filter that cannot be bypassed: every station of the water's way is looked at before the part is named. */
export const wornFilter: { answers: Answers; model: string } = {
  answers: {
    ...healthy,
    "door-seal.feel": "cold-air",
    "door-seal.paper-strip": "grips",
    "freezer-temperature.read": celsius(-18),
    "filter-age.fitted": { kind: "filter-age", fitted: { by: "month", month: "2024-01" } },
    "flow-test.run": { kind: "flow", runs: [{ volume: 60, unit: "ml", seconds: 10 }] },
    "flow-without-filter.prepare": "no-plug",
  },
  model: "WXM 431AB8/1",
};
