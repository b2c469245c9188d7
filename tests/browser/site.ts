import { fileURLToPath } from "node:url";
import { createGuidePages } from "../../demo/serve/guide-pages.ts";
import { serveFolders } from "../../demo/serve/serve-folders.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));

/** Where `npm run browser` builds the script, away from a dist/ that somebody may be looking at. */
export const builtFolder = `${root}.cache/browser`;

/** The demo shop. */
export const demoFolder = `${root}demo`;

/** Serves the host pages of these tests, the demo shop, the built script and axe as one site at any free port. */
export function serveSite() {
  return serveFolders(
    [`${root}tests/browser/pages`, demoFolder, builtFolder, `${root}node_modules/axe-core`],
    0,
    new Map(),
    createGuidePages(root),
  );
}
