// A module: the commands below are loaded when they run.
export {};

// Each command loads what it needs when it runs: who verifies a folder shall not wait for the bundler.
type Command = { does: string; run: (args: string[]) => Promise<number>; hasHelp?: boolean };
const commands: Record<string, Command> = {
  build: {
    does: "build the script that a shop embeds   [--out dist] [--keep 5] [--keep-days 30]",
    run: async (args) => (await import("./build-command.ts")).buildCommand(args),
  },
  play: {
    does: "play a session as JSON lines   [--locale --model --variant --serial --now --scenario --catalogue]",
    run: async (args) => (await import("./play.ts")).playCommand(args),
  },
  verify: {
    does: "say all that is wrong with a flows folder   [folder --json --locales --catalogue --shares]",
    run: async (args) => (await import("./verify-command.ts")).verifyCommand(args),
  },
  pack: {
    does: "make a flows folder ready for the panel   [folder] --out folder [--locales --shares]",
    run: async (args) => (await import("./pack-command.ts")).packCommand(args),
  },
  draw: {
    does: "draw a scenario's chart   <scenario> [--svg | --scxml] [--out file] [--flows folder]",
    run: async (args) => (await import("./draw-command.ts")).drawCommand(args),
  },
  catalogue: {
    does: "make a retailer's feed a catalogue   inspect <feed> [--write file], build <feed> --out folder [--mapping file]",
    run: async (args) => (await import("./catalogue/index.ts")).catalogueCommand(args),
  },
  insight: {
    does: "say where people give up and how searches end   <files…> [--html file --svg file --json]",
    hasHelp: true,
    run: async (args) => (await import("./insight-command.ts")).insightCommand(args),
  },
  learn: {
    does: "re-estimate the shares of causes from outcomes   <files…> [--out file --flows folder --worth 25 --json]",
    hasHelp: true,
    run: async (args) => (await import("./learn-command.ts")).learnCommand(args),
  },
  relay: {
    does: "carry journals to agents' desks   --shop id --origin https://… [--help]",
    hasHelp: true,
    run: async (args) => (await import("./relay-command.ts")).relayCommand(args),
  },
  gallery: {
    does: "show every turn of the panel   [--style shop.css] [--words words.json] [--port 4174]",
    run: async (args) => (await import("./gallery-command.ts")).galleryCommand(args),
  },
  schemas: {
    does: "write the JSON Schemas of flows/",
    run: async () => {
      const { writeSchemas } = await import("./schema-command.ts");
      writeSchemas();
      return 0;
    },
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
  for (const [known, { does }] of Object.entries(commands)) print(`  ${known.padEnd(15)} ${does}`);
  process.exitCode = isAsked ? 0 : 2;
} else if (args.includes("--help") && !command.hasHelp) {
  console.log(`fridgeside ${name}: ${command.does}`);
} else {
  try {
    process.exitCode = await command.run(args);
  } catch (problem) {
    console.error(problem instanceof Error ? problem.message : problem);
    process.exitCode = 1;
  }
}
