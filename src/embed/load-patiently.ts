import { complain } from "../loading/index.ts";
import { waitForSignal } from "../loading/pace/index.ts";

/** After so long it is said that it takes its time, as at the start. */
const SILENCE_MS = 4000;

/** The longest pause between two tries. */
const LONGEST_PAUSE_MS = 30_000;

/**
 * Loads until it is there, saying meanwhile how it goes; never fails. It ends, too, once `isCurrent` says no, with false.
 * @param say told where it is slow or does not come, and when it is there after all
 */
export async function loadPatiently(
  load: () => Promise<void>,
  isCurrent: () => boolean,
  say: (trouble: "slow" | "lost") => void,
): Promise<boolean> {
  const silence = setTimeout(() => say("slow"), SILENCE_MS);
  for (let pause = 0; isCurrent(); pause = Math.min(2 * pause + 1000, LONGEST_PAUSE_MS))
    try {
      await load();
      break;
    } catch (problem) {
      complain(`a part of the helper could not be loaded; trying again (${(problem as Error).message}).`);
      clearTimeout(silence);
      if (pause) say("lost");
      await waitForSignal(pause);
    }
  clearTimeout(silence);
  return isCurrent();
}
