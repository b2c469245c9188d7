import type { Basket, BasketPart, BasketState } from "../turn/index.ts";
import { basketKey } from "./first-options.ts";
import { tellPage } from "./tell-page.ts";

/**
 * What the host page is told of a part that is put into the basket; `variant` and `serial` only where the part was
 * found by what is on the plate.
 */
export type BasketRequest = BasketPart;

/** What is kept of a part: its key, and when the page was asked for it, in ms, or that the page has added it. */
type Entry = [key: string, state: number | "added"];

/** Milliseconds within which a page should answer; after that the person is told that it has not. */
const ANSWER_MS = 10_000;

/** A session ends in one part and a few that could stand in for it (judgement). */
const MOST_ENTRIES = 20;

/** Far longer than that many entries; anything longer was not written here. */
const LONGEST = 20_000;

/**
 * Asks the host page to put parts into its basket, each only once. What was asked is kept beside the session: a
 * reload or another tab must not buy a part twice.
 */
export function createBasket(sessionName: string, place: () => Storage = () => localStorage) {
  const watchers = new Set<() => void>();
  const failed = new Set<string>();
  const store = createEntries(basketKey(sessionName), place);

  const tell = () => {
    for (const watcher of watchers) watcher();
  };

  function put(key: string, state: Entry[1] | null): void {
    const others = store.read().filter(([each]) => each !== key);
    store.write(state === null ? others : [...others, [key, state] satisfies Entry].slice(-MOST_ENTRIES));
    tell();
  }

  function stateOf(part: BasketPart): BasketState {
    const key = keyOf(part);
    const [, state] = store.read().find(([each]) => each === key) ?? [];
    if (state === undefined) return failed.has(key) ? "failed" : "new";
    if (state === "added") return "added";
    const waited = Date.now() - state;
    return waited >= 0 && waited < ANSWER_MS ? "adding" : "silent";
  }

  function send(host: EventTarget, part: BasketPart): void {
    const key = keyOf(part);
    failed.delete(key);
    put(key, Date.now());
    setTimeout(tell, ANSWER_MS);
    // A page is taken at its first word, however late that comes.
    let isAnswered = false;
    const answer = (isAdded: boolean) => () => {
      if (isAnswered) return;
      isAnswered = true;
      if (isAdded) return put(key, "added");
      // An earlier request for the same part may have been answered meanwhile.
      if (stateOf(part) === "added") return;
      failed.add(key);
      put(key, null);
    };
    const detail = { ...part, added: answer(true), failed: answer(false) };
    tellPage(host, "fridgeside-basket", detail);
  }

  return {
    stateOf,
    /**
     * Dispatches `fridgeside-basket`, which bubbles out of the shadow root, unless the page was asked for this part
     * already. Its `detail` has the part and two functions, one of which the page calls: `added()` or `failed()`.
     */
    ask(host: EventTarget, part: BasketPart): void {
      if (["new", "failed"].includes(stateOf(part))) send(host, part);
    },
    /** Asks once more although the page has not answered: the person has looked into the basket. */
    askAgain(host: EventTarget, part: BasketPart): void {
      if (stateOf(part) === "silent") send(host, part);
    },
    watch(changed: () => void): () => void {
      const look = ({ key }: StorageEvent) => key === basketKey(sessionName) && changed();
      // Another page may have asked a moment ago: its time runs out here, too.
      const timer = setTimeout(changed, ANSWER_MS);
      watchers.add(changed);
      globalThis.addEventListener?.("storage", look);
      return () => {
        clearTimeout(timer);
        watchers.delete(changed);
        globalThis.removeEventListener?.("storage", look);
      };
    },
    /** For 'start again'. */
    clear(): void {
      failed.clear();
      store.write([]);
      tell();
    },
  };
}

/** What the screens see of a basket whose events leave from this element. */
export function basketOf(host: EventTarget, basket: ReturnType<typeof createBasket>): Basket {
  return {
    stateOf: basket.stateOf,
    watch: basket.watch,
    ask: (part) => basket.ask(host, part),
    askAgain: (part) => basket.askAgain(host, part),
  };
}

const keyOf = ({ number, model }: BasketPart) => `${model}\n${number}`;

/** The browser's own storage, with a copy in memory for where it is denied; what is spoilt there counts as nothing. */
function createEntries(key: string, place: () => Storage) {
  let copy: Entry[] | null = null;
  return {
    read(): Entry[] {
      if (copy) return copy;
      try {
        const text = place().getItem(key) ?? "[]";
        const entries: unknown = text.length > LONGEST ? [] : JSON.parse(text);
        return Array.isArray(entries) ? entries.filter(isEntry) : [];
      } catch {
        return [];
      }
    },
    write(entries: Entry[]): void {
      try {
        if (entries.length > 0) place().setItem(key, JSON.stringify(entries));
        else place().removeItem(key);
        copy = null;
      } catch {
        copy = entries;
      }
    },
  };
}

function isEntry(entry: unknown): entry is Entry {
  if (!Array.isArray(entry)) return false;
  const [key, state] = entry;
  return typeof key === "string" && (state === "added" || Number.isFinite(state));
}
