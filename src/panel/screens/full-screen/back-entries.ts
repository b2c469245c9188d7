/** The key in `history.state` that our entries are known by; what else the page keeps there is left as it is. */
const key = "fridgeside";

/** Entries at most: a browser keeps about fifty in a tab (common practice, no source), and most of them are the page's. */
const most = 9;

type Mark = { by: string; at: number };
type Moved = Event & { navigationType?: string };

/** What of a window its history needs; `navigation` is not there in every browser. */
export type Tab = Pick<Window, "history" | "location" | "addEventListener"> & {
  navigation?: Pick<EventTarget, "addEventListener" | "removeEventListener">;
};

/** What becomes of the entries: `back` was pressed; or they are `lost`, for the page itself has moved on. */
export type Told = { back(): void; lost(): void };

/**
 * Entries on top of the page's own in a tab's history, by which the phone's Back is heard; their address is the page's.
 * There is one for each Back that is wanted, made in the wake of a tap. Making one anew whenever Back was pressed
 * instead would end in the page being left: a browser passes over pages that add entries without a tap.
 */
export type BackEntries = {
  /** Makes as many as are missing to this count, as far as there may be so many. */
  reach(count: number): void;
  /** How many are left to go back over. */
  left(): number;
  /** Goes back to the page's own entry; resolves there. */
  leave(): Promise<void>;
};

type Open = { id: string; heed(mark: Mark | null): boolean };

/** By tab: who has entries in it. */
const watched = new WeakMap<Tab, Set<Open>>();

const markIn = (state: unknown): Mark | null => (state as { [key]?: Mark } | null)?.[key] ?? null;

/**
 * From now on an entry that was left over is passed over: a reload keeps it, and so does a page that has moved on on top
 * of it. Harmless where there is none.
 */
export function passOver(tab: Tab): Set<Open> {
  const known = watched.get(tab);
  if (known) return known;
  const all = new Set<Open>();
  watched.set(tab, all);
  // Before the page's own script, which need not know of entries that show what it shows already.
  tab.addEventListener(
    "popstate",
    (event) => {
      const mark = markIn(event.state);
      const isHeeded = [...all].some((one) => (!mark || mark.by === one.id) && one.heed(mark));
      if (!isHeeded && mark) tab.history.go(-mark.at);
      if (isHeeded || mark) event.stopImmediatePropagation();
    },
    true,
  );
  const mark = markIn(tab.history.state);
  if (mark) tab.history.go(-mark.at);
  return all;
}

/** @param id another one for each; @throws Error where the browser allows no entries */
export function createBackEntries(tab: Tab, id: string, told: Told): BackEntries {
  const { history, location, navigation } = tab;
  const page = { address: location.href, state: history.state as unknown };
  const all = passOver(tab);
  let at = 0;
  let arrive: (() => void) | null = null;
  const isOnTop = () => at > 0 && markIn(history.state)?.by === id;

  function end(): void {
    arrive?.();
    all.delete(open);
    navigation?.removeEventListener("currententrychange", look);
  }

  function lose(): void {
    if (!all.has(open)) return;
    end();
    told.lost();
  }

  function look({ navigationType }: Moved): void {
    if (navigationType === "push" && markIn(history.state)?.by !== id) lose();
  }

  const open: Open = {
    id,
    heed(mark) {
      if (!mark && location.href !== page.address) {
        lose();
        return false;
      }
      const isBack = (mark?.at ?? 0) < at;
      at = mark?.at ?? 0;
      if (arrive) arrive();
      else if (isBack) told.back();
      return true;
    },
  };
  all.add(open);
  navigation?.addEventListener("currententrychange", look as (event: Event) => void);

  return {
    left: () => at,
    reach(count) {
      if (at > 0 && !isOnTop()) return lose();
      const state = Object(page.state) === page.state ? (page.state as object) : {};
      while (at < Math.min(count, most)) history.pushState({ ...state, [key]: { by: id, at: ++at } }, "");
    },
    async leave() {
      if (isOnTop())
        await new Promise<void>((resolve) => {
          arrive = resolve;
          history.go(-at);
        });
      end();
    },
  };
}
