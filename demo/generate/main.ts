import { parseArgs } from "node:util";
import { createDemoCatalogue, demoSeed, writeDemoCatalogue } from "./catalogue.ts";
import { demoFeedCommand } from "./feed/index.ts";

// `npm run demo-catalogue [-- --seed 418]` and `npm run demo-feed`: print what the demo shop sells.
// A reader such as `head` closes the pipe early; that is not an error.
process.stdout.on("error", (problem: NodeJS.ErrnoException) => {
  if (problem.code !== "EPIPE") throw problem;
  process.exit();
});

const [name, ...args] = process.argv.slice(2);
if (name === "feed") process.exitCode = await demoFeedCommand(args);
else {
  const options = { seed: { type: "string", default: String(demoSeed) } } as const;
  const seed = Number(parseArgs({ args, options }).values.seed);
  process.stdout.write(writeDemoCatalogue(createDemoCatalogue(seed)));
}
