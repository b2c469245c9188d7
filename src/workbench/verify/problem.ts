import type { Path } from "../../condition/index.ts";

/** Where something stands in a file; line and column count from 1. */
export type Place = { file: string; line: number; column: number };

/** A value of a file, or its key. */
export type Spot = { file: string; path: Path; at?: "key" };

/** One fault in a folder of flow files, with the place to look at and the data that its sentence was made of. */
export type FileProblem = Place & {
  path: Path;
  /** A word for the kind of fault, for tools; people read `message`. */
  code: string;
  message: string;
  /** What was probably meant, ready to be put in. */
  suggestion?: string;
};

/** Each kind of fault by its code, with what its sentence has to know. */
export type Kinds<Sentences extends Record<string, (fault: never) => string>> = {
  [Code in keyof Sentences]: { code: Code } & Parameters<Sentences[Code]>[0];
}[keyof Sentences];
