import { Before, Lines } from "../chat/index.ts";
import { IcePath } from "../pictures/index.ts";
import { Badge } from "./badge.tsx";
import { EndingScreen } from "./ending.tsx";
import { GateScreen } from "./gate.tsx";
import laterSheet from "./later.css?inline";
import { ModelScreen } from "./model-code.tsx";
import { OwnWords } from "./own-words.tsx";
import { ReadingScreen } from "./reading.tsx";
import { WaitScreen } from "./wait.tsx";

/** A screen for every kind of turn but `choice`; with `picture` beside them they are what `Panel` wants. */
export const screens = {
  gate: GateScreen,
  reading: ReadingScreen,
  model: ModelScreen,
  wait: WaitScreen,
  ending: EndingScreen,
  icePath: IcePath,
  lines: Lines,
  before: Before,
  ownWords: OwnWords,
  badge: Badge,
};

/** The rules of the later file, for `adoptedStyleSheets`, after the first. */
export { laterSheet };
