import { drawingAddress } from "virtual:later";
import { createDrawings } from "../loading/index.ts";
import type { Drawings } from "../panel/pictures/index.ts";

/** The place of a drawing that has not come by then is no longer kept (judgement). */
const PATIENCE_MS = 15_000;

/** By language: a tag that a page moves about fetches no drawing again. */
const known = new Map<string, Drawings>();

/** The drawings of a language, which all panels of a page share. */
export function drawingsIn(language: string): Drawings {
  // Without a connection nothing is asked for, and on a stalled one not for ever: the drawing's place goes.
  const get: typeof fetch = (address, settings) =>
    navigator.onLine
      ? fetch(address, { ...settings, signal: AbortSignal.timeout(PATIENCE_MS) })
      : Promise.reject(new Error("offline"));
  const drawings = known.get(language) ?? createDrawings((id) => drawingAddress(id, language), get);
  known.set(language, drawings);
  return drawings;
}
