import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { buildEmbed, distFolder } from "../../src/workbench/build/index.ts";
import { buildDemoShards } from "../generate/shards.ts";
import { serveFolders } from "./serve-folders.ts";

// `npm start [-- --port 4173]`: builds the script and the demo's large catalogue, then serves the demo shop.
const { values } = parseArgs({ options: { port: { type: "string", default: "4173" } } });
await buildEmbed();
await buildDemoShards(`${distFolder}/shards`);
const demoFolder = fileURLToPath(new URL("..", import.meta.url));
const { address } = await serveFolders([demoFolder, distFolder], Number(values.port));
console.log(`The demo shop is open at ${address} (Ctrl+C closes it)`);
