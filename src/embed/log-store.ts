import { storageKey } from "./first-options.ts";

/** Where the log of a session is kept between visits, and beside it what was set aside. */
export type LogStore = {
  /** The very text that is kept now, so that two tabs can tell whether the other has written; null for none. */
  read(): string | null;
  /** False when it could not be kept: full, denied, or a private window. */
  write(text: string): boolean;
  /** Keeps a log beside the one in use: the whole of one that a newer flow took only in part. */
  setAside(log: unknown): void;
  /** Sessions that can be gone on with, the newest first. */
  readAside(): unknown[];
  writeAside(logs: unknown[]): void;
  clear(): void;
  /**
   * Has a panel look after each write. Two panels of one page may show one session, and a `storage` event comes to other
   * pages alone. @returns ends it
   */
  watch(look: () => void): () => void;
};

/**
 * The browser's own storage, with a copy in memory for where it is denied. Some browsers throw on the mere mention
 * of it, so nothing here ever throws.
 */
export function createLogStore(name: string, place: () => Storage = () => localStorage): LogStore {
  const key = storageKey(name);
  const wholeKey = `${key}:whole`;
  const asideKey = `${key}:aside`;
  const attempt = <T>(work: () => T, otherwise: T): T => {
    try {
      return work();
    } catch {
      return otherwise;
    }
  };
  const kept = () => attempt(() => place().getItem(key), null);
  const put = (where: string, text: string) =>
    attempt(() => {
      place().setItem(where, text);
      return true;
    }, false);
  // Only what could not be kept, with what lay there instead: when that changes, another tab has written since.
  let copy: { text: string; over: string | null } | null = null;
  let aside: unknown[] | null = null;
  const looks = new Set<() => void>();
  return {
    read: () => {
      const text = kept();
      if (copy?.over === text) return copy.text;
      copy = null;
      return text;
    },
    write: (text) => {
      const isKept = put(key, text);
      copy = isKept ? null : { text, over: kept() };
      // Whoever writes is in the middle of something.
      if (looks.size > 1) for (const look of looks) queueMicrotask(look);
      return isKept;
    },
    setAside: (log) => void put(wholeKey, JSON.stringify(log)),
    readAside: () => {
      if (aside) return aside;
      const list = attempt<unknown>(() => JSON.parse(place().getItem(asideKey) ?? "[]"), []);
      return Array.isArray(list) ? list : [];
    },
    writeAside: (logs) => {
      aside = put(asideKey, JSON.stringify(logs)) ? null : logs;
    },
    clear: () => {
      copy = null;
      aside = null;
      for (const each of [key, wholeKey, asideKey]) attempt(() => place().removeItem(each), undefined);
    },
    watch: (look) => {
      looks.add(look);
      return () => void looks.delete(look);
    },
  };
}
