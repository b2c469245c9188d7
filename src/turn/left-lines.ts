import { changedIn, leftWords, type TurnMeta } from "../chart/index.ts";
import type { Preparation } from "../guide/index.ts";
import { preparations, statesIn } from "../guide/index.ts";
import { memoryOf, type Session } from "../session/index.ts";
import type { Texts } from "./actions.ts";

/**
 * What is said of a tap, a plug and so on that we had changed: at an ending, at the turn that puts it back, and at a
 * turn that needs it back.
 */
export function leftLines(session: Session, { needs, outcome, tells }: TurnMeta, texts: Texts): string[] {
  const needed = statesIn(needs).flatMap(([one, is]) => (is === preparations[one].back ? [one] : []));
  const among: Preparation[] = [...needed, ...(tells ?? [])];
  return leftWords(session.flow, memoryOf(session), among, outcome ?? null).flatMap(([one, word]) =>
    texts(`endings.${one}.${word}`)
      .split("\n")
      .map((line) => line.trim())
      .filter(Boolean),
  );
}

/** What we had changed and is not put back yet, as it stands beside every turn. */
export function changedChips(session: Session, texts: Texts): { id: string; text: string }[] {
  return changedIn(memoryOf(session)).map((id) => ({ id, text: texts(`thread.${id}`) }));
}
