import { Before, Notices, State } from "../frame/index.ts";
import { After } from "./after/index.ts";
import { Changing } from "./changing/index.ts";
import { GateScreen } from "./gate/index.ts";
import laterSheet from "./later.css?inline";
import { Badge } from "./reading/index.ts";

/** What comes with the engine; with `picture` and the later screens beside them they are what `Panel` wants. */
export const screens = {
  gate: GateScreen,
  before: Before,
  after: After,
  state: State,
  changing: Changing,
  notices: Notices,
  badge: Badge,
};

/** What follows the steps where something may be shown beside the thread. */
export { createAfter } from "./after/index.ts";
/** The rules of the later file, for `adoptedStyleSheets`, after the first. */
export { laterSheet };
