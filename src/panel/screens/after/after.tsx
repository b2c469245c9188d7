import type { Texts, Turn } from "../../../turn/index.ts";
import { Hazards } from "../../frame/index.ts";
import { IcePath } from "../../pictures/index.ts";

/** What follows the steps: a reminder of what a gate has just made sure of, and how far the ice path is known. */
export function After({ turn, texts }: { turn: Turn; texts: Texts }) {
  const { gated, hazards, path, pathText } = turn;
  return (
    <>
      {gated && <Hazards hazards={hazards} brief texts={texts} />}
      {path.some(({ state }) => state !== "unseen") && <IcePath path={path} label={pathText} />}
    </>
  );
}
