import type { MassUnit } from "../../measuring/index.ts";

/** A few pieces of ice, counted and weighed together. */
export type CubesReading = { kind: "cubes"; pieces: number; mass: number; unit: MassUnit };
