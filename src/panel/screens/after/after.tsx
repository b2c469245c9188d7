import type { ComponentType } from "preact";
import type { Texts, Turn } from "../../../turn/index.ts";
import { Hazards, type ScreenProps, Tile } from "../../frame/index.ts";
import { IcePath } from "../../pictures/index.ts";

type Props = { turn: Turn; texts: Texts; picture: ScreenProps["picture"] };
type Beside = ComponentType<{ turn: Turn }>;

/** Makes `After` with a column beside the thread. */
export function createAfter(beside: Beside) {
  return (props: Props) => <After {...props} beside={beside} />;
}

/**
 * What follows the steps: a reminder of what a gate has just made sure of, how far the ice path is known, and the drawing
 * of a gate or a reading, whose lines and entries come first. Where there is room the machine stands beside the thread, and says what the path says.
 */
export function After({ turn, texts, picture, beside: Beside }: Props & { beside?: Beside }) {
  const { kind, gated, hazards, path, pathText } = turn;
  return (
    <>
      {gated && <Hazards hazards={hazards} brief texts={texts} />}
      {(kind === "gate" || kind === "reading") && <Tile id={turn.picture} picture={picture} />}
      {Beside && <Beside turn={turn} />}
      {kind !== "gate" && path.some(({ state }) => state !== "unseen") && (
        <IcePath path={path} label={pathText} />
      )}
    </>
  );
}
