import type { Texts, Turn } from "../../../turn/index.ts";
import { Hazards, type ScreenProps, Tile } from "../../frame/index.ts";
import { IcePath } from "../../pictures/index.ts";

type Props = { turn: Turn; texts: Texts; picture: ScreenProps["picture"] };

/**
 * What follows the steps: a reminder of what a gate has just made sure of, how far the ice path is known, and the drawing
 * of a gate or a reading, whose lines and entries come first.
 */
export function After({ turn, texts, picture }: Props) {
  const { kind, gated, hazards, path, pathText } = turn;
  return (
    <>
      {gated && <Hazards hazards={hazards} brief texts={texts} />}
      {(kind === "gate" || kind === "reading") && <Tile id={turn.picture} picture={picture} />}
      {kind !== "gate" && path.some(({ state }) => state !== "unseen") && (
        <IcePath path={path} label={pathText} />
      )}
    </>
  );
}
