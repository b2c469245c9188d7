import { createBasket } from "./basket.ts";
import { createLogStore, type LogStore } from "./log-store.ts";

/** By session name. It outlives a change of the tag's attributes, and with it a log that is in memory only. */
const stores = new Map<string, LogStore>();

/** By session name, too: a page may answer long after an attribute of the tag has changed. */
const baskets = new Map<string, ReturnType<typeof createBasket>>();

/** Where a session's log and its basket are kept, the same for as long as the page lives. */
export function keptFor(sessionName: string) {
  const store = stores.get(sessionName) ?? createLogStore(sessionName);
  stores.set(sessionName, store);
  const basket = baskets.get(sessionName) ?? createBasket(sessionName);
  baskets.set(sessionName, basket);
  return { store, basket };
}
