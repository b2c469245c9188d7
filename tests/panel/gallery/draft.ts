import type { Draft } from "../../../src/turn/index.ts";

/** What a tab's own storage would keep over a reload; `entered` has it all, by turn. */
export function createDraftOf(entered: Record<string, Record<string, string>> = {}): Draft {
  return {
    read: (turn) => ({ ...entered[turn] }),
    keep: (turn, name, text) => {
      entered[turn] = { ...entered[turn], [name]: text };
    },
  };
}
