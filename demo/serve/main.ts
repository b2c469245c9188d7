import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { buildEmbed, distFolder } from "../../src/workbench/build/index.ts";
import { buildDemoShards } from "../generate/shards.ts";
import { startDemoRelay, tokenPath } from "./demo-relay.ts";
import { createGuidePages } from "./guide-pages.ts";
import { serveFolders } from "./serve-folders.ts";

// `npm start [-- --port 4173]`: builds the script and the demo's large catalogue, then serves the demo shop, with a relay
// on this machine alone between its panel and its support desk.
const { values } = parseArgs({ options: { port: { type: "string", default: "4173" } } });
await buildEmbed();
await buildDemoShards(`${distFolder}/shards`);
const demoFolder = fileURLToPath(new URL("..", import.meta.url));
const guide = createGuidePages(fileURLToPath(new URL("../..", import.meta.url)));
const answers = new Map<string, () => string>();
const { server, address } = await serveFolders([demoFolder, distFolder], Number(values.port), answers, guide);
const relay = await startDemoRelay(new URL(address).origin).catch(() => null);
if (relay) answers.set(tokenPath, relay.token);
console.log(`The demo shop is open at ${address} (Ctrl+C closes it)`);
console.log(`The guide is at ${address}docs/index.md`);
console.log(
  relay
    ? `Its support desk is at ${address}desk.html`
    : "Another program has the port of its relay (8787): the support desk can't be tried now.",
);
process.once("SIGINT", async () => {
  await relay?.close();
  server.close();
  server.closeAllConnections();
});
