/** What a page fetches of a build and of a shop: scenarios, drawings, a catalogue, a shop's own flows. */
export { readBoundedText } from "./bounded-text.ts";
export { toCollectAddress } from "./collect-address.ts";
export { type Complain, complain, createComplaints } from "./complain.ts";
export { createDrawings } from "./drawings.ts";
export type { EngineData, OwnFlows, StartFile } from "./engine-data.ts";
export { chooseLanguage, matchLanguage, type ReadAttribute } from "./language/index.ts";
export { markPage } from "./page-theme.ts";
export { readJson } from "./read-json.ts";
export { toRelayAddress } from "./relay-address.ts";
export { complainOfRows } from "./row-complaints.ts";
export { createScenarioFiles, type ScenarioFiles } from "./scenario-files.ts";
export { createShopCatalogue, type ShopCatalogue } from "./shop-catalogue.ts";
export { toWebAddress } from "./web-address.ts";

/** What only some shops need, in a file of its own. */
export const getForSomeShops = () => import("./for-some-shops.ts");
