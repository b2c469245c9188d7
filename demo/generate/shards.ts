import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { catalogueCommand } from "../../src/cli/catalogue/index.ts";
import { createDemoFeed, readMinutes } from "./feed/index.ts";

/** Models of the demo's large catalogue, and the seed that they are drawn by. */
export const demoShards = { models: 3000, seed: 7 };

/**
 * Builds the catalogue of many files that the demo's page `large.html` reads, by the same command as a shop would.
 * @throws Error where it could not be written
 */
export async function buildDemoShards(out: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "demo-feed-"));
  try {
    const feed = join(folder, "feed.csv");
    writeFileSync(feed, [...createDemoFeed({ ...demoShards, minutes: readMinutes() })].join(""));
    const lines: string[] = [];
    const code = await catalogueCommand(["build", feed, "--out", out], (line) => lines.push(line));
    if (code !== 0) throw new Error(lines.join("\n"));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
