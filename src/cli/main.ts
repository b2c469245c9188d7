import { parseArgs } from "node:util";
import { buildEmbed, distFolder } from "./build.ts";
import { createDemoCatalogue, demoSeed, writeDemoCatalogue } from "./demo-catalogue.ts";
import { playCommand } from "./play.ts";
import { writeSchemas } from "./schema-command.ts";
import { serveFolders } from "./serve.ts";

const demoFolder = new URL("../../demo", import.meta.url).pathname;

const commands: Record<string, { does: string; run: (args: string[]) => Promise<number> }> = {
  build: {
    does: "build the script that a shop embeds, into dist/",
    run: async () => {
      await buildEmbed();
      console.log("Built dist/fridgeside.js");
      return 0;
    },
  },
  serve: {
    does: "build, then serve the demo shop   [--port 4173]",
    run: async (args) => {
      const { values } = parseArgs({ args, options: { port: { type: "string", default: "4173" } } });
      await buildEmbed();
      const { address } = await serveFolders([demoFolder, distFolder], Number(values.port));
      console.log(`The demo shop is open at ${address} (Ctrl+C closes it)`);
      return new Promise(() => {});
    },
  },
  play: {
    does: "play a session as JSON lines   [--locale --model --now --scenario --catalogue]",
    run: playCommand,
  },
  schemas: {
    does: "write the JSON Schemas of flows/",
    run: async () => {
      writeSchemas();
      return 0;
    },
  },
  "demo-catalogue": {
    does: "print the demo shop's catalogue   [--seed]",
    run: async (args) => {
      const { values } = parseArgs({
        args,
        options: { seed: { type: "string", default: String(demoSeed) } },
      });
      process.stdout.write(writeDemoCatalogue(createDemoCatalogue(Number(values.seed))));
      return 0;
    },
  },
};

const [name = "", ...args] = process.argv.slice(2);
const command = commands[name];
if (!command) {
  console.error("Commands:");
  for (const [known, { does }] of Object.entries(commands)) console.error(`  ${known.padEnd(15)} ${does}`);
  process.exitCode = 2;
} else {
  try {
    process.exitCode = await command.run(args);
  } catch (problem) {
    console.error(problem instanceof Error ? problem.message : problem);
    process.exitCode = 1;
  }
}
