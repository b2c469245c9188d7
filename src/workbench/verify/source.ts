import type { Path } from "../../condition/index.ts";
import type { Place } from "./problem.ts";

/** What keeps a file from being read, where it stands. */
export type Unreadable = Place & ({ code: "yaml-syntax"; why: string } | { code: "doubled-key" });

/** One YAML file: its data, what is wrong with its YAML, and where each value stands. */
export type Source = {
  file: string;
  data: unknown;
  problems: Unreadable[];
  /** Where the value at a path stands, or its key; what is not there is placed at the nearest thing around it. */
  placeOf(path: Path, part?: "key" | "value"): Place;
};

/** Reads one file. A way to read, not a library: what runs on a phone must not carry one for YAML. */
export type ReadSource = (file: string, text: string) => Source;
