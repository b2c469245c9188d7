import { useState } from "preact/hooks";
import type { ScreenProps } from "../../frame/index.ts";

/** Where something is entered, and what keeps it over a reload. */
export type Place = Pick<ScreenProps, "turn" | "services">;

/**
 * A text as state that outlives a reload of the page.
 * @param options what it may be; anything else that was kept counts as nothing
 */
export function useKept<Text extends string>(
  { turn: { turn }, services: { draft } }: Place,
  name: string,
  first: NoInfer<Text>,
  options?: readonly Text[],
) {
  const [text, setText] = useState<Text>(() => {
    const kept = draft.read(turn)[name] as Text | undefined;
    return kept !== undefined && (!options || options.includes(kept)) ? kept : first;
  });
  const enter = (next: Text) => {
    draft.keep(turn, name, next);
    setText(next);
  };
  return [text, enter] as const;
}
