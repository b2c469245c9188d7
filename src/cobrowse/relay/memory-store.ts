import { createShelf, storeOn } from "./shelf.ts";
import type { Store } from "./store.ts";

/** A store that ends with its process: to try the relay, and for tests. */
export function createMemoryStore(): Store {
  const shelf = createShelf();
  return {
    ...storeOn(shelf, async () => {}),
    tidy: async () => {},
    isWell: () => true,
    close: async () => {},
  };
}
