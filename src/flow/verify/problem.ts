/** One fault in a flow, in words for the person who edits it. */
export type Problem = { code: string; state: string; message: string };
