import { ReadingScreen } from "../instruments/screens.tsx";
import { createCareSlots } from "../panel/screens/care/index.ts";
import { createFoot, Heard } from "../panel/screens/composer/index.ts";
import { createEnding } from "../panel/screens/ending/index.ts";
import { createLiveSlots } from "../panel/screens/live/index.ts";
import { ModelScreen } from "../panel/screens/model/index.ts";
import { createMore } from "../panel/screens/more/index.ts";
import { WaitScreen } from "../panel/screens/wait/index.ts";

export { createDrawingsAhead } from "./drawings-ahead.ts";

/**
 * The screens that a session comes to after its first checks; they come in a file of their own.
 * @param bringLive brings what is shown while the shop's people help, which few people see
 * @param bringCare brings what is shown after an ending
 */
export function createLaterScreens(
  bringLive: Parameters<typeof createLiveSlots>[0],
  bringCare: Parameters<typeof createCareSlots>[0],
) {
  const { UnderBar, AboveField } = createLiveSlots(bringLive);
  const { AfterEnding, Machine } = createCareSlots(bringCare);
  return {
    reading: ReadingScreen,
    model: ModelScreen,
    wait: WaitScreen,
    ending: createEnding(AfterEnding),
    composer: createFoot(AboveField),
    heard: Heard,
    more: createMore(UnderBar, Machine),
  };
}
