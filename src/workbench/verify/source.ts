import type { Path } from "../../guide/index.ts";

import type { FileProblem, Place } from "./problem.ts";

/** One YAML file: its data, what is wrong with its YAML, and where each value stands. */
export type Source = {
  file: string;
  data: unknown;
  problems: FileProblem[];
  /** Where the value at a path stands, or its key; what is not there is placed at the nearest thing around it. */
  placeOf(path: Path, part?: "key" | "value"): Place;
};

/** Reads one file. A way to read, not a library: what runs on a phone must not carry one for YAML. */
export type ReadSource = (file: string, text: string) => Source;
