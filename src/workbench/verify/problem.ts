/** One fault in a flow, in words for the person who edits it. */
export type Problem = { code: string; state: string; message: string };

/** Where something stands in a file; line and column count from 1. */
export type Place = { file: string; line: number; column: number };

/** One fault in a folder of flow files, with the place to look at. */
export type FileProblem = Place & {
  /** A word for the kind of fault, for tools; people read `message`. */
  code: string;
  message: string;
  /** What was probably meant, ready to be put in. */
  suggestion?: string;
};
