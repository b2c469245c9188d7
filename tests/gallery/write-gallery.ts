import { writeFileSync } from "node:fs";
import type { Gallery } from "../../demo/gallery/journal.js";
import { composeGallery } from "./compose-gallery.ts";
import { findSessions } from "./find-sessions.ts";
import { galleryFile } from "./read-gallery.ts";

/*
 * `npm run gallery` looks for a session at every turn of the chart and writes demo/gallery/places.json, which is a matter of
 * minutes. Where a changed flow makes the file untrue, tests/gallery says so.
 */
const gallery = composeGallery(findSessions());
writeFileSync(galleryFile, written(gallery));
console.log(`${gallery.places.length} places by ${gallery.steps.length} steps`);

/** JSON with one place and one step a line. */
function written({ places, steps, ...rest }: Gallery): string {
  const head = JSON.stringify(rest, null, 2).replace(/\n\}$/, "");
  const list = (all: object[]) => all.map((each) => `    ${JSON.stringify(each)}`).join(",\n");
  return `${head},\n  "places": [\n${list(places)}\n  ],\n  "steps": [\n${list(steps)}\n  ]\n}\n`;
}
