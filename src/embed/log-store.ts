import { storageKey } from "./first-options.ts";

/** Where the log of a session is kept between visits. */
export type LogStore = {
  read(): unknown;
  /** False when it could not be kept: full, denied, or a private window. */
  write(log: unknown): boolean;
  clear(): void;
};

/**
 * The browser's own storage, with a copy in memory for where it is denied. Some browsers throw on the mere mention
 * of it, so nothing here ever throws.
 */
export function createLogStore(name: string, place: () => Storage = () => localStorage): LogStore {
  const key = storageKey(name);
  const attempt = <T>(work: () => T, otherwise: T): T => {
    try {
      return work();
    } catch {
      return otherwise;
    }
  };
  let copy: unknown = null;
  return {
    read: () => attempt(() => JSON.parse(place().getItem(key) ?? "null") as unknown, null) ?? copy,
    write: (log) => {
      copy = log;
      return attempt(() => {
        place().setItem(key, JSON.stringify(log));
        return true;
      }, false);
    },
    clear: () => {
      copy = null;
      attempt(() => place().removeItem(key), undefined);
    },
  };
}
