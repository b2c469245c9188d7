import { createBackEntries, type Tab } from "../../../src/panel/screens/full-screen/back-entries.ts";

type Entry = { key: string; state: unknown; href: string };

/** Of a tab: what its history begins with, whether the browser tells of entries, and whether it goes back when asked. */
type Kind = { state?: unknown; tells?: boolean; goes?: boolean };

/** A tab with the history of one page, as HTML has it; going back and forward is heard at once. */
export function openTab({ state = null, tells = true, goes = true }: Kind = {}) {
  let keys = 0;
  const entryOf = (state: unknown, href: string): Entry => ({
    key: `${keys++}`,
    state: structuredClone(state),
    href,
  });
  let entries = [entryOf(state, "https://shop.example/help")];
  let at = 0;
  const heard: unknown[] = [];
  let [page, moved] = [new EventTarget(), new EventTarget()];
  const tell = (navigationType: string) =>
    moved.dispatchEvent(Object.assign(new Event("currententrychange"), { navigationType }));
  const now = () => entries[at] as Entry;
  const go = (by: number) => {
    if (by === 0 || !goes || !entries[at + by]) return;
    at += by;
    tell("traverse");
    let isStopped = false;
    const event = new Event("popstate");
    event.stopImmediatePropagation = () => {
      isStopped = true;
    };
    page.dispatchEvent(event);
    if (!isStopped) heard.push(now().state);
  };
  const push = (state: unknown, href = now().href) => {
    entries = [...entries.slice(0, ++at), entryOf(state, href)];
    tell("push");
  };
  const replace = (state: unknown, href = now().href) => {
    entries[at] = { ...entryOf(state, href), key: now().key };
    tell("replace");
  };
  /** A page's script and ours, begun anew on the history that is there. */
  const load = (): Tab => {
    [page, moved] = [new EventTarget(), new EventTarget()];
    const tab = {
      history: {
        get state() {
          return now().state;
        },
        pushState: (state: unknown) => push(state),
        replaceState: (state: unknown) => replace(state),
        go,
      },
      location: {
        get href() {
          return now().href;
        },
      },
      addEventListener: page.addEventListener.bind(page),
      ...(tells && {
        navigation: {
          get currentEntry() {
            return { key: now().key };
          },
          addEventListener: moved.addEventListener.bind(moved),
        },
      }),
    };
    return tab as never as Tab;
  };
  return {
    tab: load(),
    load,
    go,
    push,
    replace,
    /** Something is touched, or a key pressed. */
    touch: () => page.dispatchEvent(new Event("click")),
    /** What the page's own script hears of going back and forward. */
    heard,
    count: () => entries.length,
    place: () => at,
    now,
  };
}

/** Entries of one panel, and what it was told. */
export function openEntries(page: ReturnType<typeof openTab>, id = "one") {
  const told: string[] = [];
  const entries = createBackEntries(page.tab, id, {
    back: () => told.push("back"),
    lost: () => told.push("lost"),
  });
  return { entries, told };
}
