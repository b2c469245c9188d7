import type { Resource } from "../../turn/index.ts";
import { label, pictures } from "../pictures/index.ts";
import { mapTexts } from "./panel-data.ts";

/**
 * Every drawing with its words, by its id, in every language.
 * @throws Error that names a drawing or a part without words
 */
export function createDrawings(locales: Record<string, Resource>) {
  return mapTexts(locales, (_, texts) => {
    const words = (kind: string, id: string) => {
      const found = ((texts["pictures"] as Resource)[kind] as Resource)[id];
      if (typeof found !== "string") throw new Error(`pictures.yaml has no text "${kind}.${id}"`);
      return found;
    };
    const drawingOf = (id: string, shapes: string[]) => ({
      title: words("shows", id),
      ...label(shapes, (part) => words("names", part)),
    });
    return Object.fromEntries(Object.entries(pictures).map(([id, shapes]) => [id, drawingOf(id, shapes)]));
  });
}
