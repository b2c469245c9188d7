/** Catalogues of many small files, from a retailer's feed. */

export { type BuildReport, type BuildTools, buildCatalogue } from "./build-catalogue.ts";
export { catalogueCommand } from "./command.ts";
export { readChunks } from "./read-chunks.ts";
export type { LaidOut } from "./switch-catalogue.ts";
