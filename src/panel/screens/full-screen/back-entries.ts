/** The key in `history.state` that our entries are known by; what else the page keeps there is left as it is. */
const key = "fridgeside";

/** Entries at most: a browser keeps about fifty in a tab (common practice, no source), and most of them are the page's. */
const most = 9;

/** `at` from 1, counted from the page's own entry; `place` tells the entry that was marked from one with a copy. */
type Mark = { by: string; at: number; place: string };
type Moved = Event & { navigationType?: string };

/** What of a window its history needs; `navigation` is not there in every browser. */
export type Tab = Pick<Window, "history" | "location" | "addEventListener"> & {
  navigation?: Pick<EventTarget, "addEventListener"> & { currentEntry: { key: string } | null };
};

/** What becomes of the entries: `back` was pressed; or they are `lost`, for the page itself has moved on. */
export type Told = { back(): void; lost(): void };

/**
 * Entries on top of the page's own in a tab's history, by which the phone's Back is heard; their address is the page's.
 * There is one for each Back that is wanted, made in the wake of a tap. Making one anew whenever Back was pressed
 * instead would end in the page being left: a browser passes over pages that add entries without a tap.
 */
export type BackEntries = {
  /**
   * Makes as many as are missing to this count, as far as there may be so many.
   * @throws Error where the browser allows none
   */
  reach(count: number): void;
  /** How many are left to go back over. */
  left(): number;
  /** Tells that they are lost if they are, where the browser itself has not told of it. */
  look(): void;
  /** Goes back to the page's own entry; true there, false if the page has moved on or it has taken too long. */
  leave(tooLong: Promise<unknown>): Promise<boolean>;
};

type Open = { id: string; heed(mark: Mark | null): boolean };

/** By tab: who has entries in it. */
const watched = new WeakMap<Tab, Set<Open>>();

const isObject = (state: unknown): state is object => Object(state) === state;

/** What the page itself has in a state. */
function ownOf(state: unknown): unknown {
  if (!isObject(state) || !(key in state)) return state;
  const { [key]: _, ...own } = state;
  return own;
}

/**
 * What tells the entry that is shown from others, in this tab and after a reload: the browser's own name for it, else
 * what the page has in it; null where nothing does.
 */
function placeOf({ history, location, navigation }: Tab): string | null {
  try {
    const own = navigation?.currentEntry?.key ?? { ...(ownOf(history.state) as object) };
    return JSON.stringify([location.href, own]);
  } catch {
    return null;
  }
}

/** The mark of the entry that is shown, if it is one of ours: pages copy what they find in a state into their own. */
function markOf(tab: Tab): Mark | null {
  const mark = (tab.history.state as { [key]?: Partial<Mark> | null } | null)?.[key];
  if (!mark || typeof mark.place !== "string" || mark.place !== placeOf(tab)) return null;
  return Number(mark.at) >= 1 && Number(mark.at) <= most ? (mark as Mark) : null;
}

/**
 * From now on an entry that was left over is passed over: a reload keeps it, and so does a page that has moved on on top
 * of it. Harmless where there is none.
 */
export function passOver(tab: Tab): Set<Open> {
  const known = watched.get(tab);
  if (known) return known;
  const all = new Set<Open>();
  watched.set(tab, all);
  // The page need not know of entries that show what it shows already. What it has listened with before this file came
  // is told nevertheless, for a window calls its listeners in their order: it finds its own address and state.
  tab.addEventListener(
    "popstate",
    (event) => {
      const mark = markOf(tab);
      const isHeeded = [...all].some((one) => (!mark || mark.by === one.id) && one.heed(mark));
      if (!isHeeded && mark) tab.history.go(-mark.at);
      if (isHeeded || mark) event.stopImmediatePropagation();
    },
    true,
  );
  const mark = markOf(tab);
  if (mark) tab.history.go(-mark.at);
  return all;
}

/** @param id another one for each; @throws Error where entries can't be told apart */
export function createBackEntries(tab: Tab, id: string, told: Told): BackEntries {
  const { history, location, navigation } = tab;
  const all = passOver(tab);
  const home = placeOf(tab);
  if (home === null) throw new Error("This page's entries in the history can't be told apart");
  const address = location.href;
  let page = ownOf(history.state);
  let isNoted = false;
  let at = 0;
  let isWriting = false;
  let arrive: ((isHome: boolean) => void) | null = null;
  const listening = new AbortController();
  const { signal } = listening;

  function write(act: () => void): void {
    isWriting = true;
    try {
      act();
    } finally {
      isWriting = false;
    }
  }

  const withMark = (place: string | null, at: number) => ({
    ...(isObject(page) ? page : {}),
    [key]: { by: id, at, place },
  });
  const mark = (at: number) => history.replaceState(withMark(placeOf(tab), at), "");

  function end(isHome: boolean): void {
    arrive?.(isHome);
    all.delete(open);
    listening.abort();
  }

  function lose(): void {
    if (!all.has(open)) return;
    end(false);
    told.lost();
  }

  function look(): void {
    if (at > 0 && markOf(tab)?.by !== id) lose();
  }

  /** The page has written an entry: on top of ours, or over one of them. */
  function move({ navigationType }: Moved): void {
    if (isWriting || at === 0) return;
    if (navigationType === "push") lose();
    if (navigationType !== "replace") return;
    if (location.href !== address) lose();
    if (!all.has(open)) return;
    page = ownOf(history.state);
    isNoted = true;
    write(() => mark(at));
  }

  const open: Open = {
    id,
    heed(mark) {
      // Come to where it was already, it comes from what the page has put on top.
      if (mark ? mark.at === at : placeOf(tab) !== home) {
        lose();
        return false;
      }
      const isBack = (mark?.at ?? 0) < at;
      at = mark?.at ?? 0;
      // What the page has noted meanwhile was meant for what it shows: its own.
      if (at === 0 && isNoted) write(() => history.replaceState(page, ""));
      if (arrive) arrive(at === 0);
      else if (isBack) told.back();
      return true;
    },
  };
  all.add(open);
  if (navigation)
    navigation.addEventListener("currententrychange", move as (event: Event) => void, { signal });
  // Else it comes to light when the page is touched next.
  else for (const name of ["click", "keydown"]) tab.addEventListener(name, look, { capture: true, signal });

  return {
    left: () => at,
    look,
    reach(count) {
      look();
      while (all.has(open) && at < Math.min(count, most)) {
        try {
          write(() => {
            history.pushState(withMark(home, at + 1), "");
            // A name by the browser is known once it is there.
            if (placeOf(tab) !== home) mark(at + 1);
          });
        } catch (refused) {
          // A browser allows so many in a time.
          if (at > 0) return;
          end(false);
          throw refused;
        }
        at++;
      }
    },
    async leave(tooLong) {
      look();
      if (!all.has(open)) return false;
      const isHome =
        at === 0 ||
        (await new Promise<boolean>((resolve) => {
          arrive = resolve;
          void tooLong.then(() => resolve(false));
          history.go(-at);
        }));
      end(isHome);
      return isHome;
    },
  };
}
