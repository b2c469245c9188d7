import { definePanel } from "./define.ts";

definePanel();

/** For a page that still has an older one of this file, whose parts are gone. */
export { loadParts } from "./parts.ts";
