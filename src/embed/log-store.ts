import { storageKey } from "./first-options.ts";

/** Where the log of a session is kept between visits. */
export type LogStore = {
  read(): unknown;
  /** False when it could not be kept: full, denied, or a private window. */
  write(log: unknown): boolean;
  /** Keeps a log beside the one in use: the whole of one that a newer flow took only in part. */
  setAside(log: unknown): void;
  clear(): void;
};

/**
 * The browser's own storage, with a copy in memory for where it is denied. Some browsers throw on the mere mention
 * of it, so nothing here ever throws.
 */
export function createLogStore(name: string, place: () => Storage = () => localStorage): LogStore {
  const key = storageKey(name);
  const asideKey = `${key}:whole`;
  const attempt = <T>(work: () => T, otherwise: T): T => {
    try {
      return work();
    } catch {
      return otherwise;
    }
  };
  // Only what could not be kept: a storage that is full still gives an older log.
  let copy: unknown = null;
  return {
    read: () => copy ?? attempt(() => JSON.parse(place().getItem(key) ?? "null") as unknown, null),
    write: (log) => {
      const kept = attempt(() => {
        place().setItem(key, JSON.stringify(log));
        return true;
      }, false);
      copy = kept ? null : log;
      return kept;
    },
    setAside: (log) => attempt(() => place().setItem(asideKey, JSON.stringify(log)), undefined),
    clear: () => {
      copy = null;
      attempt(() => place().removeItem(key), undefined);
      attempt(() => place().removeItem(asideKey), undefined);
    },
  };
}
