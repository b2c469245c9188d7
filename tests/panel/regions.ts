/// <reference types="vite/client" />
import { type Region, regionIn } from "../../src/guide/index.ts";
import type { View } from "../../src/turn/index.ts";

const files = import.meta.glob<Region>("../../flows/regions/*.yaml", { eager: true, import: "default" });
const regions = Object.fromEntries(
  Object.entries(files).map(([path, region]) => [path.replace(/.*\/|\.yaml$/g, ""), region]),
);

/** The region of a language's readers, as a panel gets it. */
export const regionOf = (locale: string): Region => regionIn(regions, locale);

/** A view as the readers of a language see it. */
export function viewIn(locale: string, view: View): View {
  if (!view.turn?.reading) return view;
  return { ...view, turn: { ...view.turn, reading: { ...view.turn.reading, region: regionOf(locale) } } };
}
