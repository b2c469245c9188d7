import { existsSync, readFileSync } from "node:fs";

/** The page that documents the commands. The package has it at the same place beside `lib/` as the project beside `src/`. */
const page = new URL("../../demo/docs/commands.md", import.meta.url);

/**
 * What a command says about itself: the text block of its section of the guide. There is no other text of it.
 * @returns null where the page has no such section
 */
export function helpOf(command: string, guide = readGuide()): string | null {
  const [, section = ""] = guide.split(`\n## ${command}\n`);
  return /^\s*```text\n([\s\S]*?)\n```/.exec(section)?.[1] ?? null;
}

/** The first sentence about a command, for a list of all; empty where there is none. */
export function oneLineOf(command: string, guide = readGuide()): string {
  const [, first = ""] = helpOf(command, guide)?.split("\n\n") ?? [];
  return first.replaceAll("\n", " ");
}

function readGuide(): string {
  return existsSync(page) ? readFileSync(page, "utf8") : "";
}
