import { ReadingScreen } from "../instruments/screens.tsx";
import { Composer, Heard } from "../panel/screens/composer/index.ts";
import { EndingScreen } from "../panel/screens/ending/index.ts";
import { ModelScreen } from "../panel/screens/model/index.ts";
import { More } from "../panel/screens/more/index.ts";
import { WaitScreen } from "../panel/screens/wait/index.ts";

export { createDrawingsAhead } from "./drawings-ahead.ts";

/** The screens that a session comes to after its first checks; they come in a file of their own. */
export const laterScreens = {
  reading: ReadingScreen,
  model: ModelScreen,
  wait: WaitScreen,
  ending: EndingScreen,
  composer: Composer,
  heard: Heard,
  more: More,
};
