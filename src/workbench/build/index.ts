export { buildEmbed, distFolder, firstFile, keptFor } from "./build.ts";
export { comesBuilt } from "./built-files.ts";
export { ownFlows, readFlow, readYamlFiles } from "./flows-folder.ts";
export { ownLocales, readLocales } from "./locales-folder.ts";
export { createPackData, createPanelData, knownDangers, type PanelData } from "./panel-data.ts";
export { readShares, type Shares, withShares } from "./shares-overlay.ts";
export { readSource } from "./yaml-source.ts";
