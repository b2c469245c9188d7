import { ReadingScreen } from "../../instruments/screens.tsx";
import { Before, Lines } from "../frame/index.ts";
import { IcePath } from "../pictures/index.ts";
import { EndingScreen } from "./ending/index.ts";
import { GateScreen } from "./gate/index.ts";
import laterSheet from "./later.css?inline";
import { ModelScreen } from "./model/index.ts";
import { OwnWords } from "./own-words/index.ts";
import { Badge } from "./reading/index.ts";
import { WaitScreen } from "./wait/index.ts";

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
