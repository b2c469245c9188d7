import { ReadingScreen } from "../../instruments/screens.tsx";
import { EndingScreen } from "./ending/index.ts";
import { ModelScreen } from "./model/index.ts";
import { WaitScreen } from "./wait/index.ts";

/** The screens that a session comes to after its first checks; they come in a file of their own. */
export const laterScreens = {
  reading: ReadingScreen,
  model: ModelScreen,
  wait: WaitScreen,
  ending: EndingScreen,
};
