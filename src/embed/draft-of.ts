import type { Draft } from "../turn/index.ts";
import type { Door } from "./missing.ts";

type Drafts = ReturnType<Door["createDrafts"]>;

/**
 * What is entered at turns that are half done.
 * @param open makes what keeps it in this tab; throws as long as the door is not there, and then the page alone keeps it
 */
export function createDraftOf(open: () => Drafts): Draft & { look(): void } {
  let drafts: Drafts | null = null;
  const early = new Map<string, Record<string, string>>();
  const kept = () => {
    try {
      drafts ??= open();
    } catch {
      // Nobody has come back, then.
    }
    return drafts;
  };
  return {
    look: () => kept()?.look(),
    read: (turn) => ({ ...early.get(turn), ...kept()?.read(turn) }),
    keep: (turn, name, entered) => {
      const all = kept();
      if (all) all.keep(turn, name, entered);
      else early.set(turn, { ...early.get(turn), [name]: entered });
    },
  };
}
