import { Before, Notices } from "../frame/index.ts";
import { IcePath } from "../pictures/index.ts";
import { Changing } from "./changing/index.ts";
import { GateScreen } from "./gate/index.ts";
import laterSheet from "./later.css?inline";
import { OwnWords } from "./own-words/index.ts";
import { Badge } from "./reading/index.ts";

/** What comes with the engine; with `picture` and the later screens beside them they are what `Panel` wants. */
export const screens = {
  gate: GateScreen,
  icePath: IcePath,
  before: Before,
  ownWords: OwnWords,
  changing: Changing,
  notices: Notices,
  badge: Badge,
};

/** The rules of the later file, for `adoptedStyleSheets`, after the first. */
export { laterSheet };
