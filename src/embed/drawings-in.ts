import { drawingAddress } from "virtual:later";
import type { Drawings } from "../panel/pictures/index.ts";
import { createDrawings } from "./drawings.ts";

/** By language: a tag that a page moves about fetches no drawing again. */
const known = new Map<string, Drawings>();

/** The drawings of a language, which all panels of a page share. */
export function drawingsIn(language: string): Drawings {
  // Without a connection nothing is asked for: the place of the drawing stays out.
  const get: typeof fetch = (address, settings) =>
    navigator.onLine ? fetch(address, settings) : Promise.reject(new Error("offline"));
  const drawings = known.get(language) ?? createDrawings((id) => drawingAddress(id, language), get);
  known.set(language, drawings);
  return drawings;
}
