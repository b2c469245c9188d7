import type { Drawing, Drawings } from "../panel/pictures/index.ts";
import { createOnce } from "./once.ts";

/** Drawings that are fetched one by one, when they are first shown. @param addressOf where a drawing lies */
export function createDrawings(addressOf: (id: string) => string, get: typeof fetch): Drawings {
  const { read, forget } = createOnce(get);
  const known = new Map<string, Drawing>();
  return {
    known,
    async load(id) {
      try {
        const drawing: Drawing = JSON.parse(await read(addressOf(id)));
        // A server may answer anything for a file that it no longer has.
        if (drawing.title && drawing.shapes[0] && drawing.legend) known.set(id, drawing);
        else forget(addressOf(id));
      } catch {
        forget(addressOf(id));
      }
    },
  };
}
