import { helpOf, oneLineOf } from "./help.ts";

/**
 * What each command runs; demo/docs/commands.md says what it does. Each loads what it needs when it runs: who verifies a
 * folder shall not wait for the bundler.
 */
const commands: Record<string, (args: string[]) => Promise<number>> = {
  build: async (args) => (await import("./build-command.ts")).buildCommand(args),
  serve: async (args) => (await import("./serve-command.ts")).serveCommand(args),
  catalogue: async (args) => (await import("./catalogue/index.ts")).catalogueCommand(args),
  pack: async (args) => (await import("./pack-command.ts")).packCommand(args),
  verify: async (args) => (await import("./verify-command.ts")).verifyCommand(args),
  draw: async (args) => (await import("./draw-command.ts")).drawCommand(args),
  play: async (args) => (await import("./play.ts")).playCommand(args),
  insight: async (args) => (await import("./insight-command.ts")).insightCommand(args),
  learn: async (args) => (await import("./learn-command.ts")).learnCommand(args),
  gallery: async (args) => (await import("./gallery-command.ts")).galleryCommand(args),
  relay: async (args) => (await import("./relay-command.ts")).relayCommand(args),
  schemas: async () => {
    (await import("./schema-command.ts")).writeSchemas();
    return 0;
  },
};

// Who pipes into `head` closes early; that is no mistake.
process.stdout.on("error", (problem: NodeJS.ErrnoException) => {
  if (problem.code !== "EPIPE") throw problem;
  process.exit();
});

const [name = "", ...args] = process.argv.slice(2);
const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
if (!command) {
  const isAsked = name === "--help";
  const print = isAsked ? console.log : console.error;
  print("Commands:");
  for (const known of Object.keys(commands)) print(`  ${known.padEnd(10)} ${oneLineOf(known)}`);
  print("What one takes: fridgeside <command> --help");
  process.exitCode = isAsked ? 0 : 2;
} else if (args.includes("--help")) {
  console.log(helpOf(name));
} else {
  try {
    process.exitCode = await command(args);
  } catch (problem) {
    console.error(problem instanceof Error ? problem.message : problem);
    process.exitCode = 1;
  }
}
