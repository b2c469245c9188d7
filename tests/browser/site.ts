import { serveFolders } from "../../src/cli/serve.ts";

const root = new URL("../../", import.meta.url).pathname;

/** Where `npm run browser` builds the script, away from a dist/ that somebody may be looking at. */
export const builtFolder = `${root}.cache/browser`;

/** Serves the demo shop, the built script, and the host pages of these tests as one site at any free port. */
export function serveSite() {
  return serveFolders([`${root}demo`, builtFolder, `${root}tests/browser/pages`], 0);
}
