/// <reference types="vite/client" />
import type { Drawings } from "../../../src/panel/pictures/index.ts";
import { label, pictures } from "../../../src/workbench/pictures/index.ts";

type Words = { shows?: Record<string, string>; names?: Record<string, string> };
const files = import.meta.glob<Words>("../../../locales/*/pictures.yaml", { eager: true, import: "default" });

/** Every drawing with its words in a language, all there at once. */
export function drawingsIn(locale: string): Drawings {
  const wordsIn = (tag: string) => files[`../../../locales/${tag}/pictures.yaml`];
  const words = (kind: keyof Words, id: string) =>
    wordsIn(locale)?.[kind]?.[id] ?? wordsIn("en-GB")?.[kind]?.[id] ?? "";
  const known = Object.entries(pictures).map(([id, shapes]) => {
    const drawing = label(shapes, (part) => words("names", part));
    return [id, { title: words("shows", id), ...drawing }] as const;
  });
  return { known: new Map(known), load: async () => {} };
}
