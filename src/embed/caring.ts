import { whenIdle } from "../loading/pace/index.ts";
import { metaOf, type Session } from "../session/index.ts";
import type { Services, View } from "../turn/index.ts";
import { bringCare } from "./care-file.ts";
import type { CareMeans, OpenedCare } from "./care-screens.ts";
import { isKept, storageKey } from "./first-options.ts";
import type { ClearBeside } from "./surroundings.ts";

type Around = Omit<CareMeans, "session" | "key"> & {
  sessionName: string;
  /** Draws the view again. */
  redraw(): void;
};

/** What is kept of a machine beyond one search, and forgotten on a tap. All of it is fetched in idle time. */
export function createCaring({ sessionName, redraw, ...around }: Around) {
  const name = `${sessionName}:machine`;
  const key = storageKey(name);
  let session: Session | null = null;
  let opened: OpenedCare | null = null;
  const open = async () => {
    const { openCare } = await bringCare(around.texts);
    opened ??= openCare({ ...around, key, session: () => session as Session });
    return opened;
  };
  // A loaded page works without a connection, and there may be something to say of the filter. Asked for again at the next
  // ending where it does not come.
  whenIdle(
    () =>
      void open().then(
        () => isKept(name) && redraw(),
        () => {},
      ),
  );
  return {
    /** Another session is shown. */
    shown(next: Session): void {
      session = next;
      if (metaOf(next).outcome)
        open().then(
          ({ keep }) => session === next && keep(),
          () => {},
        );
    },
    /** The view with what is to be said of the filter before a search is begun. */
    remind: (view: View): View => opened?.remind(view) ?? view,
    care: (async () => (await open()).care) satisfies Services["care"],
    /**
     * Empties all that this browser keeps for any panel of this origin, but stops and the session in use.
     * @param besides empties what else has something in memory
     */
    clear: (besides: () => void): ReturnType<ClearBeside> => {
      const own = storageKey(sessionName);
      const kept = [() => localStorage, () => sessionStorage].map((place) => sweep(place, own));
      const bringBack = opened?.clear();
      besides();
      return () => {
        bringBack?.();
        for (const putBack of kept) putBack();
      };
    },
  };
}

/** Removes our keys from a storage. Returns what puts them back. */
function sweep(place: () => Storage, own: string): () => void {
  const removed: [key: string, text: string][] = [];
  try {
    const storage = place();
    // The session in use goes with its own journal; a stop is ended by 'start again' alone.
    for (const key of Object.keys(storage))
      if (key.startsWith(storageKey("")) && key !== own && !key.endsWith(":stop")) {
        removed.push([key, storage.getItem(key) ?? ""]);
        storage.removeItem(key);
      }
  } catch {
    // Denied: nothing was kept there either.
  }
  return () => {
    try {
      // A call that was ended stays so.
      for (const [key, text] of removed) if (!key.endsWith(":live")) place().setItem(key, text);
    } catch {
      // Denied or full by now.
    }
  };
}
