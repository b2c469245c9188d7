import type { Drawing, Drawings } from "../panel/pictures/index.ts";

/**
 * Fetches drawings, each once and when it is first shown. One that did not come is fetched anew the next time, past
 * every cache.
 * @param addressOf where a drawing lies
 */
export function createDrawings(addressOf: (id: string) => string, get: typeof fetch): Drawings {
  const known = new Map<string, Drawing>();
  const asked = new Map<string, Promise<void>>();
  const failed = new Set<string>();

  async function fetchOne(id: string): Promise<void> {
    const address = addressOf(id);
    const response = await get(address, { cache: failed.has(id) ? "reload" : "default" });
    if (!response.ok) throw new Error(`${response.status} for ${address}`);
    const drawing: Partial<Drawing> = await response.json();
    // A server may answer anything for a file that it no longer has.
    if (!drawing?.title || !drawing.names || !Array.isArray(drawing.shapes))
      throw new Error(`Something else lies where the drawing "${id}" was`);
    known.set(id, drawing as Drawing);
  }

  return {
    known,
    load(id) {
      const one =
        asked.get(id) ??
        fetchOne(id).catch(() => {
          failed.add(id);
          asked.delete(id);
        });
      asked.set(id, one);
      return one;
    },
  };
}
